import type { Place, PlaceEvents } from "../seat.ts"
import cageAddress from "./cage.html?url"

/**
 * Opens a worker inside a frame of its own that has no origin and no network: the frame is sandboxed, and the policy
 * in cage.html, which the worker inherits, lets it load nothing. The page and the worker speak over a
 * channel of their own. To end it takes away the frame, and the worker with it.
 *
 * @param code the worker's whole program; the frame could not fetch it itself
 */
export function openCage(code: string, events: PlaceEvents): Place {
  const frame = document.createElement("iframe")
  const { port1, port2 } = new MessageChannel()

  const hear = (event: MessageEvent): void => {
    if (event.source !== frame.contentWindow) return
    if (event.data === "open") frame.contentWindow?.postMessage({ code }, "*", [port2])
    else if (event.data === "gone") events.gone()
  }
  const refused = (event: SecurityPolicyViolationEvent): void => {
    if (event.effectiveDirective === "frame-src") events.gone()
  }
  const kill = (): void => {
    removeEventListener("message", hear)
    document.removeEventListener("securitypolicyviolation", refused)
    port1.onmessage = null
    port1.close()
    frame.remove()
  }

  addEventListener("message", hear)
  document.addEventListener("securitypolicyviolation", refused)
  port1.onmessage = event => events.heard(event.data)
  // Newer browsers tell when the other end is gone, by a crash for want of memory too.
  port1.addEventListener("close", () => events.gone())
  frame.setAttribute("sandbox", "allow-scripts")
  frame.setAttribute("aria-hidden", "true")
  frame.tabIndex = -1
  frame.title = "Where programs run"
  // Out of sight, yet not "display: none": browsers put what is not displayed last in the queue.
  frame.style.cssText = "position:fixed;width:1px;height:1px;left:-9px;top:-9px;border:0;visibility:hidden"
  frame.src = cageAddress
  document.body.append(frame)
  return { send: message => port1.postMessage(message), kill }
}
