import type {
  ArrowFunctionExpression,
  AssignmentExpression,
  BinaryExpression,
  CallExpression,
  Comment,
  Expression,
  File,
  Function as FunctionNode,
  MemberExpression,
  NewExpression,
  Node,
  ObjectProperty,
  OptionalCallExpression,
  OptionalMemberExpression,
  Statement,
  VariableDeclarator,
} from "@babel/types"
import { declareTemps, type Frame, openFrame } from "./frame.ts"
import { type Kinds, VECTOR } from "./infer.ts"
import { isFunction, type Scopes } from "./scopes.ts"
import { childrenOf, isTypeOnly } from "./syntax.ts"

/** Names that the emitted text uses and the program cannot: all start with one prefix that its text does not hold. */
export interface Hidden {
  readonly prefix: string
  readonly of: (name: string) => string
}

export interface EmitOptions {
  readonly text: string
  readonly file: File
  readonly scopes: Scopes
  readonly kinds: Kinds
  readonly hidden: Hidden
  /** the second text, which notes where it is before everything it does */
  readonly trace: boolean
  /** names standing in for blanks that nobody filled */
  readonly emptyBlanks: ReadonlySet<string>
  readonly timeStep: string
  readonly known: ReadonlySet<string>
  /** number of the site for a stretch of `text` */
  site(from: number, to: number, what: string): number
  /** number of the cell that a top-level statement stands in */
  cellOf(statement: Statement): number
  readonly cells: number
}

const operatorNames: Readonly<Record<string, string>> = {
  "+": "add",
  "-": "subtract",
  "*": "multiply",
  "/": "divide",
  "**": "power",
}

/** The body of the program as plain operators and calls, still with its types: what stripping leaves is ready to run. */
export function emitProgram(o: EmitOptions): string {
  const { text, scopes, kinds, hidden, trace } = o
  const comments: readonly Comment[] = o.file.comments ?? []
  const at = hidden.of("at")
  let frame: Frame | null = openFrame()
  let tempCount = 0

  /* ---- text between nodes ------------------------------------------------------------------------------- */

  /** The program's own text without its comments; a comment over several lines leaves a line end. */
  function gap(from: number, to: number): string {
    if (from >= to) return ""
    let low = 0
    let high = comments.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (comments[middle]!.end! <= from) low = middle + 1
      else high = middle
    }
    let out = ""
    let start = from
    for (let i = low; i < comments.length && comments[i]!.start! < to; i++) {
      const comment = comments[i]!
      out += text.slice(start, comment.start!) + (comment.value.includes("\n") ? "\n" : " ")
      start = comment.end!
    }
    return out + text.slice(start, to)
  }

  function copy(node: Node, replace?: (child: Node) => string | null): string {
    let out = ""
    let from = node.start!
    for (const child of childrenOf(node)) {
      out += gap(from, child.start!) + (replace?.(child) ?? emit(child))
      from = child.end!
    }
    return out + gap(from, node.end!)
  }

  /* ---- small helpers ------------------------------------------------------------------------------------ */

  const site = (node: Node, what: string): number => o.site(node.start!, node.end!, what)
  const noted = (node: Node, what: string, value: string): string =>
    trace ? `${at}(${site(node, what)}, ${value})` : value

  function temp(): string | null {
    if (frame === null) return null
    const name = hidden.of(`t${tempCount++}`)
    frame.temps.push(name)
    return name
  }

  /** An expression as one argument of a call, or as one operand in parentheses of its own. */
  function argument(node: Node): string {
    const out = emit(node)
    return node.type === "SequenceExpression" ? `(${out})` : out
  }

  function guard(from: number, to: number, what: string): string {
    return `if (++${hidden.of("turns")} > ${hidden.of("max")}) ${hidden.of("overrun")}(${o.site(from, to, what)});`
  }

  const withoutVector = (...nodes: Node[]): boolean =>
    nodes.every(n => (kinds.of(n) & VECTOR) === 0 && kinds.of(n) !== 0)

  /** A name that still means the same object after anything else ran. */
  function isSteady(node: Node): boolean {
    if (node.type === "ThisExpression" || node.type === "NumericLiteral" || node.type === "StringLiteral")
      return true
    if (node.type !== "Identifier") return false
    const binding = scopes.references.get(node)?.binding
    if (!binding || binding.kind === "var") return false
    return binding.references.every(r => r.role === "read")
  }

  /* ---- statements --------------------------------------------------------------------------------------- */

  function list(statements: readonly Statement[]): string {
    let out = ""
    for (const s of statements) {
      const one = statement(s)
      if (one !== "") out += `${one}\n`
    }
    return out
  }

  const unmarked = new Set(["FunctionDeclaration", "ClassDeclaration", "BlockStatement", "EmptyStatement"])

  function statement(node: Statement): string {
    const mark =
      trace && !unmarked.has(node.type) && !isTypeOnly(node)
        ? `${at}(${o.site(node.start!, node.end!, "statement")}); `
        : ""
    return mark + bare(node)
  }

  function bare(node: Statement): string {
    switch (node.type) {
      case "EmptyStatement":
        return ""
      case "ExpressionStatement":
      case "VariableDeclaration":
      case "ReturnStatement":
      case "ThrowStatement":
      case "BreakStatement":
      case "ContinueStatement":
      case "DoWhileStatement":
      case "DebuggerStatement":
        return `${emit(node).replace(/;\s*$/, "")};`
      default:
        return emit(node)
    }
  }

  const block = (statements: readonly Statement[], first = ""): string => `{ ${first}\n${list(statements)}}`

  /** A statement that stands alone under if, else or a loop. */
  const under = (node: Statement, first = ""): string =>
    node.type === "BlockStatement" ? block(node.body, first) : block([node], first)

  function loop(node: Statement & { body: Statement }): string {
    const head = node.type === "DoWhileStatement" ? node.test.end! : node.body.start!
    const end = node.type === "DoWhileStatement" ? node.end! : trimmedEnd(node.start!, head)
    return copy(node, child =>
      child === node.body ? under(node.body, guard(node.start!, end, "loop")) : null,
    )
  }

  function trimmedEnd(from: number, to: number): number {
    let end = to
    while (end > from && /\s/.test(text[end - 1]!)) end--
    return end
  }

  /* ---- functions ---------------------------------------------------------------------------------------- */

  function inFrame<T>(inner: Frame | null, work: () => T): T {
    const outer = frame
    frame = inner
    const result = work()
    frame = outer
    return result
  }

  function fn(node: FunctionNode): string {
    if (node.type === "ArrowFunctionExpression" && node.body.type !== "BlockStatement") return arrow(node)
    const { body } = node
    if (body?.type !== "BlockStatement") return copy(node)
    return copy(node, child => {
      if (child !== body) return child.type === "Decorator" ? null : inFrame(null, () => emit(child))
      const inner = openFrame()
      const inside = inFrame(inner, () => list(body.body))
      return `{ ${declareTemps(inner)}${guard(node.start!, trimmedEnd(node.start!, body.start!), "function")}\n${inside}}`
    })
  }

  function arrow(node: ArrowFunctionExpression): string {
    let head = ""
    let from = node.start!
    for (const child of childrenOf(node)) {
      head += gap(from, child.start!)
      if (child === node.body) break
      head += inFrame(null, () => emit(child))
      from = child.end!
    }
    head = head.replace(/[\s(]+$/, "")
    const inner = openFrame()
    const value = inFrame(inner, () => argument(node.body))
    const over = `++${hidden.of("turns")} > ${hidden.of("max")} && ${hidden.of("overrun")}(${o.site(node.start!, node.start! + head.length, "function")})`
    return inner.temps.length === 0
      ? `${head} (${over}, ${value})`
      : `${head} { ${declareTemps(inner)}${over}; return ${value}; }`
  }

  /* ---- expressions -------------------------------------------------------------------------------------- */

  function name(node: Node & { name: string }): string {
    if (o.emptyBlanks.has(node.name)) return `${hidden.of("emptyBlank")}(${site(node, "blank")})`
    const reference = scopes.references.get(node)
    if (reference === undefined || !trace || reference.role !== "read" || !mayFail(node))
      return gap(node.start!, node.end!)
    return `(${at}(${site(node, "name")}), ${node.name})`
  }

  /** Names that may not be there, or not yet. */
  function mayFail(node: Node & { name: string }): boolean {
    const reference = scopes.references.get(node)!
    const { binding } = reference
    if (binding === null) return !o.known.has(node.name)
    if (binding.kind !== "let" && binding.kind !== "const" && binding.kind !== "class") return false
    return node.start! < binding.node.start! || reference.scope.home !== binding.scope.home
  }

  function call(node: CallExpression | OptionalCallExpression): string {
    const args = node.arguments
    const last = args[args.length - 1]
    if (!trace) return copy(node)
    if (node.type === "OptionalCallExpression") {
      return copy(node, child => (child === last ? lastArgument(node, child) : null))
    }
    const given = args.map(a => (a === last ? lastArgument(node, a) : argument(a))).join(", ")
    const { callee } = node
    if (callee.type === "Super" || callee.type === "Import")
      return `${gap(callee.start!, callee.end!)}(${given})`
    if (callee.type === "MemberExpression") {
      const method = member(callee, args.length === 0 ? node : callee)
      return `${method}(${given})`
    }
    if (callee.type === "Identifier") {
      return args.length > 0 ? `${name(callee)}(${given})` : `${at}(${site(node, "call")}, ${name(callee)})()`
    }
    if (isPlainCallee(callee)) return `(${emit(callee)})(${given})`
    return copy(node, child => (child === last ? lastArgument(node, child) : null))
  }

  const isPlainCallee = (node: Node): boolean =>
    node.type === "CallExpression" ||
    node.type === "FunctionExpression" ||
    node.type === "ArrowFunctionExpression"

  function lastArgument(whole: Node, node: Node): string {
    if (node.type === "SpreadElement") return `...${at}(${site(whole, "call")}, ${argument(node.argument)})`
    return `${at}(${site(whole, "call")}, ${argument(node)})`
  }

  function construct(node: NewExpression): string {
    if (!trace) return copy(node)
    const args = node.arguments
    if (args.length === 0) return `new (${at}(${site(node, "call")}, ${argument(node.callee)}))()`
    const last = args[args.length - 1]
    const given = args.map(a => (a === last ? lastArgument(node, a) : argument(a))).join(", ")
    return `new (${argument(node.callee)})(${given})`
  }

  const isChain = (node: Node): boolean =>
    (node.type === "OptionalMemberExpression" || node.type === "OptionalCallExpression") &&
    node.extra?.parenthesized !== true

  function member(node: MemberExpression | OptionalMemberExpression, whole: Node = node): string {
    const { object, property } = node
    const fixed = scopes.targets.has(node) ? checkedTarget(node) : null
    return copy(node, child => {
      if (child === property && !node.computed) return gap(child.start!, child.end!)
      if (child !== object) return null
      const value = fixed === null ? null : `${hidden.of("mutable")}(${argument(object)}${fixed})`
      if (!trace || object.type === "Super" || object.type === "ThisExpression" || isChain(object))
        return value
      return `${at}(${site(whole, whole === node ? "member" : "call")}, ${value ?? argument(object)})`
    })
  }

  /** Vectors never change: what may be a vector is looked at before a component of it is written. */
  function checkedTarget(node: MemberExpression | OptionalMemberExpression): string | null {
    const { object, property } = node
    if (object.type === "Super" || object.type === "ThisExpression" || withoutVector(object)) return null
    if (node.computed) return ""
    return property.type === "Identifier" && /^[xyz]$/.test(property.name) ? `, "${property.name}"` : null
  }

  function operator(node: Node, sign: string, left: Node, right: Node): string {
    return `${hidden.of(operatorNames[sign]!)}(${argument(left)}, ${noted(node, `operator ${sign}`, argument(right))})`
  }

  /** JavaScript's own operator, with space around it: some signs side by side would read as a comment. */
  function plainOperator(node: BinaryExpression): string {
    const { left, right } = node
    const before = gap(node.start!, left.start!)
    const sign = gap(left.end!, right.start!).replace(node.operator, ` ${node.operator} `)
    const value = trace ? noted(node, `operator ${node.operator}`, argument(right)) : emit(right)
    return before + emit(left) + sign + value + gap(right.end!, node.end!)
  }

  function assignment(node: AssignmentExpression): string {
    const sign = node.operator.slice(0, -1)
    if (node.operator === "=") {
      if (!trace || isAnonymous(node.right)) return copy(node)
      return copy(node, child => (child === node.right ? noted(node, "assignment", argument(child)) : null))
    }
    if (!(sign in operatorNames)) return copy(node)
    const target = unwrapped(node.left)
    if (sign !== "**" && withoutVector(target, node.right)) {
      return copy(node, child =>
        child === node.right ? noted(node, `operator ${sign}`, argument(child)) : null,
      )
    }
    const fn = hidden.of(operatorNames[sign]!)
    const value = (old: string): string =>
      `${fn}(${old}, ${noted(node, `operator ${sign}`, argument(node.right))})`
    if (target.type === "Identifier") return `${target.name} = ${value(target.name)}`
    if (target.type !== "MemberExpression") return copy(node)
    return memberUpdate(target, value)
  }

  /** `o[k] = add(o[k], …)` with o and k evaluated once, before anything else. */
  function memberUpdate(target: MemberExpression, value: (old: string) => string): string {
    const { object, property } = target
    const before: [string, string][] = []
    const hold = (node: Node): string => {
      if (isSteady(node)) return argument(node)
      const name = temp() ?? hidden.of(`t${tempCount++}`)
      before.push([name, argument(node)])
      return name
    }
    const fixed = checkedTarget(target)
    const made = frame !== null
    const owner = object.type === "Super" ? "super" : hold(object)
    const key = target.computed ? `[${hold(property)}]` : `.${text.slice(property.start!, property.end!)}`
    const seen = trace && owner !== "super" ? `${at}(${site(target, "member")}, ${owner})` : owner
    const written = fixed === null ? owner : `${hidden.of("mutable")}(${owner}${fixed})`
    const whole = `${written}${key} = ${value(`${seen}${key}`)}`
    if (before.length === 0) return whole
    if (made) return `(${before.map(([n, v]) => `${n} = ${v}`).join(", ")}, ${whole})`
    return `((${before.map(([n]) => n).join(", ")}) => ${whole})(${before.map(([, v]) => v).join(", ")})`
  }

  function declarator(node: VariableDeclarator): string {
    const { init, id } = node
    if (!init) return copy(node)
    return copy(node, child => {
      if (child !== init) return null
      const binding = id.type === "Identifier" ? scopes.declared.get(id) : undefined
      const named =
        binding?.name === o.timeStep &&
        binding.scope === scopes.program &&
        (binding.kind === "const" || binding.kind === "let") &&
        !isFunction(init)
      const value = named ? `${hidden.of("timeStep")}(${argument(init)})` : argument(init)
      return isAnonymous(init) ? value : noted(node, "assignment", value)
    })
  }

  function property(node: ObjectProperty): string {
    if (!node.shorthand) return copy(node)
    const { value } = node
    if (value.type === "AssignmentPattern") return gap(value.start!, value.right.start!) + emit(value.right)
    const given = emit(value)
    const plain = gap(node.start!, node.end!)
    return given === plain ? plain : `${plain}: ${given}`
  }

  function emit(node: Node): string {
    if (isTypeOnly(node)) return gap(node.start!, node.end!)
    switch (node.type) {
      case "Identifier":
        return name(node)
      case "BinaryExpression": {
        const sign = node.operator
        if (node.left.type === "PrivateName") return copy(node)
        // A power is always ours: engines differ in the last bit of theirs.
        if (sign in operatorNames && (sign === "**" || !withoutVector(node.left, node.right)))
          return operator(node, sign, node.left, node.right)
        return plainOperator(node)
      }
      case "UnaryExpression":
        if (node.operator === "typeof" && node.argument.type === "Identifier")
          return gap(node.start!, node.end!)
        if (node.operator === "-" && !withoutVector(node.argument)) {
          return `${hidden.of("negate")}(${noted(node, "operator -", argument(node.argument))})`
        }
        return trace && node.operator !== "delete" && node.operator !== "typeof"
          ? copy(node, child => noted(node, `operator ${node.operator}`, argument(child)))
          : copy(node)
      case "AssignmentExpression":
        return assignment(node)
      case "CallExpression":
      case "OptionalCallExpression":
        return call(node)
      case "NewExpression":
        return construct(node)
      case "MemberExpression":
      case "OptionalMemberExpression":
        return member(node)
      case "ObjectProperty":
        return property(node)
      case "VariableDeclarator":
        return declarator(node)
      case "BlockStatement":
        return block(node.body)
      case "IfStatement":
        return copy(node, child =>
          child === node.consequent || (child === node.alternate && child.type !== "IfStatement")
            ? under(child as Statement)
            : null,
        )
      case "ForStatement":
      case "ForInStatement":
      case "ForOfStatement":
      case "WhileStatement":
      case "DoWhileStatement":
        return loop(node)
      case "LabeledStatement":
        return copy(node, child =>
          child === node.body ? bare(node.body) || ";" : gap(child.start!, child.end!),
        )
      case "SwitchCase":
        return `${node.test ? `case ${argument(node.test)}` : "default"}:\n${list(node.consequent)}`
      case "StaticBlock": {
        const inner = openFrame()
        const inside = inFrame(inner, () => list(node.body))
        return `static { ${declareTemps(inner)}${inside}}`
      }
      case "TSModuleBlock": {
        const inner = openFrame()
        const inside = inFrame(inner, () => list(node.body))
        return `{ ${declareTemps(inner)}${inside}}`
      }
      case "ClassProperty":
      case "ClassPrivateProperty":
      case "ClassAccessorProperty":
        return copy(node, child => (child === node.value ? inFrame(null, () => argument(child)) : null))
      default:
        return isFunction(node) ? fn(node) : copy(node)
    }
  }

  /* ---- the whole ---------------------------------------------------------------------------------------- */

  let body = ""
  let cell = -1
  const enter = (upTo: number): void => {
    while (cell < upTo) body += `${hidden.of("enterCell")}(${++cell});\n`
  }
  for (const s of o.file.program.body) {
    enter(o.cellOf(s))
    const one = statement(s)
    if (one !== "") body += `${one}\n`
  }
  enter(o.cells - 1)
  return declareTemps(frame) + body
}

/** Functions and classes take their name from what they are given to; handing them through a call would lose it. */
function isAnonymous(node: Expression): boolean {
  return (
    node.type === "ArrowFunctionExpression" ||
    (node.type === "FunctionExpression" && !node.id) ||
    (node.type === "ClassExpression" && !node.id)
  )
}

function unwrapped(node: Node): Node {
  switch (node.type) {
    case "TSAsExpression":
    case "TSSatisfiesExpression":
    case "TSNonNullExpression":
    case "TSTypeAssertion":
    case "ParenthesizedExpression":
      return unwrapped(node.expression)
    default:
      return node
  }
}
