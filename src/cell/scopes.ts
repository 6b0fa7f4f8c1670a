import type { Class, File, Function as FunctionNode, Identifier, LVal, Node, Statement } from "@babel/types"
import { childrenOf, isTypeOnly } from "./syntax.ts"

export type BindingKind = "let" | "const" | "var" | "param" | "function" | "class" | "catch" | "other"

/** One name of the program: where it was made, every place that uses it, and every value it is given. */
export interface Binding {
  readonly name: string
  readonly kind: BindingKind
  readonly scope: Scope
  readonly node: Identifier
  readonly references: Reference[]
  /** expressions whose value it takes; "unknown" where the value comes from elsewhere, "nothing" for undefined */
  readonly sources: (Node | "unknown" | "nothing")[]
  /** the function it names, when it names one and nothing else */
  callable: FunctionNode | null
}

export interface Reference {
  readonly node: Identifier
  readonly role: "read" | "write" | "both"
  readonly scope: Scope
  readonly parent: Node
  binding: Binding | null
}

export interface Scope {
  readonly parent: Scope | null
  /** the function whose body this belongs to; null for the program itself */
  readonly fn: FunctionNode | null
  /** where a var goes: this scope or the one that holds it; two places run at different times if their homes differ */
  readonly home: Scope
  readonly names: Map<string, Binding>
}

export interface Scopes {
  readonly references: ReadonlyMap<Node, Reference>
  readonly bindings: readonly Binding[]
  /** names that nothing in the program makes, each with its first use */
  readonly free: ReadonlyMap<string, Reference>
  readonly program: Scope
  /** values that each function returns; null for a bare return */
  readonly returns: ReadonlyMap<FunctionNode, readonly (Node | null)[]>
  readonly declared: ReadonlyMap<Node, Binding>
  /** members that are written to: left of =, counted up or down, or filled by taking apart */
  readonly targets: ReadonlySet<Node>
}

type Declare = { readonly kind: BindingKind; readonly source: Node | "unknown" | "nothing" }

/** Which name means what, everywhere in the program. */
export function scopesOf(file: File): Scopes {
  const references = new Map<Node, Reference>()
  const bindings: Binding[] = []
  const declared = new Map<Node, Binding>()
  const returns = new Map<FunctionNode, (Node | null)[]>()
  const targets = new Set<Node>()
  const program = open(null, null, true)

  function open(parent: Scope | null, fn: FunctionNode | null, home: boolean): Scope {
    const scope = { parent, fn, names: new Map<string, Binding>() } as unknown as { home: Scope } & Scope
    scope.home = home || parent === null ? scope : parent.home
    return scope
  }

  function declare(node: Identifier, scope: Scope, { kind, source }: Declare): Binding {
    const at = kind === "var" ? scope.home : scope
    let binding = at.names.get(node.name)
    if (binding === undefined) {
      binding = { name: node.name, kind, scope: at, node, references: [], sources: [], callable: null }
      at.names.set(node.name, binding)
      bindings.push(binding)
    }
    binding.sources.push(source)
    declared.set(node, binding)
    return binding
  }

  function refer(node: Identifier, role: Reference["role"], scope: Scope, parent: Node): void {
    references.set(node, { node, role, scope, parent, binding: null })
  }

  function statements(list: readonly Statement[], scope: Scope): void {
    for (const s of list) visit(s, scope, s)
  }

  /** The left side of = or a declaration: names are made or written, everything inside brackets is read. */
  function pattern(node: Node, scope: Scope, how: Declare | null, parent: Node): void {
    const inner: Declare | null = how && { kind: how.kind, source: "unknown" }
    switch (node.type) {
      case "Identifier":
        if (how) declare(node, scope, how)
        else refer(node, "write", scope, parent)
        return
      case "ObjectPattern":
        for (const p of node.properties) {
          if (p.type === "RestElement") pattern(p.argument, scope, inner, node)
          else {
            if (p.computed) visit(p.key, scope, p)
            pattern(p.value, scope, inner, node)
          }
        }
        return
      case "ArrayPattern":
        for (const e of node.elements) if (e) pattern(e, scope, inner, node)
        return
      case "AssignmentPattern":
        visit(node.right, scope, node)
        pattern(node.left, scope, inner, node)
        return
      case "RestElement":
        pattern(node.argument, scope, inner, node)
        return
      case "TSParameterProperty":
        pattern(node.parameter, scope, inner, node)
        return
      case "TSAsExpression":
      case "TSSatisfiesExpression":
      case "TSNonNullExpression":
      case "TSTypeAssertion":
        pattern(node.expression, scope, inner, node)
        return
      default:
        targets.add(node)
        visit(node, scope, parent)
    }
  }

  function fn(node: FunctionNode, outer: Scope): void {
    let around = outer
    if (node.type === "FunctionExpression" && node.id) {
      around = open(outer, outer.fn, false)
      declare(node.id, around, { kind: "other", source: "unknown" })
    }
    const scope = open(around, node, true)
    returns.set(node, [])
    for (const p of node.params) pattern(p as LVal, scope, { kind: "param", source: "unknown" }, node)
    if (node.body.type === "BlockStatement") statements(node.body.body, scope)
    else {
      visit(node.body, scope, node)
      returns.get(node)!.push(node.body)
    }
  }

  function klass(node: Class, outer: Scope): void {
    if (node.type === "ClassDeclaration" && node.id)
      declare(node.id, outer, { kind: "class", source: "nothing" })
    const scope = open(outer, outer.fn, false)
    if (node.type === "ClassExpression" && node.id)
      declare(node.id, scope, { kind: "class", source: "nothing" })
    if (node.superClass) visit(node.superClass, scope, node)
    for (const d of node.decorators ?? []) visit(d, scope, node)
    for (const member of node.body.body) {
      if (!isTypeOnly(member)) visit(member, scope, node.body)
    }
  }

  function visit(node: Node, scope: Scope, parent: Node): void {
    if (node.type === "TSEnumDeclaration") {
      declare(node.id, scope, { kind: "other", source: "unknown" })
      for (const m of node.members ?? []) if (m.initializer) visit(m.initializer, scope, m)
      return
    }
    if (isTypeOnly(node)) return
    switch (node.type) {
      case "Identifier":
        refer(node, "read", scope, parent)
        return
      case "VariableDeclaration": {
        const kind = node.kind === "let" || node.kind === "const" || node.kind === "var" ? node.kind : "other"
        for (const d of node.declarations) {
          if (d.init) visit(d.init, scope, d)
          const loop = parent.type === "ForInStatement" || parent.type === "ForOfStatement"
          const source = loop || kind === "other" ? "unknown" : (d.init ?? "nothing")
          pattern(d.id, scope, { kind, source }, d)
          if (d.id.type === "Identifier" && kind === "const" && d.init && isFunction(d.init))
            declared.get(d.id)!.callable = d.init
        }
        return
      }
      case "FunctionDeclaration":
        if (node.id) declare(node.id, scope, { kind: "function", source: "nothing" }).callable = node
        fn(node, scope)
        return
      case "FunctionExpression":
      case "ArrowFunctionExpression":
        fn(node, scope)
        return
      case "ObjectMethod":
      case "ClassMethod":
      case "ClassPrivateMethod":
        if (node.type !== "ClassPrivateMethod" && node.computed) visit(node.key, scope, node)
        fn(node, scope)
        return
      case "ClassDeclaration":
      case "ClassExpression":
        klass(node, scope)
        return
      case "ClassProperty":
      case "ClassAccessorProperty":
        if (node.computed) visit(node.key, scope, node)
        if (node.value) visit(node.value, open(scope, scope.fn, true), node)
        return
      case "ClassPrivateProperty":
        if (node.value) visit(node.value, open(scope, scope.fn, true), node)
        return
      case "StaticBlock":
        statements(node.body, open(scope, scope.fn, true))
        return
      case "BlockStatement":
        statements(node.body, open(scope, scope.fn, false))
        return
      case "TSModuleDeclaration":
        if (node.id.type === "Identifier") declare(node.id, scope, { kind: "other", source: "unknown" })
        if (node.body.type === "TSModuleBlock") {
          const inside = open(scope, scope.fn, true)
          statements(node.body.body, inside)
          for (const b of inside.names.values()) b.sources.push("unknown")
        } else visit(node.body, scope, node)
        return
      case "ForStatement":
      case "ForInStatement":
      case "ForOfStatement": {
        const inside = open(scope, scope.fn, false)
        if (node.type === "ForStatement") {
          for (const part of [node.init, node.test, node.update]) if (part) visit(part, inside, node)
        } else {
          if (node.left.type === "VariableDeclaration") visit(node.left, inside, node)
          else pattern(node.left, inside, null, node)
          visit(node.right, inside, node)
        }
        visit(node.body, inside, node)
        return
      }
      case "SwitchStatement": {
        visit(node.discriminant, scope, node)
        const inside = open(scope, scope.fn, false)
        for (const c of node.cases) {
          if (c.test) visit(c.test, inside, c)
          statements(c.consequent, inside)
        }
        return
      }
      case "CatchClause": {
        const inside = open(scope, scope.fn, false)
        if (node.param) pattern(node.param, inside, { kind: "catch", source: "unknown" }, node)
        visit(node.body, inside, node)
        return
      }
      case "AssignmentExpression":
        if (node.left.type === "Identifier") {
          refer(node.left, node.operator === "=" ? "write" : "both", scope, node)
        } else pattern(node.left, scope, null, node)
        visit(node.right, scope, node)
        return
      case "UpdateExpression":
        if (node.argument.type === "Identifier") refer(node.argument, "both", scope, node)
        else pattern(node.argument, scope, null, node)
        return
      case "MemberExpression":
      case "OptionalMemberExpression":
        visit(node.object, scope, node)
        if (node.computed) visit(node.property, scope, node)
        return
      case "ObjectProperty":
        if (node.computed) visit(node.key, scope, node)
        visit(node.value, scope, node)
        return
      case "LabeledStatement":
        visit(node.body, scope, node)
        return
      case "ReturnStatement":
        if (node.argument) visit(node.argument, scope, node)
        if (scope.fn) returns.get(scope.fn)!.push(node.argument ?? null)
        return
      case "ImportDeclaration":
        for (const s of node.specifiers) declare(s.local, scope, { kind: "other", source: "unknown" })
        return
      case "BreakStatement":
      case "ContinueStatement":
      case "MetaProperty":
      case "PrivateName":
        return
      default:
        for (const child of childrenOf(node)) visit(child, scope, node)
    }
  }

  statements(file.program.body, program)

  const free = new Map<string, Reference>()
  for (const reference of references.values()) {
    let at: Scope | null = reference.scope
    let binding: Binding | undefined
    while (at !== null && binding === undefined) {
      binding = at.names.get(reference.node.name)
      at = at.parent
    }
    if (binding === undefined) {
      if (!free.has(reference.node.name)) free.set(reference.node.name, reference)
      continue
    }
    reference.binding = binding
    binding.references.push(reference)
    if (reference.role !== "read") {
      const direct =
        reference.parent.type === "AssignmentExpression" || reference.parent.type === "UpdateExpression"
      binding.sources.push(
        direct && reference.role === "write"
          ? valueGiven(reference.parent)
          : direct
            ? reference.parent
            : "unknown",
      )
      binding.callable = null
    }
  }
  return { references, bindings, free, program, returns, declared, targets }
}

const valueGiven = (node: Node): Node | "unknown" =>
  node.type === "AssignmentExpression" ? node.right : "unknown"

export function isFunction(node: Node): node is FunctionNode {
  return (
    node.type === "FunctionDeclaration" ||
    node.type === "FunctionExpression" ||
    node.type === "ArrowFunctionExpression" ||
    node.type === "ObjectMethod" ||
    node.type === "ClassMethod" ||
    node.type === "ClassPrivateMethod"
  )
}
