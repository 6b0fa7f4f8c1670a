import { type CompileResult, compile, type Program, traceProgram } from "../cell/index.ts"
import { createNodeStripper } from "../cell/strip.node.ts"
import type { RunOutcome, RunRequest } from "../run/contract.ts"
import { createNodeRunner } from "../run/node/runner.ts"

/** What every command that runs programs needs: a compiler and a sandbox, made when first asked for. */
export interface Tools {
  compile(program: Program): Promise<CompileResult>
  run(request: RunRequest): Promise<RunOutcome>
  readonly workers: number
  close(): Promise<void>
}

/** @param runnerFile the built child process (dist/runner.js) */
export function createTools(runnerFile: string, workers: number): Tools {
  let stripper: ReturnType<typeof createNodeStripper> | null = null
  let runner: ReturnType<typeof createNodeRunner> | null = null
  const strip = () => (stripper ??= createNodeStripper())
  return {
    workers,
    async compile(program) {
      return compile(program, await strip(), { trace: false })
    },
    run(request) {
      runner ??= createNodeRunner({
        workers,
        bundle: runnerFile,
        trace: async compiled => traceProgram(compiled, await strip()),
      })
      return runner.run(request)
    },
    async close() {
      await runner?.close()
    },
  }
}
