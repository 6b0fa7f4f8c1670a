import "ses"
import { limitText } from "./limit-text.ts"
// must be loaded before the lock falls
import "./number-view.ts"

/**
 * Hardens the language's own objects, once, before anything else of ours runs in the place where programs run.
 * Errors keep their messages and lose their stacks; text functions that depend on the locale become plain ones.
 */
// Nobody reads stacks here, and a program that overflows its own again and again would spend its time on them.
Error.stackTraceLimit = 0
limitText()

lockdown({
  errorTaming: "safe",
  consoleTaming: "unsafe",
  errorTrapping: "none",
  unhandledRejectionTrapping: "none",
  reporting: "none",
  localeTaming: "safe",
  regExpTaming: "safe",
  overrideTaming: "moderate",
  stackFiltering: "concise",
  domainTaming: "unsafe",
})
