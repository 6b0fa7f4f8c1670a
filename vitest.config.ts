import { defineConfig } from "vitest/config"

export default defineConfig({
  oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
  test: {
    include: ["tests/**/*.test.{ts,tsx}"],
    exclude: ["tests/bench/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
})
