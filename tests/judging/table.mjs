// Marks the corpora and writes the table of false refusals, false passes and slips named into a Markdown file:
//   node tests/judging/table.mjs [DEVELOPERS.md]
import { spawnSync } from "node:child_process"

const file = process.argv[2] ?? "DEVELOPERS.md"
const { status } = spawnSync("npx", ["vitest", "run", "tests/judging/corpus.test.ts"], {
  stdio: "inherit",
  env: { ...process.env, JUDGING_TABLE: file },
})
process.exit(status ?? 1)
