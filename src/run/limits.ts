import { defaultLimits, type Limits } from "./contract.ts"

/** What is asked for, whole and above zero; where nothing sensible is asked, the default. */
export function limitsFrom(asked: Partial<Limits> | undefined): Limits {
  const pick = (name: keyof Limits): number => {
    const value = asked?.[name]
    return typeof value === "number" && value > 0 ? Math.floor(value) : defaultLimits[name]
  }
  return {
    turns: pick("turns"),
    recorded: pick("recorded"),
    output: pick("output"),
    milliseconds: pick("milliseconds"),
  }
}

/** A whole number with a thin space between groups of three digits (SI Brochure, 9th edition, 5.4.4). */
export const inThousands = (n: number): string => String(n).replace(/\B(?=(\d{3})+$)/g, "\u202f")

/** A time as it is said in a message: six digits at most, without the dust of repeated adding. */
export const inSeconds = (t: number): string => `${Number(t.toPrecision(6))} s`
