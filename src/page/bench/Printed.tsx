/** More lines than these are counted, not set: a print in a loop must not slow the drag of a slider. */
const mostLines = 1000

/** What is shown of the lines that a program printed. */
export function printedText(lines: readonly string[]): string {
  const more = lines.length - mostLines
  const shown = more > 0 ? [...lines.slice(0, mostLines), `(${more} more lines are not shown)`] : lines
  return shown.join("\n")
}

/** What the program of the last run printed, also when the run was stopped. */
export function Printed({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null
  return (
    <section class="bn-printed" aria-label="Printed">
      <h2>Printed</h2>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls has to be reached by key */}
      <pre tabIndex={0}>{printedText(lines)}</pre>
    </section>
  )
}
