import { signal } from "@preact/signals"

const key = "deltasheet/suggest"

/** Whether names are suggested while one types; by key they always are. */
export const suggesting = signal(true)

export function chooseSuggesting(wanted: boolean): void {
  suggesting.value = wanted
  try {
    localStorage.setItem(key, wanted ? "yes" : "no")
  } catch {
    // a browser that keeps nothing still does as asked now
  }
}

export function recallSuggesting(): void {
  try {
    suggesting.value = localStorage.getItem(key) !== "no"
  } catch {
    // forbidden storage: names are suggested
  }
}
