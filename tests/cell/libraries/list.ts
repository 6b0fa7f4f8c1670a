/**
 * Libraries of general purpose with much arithmetic whose published files hold their own tests. Each version is fixed.
 * `sources` are rewritten; `tests` are run as they are, before and after.
 */
export interface Library {
  readonly name: string
  readonly version: string
  /** the package holds its tests, or only the repository, at the tag named */
  readonly from: "package" | { readonly repository: string; readonly tag: string }
  readonly about: string
  readonly sources: RegExp
  readonly tests: RegExp
}

export const libraries: readonly Library[] = [
  {
    name: "fraction.js",
    version: "5.3.4",
    from: "package",
    about: "exact fractions over bigint",
    sources: /^dist\/fraction\.js$/,
    tests: /^tests\/.*\.test\.js$/,
  },
  {
    name: "complex.js",
    version: "2.4.3",
    from: "package",
    about: "complex numbers",
    sources: /^dist\/complex\.js$/,
    tests: /^tests\/.*\.test\.js$/,
  },
  {
    name: "quaternion",
    version: "2.2.0",
    from: "package",
    about: "quaternions and rotations",
    sources: /^dist\/quaternion\.js$/,
    tests: /^tests\/.*\.test\.js$/,
  },
  {
    name: "d3-array",
    version: "3.2.4",
    from: { repository: "https://github.com/d3/d3-array", tag: "v3.2.4" },
    about: "sums, quantiles, ticks, sorting",
    sources: /^src\/.*\.js$/,
    tests: /^test\/.*-test\.js$/,
  },
  {
    name: "d3-color",
    version: "3.1.0",
    from: { repository: "https://github.com/d3/d3-color", tag: "v3.1.0" },
    about: "colour spaces",
    sources: /^src\/.*\.js$/,
    tests: /^test\/.*-test\.js$/,
  },
]
