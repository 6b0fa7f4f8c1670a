import { readFileSync } from "node:fs"

/** Resident memory of a process in bytes; null where the system does not tell (it has no /proc) or it is gone. */
export function residentBytes(pid: number): number | null {
  try {
    const line = /^VmRSS:\s+(\d+) kB/m.exec(readFileSync(`/proc/${pid}/status`, "latin1"))
    return line === null ? null : Number(line[1]) * 1024
  } catch {
    return null
  }
}
