/**
 * A program as the equations and the units run see it: the arithmetic, calls and plain control flow of TypeScript,
 * each node with its place in the text. What they need not understand is `other`.
 */
interface At {
  readonly from: number
  readonly to: number
}

export type Expression = At &
  (
    | { readonly kind: "number"; readonly value: number; readonly text: string }
    | { readonly kind: "string"; readonly value: string }
    | { readonly kind: "template"; readonly parts: readonly Expression[] }
    | { readonly kind: "name"; readonly name: string }
    | {
        readonly kind: "member"
        readonly object: Expression
        readonly property: string
        readonly propertyFrom: number
      }
    | { readonly kind: "index"; readonly object: Expression; readonly index: Expression }
    | {
        readonly kind: "call"
        readonly callee: Expression
        readonly args: readonly Expression[]
        readonly isNew: boolean
      }
    | { readonly kind: "unary"; readonly op: string; readonly argument: Expression }
    /** arithmetic, comparisons and the logical operators alike; `opFrom` is where the operator stands */
    | {
        readonly kind: "binary"
        readonly op: string
        readonly opFrom: number
        readonly left: Expression
        readonly right: Expression
      }
    | {
        readonly kind: "conditional"
        readonly test: Expression
        readonly yes: Expression
        readonly no: Expression
      }
    | {
        readonly kind: "assign"
        readonly op: string
        readonly opFrom: number
        readonly target: Target
        readonly value: Expression
      }
    /** `i++`, `--j` */
    | {
        readonly kind: "step"
        readonly op: "++" | "--"
        readonly prefix: boolean
        readonly target: Expression
      }
    | { readonly kind: "array"; readonly items: readonly Expression[] }
    | { readonly kind: "object"; readonly entries: readonly Entry[] }
    | { readonly kind: "function"; readonly function: FunctionNode }
    | { readonly kind: "sequence"; readonly items: readonly Expression[] }
    | { readonly kind: "as"; readonly value: Expression; readonly annotation: Annotation }
    | { readonly kind: "spread"; readonly value: Expression }
    | { readonly kind: "other" }
  )

export type Entry =
  | { readonly kind: "property"; readonly key: string; readonly value: Expression }
  | { readonly kind: "computed"; readonly key: Expression; readonly value: Expression }
  | { readonly kind: "spread"; readonly value: Expression }
  | { readonly kind: "other" }

/** Where a value goes: a name or a pattern that takes it apart. */
export type Target = At &
  (
    | { readonly kind: "variable"; readonly name: string }
    | { readonly kind: "place"; readonly expression: Expression }
    | {
        readonly kind: "objectPattern"
        readonly entries: readonly {
          readonly key: string
          readonly target: Target
          readonly fallback: Expression | null
        }[]
        readonly rest: Target | null
      }
    | {
        readonly kind: "arrayPattern"
        readonly items: readonly { readonly target: Target; readonly fallback: Expression | null }[]
      }
    | { readonly kind: "otherTarget" }
  )

export interface FunctionNode extends At {
  readonly name: string | null
  readonly parameters: readonly {
    readonly target: Target
    readonly annotation: Annotation | null
    readonly fallback: Expression | null
    readonly rest: boolean
  }[]
  readonly returns: Annotation | null
  /** a block, or the expression of a short arrow function */
  readonly body: readonly Statement[] | Expression
  /** generators and async functions are not followed */
  readonly plain: boolean
}

/** The part of a type that says shape and unit. */
export type Annotation = At &
  (
    | { readonly kind: "scalar" | "vector"; readonly unit: string | null; readonly unitFrom: number }
    | { readonly kind: "list"; readonly of: Annotation }
    | { readonly kind: "record"; readonly fields: ReadonlyMap<string, Annotation> }
    | { readonly kind: "named"; readonly name: string }
    | { readonly kind: "law"; readonly parameters: readonly Annotation[]; readonly returns: Annotation }
    | { readonly kind: "otherType" }
  )

export interface Declarator extends At {
  readonly target: Target
  readonly annotation: Annotation | null
  readonly value: Expression | null
}

export type Statement = At &
  (
    | { readonly kind: "declare"; readonly keyword: string; readonly items: readonly Declarator[] }
    | { readonly kind: "expression"; readonly expression: Expression }
    | { readonly kind: "block"; readonly body: readonly Statement[] }
    | {
        readonly kind: "if"
        readonly test: Expression
        readonly yes: Statement
        readonly no: Statement | null
      }
    | {
        readonly kind: "for"
        readonly init: Statement | null
        readonly test: Expression | null
        readonly update: Expression | null
        readonly body: Statement
      }
    | {
        readonly kind: "forOf" | "forIn"
        readonly target: Target
        readonly list: Expression
        readonly body: Statement
      }
    | { readonly kind: "while" | "do"; readonly test: Expression; readonly body: Statement }
    | {
        readonly kind: "switch"
        readonly on: Expression
        readonly cases: readonly { readonly test: Expression | null; readonly body: readonly Statement[] }[]
      }
    | {
        readonly kind: "try"
        readonly body: Statement
        readonly handler: Statement | null
        readonly last: Statement | null
      }
    | { readonly kind: "return"; readonly value: Expression | null }
    | { readonly kind: "throw"; readonly value: Expression }
    | { readonly kind: "break" | "continue"; readonly label: string | null }
    | { readonly kind: "labeled"; readonly label: string; readonly body: Statement }
    | { readonly kind: "functionDeclaration"; readonly function: FunctionNode }
    | { readonly kind: "type"; readonly name: string; readonly annotation: Annotation }
    | { readonly kind: "otherStatement" }
  )

export interface Tree {
  readonly text: string
  readonly body: readonly Statement[]
}
