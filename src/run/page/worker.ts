import type { Place, PlaceEvents } from "../seat.ts"
import { openCage } from "./cage.ts"
import workerAddress from "./runner.worker.ts?worker&url"

/** How long a frame may take to open before the browser is taken to be one that cannot, ms. */
const cageMilliseconds = 20_000

let code: Promise<string> | undefined
let cageWorks = import.meta.hot === undefined

/** The worker's program as text; it needs no other file once it is built. */
function workerCode(): Promise<string> {
  code ??= fetch(workerAddress).then(response => {
    if (!response.ok) throw new Error(`The worker's file is missing: ${response.status}`)
    return response.text()
  })
  code.catch(() => {
    code = undefined
  })
  return code
}

/**
 * Opens a place for programs: a worker in a frame without origin and network; where a browser or the page's policy
 * does not allow that, and while developing, when the worker is not one file, a worker of the page's own.
 */
export function openPlace(events: PlaceEvents): Place {
  if (!cageWorks) return openWorker(events)
  let place: Place | undefined
  let killed = false
  let heard = false

  const fallBack = (): void => {
    if (killed || heard) return
    cageWorks = false
    clearTimeout(timer)
    place?.kill()
    place = openWorker(events)
  }
  const timer = setTimeout(fallBack, cageMilliseconds)
  const caged: PlaceEvents = {
    heard(message) {
      heard = true
      clearTimeout(timer)
      events.heard(message)
    },
    gone: () => (heard ? events.gone() : fallBack()),
  }
  workerCode().then(text => {
    if (!killed && cageWorks) place = openCage(text, caged)
  }, fallBack)
  return {
    send: message => place?.send(message),
    kill() {
      killed = true
      clearTimeout(timer)
      place?.kill()
    },
  }
}

/** A worker of the page's own: the hardened realm and the withheld names protect, the frame's policy does not. */
function openWorker(events: PlaceEvents): Place {
  const worker = new Worker(workerAddress, { type: "module" })
  const { port1, port2 } = new MessageChannel()
  port1.onmessage = event => events.heard(event.data)
  worker.onerror = event => {
    event.preventDefault()
    events.gone()
  }
  worker.postMessage({ port: port2 }, [port2])
  return {
    send: message => port1.postMessage(message),
    kill() {
      port1.onmessage = null
      worker.onerror = null
      port1.close()
      worker.terminate()
    },
  }
}
