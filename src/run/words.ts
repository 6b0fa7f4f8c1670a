import type { Problem } from "../cell/problem.ts"
import type { RunProblemCode } from "./codes.ts"

/** A problem of this room. */
type RunProblem = Problem & { readonly code: RunProblemCode }

/** Ends of a run that only its host sees. */
export const timeUp = (milliseconds: number): RunProblem => ({
  code: "time-limit",
  text: `The program was ended after ${milliseconds / 1000} s of running.`,
  todo: "Look for a single call that takes for ever, such as a text search or a sort of a huge list, or take fewer steps.",
})

export const memoryUp: RunProblem = {
  code: "memory-limit",
  text: "The program used more memory than a run may have, and was ended.",
  todo: "Look for a list or a text that grows at every turn of a loop.",
}

export const stoppedByHand: RunProblem = {
  code: "stopped",
  text: "The run was stopped before it ended.",
  todo: "Run it again when you are ready.",
}

export const lostPlace: RunProblem = {
  code: "run-lost",
  text: "The run ended before the program did, most likely for want of memory.",
  todo: "Look for a list or a text that grows at every turn of a loop, then run it again.",
}

export const garbledAnswer: RunProblem = {
  code: "run-lost",
  text: "What came back from the run was not a recording, so it was thrown away.",
  todo: "Use only what the worksheet offers, then run it again.",
}

export const noPlace: RunProblem = {
  code: "run-unavailable",
  text: "The process in which programs run could not be started.",
  todo: "Check that the project is built and that the computer has memory to spare, then try again.",
}
