import type { SentVariable } from "../lines/looking.ts"
import type { Variable } from "../lines/variable.ts"
import type { SentPlot } from "./PlotsDrawer.tsx"
import type { Quantity } from "./quantities.ts"

/** Quantities of variables that were sent to plots; what is recorded under the same name goes first. */
export function sentQuantities(sent: readonly SentVariable[], recorded: readonly Quantity[]): Quantity[] {
  const taken = new Set(recorded.map(q => q.id))
  return sent
    .flatMap(({ variable }) => (variable ? quantitiesOfVariable(variable) : []))
    .filter(q => !taken.has(q.id))
}

/** `push.x`, or `pushOf.push.x` of a variable in a function: as an expression can name it. */
const idOf = ({ key, name }: Pick<Variable, "key" | "name">): string => {
  const within = key.split("/")[1] ?? ""
  return within === "" ? name : `${within}.${name.replace(` in ${within}`, "")}`
}

function quantitiesOfVariable(variable: Variable): Quantity[] {
  const id = idOf(variable)
  const shared = { unit: variable.unit, ink: "scalar" as const }
  if (variable.kind === "number")
    return [
      {
        ...shared,
        id,
        label: variable.name,
        short: variable.name,
        component: null,
        read: row => variable.read(row, 0),
      },
    ]
  return (["x", "y", "z"] as const).map((component, k) => ({
    ...shared,
    id: `${id}.${component}`,
    label: `${variable.name}, ${component}`,
    short: `${variable.name} ${component}`,
    component,
    read: row => variable.read(row, k),
  }))
}

/** The plots of what was sent: a number over time, or the components of a vector that ever leave zero. */
export function sentPlots(sent: readonly SentVariable[]): SentPlot[] {
  return sent.map(({ key, name, variable, sought }) => {
    if (!variable) return { key, name, wish: null, lost: sought }
    const id = idOf(variable)
    if (variable.kind === "number") return { key, name, wish: { x: "t", y: [id], caption: "" }, lost: false }
    const moving = [0, 1, 2].filter(k => {
      for (let row = 0; row < variable.rows; row++) {
        const value = variable.read(row, k)
        if (value !== 0 && !Number.isNaN(value)) return true
      }
      return false
    })
    const parts = (moving.length > 0 ? moving : [0]).map(k => `${id}.${"xyz"[k]}`)
    return { key, name, wish: { x: "t", y: parts, caption: "" }, lost: false }
  })
}
