import { fileURLToPath } from "node:url"
import ts from "typescript"

/** One quantity that a function takes: a parameter, or one of its options. */
export interface ReferenceParameter {
  readonly name: string
  readonly type: string
  readonly optional: boolean
  /** the words of the docstring, with symbol, unit and bounds */
  readonly text: string
  /** SI unit as the docstring writes it; undefined for what has none */
  readonly unit?: string
  readonly options?: readonly ReferenceParameter[]
}

/** What the docstring of one public name says. Nothing here is written anywhere else. */
export interface ReferenceEntry {
  readonly name: string
  readonly kind: "function" | "constant" | "class" | "type"
  /** the source file's folder and name within the library, such as forces/spring */
  readonly file: string
  readonly signature: string
  /** the first sentence */
  readonly summary: string
  /** the formula in the docstring, if it has one */
  readonly law?: string
  /** the whole description */
  readonly text: string
  readonly params: readonly ReferenceParameter[]
  readonly returns?: string
  /** unit of what is returned */
  readonly unit?: string
  /** problem codes; each has a page problems/CODE.md */
  readonly errors: readonly string[]
  readonly source?: string
  readonly example?: string
}

const libraryIndex = fileURLToPath(new URL("../../physics/index.ts", import.meta.url))

/** Reads the public names of src/physics/index.ts with their docstrings, in the order of the alphabet. */
export function extractReference(indexFile: string = libraryIndex): readonly ReferenceEntry[] {
  const program = ts.createProgram([indexFile], {
    target: ts.ScriptTarget.ES2022,
    module: ts.ModuleKind.ESNext,
    moduleResolution: ts.ModuleResolutionKind.Bundler,
    allowImportingTsExtensions: true,
    noEmit: true,
    strict: true,
    types: [],
  })
  const checker = program.getTypeChecker()
  const source = program.getSourceFile(indexFile)
  const module = source && checker.getSymbolAtLocation(source)
  if (!module) throw new Error(`no library at ${indexFile}`)
  const entries: ReferenceEntry[] = []
  for (const exported of checker.getExportsOfModule(module)) {
    const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
    const declaration = symbol.declarations?.[0]
    if (declaration) entries.push(entryOf(exported.name, symbol, declaration, checker, indexFile))
  }
  return entries.sort((a, b) => a.name.localeCompare(b.name, "en"))
}

function entryOf(
  name: string,
  symbol: ts.Symbol,
  declaration: ts.Declaration,
  checker: ts.TypeChecker,
  indexFile: string,
): ReferenceEntry {
  const text = oneLine(ts.displayPartsToString(symbol.getDocumentationComment(checker)))
  const tags = symbol.getJsDocTags(checker)
  const tag = (wanted: string) => {
    const found = tags.find(t => t.name === wanted)
    return found === undefined ? undefined : ts.displayPartsToString(found.text).trim()
  }
  const returns = tag("returns")
  const law = lawIn(text)
  const source = tag("source")
  const example = tag("example")
  const unit = returns === undefined ? unitIn(text) : unitIn(returns)
  const isFunction = ts.isFunctionDeclaration(declaration)
  return {
    name,
    kind: kindOf(declaration),
    file: fileOf(declaration, indexFile),
    signature: isFunction ? signatureOf(name, declaration) : headOf(name, declaration),
    summary: firstSentence(text),
    ...(law === undefined ? {} : { law }),
    text,
    params: isFunction ? declaration.parameters.map(p => parameterOf(p, tags, checker)) : [],
    ...(returns === undefined ? {} : { returns: oneLine(returns) }),
    ...(unit === undefined || !(isFunction || ts.isVariableDeclaration(declaration)) ? {} : { unit }),
    errors: (tag("throws") ?? "").split(/[\s,]+/).filter(code => /^[a-z-]+$/.test(code)),
    ...(source === undefined ? {} : { source: oneLine(source) }),
    ...(example === undefined ? {} : { example }),
  }
}

function kindOf(declaration: ts.Declaration): ReferenceEntry["kind"] {
  if (ts.isFunctionDeclaration(declaration)) return "function"
  if (ts.isClassDeclaration(declaration)) return "class"
  return ts.isVariableDeclaration(declaration) ? "constant" : "type"
}

function fileOf(declaration: ts.Declaration, indexFile: string): string {
  const root = indexFile.replace(/\\/g, "/").replace(/index\.ts$/, "")
  return declaration.getSourceFile().fileName.replace(root, "").replace(/\.ts$/, "")
}

function signatureOf(name: string, declaration: ts.FunctionDeclaration): string {
  const parameters = declaration.parameters.map(p =>
    oneLine(p.getText().replace(/\s*=\s*[^=>].*$/, "?: " + typeText(p))),
  )
  return `${name}(${parameters.join(", ")}): ${oneLine(declaration.type?.getText() ?? "void")}`
}

function headOf(name: string, declaration: ts.Declaration): string {
  if (ts.isClassDeclaration(declaration)) return `class ${name}`
  return ts.isVariableDeclaration(declaration) ? `const ${name}` : `type ${name}`
}

function typeText(p: ts.ParameterDeclaration): string {
  if (p.type) return oneLine(p.type.getText())
  return p.initializer && ts.isNumericLiteral(p.initializer) ? "number" : "string"
}

function parameterOf(
  p: ts.ParameterDeclaration,
  tags: readonly ts.JSDocTagInfo[],
  checker: ts.TypeChecker,
): ReferenceParameter {
  const name = p.name.getText()
  const found = tags.find(t => t.name === "param" && t.text?.[0]?.text === name)
  const text = oneLine(ts.displayPartsToString(found?.text).slice(name.length))
  const unit = unitIn(text)
  const options =
    name === "options" && p.type ? optionsOf(checker.getTypeFromTypeNode(p.type), checker) : undefined
  return {
    name,
    type: typeText(p),
    optional: p.initializer !== undefined || p.questionToken !== undefined,
    text,
    ...(unit === undefined ? {} : { unit }),
    ...(options === undefined ? {} : { options }),
  }
}

function optionsOf(type: ts.Type, checker: ts.TypeChecker): ReferenceParameter[] {
  return checker.getPropertiesOfType(type).map(property => {
    const text = oneLine(ts.displayPartsToString(property.getDocumentationComment(checker)))
    const unit = unitIn(text)
    const declaration = property.declarations?.[0]
    const node = declaration && ts.isPropertySignature(declaration) ? declaration.type : undefined
    return {
      name: property.name,
      type: oneLine(node?.getText() ?? ""),
      optional: (property.flags & ts.SymbolFlags.Optional) !== 0,
      text,
      ...(unit === undefined ? {} : { unit }),
    }
  })
}

/** Units as the docstrings write them, longest first. */
const units = [
  "m³ kg⁻¹ s⁻²",
  "kg m²/s",
  "kg m/s",
  "kg m²",
  "kg/m³",
  "m³/s²",
  "N s/m",
  "rad/s",
  "m/s²",
  "N/kg",
  "kg/s",
  "N/m",
  "m/s",
  "N s",
  "N m",
  "m³",
  "m²",
  "rad",
  "kg",
  "N",
  "J",
  "m",
  "s",
]

/** The first unit that stands where the docstrings put it: at the start, after "in", or after a comma. */
function unitIn(text: string): string | undefined {
  if (/\bwithout unit\b/.test(text)) return "1"
  let best: { at: number; unit: string } | undefined
  for (const unit of units) {
    const escaped = unit.replace(/[/.]/g, "\\$&")
    const match = new RegExp(`(?:^|\\bin |, )${escaped}(?=$|[,;:.)]| |$)`, "u").exec(text)
    if (match && (best === undefined || match.index < best.at)) best = { at: match.index, unit }
  }
  return best?.unit
}

function lawIn(text: string): string | undefined {
  const found = /:\s((?:[^:]|:(?!\s))*?[=≤][\s\S]*?)(?=\.\s[A-Z]|\.$|;\s[a-z]{3,}|$)/u.exec(text)
  return found?.[1]?.trim()
}

function firstSentence(text: string): string {
  const end = /\.(?=\s[A-Z]|$)/u.exec(text)
  return end === null ? text : text.slice(0, end.index + 1)
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, " ").trim()
}
