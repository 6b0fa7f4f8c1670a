import { type Annotation, type FunctionNode, readTree } from "../tree/index.ts"
import { declarations, mathDeclarations, methodDeclarations } from "./declarations.ts"

export type Signatures = ReadonlyMap<string, FunctionNode>

/** Types that the declarations name: what a body or a spring is made of. */
export const libraryTypes = new Map<string, Annotation>()
/** Constants of the library, with their units. */
export const libraryConstants = new Map<string, Annotation>()

function read(text: string): Signatures {
  const found = new Map<string, FunctionNode>()
  for (const statement of readTree(text).body)
    if (statement.kind === "functionDeclaration" && statement.function.name)
      found.set(statement.function.name, statement.function)
    else if (statement.kind === "type") libraryTypes.set(statement.name, statement.annotation)
    else if (statement.kind === "declare")
      for (const { target, annotation } of statement.items)
        if (target.kind === "variable" && annotation) libraryConstants.set(target.name, annotation)
  return found
}

export const librarySignatures: Signatures = read(declarations)
export const methodSignatures: Signatures = read(methodDeclarations)
export const mathSignatures: Signatures = read(mathDeclarations)

const shape = (type: Annotation | null): "vector" | "scalar" | "unknown" =>
  type?.kind === "vector" || type?.kind === "scalar" ? type.kind : "unknown"

/** Whether a function of the library gives a vector or a number. */
export const libraryShapes: ReadonlyMap<string, "vector" | "scalar" | "unknown"> = new Map(
  [...librarySignatures].map(([name, signature]) => [name, shape(signature.returns)]),
)
