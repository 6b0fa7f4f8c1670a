import { existsSync } from "node:fs"
import { dirname, join } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Worksheet } from "../worksheet/index.ts"

/** A picture that the prose shows: where it lies, and the address under which the page asks for it. */
export type Picture = { readonly path: string; readonly address: string } | { readonly problem: Problem }

/** The pictures of a worksheet that lie beside its file; addresses on the web are left to the web. */
export function picturesOf(worksheet: Worksheet): Picture[] {
  return worksheet.images
    .filter(address => !/^[a-z][a-z0-9+.-]*:/i.test(address))
    .map(address => {
      const plain = decodeURI(address.replace(/[?#].*$/, ""))
      const path = join(dirname(worksheet.file), plain)
      const outside = plain.startsWith("/") || plain.split(/[\\/]/).includes("..")
      if (!outside && existsSync(path)) return { path, address: plain }
      return {
        problem: {
          code: "picture",
          text: outside
            ? `The picture “${address}” lies outside the worksheet's folder.`
            : `The picture “${address}” is not there; it was looked for at “${path}”.`,
          todo: "Put it beside the worksheet, in a folder such as figures/, and write that address.",
          where: { file: worksheet.file, line: 1, column: 1 },
        },
      }
    })
}
