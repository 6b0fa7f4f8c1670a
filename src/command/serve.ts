import { existsSync, statSync } from "node:fs"
import { readFile } from "node:fs/promises"
import { createServer, type ServerResponse } from "node:http"
import { extname, join, resolve, sep } from "node:path"
import type { Problem } from "../cell/problem.ts"
import type { Asked, CommandSpec } from "./asked.ts"
import { fileProblem } from "./files.ts"
import { createLibrary, type Library } from "./library.ts"
import { listen } from "./listen.ts"
import type { ExitCode } from "./main.ts"
import { err, out, refuse, sayProblem } from "./say.ts"
import { createTools } from "./tools.ts"

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
  if (missing !== undefined) return refuse(asked, [fileProblem(missing, { code: "ENOENT" })])
  const wished = asked.values.port?.[0]
  const port = Number(wished ?? firstPort)
  if (!Number.isInteger(port) || port < 1 || port > 65_535)
    return refuse(asked, [
      {
        code: "asked-wrongly",
        text: `“${wished}” is not a port.`,
        todo: "Write a number from 1 to 65535.",
      },
    ])
  const tools = createTools(join(home, "dist", "runner.js"), 2)
  let ended = false
  const say = (problem: Problem): void => {
    // what was under way when it was ended fails for that reason alone
    if (!ended) err(sayProblem(problem))
  }
  const library = createLibrary(paths, tools, join(home, "dist", "made"), say)
  const page = join(home, "dist", "page")
  const server = createServer((request, response) => {
    const url = request.url ?? "/"
    answer(url, response, page, library).catch(cause => {
      say(unanswered(url, cause))
      sendWords(response, 500, "This could not be made. Look at the terminal.")
    })
  })
  try {
    const { cards } = await library.shelf()
    const found = await listen(server, port, wished === undefined)
    if (typeof found !== "number") return refuse(asked, [found])
    const address = `http://localhost:${found}/`
    if (asked.json) out(JSON.stringify({ address }))
    else
      out(
        `Deltasheet is at ${address}\nIt shows ${paths.map(path => relativeTo(home, path)).join(", ")}; save a file and reload the page. Ctrl-C ends it.`,
      )
    // so that the first student to open a sheet does not wait for its reference
    void (async () => {
      for (const { id } of cards)
        await library.edition(id).catch(cause => say(unanswered(`/data/${id}.json`, cause)))
    })()
    await new Promise<void>(done => {
      for (const signal of ["SIGINT", "SIGTERM"] as const) process.once(signal, () => done())
    })
    ended = true
    server.close()
    server.closeAllConnections()
    return 0
  } finally {
    await tools.close()
  }
}

function unanswered(url: string, cause: unknown): Problem {
  const { path, message } = cause instanceof Error ? (cause as NodeJS.ErrnoException) : { message: cause }
  if (path !== undefined) return fileProblem(path, cause)
  return {
    code: "unexpected",
    text: `“${url}” could not be answered, for an unforeseen reason: ${message}.`,
    todo: "The other pages are still there. Please report it with the worksheet that led to it.",
  }
}

function relativeTo(home: string, path: string): string {
  return path.startsWith(home + sep) ? path.slice(home.length + 1) : path
}

async function answer(url: string, response: ServerResponse, page: string, library: Library): Promise<void> {
  const path = pathOf(url)
  if (path === "/data/shelf.json") return sendJson(response, 200, JSON.stringify(await library.shelf()))
  const sheet = path && /^\/data\/([a-z][a-z0-9-]*)\.json$/.exec(path)
  if (sheet) {
    const edition = await library.edition(sheet[1]!)
    if (edition !== null && "json" in edition) return sendJson(response, 200, edition.json)
    if (edition !== null) return sendJson(response, 422, JSON.stringify(edition))
  }
  const file = path && (fileOf(page, path) ?? library.picture(path.slice(1)))
  if (!file) return sendWords(response, 404, "There is nothing at this address. The shelf is at /")
  const bytes = await readFile(file)
  response.writeHead(200, {
    "content-type": types[extname(file).toLowerCase()] ?? "application/octet-stream",
    "cache-control": path.startsWith("/assets/") ? "public, max-age=31536000, immutable" : "no-cache",
    "x-content-type-options": "nosniff",
  })
  response.end(bytes)
}

/** The path that an address names; null where it names none. */
function pathOf(url: string): string | null {
  try {
    const path = decodeURIComponent(url.replace(/[?#].*$/, ""))
    return path.includes("\0") ? null : path
  } catch {
    return null
  }
}

function sendJson(response: ServerResponse, status: number, body: string): void {
  response.writeHead(status, { "content-type": types[".json"]!, "cache-control": "no-store" })
  response.end(body)
}

function sendWords(response: ServerResponse, status: number, words: string): void {
  response.writeHead(status, { "content-type": types[".txt"]! })
  response.end(words)
}

/** A file of the page, never one outside its folder. */
function fileOf(page: string, path: string): string | null {
  const file = resolve(page, `.${path.endsWith("/") ? `${path}index.html` : path}`)
  if (!file.startsWith(page + sep) || !existsSync(file) || !statSync(file).isFile()) return null
  return file
}
