import { compile } from "../../src/cell/index.ts"
import { createNodeStripper } from "../../src/cell/strip.node.ts"
import type { JudgeTools } from "../../src/judge/index.ts"
import { createNodeRunner } from "../../src/run/node/runner.ts"

/** A compiler and a sandbox, as the commands make them. */
export async function createJudgeTools(workers = 1): Promise<JudgeTools & { close(): Promise<void> }> {
  const strip = await createNodeStripper()
  const runner = createNodeRunner({ workers })
  return {
    compile: program => compile(program, strip),
    run: request => runner.run(request),
    close: () => runner.close(),
  }
}
