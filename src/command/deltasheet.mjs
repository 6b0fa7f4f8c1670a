#!/usr/bin/env node
/* The command `deltasheet`: makes sure that everything is installed and built, then hands over. */
import { join } from "node:path"
import { pathToFileURL } from "node:url"
import { root, setUp } from "./setup.mjs"

// a reader that has seen enough (such as `head`) closes the pipe: then there is nobody left to tell
for (const stream of [process.stdout, process.stderr])
  stream.on("error", error => {
    if (error.code !== "EPIPE") throw error
    process.exit()
  })

await setUp()
const { main } = await import(pathToFileURL(join(root, "dist", "command", "main.js")).href)
process.exitCode = await main(process.argv.slice(2), root)
