import { createPageCompiler } from "../cell/compiler.browser.ts"
import { assembleProgram } from "../cell/index.ts"
import type { Edition } from "../judge/edition.ts"
import { collectEvidence, judgeSheet, unpackReference } from "../judge/index.ts"
import type { Runner } from "../run/contract.ts"
import { createPageRunner } from "../run/page/runner.ts"
import type { Workshop } from "./session.ts"

/** The rooms below, as one open worksheet uses them: compiler and runners in workers, the judge on this thread. */
export function openWorkshop(edition: Edition): Workshop {
  const { sheet } = edition
  const parameters = sheet.parameters.map(parameter => parameter.name)
  const reference = unpackReference(edition.reference)
  const compiler = createPageCompiler()
  let ready = false
  void compiler.ready.then(() => {
    ready = true
  })
  let evidence: Runner | null = null
  return {
    compile: texts => compiler.compile(assembleProgram(sheet.cells, texts, parameters, sheet.timeStep)),
    compilerReady: () => ready,
    runner: createPageRunner(),
    reference,
    async judge({ compiled, outcome, overtaken }) {
      evidence ??= createPageRunner()
      const found = await collectEvidence(sheet, compiled, evidence, reference, { known: outcome, overtaken })
      if (!found) return null
      const checks = judgeSheet(sheet, reference, found)
      return {
        points: checks.reduce((sum, check) => sum + check.points, 0),
        outOf: checks.reduce((sum, check) => sum + check.outOf, 0),
        checks,
        problems: found.problem ? [found.problem] : [],
      }
    },
    close() {
      compiler.close()
      void evidence?.close()
    },
  }
}
