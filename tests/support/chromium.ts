import { existsSync, mkdtempSync, rmSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { type Browser, chromium } from "playwright-core"

/** Where the usual systems keep a Chromium or a browser built on it. */
const usual = [
  process.env.CHROMIUM,
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
]

const quiet = [
  "--no-sandbox",
  "--disable-gpu",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
]

/**
 * A real Chromium: the system's own if there is one, else the one that an npm package ships. Its temporary files
 * are its own, so that runs side by side do not meet.
 */
export async function launchChromium(): Promise<Browser> {
  const system = usual.find(path => path !== undefined && existsSync(path))
  const scratch = mkdtempSync(join(tmpdir(), "deltasheet-chromium-"))
  try {
    const executablePath = system ?? (await shipped())
    const browser = await chromium.launch({
      executablePath,
      args: quiet,
      env: { ...process.env, TMPDIR: scratch },
    })
    browser.on("disconnected", () => rmSync(scratch, { recursive: true, force: true }))
    return browser
  } catch (cause) {
    rmSync(scratch, { recursive: true, force: true })
    throw new Error(
      "The browser tests need Chromium and none could be started. Install it (on Debian: apt-get install chromium), " +
        "or name one in the environment variable CHROMIUM. On a bare Debian the one that the npm package ships needs " +
        "libnss3, libexpat1, fontconfig-config and fonts-dejavu-core.",
      { cause },
    )
  }
}

async function shipped(): Promise<string> {
  const { default: packaged } = await import("@sparticuz/chromium")
  return packaged.executablePath()
}
