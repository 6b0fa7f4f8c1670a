/** The names that one function body of the emitted program needs for values on the way. */
export interface Frame {
  readonly temps: string[]
}

export const openFrame = (): Frame => ({ temps: [] })

/** The line that makes a frame's names; "" if it needed none. */
export const declareTemps = (frame: Frame): string =>
  frame.temps.length === 0 ? "" : `let ${frame.temps.join(", ")};\n`
