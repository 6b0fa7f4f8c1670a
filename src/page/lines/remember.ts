const key = "deltasheet/values-beside-lines"
/** Where the text column is narrower the values would stand between the lines: they come when asked for, px. */
const roomy = 900

/** Whether values stand beside the lines: as chosen on this device, else where there is room for them. */
export function recallValues(): boolean {
  try {
    const kept = localStorage.getItem(key)
    if (kept !== null) return kept === "yes"
  } catch {
    // forbidden storage: the room decides
  }
  return innerWidth >= roomy
}

export function keepValues(wanted: boolean): void {
  try {
    localStorage.setItem(key, wanted ? "yes" : "no")
  } catch {
    // kept for this visit only
  }
}
