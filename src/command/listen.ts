import type { AddressInfo, Server } from "node:net"
import type { Problem } from "../cell/problem.ts"

/** Ports after the first that are tried, where none was asked for. */
const mostTried = 20

/**
 * Opens a server to this computer alone.
 *
 * @param next whether the ports that follow will do as well
 * @returns the port that it listens at, or why there is none
 */
export function listen(server: Server, port: number, next: boolean): Promise<number | Problem> {
  return new Promise(done => {
    let tried = port
    const failed = (cause: NodeJS.ErrnoException): void => {
      if (next && cause.code === "EADDRINUSE" && tried < port + mostTried)
        return void server.listen(++tried, "127.0.0.1")
      server.off("error", failed)
      done(portProblem(port, tried, cause))
    }
    server.on("error", failed)
    server.once("listening", () => {
      server.off("error", failed)
      done((server.address() as AddressInfo).port)
    })
    server.listen(port, "127.0.0.1")
  })
}

function portProblem(first: number, last: number, { code }: NodeJS.ErrnoException): Problem {
  const which = first === last ? `Port ${first}` : `Each port from ${first} to ${last}`
  if (code === "EADDRINUSE")
    return {
      code: "port-taken",
      text: `${which} is in use.`,
      todo:
        first === last ? "Name another with --port, or leave it out." : "Name one that is free with --port.",
    }
  return {
    code: "port-refused",
    text:
      code === "EACCES" || code === "EPERM"
        ? `${which} may not be opened: this computer keeps it for others.`
        : `${which} could not be opened (${code ?? "unknown reason"}).`,
    todo: "Name one from 1024 on with --port, or leave it out.",
  }
}
