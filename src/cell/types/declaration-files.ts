/** What the checker reads besides the program: texts of declarations, by file name. */
export interface Declarations {
  /** the language, without what no cell has */
  readonly language: string
  /** the physics library as its sources declare it, docstrings included */
  readonly library: Readonly<Record<string, string>>
}

/** The declaration file that an import in another one names. */
export function libraryFile(from: string, path: string): string {
  const at = new URL(path.replace(/\.ts$/, ".d.ts"), `file:///${from}`).pathname
  return at.slice(1)
}
