import type { Scene } from "./contract.ts"
import type { SceneYaml } from "./schema.ts"
import { type Findings, report } from "./source.ts"

/** Turns a scene's YAML into things to draw. */
export function readScene(
  findings: Findings,
  name: string,
  yaml: SceneYaml,
  lineOf: (...path: (string | number)[]) => number,
): Scene | null {
  const flat = yaml.planes.findIndex(plane => Math.hypot(...plane.normal) === 0)
  if (flat >= 0) {
    report(findings, lineOf("planes", flat), {
      code: "wrong-value",
      text: `A plane of the scene “${name}” has the normal [0, 0], which has no direction.`,
      todo: "The normal points out of the solid side: a floor has [0, 1].",
    })
    return null
  }
  return {
    cell: yaml.cell,
    view: yaml.view,
    bodies: Object.entries(yaml.bodies).map(([body, { shape, width, height, label }]) => ({
      body,
      shape,
      width,
      height: height ?? width,
      label,
    })),
    fixtures: [
      ...yaml.planes.map(plane => ({ kind: "plane" as const, ...plane })),
      ...yaml.springs.map(spring => ({ kind: "spring" as const, ...spring })),
      ...yaml.struts.map(strut => ({ kind: "strut" as const, ...strut })),
      ...yaml.ropes.map(rope => ({ kind: "rope" as const, ...rope })),
    ],
  }
}
