import { assembleProgram } from "../cell/assemble.ts"
import { createPageCompiler, type PageCompiler } from "../cell/compiler.browser.ts"
import type { Problem } from "../cell/problem.ts"
import type { Edition } from "../judge/edition.ts"
import { unpackReference } from "../judge/pack.ts"
import type { Runner } from "../run/contract.ts"
import { createPageRunner } from "../run/page/runner.ts"
import { openKinds, whenIdle } from "./kinds.ts"
import type { Workshop } from "./session.ts"

const noCompiler: Problem = {
  code: "page-compiler-missing",
  text: "The compiler could not be fetched, so your lines have not been run.",
  todo: "Check the connection and press run; what you typed is kept.",
}

/** Units that do not fit, told at a time: the first ones usually cause the rest. */
const mostRemarks = 2

/** The rooms below, as one open worksheet uses them: compiler and runners in workers, the judge on this thread. */
export function openWorkshop(edition: Edition): Workshop {
  const { sheet } = edition
  const parameters = sheet.parameters.map(parameter => parameter.name)
  const reference = unpackReference(edition.reference)
  let compiler: PageCompiler | null = null
  let ready = false
  const getCompiler = (): PageCompiler => {
    if (compiler) return compiler
    const fresh = createPageCompiler()
    fresh.ready.then(
      () => {
        ready = true
      },
      // said when somebody asks it to compile; then it is fetched anew
      () => {},
    )
    compiler = fresh
    return fresh
  }
  const kinds = openKinds(sheet)
  let evidence: Runner | null = null
  let second: Runner | null = null
  return {
    async compile(texts) {
      const mine = getCompiler()
      try {
        return await mine.compile(assembleProgram(sheet.cells, texts, parameters, sheet.timeStep))
      } catch {
        if (compiler === mine) {
          mine.close()
          compiler = null
          ready = false
        }
        return { ok: false, problems: [noCompiler] }
      }
    },
    async units(texts) {
      const program = assembleProgram(sheet.cells, texts, parameters, sheet.timeStep)
      const { problems } = await getCompiler().units(program, sheet.parameters)
      // what the author wrote was looked at when the sheet was made
      return problems.filter(problem => problem.where?.blank !== undefined).slice(0, mostRemarks)
    },
    compilerReady: () => ready,
    kinds,
    warmUp: () =>
      void getCompiler().ready.then(
        () => whenIdle(kinds.warmUp),
        () => {},
      ),
    async lineUnits(program) {
      return (await getCompiler().units(program, sheet.parameters)).lines
    },
    runner: createPageRunner(),
    second: () => {
      second ??= createPageRunner({ spares: 0 })
      return second
    },
    reference,
    async judge(request) {
      const { judgeOnPage } = await import("./judging.ts")
      evidence ??= createPageRunner()
      return judgeOnPage(sheet, reference, evidence, request, async program => {
        const { problems, words } = await getCompiler().units(program, sheet.parameters)
        return { units: problems, words }
      })
    },
    close() {
      compiler?.close()
      kinds.close()
      void evidence?.close()
      void second?.close()
    },
  }
}
