/*
 * Runs the own tests of libraries over their rewritten sources: node tests/bench/start.mjs tests/cell/libraries/run.ts [--checkouts DIR]
 * Packages come from the registry by `npm pack`; repositories from DIR/NAME if it is there, else by git. Every file's tests must
 * give as many passes as over the sources as they were published.
 */
import { execFileSync, spawnSync } from "node:child_process"
import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs"
import { tmpdir } from "node:os"
import { dirname, join, relative, resolve } from "node:path"
import { build } from "vite"
import { type Library, libraries } from "./list.ts"
import { rewriteFile, type Way } from "./rewrite.ts"

const at = process.argv.indexOf("--checkouts")
const checkouts = at > 0 ? process.argv[at + 1] : undefined
const root = process.cwd()
const work = mkdtempSync(join(tmpdir(), "deltasheet-libraries-"))

function filesUnder(directory: string): string[] {
  return readdirSync(directory, { recursive: true, withFileTypes: true })
    .filter(entry => entry.isFile() && !entry.parentPath.includes("node_modules"))
    .map(entry => relative(directory, join(entry.parentPath, entry.name)))
}

function bring(library: Library): string {
  const into = join(work, library.name)
  mkdirSync(into)
  if (library.from === "package") {
    const name = execFileSync("npm", ["pack", `${library.name}@${library.version}`, "--silent"], {
      cwd: work,
      encoding: "utf8",
    }).trim()
    execFileSync("tar", ["xzf", join(work, name), "--strip-components=1", "-C", into])
  } else if (checkouts !== undefined && existsSync(join(checkouts, library.name))) {
    cpSync(join(checkouts, library.name), into, { recursive: true })
  } else {
    execFileSync("git", [
      "clone",
      "-q",
      "--depth",
      "1",
      "--branch",
      library.from.tag,
      library.from.repository,
      into,
    ])
  }
  // a test asks for its library by name, and for what the library itself needs
  mkdirSync(join(into, "node_modules"), { recursive: true })
  symlinkSync(into, join(into, "node_modules", library.name))
  const needs = Object.keys(
    (JSON.parse(readFileSync(join(into, "package.json"), "utf8")) as { dependencies?: object })
      .dependencies ?? {},
  )
  for (const need of needs) symlinkSync(join(root, "node_modules", need), join(into, "node_modules", need))
  return into
}

/** The operators as one file that stands before every test, with the names that tests expect to find. */
async function preload(): Promise<string> {
  const entry = join(work, "preload-entry.ts")
  writeFileSync(
    entry,
    `import { after, afterEach, before, beforeEach, describe, it } from "node:test"
import * as operators from ${JSON.stringify(resolve("src/cell/operators.ts"))}
Object.assign(globalThis, { describe, it, before, after, beforeEach, afterEach, rewrittenHost: { ...operators, at: (site, value) => value, overrun() {}, caught() {} } })
`,
  )
  await build({
    configFile: false,
    logLevel: "error",
    root: work,
    build: {
      ssr: entry,
      outDir: join(work, "preload"),
      rollupOptions: { output: { entryFileNames: "preload.mjs" } },
    },
    ssr: { noExternal: true },
  })
  return join(work, "preload", "preload.mjs")
}

interface Count {
  passed: number
  failed: number
}

function test(directory: string, library: Library, before: string): Count {
  const count: Count = { passed: 0, failed: 0 }
  for (const file of filesUnder(directory)
    .filter(f => library.tests.test(f))
    .sort()) {
    const { stdout, status } = spawnSync(process.execPath, ["--import", before, file], {
      cwd: directory,
      encoding: "utf8",
    })
    const number = (what: string): number =>
      Number(new RegExp(`^# ${what} (\\d+)$`, "m").exec(stdout)?.[1] ?? 0)
    count.passed += number("pass")
    count.failed += number("fail") + (status !== 0 && number("fail") === 0 ? 1 : 0)
    if (status !== 0 && process.argv.includes("--show"))
      console.log(
        stdout
          .split("\n")
          .filter(l => /not ok|error:/.test(l))
          .slice(0, 6)
          .join("\n"),
      )
  }
  return count
}

let wrong = 0
try {
  const before = await preload()
  for (const library of libraries) {
    const directory = bring(library)
    const isModule =
      (JSON.parse(readFileSync(join(directory, "package.json"), "utf8")) as { type?: string }).type ===
      "module"
    const sources = filesUnder(directory).filter(f => library.sources.test(f))
    const texts = new Map(sources.map(f => [f, readFileSync(join(directory, f), "utf8")]))
    const published = test(directory, library, before)
    console.log(
      `${library.name} ${library.version} (${library.about}): ${sources.length} files, ${published.passed} tests pass, ${published.failed} fail as published`,
    )
    for (const way of ["split", "blind", "traced"] satisfies Way[]) {
      for (const [file, text] of texts) {
        mkdirSync(dirname(join(directory, file)), { recursive: true })
        writeFileSync(join(directory, file), rewriteFile(text, isModule, way))
      }
      const count = test(directory, library, before)
      const same = count.passed === published.passed && count.failed === published.failed && count.passed > 0
      if (!same) wrong++
      console.log(
        `  ${way.padEnd(7)} ${count.passed} pass, ${count.failed} fail${same ? "" : "   DIFFERENT"}`,
      )
    }
  }
} finally {
  rmSync(work, { recursive: true, force: true })
}
process.exit(wrong > 0 ? 1 : 0)
