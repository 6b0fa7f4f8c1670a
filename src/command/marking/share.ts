import { createHash } from "node:crypto"
import type { Problem } from "../../cell/problem.ts"

/** The K-th of N shares of a class, 1-based. */
export interface Share {
  readonly k: number
  readonly n: number
}

const mostShares = 10_000

/** Reads “2/8”. */
export function readShare(text: string): Share | Problem {
  const [, k, n] = /^(\d{1,5})\/(\d{1,5})$/.exec(text) ?? []
  const share = { k: Number(k), n: Number(n) }
  if (share.n >= 1 && share.n <= mostShares && share.k >= 1 && share.k <= share.n) return share
  return {
    code: "asked-wrongly",
    text: `“--share ${text.slice(0, 40)}” is not a share K/N, with K from 1 to N and N at most ${mostShares}.`,
    todo: "For the second of eight shares write “--share 2/8”. The first is 1.",
  }
}

/** Whose share a file is: told by its name alone, so that every machine finds the same and a new file moves no other. */
export function isOfShare(file: string, { k, n }: Share): boolean {
  return createHash("sha256").update(file).digest().readUInt32BE(0) % n === k - 1
}
