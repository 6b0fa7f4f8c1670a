import { fileURLToPath } from "node:url"
import { createServer, type ViteDevServer } from "vite"

/** Serves the fixture page on a free port of this machine, from the sources as they are. */
export async function serveFixture(): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const root = fileURLToPath(new URL("../../..", import.meta.url))
  const server: ViteDevServer = await createServer({
    root,
    configFile: false,
    logLevel: "error",
    publicDir: "public",
    cacheDir: "node_modules/.vite-bench-fixture",
    oxc: { jsx: { runtime: "automatic", importSource: "preact" } },
    server: { host: "127.0.0.1", port: 0, hmr: false, watch: null },
    optimizeDeps: {
      entries: ["tests/page/bench-fixture/main.tsx"],
      include: [
        "@observablehq/plot",
        "preact/jsx-runtime",
        "preact/jsx-dev-runtime",
        "@preact/signals",
        "preact/hooks",
      ],
    },
  })
  await server.listen()
  const address = server.httpServer?.address()
  const port = typeof address === "object" && address ? address.port : 0
  return {
    url: `http://127.0.0.1:${port}/tests/page/bench-fixture/index.html`,
    close: () => server.close(),
  }
}
