import ts from "typescript"
import type { Program } from "../contract.ts"
import { fillEmptyBlanks, hiddenNames } from "../empty-blanks.ts"
import { type CheckingText, checkingText } from "./checking-text.ts"
import { type Declarations, libraryFile } from "./declaration-files.ts"
import { headOf, type KnownParameter, libraryNames, operatorsFile, tailText } from "./surroundings.ts"

/** A program laid before the checker. */
export interface Laid {
  readonly program: Program
  readonly set: CheckingText
  readonly prefix: string
  readonly service: ts.LanguageService
  readonly file: ts.SourceFile
  readonly checker: ts.TypeChecker
  /** a stretch of the checking text in the program's own; null for what is none of it */
  toProgram(from: number, to: number): { readonly from: number; readonly to: number } | null
  toChecking(offset: number): number
  /** an offset of the text with filled blanks in the program's own */
  fromFilled(offset: number): number
  /** as typed, for a message */
  wordsAt(node: ts.Node): string
}

export interface Service {
  lay(program: Program, parameters: readonly KnownParameter[]): Laid
}

const languageFile = "/language.d.ts"
const programFile = "/program.ts"
const operatorFile = "/operators.d.ts"

const options: ts.CompilerOptions = {
  target: ts.ScriptTarget.ES2023,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  moduleDetection: ts.ModuleDetectionKind.Force,
  allowImportingTsExtensions: true,
  noLib: true,
  noEmit: true,
  types: [],
  strict: true,
  // names without a type are no fault here, and the checker then follows what they are given
  noImplicitAny: true,
  noImplicitThis: false,
  strictPropertyInitialization: false,
  useUnknownInCatchVariables: false,
  allowUnreachableCode: true,
  allowUnusedLabels: true,
  skipLibCheck: true,
}

/** The checker with language and library in it; from text to text only the program is read anew. */
export function createService(declarations: Declarations): Service {
  const names = libraryNames(declarations)
  const texts = new Map<string, { text: string; version: number }>()
  texts.set(languageFile, { text: declarations.language, version: 1 })
  for (const [name, text] of Object.entries(declarations.library))
    texts.set(`/library/${name}`, { text, version: 1 })
  let operatorsFor = ""

  const put = (name: string, text: string): void => {
    const before = texts.get(name)
    if (before?.text !== text) texts.set(name, { text, version: (before?.version ?? 0) + 1 })
  }
  const host: ts.LanguageServiceHost = {
    getCompilationSettings: () => options,
    getScriptFileNames: () => [languageFile, programFile],
    getScriptVersion: name => String(texts.get(name)?.version ?? 0),
    getScriptSnapshot: name => {
      const found = texts.get(name)
      return found && ts.ScriptSnapshot.fromString(found.text)
    },
    getCurrentDirectory: () => "/",
    getDefaultLibFileName: () => languageFile,
    fileExists: name => texts.has(name),
    readFile: name => texts.get(name)?.text,
    resolveModuleNameLiterals: (literals, from) =>
      literals.map(({ text }) => {
        const resolvedFileName = `/${libraryFile(from.slice(1), text)}`
        return {
          resolvedModule: texts.has(resolvedFileName)
            ? { resolvedFileName, extension: ts.Extension.Dts }
            : undefined,
        }
      }),
  }
  const service = ts.createLanguageService(host)

  return {
    lay(program, parameters) {
      const hidden = hiddenNames(program.text)
      const filled = fillEmptyBlanks(program, hidden)
      if (operatorsFor !== hidden.prefix) {
        operatorsFor = hidden.prefix
        put(operatorFile, operatorsFile(hidden.prefix))
      }
      const head = headOf(hidden.prefix, names, parameters, filled.names)
      const set = checkingText(filled.text, hidden.prefix, head, tailText)
      put(programFile, set.text)
      const built = service.getProgram()!
      const file = built.getSourceFile(programFile)!
      const toProgram: Laid["toProgram"] = (from, to) => {
        const stretch = set.toSource(from, to)
        return stretch && { from: filled.toProgram(stretch.from), to: filled.toProgram(stretch.to) }
      }
      return {
        program,
        set,
        prefix: hidden.prefix,
        service,
        file,
        checker: built.getTypeChecker(),
        toProgram,
        fromFilled: filled.toProgram,
        toChecking: offset => set.toChecking(filled.toText(offset)),
        wordsAt(node) {
          const stretch = toProgram(node.getStart(file), node.end)
          return stretch ? program.text.slice(stretch.from, stretch.to).replace(/\s+/g, " ").trim() : ""
        },
      }
    },
  }
}

export const programFileName = programFile
