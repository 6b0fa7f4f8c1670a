/** What each pair of kinds gives, by operator: n a number, v a vector, s a text, b a bigint, a anything. */
const tables = {
  add: {
    nn: "n",
    vv: "v",
    sn: "s",
    ns: "s",
    ss: "s",
    sv: "s",
    vs: "s",
    sb: "s",
    bs: "s",
    sa: "s",
    as: "s",
    bb: "b",
  },
  subtract: { nn: "n", vv: "v", na: "n", an: "n", va: "v", av: "v", bb: "b" },
  multiply: { nn: "n", nv: "v", vn: "v", va: "v", av: "v", bb: "b" },
  divide: { nn: "n", vn: "v", na: "n", va: "v", bb: "b" },
} as const

const kinds = ["n", "v", "s", "b", "a"] as const
const types: Readonly<Record<string, string>> = { n: "number", v: "Vec3", s: "string", b: "bigint", a: "any" }

/**
 * The operators as typed functions: what a pair of operands gives, and `any` for a pair that makes no sense, so that one fault is
 * said once, where it is (operator-words.ts), and not again in every line that uses the result.
 *
 * @param prefix begins each name
 */
export function operatorsText(prefix: string): string {
  const table = (name: keyof typeof tables): string => {
    const rows = kinds.map(left => {
      const cells = kinds.map(right => {
        const result = (tables[name] as Readonly<Record<string, string>>)[left + right] ?? "a"
        return `${right}: ${types[result]}`
      })
      return `${left}: { ${cells.join("; ")} }`
    })
    const type = `${prefix}${name[0]!.toUpperCase()}${name.slice(1)}`
    return [
      `interface ${type} { ${rows.join("; ")} }`,
      `declare function ${prefix}${name}<A, B>(a: A, b: B): ${type}[${prefix}Kind<A>][${prefix}Kind<B>];`,
    ].join("\n")
  }
  return [
    // anything, then nothing, then numbers: the order matters
    `type ${prefix}Kind<T> = 0 extends 1 & T ? "a" : [T] extends [never] ? "a" : [T] extends [number] ? "n" : [T] extends [Vec3] ? "v" : [T] extends [string] ? "s" : [T] extends [bigint] ? "b" : "a";`,
    ...(Object.keys(tables) as (keyof typeof tables)[]).map(table),
    `interface ${prefix}Negated { n: number; v: Vec3; s: number; b: bigint; a: any }`,
    `declare function ${prefix}negate<A>(a: A): ${prefix}Negated[${prefix}Kind<A>];`,
    `declare const ${prefix}unfilled: any;`,
  ].join("\n")
}
