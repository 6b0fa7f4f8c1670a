#!/usr/bin/env node
/* The command `deltasheet`: makes sure that everything is installed and built, then hands over. */
import { join } from "node:path"
import { pathToFileURL } from "node:url"
import { root, setUp } from "./setup.mjs"

await setUp()
const { main } = await import(pathToFileURL(join(root, "dist", "command", "main.js")).href)
process.exitCode = await main(process.argv.slice(2), root)
