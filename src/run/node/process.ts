import { realpathSync } from "node:fs"
import { dirname } from "node:path"
import { limitsFrom } from "../limits.ts"
import type { Place, PlaceEvents } from "../seat.ts"
import { memoryUp } from "../words.ts"
import { unpack } from "./columns.ts"
import { launch } from "./launch.ts"
import { residentBytes } from "./memory.ts"

/** Heap of a child, MB: several times what the largest recording takes. */
const heapMegabytes = 256
/**
 * Resident memory at which a child is killed, MB. An idle one takes some 60, and the longest recording that is let through,
 * 128, stands in it three times over while it is sent.
 */
const residentMegabytes = 640
const lookMilliseconds = 20

/** Node's permission flag under its name in this version; none in versions before it came. */
function permissionFlags(bundle: string): string[] {
  const known = process.allowedNodeEnvironmentFlags
  const flag = ["--permission", "--experimental-permission"].find(name => known.has(name))
  return flag === undefined ? [] : [flag, `--allow-fs-read=${bundle}`]
}

/** How Node is told to keep a child small and closed in. */
export const childFlags = (bundle: string): string[] => [
  ...permissionFlags(bundle),
  "--no-warnings",
  "--no-addons",
  `--max-old-space-size=${heapMegabytes}`,
  "--max-semi-space-size=16",
]

/** Starts a child with nothing of ours in it: no environment, no standard streams, no files but its own program. */
export function openProcess(bundle: string, events: PlaceEvents): Place {
  // the flag takes paths as they are, not by way of a link
  const file = realpathSync(bundle)
  const child = launch(childFlags(file), file, dirname(file))
  let recorded = 0
  let cells = 0
  child.on("message", message => events.heard(unpack(message, recorded, cells)))
  child.on("exit", (code, signal) => {
    // The engine aborts when its heap is full; 134 is what a shell makes of that.
    events.gone(signal === "SIGABRT" || code === 134 ? memoryUp : undefined)
  })
  child.on("error", () => events.gone())
  return {
    send(message) {
      if (message.kind === "run") {
        cells = message.compiled?.program.cells.length ?? cells
        recorded = Math.max(...message.requests.map(({ limits }) => limitsFrom(limits).recorded))
      }
      child.send(message, error => {
        if (error !== null) events.gone()
      })
    },
    kill() {
      child.removeAllListeners()
      // What cannot be delivered after the kill concerns nobody.
      child.on("error", () => {})
      child.kill("SIGKILL")
    },
    watch(exceeded) {
      const look = setInterval(() => {
        const bytes = child.pid === undefined ? null : residentBytes(child.pid)
        if (bytes !== null && bytes > residentMegabytes * 1e6) exceeded(memoryUp)
      }, lookMilliseconds)
      return () => clearInterval(look)
    },
  }
}
