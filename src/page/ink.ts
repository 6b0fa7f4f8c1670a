import { signal } from "@preact/signals"

/** What the reader chose; "system" follows the device. */
export type Ink = "system" | "light" | "dark"

const key = "deltasheet/ink"

const isInk = (value: unknown): value is Ink => value === "light" || value === "dark" || value === "system"

export const ink = signal<Ink>("system")

/** Light or dark, for this visit and, where the browser keeps things, for the next. */
export function chooseInk(choice: Ink): void {
  ink.value = choice
  if (choice === "system") delete document.documentElement.dataset.ink
  else document.documentElement.dataset.ink = choice
  try {
    localStorage.setItem(key, choice)
  } catch {
    // a browser that keeps nothing still shows the choice now
  }
}

export function recallInk(): void {
  try {
    const kept = localStorage.getItem(key)
    if (isInk(kept)) chooseInk(kept)
  } catch {
    // forbidden storage: the device's own choice stands
  }
}
