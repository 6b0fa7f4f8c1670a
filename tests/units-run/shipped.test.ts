import { describe, expect, it } from "vitest"
import { unitsRun } from "../../src/cell/units-run/index.ts"
import { shippedPrograms } from "../equation/worksheets.ts"

describe("the units run on the worksheets that ship", () => {
  const all = shippedPrograms()
  it.each(all.map(one => [one.name, one] as const))(
    "%s: no alarm on the author's answers, units for axes",
    (_, one) => {
      const { problems, units } = unitsRun(one.program, one.parameters)
      expect(problems).toEqual([])
      expect(units.t).toBe("s")
      const named = Object.entries(units)
      expect(named.filter(([name]) => name.endsWith(".position")).map(([, unit]) => unit)).not.toEqual([])
      for (const [name, unit] of named) {
        if (name.endsWith(".position")) expect([name, unit]).toEqual([name, "m"])
        if (name.endsWith(".momentum")) expect([name, unit]).toEqual([name, "kg m/s"])
        if (name.includes(".forces.")) expect([name, unit]).toEqual([name, "N"])
      }
    },
  )
})
