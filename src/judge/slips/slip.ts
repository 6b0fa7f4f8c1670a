import type { Roles } from "./roles.ts"
import type { Edit, Script } from "./script.ts"

/** A common mistake as a rewriting of a right answer. */
export interface Slip {
  /** stable name, as worksheets use it under `slips:` */
  readonly name: string
  /** hints at it for the student, without giving the answer */
  readonly hint: string
  /** what it is, for the teacher */
  readonly teacher: string
  /** all ways of making it in this blank, each a list of edits; none where it does not apply */
  make(script: Script, roles: Roles): Edit[][]
  /** ways that much else comes to as well: tried after those of all other slips */
  late?(script: Script, roles: Roles): Edit[][]
}
