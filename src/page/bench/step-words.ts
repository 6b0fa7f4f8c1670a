import { quantity, significant, thinSpace } from "./number.ts"
import type { Order, StepStudy } from "./step-study.ts"

/** The order as it is said: near a whole number as that number. */
export function orderText(order: Order): string {
  switch (order.kind) {
    case "exact":
      return "no change"
    case "none":
      return "none seen"
    case "order":
      return significant(order.order, 2)
  }
}

/** What a shorter time step changes, in a few sentences. */
export function stepWords(study: StepStudy, dt: string, label: (body: string) => string): string[] {
  const [most] = [...study.places].sort((a, b) => b.changes[0] - a.changes[0])
  if (!most) return ["No body is recorded, so only the numbers below can be compared."]
  const the = label(most.body)
  const when = `at t${thinSpace}=${thinSpace}${quantity(study.at, "s", 4)}`
  if (most.order.kind === "exact")
    return [
      `A shorter step changes nothing: ${when} ${the} is at the same place with ${dt}, ${dt}/2 and ${dt}/4.`,
    ]
  const [first, second] = most.changes.map(change => quantity(change, "m", 2))
  const moved = `${capital(when)} half the step moves ${the} by ${first}, and half of that again by ${second}.`
  if (most.order.kind === "none")
    return [
      moved,
      most.changes[1] < most.changes[0]
        ? "The change falls, but not by one power of the step: something sudden lies on the way, such as a contact, or the step is still too long to tell."
        : "The change does not fall, so this step is too long for the motion, or the motion depends on the smallest difference.",
    ]
  const { order } = most.order
  const whole = Math.round(order)
  const near = Math.abs(order - whole) < 0.25
  const falls = near
    ? `So the change falls to ${whole === 1 ? "a half" : `1/${2 ** whole}`} when the step is halved: the error goes with the step ${whole === 1 ? "itself" : whole === 2 ? "squared" : `to the power ${whole}`}, order ${whole}.`
    : `So the error falls with about the power ${significant(order, 2)} of the step.`
  const off = study.off
    ? ` By that the run with ${dt} is about ${quantity(study.off.distance, "m", 2)} off the motion that ever shorter steps lead to, ${quantity(study.off.share * 100, "%", 1)} of the way across.`
    : ""
  return [moved, falls + off]
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
