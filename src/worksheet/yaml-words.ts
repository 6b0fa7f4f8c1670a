import type { ErrorCode } from "yaml"

/** What the author meant and what to write instead: words for a fault that the YAML reader found. */
export interface FaultWords {
  readonly text: string
  readonly todo: string
}

/**
 * Words for a fault of YAML itself, in the terms of the line that the author wrote.
 *
 * @param what how messages name the block: `front matter`, `check update`
 * @param code the reader's own name of the fault; its English is for programmers, so it is the last resort
 * @param line the line it stands in
 */
export function yamlFaultWords(what: string, code: ErrorCode, message: string, line: string): FaultWords {
  const pair = /^(\s*(?:-\s+)?)([^:"'{[]+):\s+(.*)$/.exec(line)
  const quoted = pair ? `Put the text in quotes: ${pair[2]!.trim()}: ${inQuotes(pair[3]!)}` : null
  switch (code) {
    case "BLOCK_AS_IMPLICIT_KEY":
      if (quoted)
        return { text: `A line of the ${what} has a second colon, which YAML reads as a key.`, todo: quoted }
      break
    case "BAD_SCALAR_START":
      return {
        text: `A text of the ${what} begins with a sign that YAML keeps for itself.`,
        todo: quoted ?? "Put the text in quotes.",
      }
    case "TAB_AS_INDENT":
      return {
        text: `A line of the ${what} is indented with a tab.`,
        todo: "Indent with spaces: YAML does not allow tabs.",
      }
    case "BAD_INDENT":
      return {
        text: `A line of the ${what} is indented differently from the lines it belongs to.`,
        todo: "Begin keys that belong together in the same column, and close brackets in the same block.",
      }
    case "MISSING_CHAR":
      return {
        text: `Something in the ${what} is not closed: ${lower(message)}.`,
        todo: "Close the quote or the bracket, or put a text that holds one in quotes.",
      }
  }
  if (quoted && /^["'{[]/.test(pair![3]!))
    return {
      text: `A text of the ${what} goes on after its closing quote or bracket.`,
      todo: `If the sign belongs to the text, put all of it in quotes: ${pair![2]!.trim()}: ${inQuotes(pair![3]!)}`,
    }
  return {
    text: `The ${what} is not readable as YAML: ${lower(message)}.`,
    todo: "Check the spaces at the start of the line, the colon with a space after it, and quotes around text with special signs.",
  }
}

/** A text as YAML reads it back unchanged: single quotes, unless it holds some. */
function inQuotes(text: string): string {
  const bare = text.trim()
  return bare.includes("'") ? JSON.stringify(bare) : `'${bare}'`
}

function lower(message: string): string {
  const first = message.split("\n")[0]!.replace(/\.$/, "")
  return first.charAt(0).toLowerCase() + first.slice(1)
}
