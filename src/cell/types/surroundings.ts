import { knownNames } from "../names.ts"
import type { Declarations } from "./declaration-files.ts"
import { operatorsText } from "./operators-text.ts"

/** A parameter of a worksheet as the checker and its words need it. */
export interface KnownParameter {
  readonly name: string
  readonly label: string
  readonly unit: string
}

/** Public names of the library, values and types, as its index declares them. */
export function libraryNames({ library }: Declarations): readonly string[] {
  const names: string[] = []
  for (const [, list] of (library["index.d.ts"] ?? "").matchAll(/export (?:type )?\{([^}]*)\}/g))
    for (const item of list!.split(",")) {
      const name = item.trim().replace(/^type /, "")
      if (name !== "") names.push(name)
    }
  return names
}

/** What a cell has besides language and library, with its words. */
export const hostText = `
/**
 * Keeps the quantities of this instant, for scene, plots and checks: a group of named vectors and numbers for each body.
 *
 * @param time the time of this instant, s
 * @param quantities such as { crate: { position: r, momentum: p, forces: { weight: Fg } }, energy: E }
 */
export declare function record(time: number, quantities: object): void;
/** A random number from 0 up to 1, the same ones in each run of a sheet. */
export declare function random(): number;
/** Prints values as a line below the bench. */
export declare const console: {
  /** Prints values as a line below the bench. */
  log(...values: any[]): void;
  info(...values: any[]): void;
  warn(...values: any[]): void;
  error(...values: any[]): void;
  debug(...values: any[]): void;
};
`

const escaped = (text: string): string => text.replace(/\*\//g, "* /").replace(/\s+/g, " ")

/** File with operators and host names; the same for every text with the same prefix. */
export function operatorsFile(prefix: string): string {
  const exported = operatorsText(prefix).replace(/^(declare|interface|type) /gm, "export $1 ")
  return `import { Vec3 } from "./library/index.ts"\n${exported}\n${hostText}`
}

/**
 * What stands before the program: library, operators and parameters by name, then a function that holds the program, so that
 * its own names may be the same as theirs.
 */
export function headOf(
  prefix: string,
  names: readonly string[],
  parameters: readonly KnownParameter[],
  unfilled: Iterable<string>,
): string {
  const own = new Set(parameters.map(one => one.name))
  const library = names.filter(name => name !== "Vec3" && !own.has(name))
  const operators = ["add", "subtract", "multiply", "divide", "negate"].map(name => prefix + name)
  const host = ["record", "random", "console"].filter(name => !own.has(name))
  return [
    `import { ${library.join(", ")}, Vec3 as ${prefix}Vec3 } from "./library/index.ts"`,
    `import { ${[...operators, ...host].join(", ")} } from "./operators.ts"`,
    own.has("Vec3") ? "" : `declare const Vec3: typeof ${prefix}Vec3`,
    `type Vec3<U extends string = string> = ${prefix}Vec3`,
    "type Scalar<U extends string = string> = number",
    ...parameters.map(
      ({ name, label, unit }) =>
        `/** ${escaped(label)}${unit === "" || unit === "1" ? "" : `, ${escaped(unit)}`} */\ndeclare const ${name}: number`,
    ),
    ...[...unfilled].map(name => `declare const ${name}: any`),
    `function ${prefix}program() {`,
    "",
  ].join("\n")
}

/** What stands behind the program. */
export const tailText = "\n}\n"

export const isKnown = (name: string): boolean => knownNames.has(name)
