import { readFileSync } from "node:fs"
import { createRequire } from "node:module"
import { dirname, join } from "node:path"
import { fileURLToPath } from "node:url"
import ts from "typescript"
import { type Declarations, libraryFile } from "./declaration-files.ts"

/** The parts of the language that every engine with a cell in it has. */
const parts = [
  "es5",
  "es2015.core",
  "es2015.collection",
  "es2015.generator",
  "es2015.promise",
  "es2015.iterable",
  "es2015.symbol",
  "es2015.symbol.wellknown",
  "es2016.array.include",
  "es2017.object",
  "es2017.string",
  "es2018.asynciterable",
  "es2018.asyncgenerator",
  "es2018.regexp",
  "es2019.array",
  "es2019.object",
  "es2019.string",
  "es2019.symbol",
  "es2020.bigint",
  "es2020.string",
  "es2020.symbol.wellknown",
  "es2021.string",
  "es2022.array",
  "es2022.error",
  "es2022.object",
  "es2022.regexp",
  "es2022.string",
  "es2023.array",
]

/**
 * Makes the checker's declarations when the page is built: the language from the checker's own files, the library from
 * its sources, so that neither is written a second time.
 */
export function makeDeclarations(): Declarations {
  return { language: languageText(), library: libraryTexts() }
}

function languageText(): string {
  const folder = dirname(createRequire(import.meta.url).resolve("typescript"))
  const printer = ts.createPrinter({ removeComments: true })
  const texts = parts.map(part => {
    const text = readFileSync(join(folder, `lib.${part}.d.ts`), "utf8")
    const file = ts.createSourceFile(part, text, ts.ScriptTarget.ES2023, false)
    return file.statements
      .map(statement =>
        // the functions of mathematics keep their words
        ts.isInterfaceDeclaration(statement) && statement.name.text === "Math"
          ? text.slice(statement.pos, statement.end)
          : printer.printNode(ts.EmitHint.Unspecified, statement, file),
      )
      .join("\n")
  })
  return texts.join("\n")
}

function libraryTexts(): Record<string, string> {
  const index = fileURLToPath(new URL("../../physics/index.ts", import.meta.url))
  const root = index.replace(/\\/g, "/").replace(/index\.ts$/, "")
  const program = ts.createProgram([index], {
    target: ts.ScriptTarget.ES2023,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    declaration: true,
    emitDeclarationOnly: true,
    strict: true,
    noCheck: true,
    types: [],
  })
  const texts: Record<string, string> = {}
  program.emit(undefined, (name, text) => {
    texts[name.replace(/\\/g, "/").replace(root, "")] = text
  })
  return reachable(texts)
}

/** Only the files that the index leads to. */
function reachable(texts: Readonly<Record<string, string>>): Record<string, string> {
  const found: Record<string, string> = {}
  const follow = (name: string): void => {
    if (name in found || texts[name] === undefined) return
    found[name] = texts[name]
    for (const [, path] of texts[name].matchAll(/from "([^"]+)"|import\("([^"]+)"\)/g))
      if (path !== undefined) follow(libraryFile(name, path))
  }
  follow("index.d.ts")
  return found
}
