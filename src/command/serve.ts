import { createHash } from "node:crypto"
import { createReadStream, existsSync, readdirSync, readFileSync, statSync } from "node:fs"
import { createServer, type ServerResponse } from "node:http"
import { extname, join, resolve, sep } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Shelf, ShelfCard } from "../judge/edition.ts"
import type { Worksheet } from "../worksheet/index.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { inCourse, type Made, makeEdition, prepareSheet } from "./edition.ts"
import { fileProblem, readWorksheet, writeWhole } from "./files.ts"
import type { ExitCode } from "./main.ts"
import { picturesOf } from "./pictures.ts"
import { err, out, sayProblem } from "./say.ts"
import { createTools, type Tools } from "./tools.ts"

export const serveSpec: CommandSpec = {
  name: "serve",
  usage: "deltasheet serve [FILE|FOLDER...] [--port N]",
  says: "show worksheets in the browser, made anew whenever a file changes; the shipped ones if none are named",
  takes: [0, 500],
  options: { port: { value: "N", says: "the port; without it 4600, or the next that is free" } },
}

const firstPort = 4600

const types: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json; charset=utf-8",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".jpg": "image/jpeg",
  ".woff2": "font/woff2",
  ".wasm": "application/wasm",
  ".txt": "text/plain; charset=utf-8",
}

export async function serve(asked: Asked, home: string): Promise<ExitCode> {
  const paths = asked.files.length > 0 ? asked.files : [join(home, "worksheets")]
  const missing = paths.find(path => !existsSync(path))
  if (missing !== undefined) {
    err(sayProblem(fileProblem(missing, { code: "ENOENT" })))
    return 2
  }
  const wished = asked.values.port?.[0]
  const port = Number(wished ?? firstPort)
  if (!Number.isInteger(port) || port < 1 || port > 65_535) {
    err(
      sayProblem({
        code: "asked-wrongly",
        text: `“${wished}” is not a port.`,
        todo: "Write a number from 1 to 65535.",
      }),
    )
    return 2
  }
  const tools = createTools(join(home, "dist", "runner.js"), 2)
  const library = createLibrary(paths, tools, join(home, "dist", "made"))
  const page = join(home, "dist", "page")
  const server = createServer((request, response) => {
    void answer(request.url ?? "/", response, page, library).catch(() => {
      if (!response.headersSent) response.writeHead(500, { "content-type": "text/plain; charset=utf-8" })
      response.end("The page could not be made. Look at the terminal.")
    })
  })
  const shelf = await library.shelf()
  for (const problem of shelf.problems) err(sayProblem(problem))
  const address = await listen(server, port, wished === undefined)
  if (address === null) {
    err(
      sayProblem({
        code: "port-taken",
        text: `Port ${port} is in use.`,
        todo: "Name another with --port, or leave it out.",
      }),
    )
    await tools.close()
    return 2
  }
  if (asked.json) out(JSON.stringify({ address }))
  else
    out(
      `Deltasheet is at ${address}\nIt shows ${paths.map(path => relativeTo(home, path)).join(", ")}; save a file and reload the page. Ctrl-C ends it.`,
    )
  // so that the first student to open a sheet does not wait for its reference
  void (async () => {
    for (const card of shelf.shelf.cards) await library.edition(card.id)
  })().catch(() => {})
  await new Promise<void>(done => {
    for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done())
  })
  server.close()
  server.closeAllConnections()
  await tools.close()
  return 0
}

function relativeTo(home: string, path: string): string {
  return path.startsWith(home + sep) ? path.slice(home.length + 1) : path
}

interface Library {
  shelf(): Promise<{ shelf: Shelf; problems: readonly Problem[] }>
  edition(id: string): Promise<string | null>
  picture(address: string): string | null
}

/** The worksheets under some paths, made when first asked for and again when their text changes. */
function createLibrary(paths: readonly string[], tools: Tools, cache: string): Library {
  const prepared = createCache(join(cache, "cards"), worksheet => prepareSheet(worksheet, tools))
  const editions = createCache(join(cache, "editions"), worksheet => makeEdition(worksheet, tools))
  const readOnce = createReader()
  const read = () =>
    paths
      .flatMap(path =>
        statSync(path).isDirectory()
          ? readdirSync(path)
              .filter(name => name.endsWith(".md") && name !== "README.md")
              .sort()
              .map(name => join(path, name))
          : [path],
      )
      .map(readOnce)
  return {
    async shelf() {
      const problems: Problem[] = []
      const cards: ShelfCard[] = []
      const results = await Promise.all(
        read().map(item => (item.ok ? prepared(item.value, item.text ?? "") : item)),
      )
      for (const result of results) {
        if (!result.ok) problems.push(...result.problems)
        else if ("made" in result) cards.push(result.made.card)
      }
      return {
        shelf: { format: "deltasheet-shelf/1", title: "Worksheets", cards: inCourse(cards) },
        problems,
      }
    },
    async edition(id) {
      for (const item of read()) {
        if (!item.ok || item.value.sheet.id !== id) continue
        const result = await editions(item.value, item.text ?? "")
        return result.ok ? JSON.stringify(result.made.edition) : null
      }
      return null
    },
    picture(address) {
      for (const item of read()) {
        if (!item.ok) continue
        const found = picturesOf(item.value).find(picture => "path" in picture && picture.address === address)
        if (found && "path" in found) return found.path
      }
      return null
    },
  }
}

/** Reads a worksheet file again only when it has been saved since. */
function createReader(): (file: string) => ReturnType<typeof readWorksheet> {
  const known = new Map<string, { readonly saved: string; readonly read: ReturnType<typeof readWorksheet> }>()
  return file => {
    const stat = statSync(file, { throwIfNoEntry: false })
    const saved = `${stat?.mtimeMs} ${stat?.size}`
    const before = known.get(file)
    if (before?.saved === saved) return before.read
    const read = readWorksheet(file)
    known.set(file, { saved, read })
    return read
  }
}

/**
 * Makes something of each worksheet once, by its text. What was made is kept beside the build, so that a second
 * start makes nothing again; a new build empties it.
 */
function createCache<T>(
  folder: string,
  make: (worksheet: Worksheet) => Promise<Made<T>>,
): (worksheet: Worksheet, text: string) => Promise<Made<T>> {
  const known = new Map<string, Promise<Made<T>>>()
  return (worksheet, text) => {
    const key = createHash("sha256").update(`${worksheet.file}\n${text}`).digest("hex")
    let result = known.get(key)
    if (result === undefined) {
      result = fromFile(join(folder, `${key}.json`), () => make(worksheet))
      known.set(key, result)
      result.catch(() => known.delete(key))
    }
    return result
  }
}

async function fromFile<T>(file: string, make: () => Promise<Made<T>>): Promise<Made<T>> {
  if (existsSync(file)) return JSON.parse(readFileSync(file, "utf8")) as Made<T>
  const result = await make()
  if (result.ok) writeWhole(file, JSON.stringify(result))
  return result
}

async function answer(url: string, response: ServerResponse, page: string, library: Library): Promise<void> {
  let path: string
  try {
    path = decodeURIComponent(url.replace(/[?#].*$/, ""))
  } catch {
    path = "/"
  }
  const send = (body: string): void => {
    response.writeHead(200, { "content-type": types[".json"]!, "cache-control": "no-store" })
    response.end(body)
  }
  if (path === "/data/shelf.json") return send(JSON.stringify((await library.shelf()).shelf))
  const sheet = /^\/data\/([a-z][a-z0-9-]*)\.json$/.exec(path)
  if (sheet) {
    const edition = await library.edition(sheet[1]!)
    if (edition !== null) return send(edition)
  }
  const file = path.includes("\0") ? null : (fileOf(page, path) ?? library.picture(path.slice(1)))
  if (file === null) {
    response.writeHead(404, { "content-type": "text/plain; charset=utf-8" })
    response.end("There is nothing at this address. The shelf is at /")
    return
  }
  const lasting = path.startsWith("/assets/")
  response.writeHead(200, {
    "content-type": types[extname(file).toLowerCase()] ?? "application/octet-stream",
    "cache-control": lasting ? "public, max-age=31536000, immutable" : "no-cache",
    "x-content-type-options": "nosniff",
  })
  createReadStream(file).pipe(response)
}

/** A file of the page, never one outside its folder. */
function fileOf(page: string, path: string): string | null {
  const file = resolve(page, `.${path.endsWith("/") ? `${path}index.html` : path}`)
  if (!file.startsWith(page + sep) || !existsSync(file) || !statSync(file).isFile()) return null
  return file
}

function listen(
  server: ReturnType<typeof createServer>,
  port: number,
  next: boolean,
): Promise<string | null> {
  return new Promise(done => {
    const tryPort = (n: number): void => {
      server.once("error", (error: NodeJS.ErrnoException) => {
        if (next && error.code === "EADDRINUSE" && n < port + 20) tryPort(n + 1)
        else done(null)
      })
      server.listen(n, "127.0.0.1", () => {
        server.removeAllListeners("error")
        done(`http://localhost:${n}/`)
      })
    }
    tryPort(port)
  })
}
