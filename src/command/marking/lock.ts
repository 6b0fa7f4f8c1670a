import { randomBytes } from "node:crypto"
import { linkSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs"
import { hostname } from "node:os"
import type { Problem } from "../../cell/problem.ts"

/** Who is at work in a folder. */
interface Holder {
  readonly host: string
  readonly pid: number
  /** tells a process from a later one with the same number, where the system tells when it began; "" elsewhere */
  readonly began: string
}

export interface Lock {
  release(): void
}

/**
 * Takes a folder for this process alone. What a killed process left is taken over; a process of another
 * machine cannot be looked at, so its lock stands until someone removes it.
 *
 * @throws what the system says when the file cannot be written
 */
export function takeLock(file: string): Lock | Problem {
  const own: Holder = { host: hostname(), pid: process.pid, began: beginOf(process.pid) }
  for (let attempt = 0; attempt < 3; attempt++) {
    try {
      writeHeld(file, JSON.stringify(own))
      return { release: () => rmSync(file, { force: true }) }
    } catch (cause) {
      if ((cause as NodeJS.ErrnoException).code !== "EEXIST") throw cause
    }
    const holder = readHolder(file)
    if (holder !== null && isAtWork(holder)) return inUse(file, holder, own.host)
    removeAbandoned(file)
  }
  return inUse(file, null, own.host)
}

/** Links without which a system has to do: a stick, some network drives. */
const noLinks = new Set(["EPERM", "ENOSYS", "ENOTSUP", "EOPNOTSUPP"])

const besideOf = (file: string): string => `${file}.${randomBytes(4).toString("hex")}`

/**
 * Puts the file there with its content, or not at all: whoever finds it reads who holds it.
 *
 * @throws EEXIST where it is held
 */
function writeHeld(file: string, text: string): void {
  const beside = besideOf(file)
  writeFileSync(beside, text)
  try {
    linkSync(beside, file)
  } catch (cause) {
    if (!noLinks.has((cause as NodeJS.ErrnoException).code ?? "")) throw cause
    writeFileSync(file, text, { flag: "wx" })
  } finally {
    rmSync(beside, { force: true })
  }
}

/**
 * Takes away what a killed process left. Another one may have done so and taken its place meanwhile: what was moved
 * aside is looked at once more, and put back if it is of a process at work.
 */
function removeAbandoned(file: string): void {
  const aside = besideOf(file)
  try {
    renameSync(file, aside)
    const holder = readHolder(aside)
    if (holder !== null && isAtWork(holder)) linkSync(aside, file)
  } catch (cause) {
    // gone in between, or taken by a third: the next attempt finds out
    if (!["ENOENT", "EEXIST"].includes((cause as NodeJS.ErrnoException).code ?? "")) throw cause
  }
  rmSync(aside, { force: true })
}

function inUse(file: string, holder: Holder | null, host: string): Problem {
  const elsewhere = holder !== null && holder.host !== host
  return {
    code: "folder-in-use",
    text: elsewhere
      ? `Another marking is at work in this folder, on the machine “${holder.host}”.`
      : `Another marking is at work in this folder${holder === null ? "" : ` (process ${holder.pid})`}.`,
    todo: elsewhere
      ? `Wait until it is done, or name another folder after --out. If that machine no longer runs it, remove “${file}”.`
      : "Wait until it is done, or name another folder after --out.",
  }
}

function readHolder(file: string): Holder | null {
  try {
    const { host, pid, began } = JSON.parse(readFileSync(file, "utf8")) as Partial<Holder>
    return typeof host === "string" && Number.isSafeInteger(pid) && typeof began === "string"
      ? { host, pid: pid!, began }
      : null
  } catch {
    // half written by a process that was killed, or gone in between
    return null
  }
}

function isAtWork({ host, pid, began }: Holder): boolean {
  if (host !== hostname()) return true
  try {
    process.kill(pid, 0)
  } catch (cause) {
    return (cause as NodeJS.ErrnoException).code === "EPERM"
  }
  return began === "" || began === beginOf(pid)
}

/** When a process began, in ticks since the system did (field 22 of /proc/PID/stat); "" where that cannot be read. */
function beginOf(pid: number): string {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "latin1")
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? ""
  } catch {
    return ""
  }
}
