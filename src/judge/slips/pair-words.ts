const pairSign = " + "

/** The name of two slips at once. */
export const pairName = (first: string, second: string): string => `${first}${pairSign}${second}`

/** Names of the slips in a name: one, or two. */
export const partsOf = (name: string): string[] => name.split(pairSign)

/** Both hints, one after the other; once where they are the same. */
export const pairHint = (first: string, second: string): string =>
  first === second
    ? `The same thing seems to be wrong in two places. ${first}`
    : `Two things seem to be wrong at once. ${first} ${second}`
