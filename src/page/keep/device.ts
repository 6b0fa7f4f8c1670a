import type { Problem } from "../../cell/problem.ts"
import { mergeWork, readWork, type Work } from "./work.ts"

/** The part of the browser's Storage that is used here; setItem throws when it is full or forbidden. */
export interface DeviceStorage {
  readonly length: number
  key(index: number): string | null
  getItem(key: string): string | null
  setItem(key: string, value: string): void
}

/** Where a device keeps one edition's work. The digest is part of it: a changed task never overwrites old text. */
const prefix = "deltasheet/work/"
const studentKey = "deltasheet/student"

export const workKey = (id: string, digest: string): string => `${prefix}${id}/${digest}`

export interface Student {
  readonly id: string
  readonly name: string
}

/** Work kept on this device, by edition. Every method gives words instead of throwing. */
export interface Device {
  read(id: string, digest: string): Work | null
  /** all editions of a worksheet that hold text, latest first */
  editions(id: string): readonly Work[]
  /** merges with what another window may have written meanwhile, and gives back what now stands there */
  write(work: Work): { readonly work: Work; readonly problem: Problem | null }
  readStudent(): Student
  writeStudent(student: Student): Problem | null
}

const forbidden: Problem = {
  code: "keeping-forbidden",
  text: "This browser does not let the page keep anything on this device, so what you type is lost when you close it.",
  todo: "Download your answer file before you leave, or allow this site to store data and load the page again.",
}

const full: Problem = {
  code: "keeping-full",
  text: "This browser's store for the page is full: the last thing you typed is not kept on this device.",
  todo: "Download your answer file now; you can open it again here or on another device.",
}

const latest = (work: Work): number =>
  Math.max(work.begun, ...Object.values(work.answers).map(kept => kept.at), ...work.past.map(past => past.at))

/**
 * @param open gives the storage; may throw (a browser that blocks it throws at the mere look)
 */
export function openDevice(open: () => DeviceStorage): Device {
  let storage: DeviceStorage | null = null
  try {
    storage = open()
    storage.getItem(studentKey)
  } catch {
    storage = null
  }
  const get = (key: string): string | null => {
    try {
      return storage?.getItem(key) ?? null
    } catch {
      return null
    }
  }
  const set = (key: string, value: string): Problem | null => {
    if (!storage) return forbidden
    try {
      storage.setItem(key, value)
      return null
    } catch {
      return full
    }
  }
  return {
    read(id, digest) {
      const json = get(workKey(id, digest))
      return json === null ? null : readWork(json)
    },
    editions(id) {
      const found: Work[] = []
      try {
        for (let i = 0; storage && i < storage.length; i++) {
          const key = storage.key(i)
          if (!key?.startsWith(`${prefix}${id}/`)) continue
          const work = readWork(storage.getItem(key) ?? "")
          if (work) found.push(work)
        }
      } catch {
        return found
      }
      return found.sort((a, b) => latest(b) - latest(a))
    },
    write(work) {
      const key = workKey(work.id, work.digest)
      const json = get(key)
      const there = readWork(json ?? "")
      // what we cannot read may still be somebody's text: it is moved aside, not written over
      if (json !== null && !there) set(`deltasheet/unread/${work.id}/${work.digest}/${latest(work)}`, json)
      const merged = there ? mergeWork(work, there) : work
      return { work: merged, problem: set(key, JSON.stringify(merged)) }
    },
    readStudent() {
      try {
        const { id, name } = JSON.parse(get(studentKey) ?? "{}") as { id?: unknown; name?: unknown }
        return { id: typeof id === "string" ? id : "", name: typeof name === "string" ? name : "" }
      } catch {
        return { id: "", name: "" }
      }
    },
    writeStudent: student => set(studentKey, JSON.stringify(student)),
  }
}
