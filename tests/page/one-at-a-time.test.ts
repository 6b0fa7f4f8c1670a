import { describe, expect, it } from "vitest"
import { oneAtATime } from "../../src/page/one-at-a-time.ts"

function watched() {
  const log: string[] = []
  const waiting: (() => void)[] = []
  let closed = false
  const go = oneAtATime(
    async () => {
      log.push("begins")
      await new Promise<void>(done => waiting.push(done))
      log.push("ends")
    },
    () => closed,
  )
  const finish = async () => {
    waiting.shift()?.()
    await new Promise(done => setTimeout(done))
  }
  return { log, go, finish, close: () => (closed = true) }
}

describe("work that is never done twice at once", () => {
  it("is done once more however often it was asked for meanwhile", async () => {
    const { log, go, finish } = watched()
    void go()
    void go()
    void go()
    expect(log).toEqual(["begins"])
    await finish()
    expect(log).toEqual(["begins", "ends", "begins"])
    await finish()
    expect(log).toEqual(["begins", "ends", "begins", "ends"])
    void go()
    expect(log.at(-1)).toBe("begins")
  })

  it("is not begun again once closed", async () => {
    const { log, go, finish, close } = watched()
    void go()
    void go()
    close()
    await finish()
    expect(log).toEqual(["begins", "ends"])
  })
})
