export interface Loading {
  /** resolves once `loaded`, rejects once `lost`; nobody need wait for it */
  readonly ready: Promise<void>
  loaded(): void
  lost(reason: Error): void
}

/** Something that is being fetched, such as a worker: whoever asks first, both ends can be told. */
export function createLoading(): Loading {
  let loaded!: () => void
  let lost!: (reason: Error) => void
  const ready = new Promise<void>((resolve, reject) => {
    loaded = resolve
    lost = reject
  })
  ready.catch(() => {})
  return { ready, loaded, lost }
}
