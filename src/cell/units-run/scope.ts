import type { Annotation } from "../tree/index.ts"
import type { Value } from "./value.ts"

/** A variable: its value now, and the annotation it was declared with. */
export interface Variable {
  value: Value
  readonly annotation: Annotation | null
}

/** The names of a block, and the block around it. */
export interface Scope {
  readonly names: Map<string, Variable>
  readonly outer: Scope | null
}

export const innerScope = (outer: Scope | null): Scope => ({ names: new Map(), outer })

export function find(scope: Scope, name: string): Variable | undefined {
  for (let at: Scope | null = scope; at; at = at.outer) {
    const variable = at.names.get(name)
    if (variable) return variable
  }
  return undefined
}

/**
 * Writes that can be taken back: a branch that the run does not take is tried all the same, for its units, and must
 * leave no trace.
 */
export interface Journal {
  note(undo: () => void): void
  /** does something and takes back whatever it wrote */
  tried(action: () => void): void
  readonly depth: number
}

export function createJournal(): Journal {
  let undos: (() => void)[] | null = null
  let depth = 0
  return {
    note(undo) {
      undos?.push(undo)
    },
    tried(action) {
      const outer = undos
      const own: (() => void)[] = []
      undos = own
      depth++
      try {
        action()
      } finally {
        depth--
        undos = outer
        while (own.length > 0) own.pop()!()
      }
    },
    get depth() {
      return depth
    },
  }
}
