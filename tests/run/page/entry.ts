import type { RunOutcome, RunRequest } from "../../../src/run/contract.ts"
import { openCage } from "../../../src/run/page/cage.ts"
import { createPageRunner } from "../../../src/run/page/runner.ts"
import { bitsOf } from "../support/bits.ts"

declare global {
  interface Window {
    pageRunner: ReturnType<typeof createPageRunner>
    runPlain(request: RunRequest): Promise<PlainOutcome>
    askFromCage(code: string): Promise<unknown>
  }
}

/** An outcome whose numbers are texts of hexadecimal digits, so that no bit is lost on the way to the test. */
export type PlainOutcome = Omit<RunOutcome, "recordings"> & {
  readonly recordings: readonly { readonly cell: string; readonly rows: number; readonly bits: string }[]
}

window.pageRunner = createPageRunner()
window.runPlain = async request => {
  const outcome = await window.pageRunner.run(request)
  const recordings = outcome.recordings.map(r => ({ cell: r.cell, rows: r.rows, bits: bitsOf(r) }))
  return { ...outcome, recordings }
}

/** What a worker in a cage answers when it is any program at all, here one that finds out what it can reach. */
window.askFromCage = code =>
  new Promise((resolve, reject) => {
    const place = openCage(code, {
      heard(answer) {
        place.kill()
        resolve(answer)
      },
      gone: () => reject(new Error("the worker in the cage did not start")),
    })
  })
