import { type ChildProcess, spawn, spawnSync } from "node:child_process"
import { existsSync } from "node:fs"

const directories = ["/usr/bin", "/bin", "/usr/sbin", "/sbin", "/usr/local/bin"]
const find = (name: string): string | undefined => directories.map(d => `${d}/${name}`).find(existsSync)
const works = (command: readonly string[]): boolean => {
  const [program, ...rest] = command
  return spawnSync(program!, [...rest, "/bin/true"], { env: {}, stdio: "ignore", timeout: 2000 }).status === 0
}

let known: readonly string[] | undefined

/**
 * What stands before `node` on the command line of a child, where the system has it and allows it:
 * a network of its own with nothing in it (unshare), the end together with its parent even if that is killed
 * (setpriv), and no core file when it runs out of memory (the shell's ulimit).
 */
export function launcher(): readonly string[] {
  known ??= probe()
  return known
}

function probe(): string[] {
  if (process.platform === "win32" || !existsSync("/bin/sh") || !existsSync("/bin/true")) return []
  const command = ["/bin/sh", "-c", 'ulimit -c 0; unset PWD OLDPWD SHLVL; exec "$@"', "sh"]
  const unshare = find("unshare")
  if (unshare !== undefined) {
    const network = [
      [unshare, "--net"],
      [unshare, "--net", "--map-root-user"],
    ].find(works)
    if (network !== undefined) command.push(...network)
  }
  const setpriv = find("setpriv")
  if (setpriv !== undefined && works([setpriv, "--pdeathsig", "KILL"]))
    command.push(setpriv, "--pdeathsig", "KILL")
  return command
}

/** Starts Node on a file with an empty environment, closed standard streams and a channel for messages. */
export function launch(flags: readonly string[], file: string, cwd: string): ChildProcess {
  const [program, ...rest] = [...launcher(), process.execPath, ...flags, file]
  return spawn(program!, rest, {
    env: {},
    serialization: "advanced",
    stdio: ["ignore", "ignore", "ignore", "ipc"],
    cwd,
    windowsHide: true,
  })
}
