/** The mathematics that cells get under the name Math. Its own sine, exponential and so on take the place of the engine's here. */
export const math: Omit<Math, "random" | typeof Symbol.toStringTag> = Object.fromEntries(
  Object.getOwnPropertyNames(Math)
    .filter(name => name !== "random")
    .map(name => [name, Math[name as keyof Math]]),
) as unknown as Omit<Math, "random" | typeof Symbol.toStringTag>
