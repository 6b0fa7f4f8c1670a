import { expect, it } from "vitest"
import { bitsOf } from "../support/bits.ts"
import { createProbe } from "../support/probe.ts"
import { compiled, fallingKey, raw, request } from "../support/program.ts"

const probe = createProbe()

it("claim: a program cannot change the language, the library or the host for itself or for the next one", async () => {
  const program = await compiled(fallingKey)
  const before = (await probe.runner.run(request(program))).recordings.map(bitsOf)
  const bends = [
    "Object.prototype.x = 1",
    "Array.prototype[Symbol.iterator] = null",
    "lib.Vec3.prototype.add = () => 0",
    "lib.Vec3.prototype.constructor = Object",
    "lib.vec3.x = 1",
    "lib.Math.sqrt = () => 0",
    "host.add = () => 0",
    "host.maxTurns = Infinity",
    "parameters.height = 9",
    "Object.setPrototypeOf(lib.Vec3.prototype, { forged: 1 })",
    "JSON.stringify = () => ''",
  ]
  const js = bends
    .map(b => `try { ${b}; lib.console.log("changed") } catch { lib.console.log("stays") }`)
    .join("\n")
  const { output } = await probe.runner.run(request(raw(js)))
  expect(output).toEqual(bends.map(() => "stays"))
  expect((await probe.runner.run(request(program))).recordings.map(bitsOf)).toEqual(before)
})

it("claim: each object that a program is given, and all that hangs on it, is frozen", async () => {
  const walk = `
    const seen = new Set(), open = []
    const look = (value, path) => {
      if ((typeof value !== "object" && typeof value !== "function") || value === null || seen.has(value)) return
      seen.add(value)
      if (!Object.isFrozen(value)) open.push(path)
      for (const key of [...Object.getOwnPropertyNames(value), ...Object.getOwnPropertySymbols(value)]) {
        const p = Object.getOwnPropertyDescriptor(value, key)
        if (p) for (const part of [p.value, p.get, p.set]) look(part, path + "." + String(key))
      }
      look(Object.getPrototypeOf(value), path + ".[proto]")
    }
    look(lib, "lib"); look(host, "host"); look(parameters, "parameters")
    lib.console.log(seen.size > 300, open.join(" "))`
  const { output } = await probe.runner.run(request(raw(walk)))
  // Functions made for one run only, and seen by no other, may carry what that run hangs on them.
  const [line] = output
  const open = line!
    .split(" ")
    .slice(1)
    .filter(path => path !== "" && !/^(lib\.random|lib\.console|host\.\w+)(\.prototype)?$/.test(path))
  expect(line).toMatch(/^true/)
  expect(open).toEqual([])
})
