import type { Program } from "../contract.ts"
import type { Problem } from "../problem.ts"
import type { Annotation, Expression, FunctionNode, Statement } from "../tree/index.ts"
import type { Journal, Scope } from "./scope.ts"
import type { Quantity, Value } from "./value.ts"

/** How a statement ended; null if the next one follows. */
export type Ending =
  | null
  | { readonly kind: "break" | "continue"; readonly label: string | null }
  | { readonly kind: "return"; readonly value: Value }
  | { readonly kind: "throw" }

/** What the parts of the units run share. */
export interface Machine {
  readonly program: Program
  readonly journal: Journal
  /** types that the program names */
  readonly types: Map<string, Annotation>
  /** unit texts of recorded series, by the cell that records them */
  readonly units: Map<string, Map<string, string>>
  /** the cell being run */
  cell: string
  /** unit texts of what lines set, by the offset of the name or place on the left */
  readonly lines: Map<number, string>
  /** functions of the program that were called */
  readonly called: Set<FunctionNode>
  /** what the functions under way are declared to give, innermost last */
  readonly returns: { readonly annotation: Annotation | null; readonly name: string }[]
  /** what the value being computed is for, where that is known */
  wanted: Quantity | null
  /** calls inside one another */
  depth: number
  /** counts a step; ends the run when there were enough */
  step(): void
  /** how many turns of a loop are run this time */
  turnsOf(loop: Statement): number
  /** tries a way (1 or 2) that is not taken, a few times for each node */
  walk(node: Expression | Statement, way: 1 | 2, other: () => unknown): void
  report(from: number, to: number, code: string, text: string, todo: string): void
  evaluate(e: Expression, scope: Scope): Value
  run(s: Statement, scope: Scope): Ending
  runAll(list: readonly Statement[], scope: Scope): Ending
  call(fn: Value, args: readonly Value[], sites: readonly Expression[], site: Expression): Value
}

/** Thrown to end the units run when it has seen enough. */
export class Enough extends Error {}

/** What unitsRun gives back. */
export interface UnitsRun {
  readonly problems: readonly Problem[]
  /** unit texts of recorded series by name, and of time under `t`; none where a unit is not known, the first cell's where two differ */
  readonly units: Readonly<Record<string, string>>
  /** the same of each cell by its name: two cells may record one name in two units */
  readonly unitsByCell: Readonly<Record<string, Readonly<Record<string, string>>>>
  /** unit texts of what lines set, by the offset in Program.text of the name or place on the left; none where not known */
  readonly lines: Readonly<Record<number, string>>
}
