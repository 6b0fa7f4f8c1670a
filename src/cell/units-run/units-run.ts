import { lineAt, placeOf } from "../assemble.ts"
import type { Program } from "../contract.ts"
import type { Problem } from "../problem.ts"
import { readTree, type Statement } from "../tree/index.ts"
import { readAnnotations } from "./annotations.ts"
import { callValue } from "./calls.ts"
import { evaluate } from "./evaluate.ts"
import { Enough, type Machine, type UnitsRun } from "./machine.ts"
import { measureOf, unknown } from "./measure.ts"
import { createJournal, innerScope } from "./scope.ts"
import { runAll, runStatement, sample } from "./statements.ts"
import { scalar } from "./value.ts"

/** Expressions and statements looked at in all: far more than a worksheet needs, and soon over for anything else. */
const defaultSteps = 60_000
/** Turns of a loop each time it is reached, and in all. */
const turnsAtOnce = 5
const turnsInAll = 20
/** Turns of a loop in a branch that is only tried. */
const turnsTried = 2
/** How often a branch that is not taken is tried. */
const triesOfBranch = 2
const mostProblems = 20

/**
 * Runs the first turns of each loop of a program with every value carrying its unit, and says where units do not fit:
 * unlike sums and comparisons, a function fed the wrong quantity, a value against its declaration. A branch that is
 * not taken is tried too, without effect. It interprets arithmetic, calls of known functions and plain control flow;
 * what it does not understand has no known unit and raises no alarm. Never throws; the number of steps is bounded.
 *
 * A number without a unit may stand for any quantity, so it never raises an alarm either; small whole numbers and
 * simple fractions in a formula (2, 1/2, π) are pure numbers in products.
 *
 * @param parameters value and unit (SI Brochure grammar) of each parameter
 * @param options.steps bound on expressions and statements looked at
 */
export function unitsRun(
  program: Program,
  parameters: readonly { readonly name: string; readonly unit: string; readonly value: number }[],
  options: { readonly steps?: number } = {},
): UnitsRun {
  const tree = readTree(program.text)
  const problems: Problem[] = []
  const reported = new Set<string>()
  const turns = new Map<Statement, number>()
  const walked = new Map<object, [number, number]>()
  let steps = options.steps ?? defaultSteps

  const atTop = new Set(tree.body)
  const cellAt = (offset: number): string => program.cells.findLast(cell => cell.from <= offset)?.name ?? ""

  const m: Machine = {
    program,
    journal: createJournal(),
    types: new Map(),
    units: new Map(),
    lines: new Map(),
    cell: program.cells[0]?.name ?? "",
    called: new Set(),
    returns: [],
    wanted: null,
    depth: 0,
    step() {
      if (--steps < 0) throw new Enough()
    },
    turnsOf(loop) {
      const before = turns.get(loop) ?? 0
      turns.set(loop, before + turnsAtOnce)
      if (m.journal.depth > 0) return turnsTried
      return before >= turnsInAll ? 1 : turnsAtOnce
    },
    walk(node, way, other) {
      // at the second time more may be known of what the branch uses
      const before = walked.get(node) ?? [0, 0]
      if (before[way - 1]! >= triesOfBranch) return
      before[way - 1]!++
      walked.set(node, before)
      m.journal.tried(other)
    },
    report(from, to, code, text, todo) {
      const key = `${code} ${from} ${to}`
      if (reported.has(key) || problems.length >= mostProblems) return
      reported.add(key)
      problems.push({
        code,
        text,
        todo,
        where: placeOf(program, from, to),
        excerpt: lineAt(program.text, from),
      })
    },
    evaluate: (e, scope) => evaluate(m, e, scope),
    run(s, scope) {
      if (atTop.has(s)) m.cell = cellAt(s.from)
      return runStatement(m, s, scope)
    },
    runAll: (list, scope) => runAll(m, list, scope),
    call: (fn, args, sites, site) => callValue(m, fn, args, sites, site),
  }

  const outermost = innerScope(null)
  for (const { name, unit, value } of parameters)
    outermost.names.set(name, { value: scalar(value, measureOf(unit) ?? unknown), annotation: null })
  const scope = innerScope(outermost)
  try {
    readAnnotations(m, tree)
    m.runAll(tree.body, scope)
    // functions that are declared and never called are looked at with quantities of the declared kind
    for (const { value } of [...scope.names.values()])
      if (value.kind === "function" && !m.called.has(value.node)) {
        m.cell = cellAt(value.node.from)
        const site = { kind: "other", from: value.node.from, to: value.node.to } as const
        m.call(
          value,
          value.node.parameters.map(one => sample(m, one.annotation)),
          [],
          site,
        )
      }
  } catch (cause) {
    if (!(cause instanceof Enough) && !(cause instanceof RangeError)) throw cause
  }
  const units: Record<string, string> = {}
  const unitsByCell: Record<string, Record<string, string>> = {}
  for (const [cell, found] of m.units) {
    unitsByCell[cell] = Object.fromEntries(found)
    for (const [name, unit] of found) units[name] ??= unit
  }
  return { problems, units, unitsByCell, lines: Object.fromEntries(m.lines) }
}
