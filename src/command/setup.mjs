#!/usr/bin/env node
/*
 * Makes a fresh clone ready: installs what the lock file names when it is not there, and builds dist/ when a source
 * is newer. Plain JavaScript without dependencies, since it runs before there are any. Does nothing, in well under
 * a second, when all is in place.
 */
import { spawnSync } from "node:child_process"
import { createHash } from "node:crypto"
import { existsSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from "node:fs"
import { dirname, join } from "node:path"
import { fileURLToPath, pathToFileURL } from "node:url"
import { stripVTControlCharacters } from "node:util"

export const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..")
const lockStamp = join(root, "node_modules", ".deltasheet-lock")
const buildStamp = join(root, "dist", "stamp")

/** Everything that the built files are made of. */
const sources = ["src", "public", "vite.config.ts", "package-lock.json", "tsconfig.json"]

function sha(text) {
  return createHash("sha256").update(text).digest("hex")
}

function* filesUnder(path) {
  if (!existsSync(path)) return
  if (statSync(path).isDirectory())
    for (const name of readdirSync(path).sort()) yield* filesUnder(join(path, name))
  else yield path
}

function stampOfSources() {
  const parts = []
  for (const source of sources)
    for (const file of filesUnder(join(root, source))) {
      const { size, mtimeMs } = statSync(file)
      parts.push(`${file.slice(root.length)} ${size} ${mtimeMs}`)
    }
  return sha(parts.join("\n"))
}

function read(path) {
  return existsSync(path) ? readFileSync(path, "utf8") : ""
}

export function install() {
  const lock = sha(read(join(root, "package-lock.json")))
  if (existsSync(join(root, "node_modules", ".package-lock.json")) && read(lockStamp) === lock) return
  console.error("Installing what Deltasheet needs (once; this takes a minute).")
  const npm = spawnSync("npm", ["ci", "--no-audit", "--no-fund", "--loglevel=error"], {
    cwd: root,
    stdio: "inherit",
    shell: process.platform === "win32",
  })
  if (npm.status !== 0) {
    console.error(
      "The packages could not be installed. Is the package registry within reach? Run “npm ci” to see more.",
    )
    process.exit(2)
  }
  writeFileSync(lockStamp, lock)
}

/**
 * Moves a folder to a place where another one may stand. The other is only removed once the new one is there, and is put
 * back if it cannot come; somebody else may be doing the same.
 */
export function putInPlace(next, place) {
  const aside = `${next}.before`
  for (let tries = 1; ; tries++) {
    const stood = renameIf(place, aside)
    try {
      renameSync(next, place)
      break
    } catch (cause) {
      // in this very moment another start has put its own there: that one is now moved aside, unless this goes on for ever
      const meanwhile = existsSync(place)
      if (stood && !meanwhile) renameIf(aside, place)
      rmSync(aside, { recursive: true, force: true })
      if (!meanwhile || tries === mostTries) throw cause
    }
  }
  rmSync(aside, { recursive: true, force: true })
}

/** Starts at the same moment that one gives way to. */
const mostTries = 20

/** @returns whether there was something to rename */
function renameIf(from, to) {
  try {
    renameSync(from, to)
    return true
  } catch (cause) {
    if (cause.code === "ENOENT") return false
    throw cause
  }
}

export async function build({ force = false } = {}) {
  const stamp = stampOfSources()
  if (!force && read(buildStamp) === stamp) return
  console.error("Building (a few seconds).")
  const next = join(root, `dist.next-${process.pid}`)
  const { buildAll } = await import(pathToFileURL(join(root, "src", "command", "build.mjs")).href)
  try {
    await buildAll(root, next)
    writeFileSync(join(next, "stamp"), stamp)
    putInPlace(next, join(root, "dist"))
  } catch (cause) {
    const lines = stripVTControlCharacters(cause instanceof Error ? cause.message : String(cause)).split("\n")
    console.error(
      `The build failed: ${lines
        .filter(line => line.trim() !== "")
        .slice(0, 2)
        .join(" ")}`,
    )
    console.error(
      "Nothing was replaced. If the sources were not changed by hand, run “npm ci” and try again; “npm run types” shows more.",
    )
    rmSync(next, { recursive: true, force: true })
    process.exit(2)
  }
}

export async function setUp(options) {
  const major = Number(process.versions.node.split(".")[0])
  if (major < 20) {
    console.error(`Deltasheet needs Node 20 or newer; this is Node ${process.versions.node}.`)
    process.exit(2)
  }
  install()
  await build(options)
}

if (process.argv[1] && fileURLToPath(import.meta.url) === process.argv[1])
  await setUp({ force: process.argv.includes("--build") })
