/** Where a motion leaves the reference: the first instant, s, and the series or bodies that the check looked at. */
export interface Departure {
  readonly instant: number
  readonly of: readonly string[]
}

/** Whether a departure speaks of a body: by its own name, or by that of a series that is recorded of it. */
export function speaksOf({ of }: Departure, body: string): boolean {
  return of.some(name => name === body || name.startsWith(`${body}.`))
}

/** The first instant at which a body leaves the reference, s; null when it does not. */
export function departsFrom(departures: readonly Departure[], body: string): number | null {
  const instants = departures.filter(one => speaksOf(one, body)).map(one => one.instant)
  return instants.length > 0 ? Math.min(...instants) : null
}

/** The one that is marked in the scene and over the time bar. */
export function firstDeparture(departures: readonly Departure[]): Departure | null {
  return departures.reduce<Departure | null>(
    (first, one) => (first === null || one.instant < first.instant ? one : first),
    null,
  )
}
