/** Which drawers stand open, kept on this device for a worksheet; a device that keeps nothing gets the defaults. */
export function drawerOpen(sheet: string, drawer: string, usual: boolean): boolean {
  try {
    const kept = localStorage.getItem(key(sheet, drawer))
    return kept === null ? usual : kept === "open"
  } catch {
    return usual
  }
}

export function keepDrawer(sheet: string, drawer: string, open: boolean): void {
  try {
    localStorage.setItem(key(sheet, drawer), open ? "open" : "shut")
  } catch {
    return
  }
}

function key(sheet: string, drawer: string): string {
  return `deltasheet/drawer/${sheet}/${drawer}`
}
