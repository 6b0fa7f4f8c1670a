import type { Runner } from "../contract.ts"
import { createSeat } from "../seat.ts"
import { openPlace } from "./worker.ts"

/**
 * A runner in a page: programs run in a worker, never on the page's own thread. A spare worker stands ready, so
 * that a run after a stop starts at once.
 */
export function createPageRunner({ spares = 1 }: { readonly spares?: number } = {}): Runner {
  const seat = createSeat({ open: openPlace, fresh: false, spares })
  seat.warm()
  let last: Promise<unknown> = Promise.resolve()
  return {
    run(request) {
      const outcome = last.then(() => seat.run(request))
      last = outcome
      return outcome
    },
    stop: () => seat.stop(),
    async close() {
      seat.close()
    },
  }
}
