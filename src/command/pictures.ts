import { type Stats, statSync } from "node:fs"
import { dirname, join } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Worksheet } from "../worksheet/index.ts"

/** A picture that the prose shows: where it lies, and the address under which the page asks for it. */
export type Picture = { readonly path: string; readonly address: string } | { readonly problem: Problem }

/** The pictures of a worksheet that lie beside its file; addresses on the web are left to the web. */
export function picturesOf(worksheet: Worksheet): Picture[] {
  const problem = (text: string, todo = besideIt): Picture => ({
    problem: { code: "picture", text, todo, where: { file: worksheet.file, line: 1, column: 1 } },
  })
  return worksheet.images
    .filter(address => !/^[a-z][a-z0-9+.-]*:/i.test(address))
    .map(address => {
      const plain = decoded(address.replace(/[?#].*$/, ""))
      if (plain === null)
        return problem(
          `The address “${address}” of a picture cannot be read: a “%” in it begins no character.`,
          "Write %25 for a percent sign, or give the file a name without one.",
        )
      if (plain.startsWith("/") || plain.split(/[\\/]/).includes(".."))
        return problem(`The picture “${address}” lies outside the worksheet's folder.`)
      const path = join(dirname(worksheet.file), plain)
      const found = look(path)
      if (found === undefined)
        return problem(`The picture “${address}” is not there; it was looked for at “${path}”.`)
      if (!found.isFile())
        return problem(`“${address}” is a folder, not a picture.`, "Write the name of a file in it.")
      return { path, address: plain }
    })
}

const besideIt = "Put it beside the worksheet, in a folder such as figures/, and write that address."

/** An address as the name of a file; null where it is not one. */
function decoded(address: string): string | null {
  try {
    const name = decodeURIComponent(address)
    return name.includes("\0") ? null : name
  } catch {
    return null
  }
}

function look(path: string): Stats | undefined {
  try {
    return statSync(path)
  } catch {
    return undefined
  }
}
