import type { CellSource } from "../../../src/cell/contract.ts"
import type { Parameter, PlotBlock, Scene, StudentSheet } from "../../../src/worksheet/contract.ts"

const cellOf = (name: string): CellSource => ({
  name,
  line: 1,
  segments: [
    { kind: "given", text: "const mass = 2\n" },
    { kind: "blank", name: "update", prompt: "Update the momentum.", inline: false, starter: "" },
  ],
})

/** A student's sheet around one cell. */
export function sheetOf(
  cell: string,
  scene: Omit<Scene, "cell"> | null,
  plots: readonly Omit<PlotBlock, "cell">[],
  parameters: readonly Parameter[],
): StudentSheet {
  return {
    id: `fixture-${cell}`,
    title: "Bench fixture",
    version: 1,
    digest: "",
    summary: "",
    lesson: null,
    timeStep: "dt",
    parameters,
    blocks: [],
    cells: [cellOf(cell)],
    scenes: scene ? [{ cell, ...scene }] : [],
    plots: plots.map(p => ({ cell, ...p })),
    data: [],
    questions: [],
    checks: [],
  }
}

export const heightParameter: Parameter = {
  name: "height",
  label: "drop height",
  unit: "m",
  value: 1.5,
  range: [0.5, 3],
  vary: true,
}

export const stiffnessParameter: Parameter = {
  name: "stiffness",
  label: "stiffness of the deck",
  unit: "N/m",
  value: 900,
  range: [200, 2000],
  vary: false,
}

export const speedParameter: Parameter = {
  name: "speed",
  label: "launch speed",
  unit: "m/s",
  value: 9,
  range: [2, 14],
  vary: false,
}
