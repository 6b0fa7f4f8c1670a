import type { Place, PlaceEvents } from "../seat.ts"

/** Starts a worker for programs and talks to it over a channel of its own. */
export function openWorker(events: PlaceEvents): Place {
  const worker = new Worker(new URL("./runner.worker.ts", import.meta.url), { type: "module" })
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
