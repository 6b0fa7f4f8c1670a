import type { Verdict } from "../../judge/contract.ts"

/** A stroke for each verdict: whole, broken, dotted, or only the line to write on. Always beside its word. */
export function VerdictMark({ verdict }: { verdict: Verdict | "problem" | null }) {
  const kind = verdict === null ? "open" : verdict.replaceAll(" ", "-")
  return (
    <svg class={`verdict-mark verdict-${kind}`} viewBox="0 0 28 8" width="28" height="8" aria-hidden="true">
      <line x1="1" y1="4" x2="27" y2="4" />
      {verdict === "problem" && <path d="M10 1 16 7M16 1 10 7" />}
    </svg>
  )
}
