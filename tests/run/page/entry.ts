import type { RunOutcome, RunRequest } from "../../../src/run/contract.ts"
import { createPageRunner } from "../../../src/run/page/runner.ts"

declare global {
  interface Window {
    pageRunner: ReturnType<typeof createPageRunner>
    runPlain(request: RunRequest): Promise<PlainOutcome>
  }
}

/** An outcome whose numbers are texts of hexadecimal digits, so that no bit is lost on the way to the test. */
export type PlainOutcome = Omit<RunOutcome, "recordings"> & {
  readonly recordings: readonly { readonly cell: string; readonly rows: number; readonly bits: string }[]
}

window.pageRunner = createPageRunner()
window.runPlain = async request => {
  const outcome = await window.pageRunner.run(request)
  return {
    ...outcome,
    recordings: outcome.recordings.map(({ cell, rows, width, data }) => ({
      cell,
      rows,
      bits: Array.from(new BigUint64Array(data.buffer, data.byteOffset, rows * width), word =>
        word.toString(16).padStart(16, "0"),
      ).join(""),
    })),
  }
}
