import type { Problem } from "../cell/problem.ts"
import type { CheckRule, Worksheet } from "./contract.ts"
import { suggest } from "./nearest.ts"

/** A recorded series as far as names go. */
export interface SeriesName {
  readonly name: string
  readonly kind: "vector" | "scalar"
}

/**
 * Every series that a check or a plot names must be recorded by its cell: compares the names with what the
 * author's own answers recorded. The nearest recorded name is offered.
 */
export function checkSeries(
  worksheet: Worksheet,
  recorded: ReadonlyMap<string, readonly SeriesName[]>,
): Problem[] {
  const problems: Problem[] = []
  const wanted = [
    ...worksheet.sheet.checks.flatMap(check =>
      seriesOf(check.rule).map(want => ({
        ...want,
        owner: `check “${check.name}”`,
        line: `check:${check.name}`,
        cell: check.cell,
      })),
    ),
    ...worksheet.sheet.plots.flatMap(plot =>
      [plot.x, ...plot.y]
        .filter(name => name !== "t")
        .map(name => ({
          name,
          as: "component" as const,
          owner: `plot “${plot.name}”`,
          line: `plot:${plot.name}`,
          cell: plot.cell,
        })),
    ),
    ...worksheet.sheet.scenes.flatMap(scene =>
      scene.bodies.map(body => ({
        name: `${body.body}.position`,
        as: "vector" as const,
        owner: `scene of cell “${scene.cell}”`,
        line: `scene:${scene.cell}`,
        cell: scene.cell,
      })),
    ),
  ]
  for (const want of wanted) {
    const series = recorded.get(want.cell) ?? []
    const names =
      want.as === "component"
        ? componentsOf(series)
        : want.as === "vector"
          ? series.filter(s => s.kind === "vector").map(s => s.name)
          : [...series.map(s => s.name), ...componentsOf(series)]
    if (names.includes(want.name)) continue
    const kind = want.as === "component" && series.some(s => s.name === want.name)
    problems.push({
      code: "unknown-series",
      text: kind
        ? `The ${want.owner} wants one number an instant, but “${want.name}” is a vector.`
        : `The ${want.owner} looks at “${want.name}”, which the cell “${want.cell}” does not record.`,
      todo: kind
        ? `Take one component: ${want.name}.x, ${want.name}.y or ${want.name}.z.`
        : suggest(want.name, names),
      where: { file: worksheet.file, line: worksheet.lines[want.line] ?? 1, column: 1 },
    })
  }
  return problems
}

/** A series that is read, and what it must be. */
export interface SeriesWanted {
  readonly name: string
  readonly as: "any" | "vector" | "component"
}

/** The series that a rule reads, and what they must be. */
export function seriesOf(rule: CheckRule): SeriesWanted[] {
  const momentum = (body: string): SeriesWanted => ({ name: `${body}.momentum`, as: "vector" })
  const position = (body: string): SeriesWanted => ({ name: `${body}.position`, as: "vector" })
  const force = (name: string): SeriesWanted => ({ name, as: "vector" })
  switch (rule.kind) {
    case "compare":
    case "converges":
      return [{ name: rule.series, as: "any" }]
    case "law": {
      const forces = (rule.law === "energy" ? rule.work : rule.external) ?? []
      return [
        ...rule.bodies.map(momentum),
        ...(rule.law === "momentum" ? [] : rule.bodies.map(position)),
        ...(rule.law === "energy" && rule.energy !== null
          ? [{ name: rule.energy, as: "component" } as const]
          : []),
        ...forces.map(force),
      ]
    }
    case "rests":
      return [momentum(rule.body)]
    case "value":
    case "stays":
      return [{ name: rule.series, as: "component" }]
    case "happens":
      return rule.event === "rest"
        ? [momentum(rule.of)]
        : [{ name: rule.of, as: rule.event === "turning" ? "component" : "any" }]
    case "stepper":
      return [momentum(rule.body), position(rule.body)]
    case "units":
    case "uses":
    case "avoids":
      return []
  }
}

function componentsOf(series: readonly SeriesName[]): string[] {
  return series.flatMap(s => (s.kind === "scalar" ? [s.name] : [`${s.name}.x`, `${s.name}.y`, `${s.name}.z`]))
}
