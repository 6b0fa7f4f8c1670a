/** What the picture shows besides bodies; each can be switched where the recording has it. */
export interface Shown {
  readonly forces: boolean
  readonly net: boolean
  readonly velocity: boolean
  readonly momentum: boolean
  readonly strobe: boolean
  readonly reference: boolean
  readonly ghost: boolean
}

export const shownAtFirst: Shown = {
  forces: true,
  net: false,
  velocity: false,
  momentum: false,
  strobe: false,
  reference: true,
  ghost: true,
}
