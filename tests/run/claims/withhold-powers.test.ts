import { expect, it } from "vitest"
import { openRunnerPage } from "../page/open.ts"
import { compiled, request } from "../support/program.ts"

const language =
  /^(Infinity|NaN|undefined|eval|isFinite|isNaN|parseFloat|parseInt|(de|en)codeURI(Component)?|(un)?escape|globalThis|lockdown|harden|assert|Compartment|HandledPromise|Array|ArrayBuffer|BigInt|Boolean|DataView|Date|Function|JSON|Map|Math|Number|Object|Promise|Proxy|Reflect|RegExp|Set|String|Symbol|WeakMap|WeakSet|Iterator|\w*Error|(Big)?(Int|Uint|Float)\d+(Clamped)?Array)$/

it("claim: even the global object outside the realm holds the language and nothing of the host", async () => {
  const { page, close } = await openRunnerPage()
  const run = request(await compiled("record(0, { a: 1 })"))
  expect((await page.evaluate(r => window.runPlain(r), run)).problem).toBeNull()
  const names = await page.workers()[0]!.evaluate(() => {
    const all: string[] = []
    for (
      let o: object | null = globalThis;
      o !== null && o !== Object.prototype;
      o = Object.getPrototypeOf(o)
    )
      all.push(...Reflect.ownKeys(o).map(String))
    return all
  })
  await close()
  expect(names).toContain("Object")
  const rest = names.filter(
    name => !language.test(name) && name !== "constructor" && !name.startsWith("Symbol("),
  )
  // Two numbers of an old interface for files, which the browser does not let go.
  expect(rest.filter(name => name !== "TEMPORARY" && name !== "PERSISTENT")).toEqual([])
})
