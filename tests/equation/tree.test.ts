import { describe, expect, it } from "vitest"
import { type Expression, readTree, type Statement } from "../../src/cell/tree/index.ts"

const text = `
type Ball = { at: Vec3<'m'>; readonly mass?: Scalar<'kg'> }
const { a = 1, b: [c, d = 2] } = e, list: Ball[] = []
function f(x: Scalar<'m'>, y = 3, ...rest: Vec3<'N'>[]): Vec3<'N'> { return x }
for (const one of list) { one.at[0] += -2 ** 3 }
for (let i = 0; i < 3; i++) continue
do { g?.(a, ...list) } while (!(a as Scalar<'1'>))
switch (k) { case 1: a; break; default: b }
label: while (1) break label
const law: (s: Ball) => Vec3<'N'>[] = s => [s.at]
`
const tree = readTree(text)
const kinds = tree.body.map(one => one.kind)

describe("the tree of a program", () => {
  it("has each statement with its kind and place", () => {
    expect(kinds).toEqual([
      "type",
      "declare",
      "functionDeclaration",
      "forOf",
      "for",
      "do",
      "switch",
      "labeled",
      "declare",
    ])
    for (const one of tree.body) expect(text.slice(one.from, one.to)).not.toBe("")
    expect(text.slice(tree.body[3]!.from, tree.body[3]!.to)).toMatch(/^for \(const one of list\) \{.*\}$/)
  })
  it("reads annotations: units with their place, lists, records, laws", () => {
    const [type, declare, fn] = tree.body as [Statement, Statement, Statement]
    const ball = type.kind === "type" && type.annotation.kind === "record" ? type.annotation.fields : null
    expect(ball?.get("at")).toMatchObject({ kind: "vector", unit: "m" })
    expect(ball?.get("mass")).toMatchObject({ kind: "scalar", unit: "kg" })
    expect(declare.kind === "declare" && declare.items[1]!.annotation).toMatchObject({
      kind: "list",
      of: { kind: "named", name: "Ball" },
    })
    const node = fn.kind === "functionDeclaration" ? fn.function : null
    expect(node?.returns).toMatchObject({ kind: "vector", unit: "N" })
    expect(node?.parameters.map(one => one.rest)).toEqual([false, false, true])
    expect(node?.parameters[1]?.fallback).toMatchObject({ kind: "number", value: 3 })
    const unit = node?.parameters[0]?.annotation
    expect(unit?.kind === "scalar" && text.slice(unit.unitFrom, unit.unitFrom + 1)).toBe("m")
    const law = tree.body[8]!
    expect(law.kind === "declare" && law.items[0]!.annotation).toMatchObject({
      kind: "law",
      parameters: [{ name: "Ball" }],
      returns: { kind: "list" },
    })
  })
  it("reads patterns with their fallbacks, and the parts of for", () => {
    const declare = tree.body[1]!
    const pattern = declare.kind === "declare" ? declare.items[0]!.target : null
    expect(pattern).toMatchObject({
      kind: "objectPattern",
      entries: [
        { key: "a", fallback: { value: 1 } },
        {
          key: "b",
          target: { kind: "arrayPattern", items: [{ fallback: null }, { fallback: { value: 2 } }] },
        },
      ],
    })
    expect(tree.body[4]).toMatchObject({
      init: { kind: "declare" },
      test: { op: "<" },
      update: { kind: "step" },
    })
  })
  it("makes `other` of what is broken and of what it does not follow", () => {
    const value = (source: string): Expression | null => {
      const [one] = readTree(source).body
      return one?.kind === "declare" ? one.items[0]!.value : null
    }
    for (const source of ["let a = 1 +", "let a = 2 * (3 + )", "let a = /x/g", "let a = class {}"])
      expect(JSON.stringify(value(source)), source).toContain("other")
    expect(value("let a = 1 + 2")).toMatchObject({ kind: "binary", op: "+" })
  })
})
