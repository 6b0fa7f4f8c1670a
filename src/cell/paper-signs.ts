/** A stretch of text with what is wrong with it and what to do. */
export interface PaperSign {
  readonly from: number
  readonly to: number
  readonly text: string
  readonly todo: string
}

const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹"
const lowered = "₀₁₂₃₄₅₆₇₈₉"

/** What stands for a sign of paper, book or another keyboard in a program. */
const keys: readonly (readonly [signs: string, todo: string])[] = [
  ["·×⋅∙•∗✕⨯", "For a product write the * sign, as in 2 * t."],
  ["−–—‐‒", "For minus write the - sign of the keyboard."],
  ["÷∕⁄", "For a quotient write the / sign."],
  ["√", "For a square root write Math.sqrt( )."],
  ["½", "Write 0.5, or (1 / 2)."],
  ["¼", "Write 0.25, or (1 / 4)."],
  ["¾", "Write 0.75, or (3 / 4)."],
  ["≤", "For at most write <=."],
  ["≥", "For at least write >=."],
  ["≠", "For not equal write !==."],
  ["“”„«»", 'Put a text between the straight quotes " of the keyboard.'],
  ["‘’‚´", "Put a text between the straight quotes ' of the keyboard."],
  ["°", "Angles are in radians here: multiply the degrees by Math.PI / 180."],
]

/** A sign of formulas on paper that no program can hold, with the key to type instead; null if there is none at the place. */
export function paperSign(text: string, at: number): PaperSign | null {
  const sign = text[at] ?? ""
  const said = (from: number, to: number, todo: string): PaperSign => ({
    from,
    to,
    text: `The sign ${text.slice(at, to)} is used on paper; a program cannot hold it.`,
    todo,
  })
  const small = raised.includes(sign) ? raised : lowered.includes(sign) ? lowered : ""
  if (sign !== "" && small !== "") {
    let to = at
    while (to < text.length && small.includes(text[to]!)) to++
    const number = [...text.slice(at, to)].map(one => small.indexOf(one)).join("")
    const name = /[\p{ID_Continue}$.]*$/u.exec(text.slice(Math.max(0, at - 60), at))![0]
    if (small === lowered)
      return said(at - name.length, to, `Write the figure of a name at full size: ${name || "p"}${number}.`)
    if (number === "2" && name !== "")
      return said(at, to, `For a square write ${name} * ${name}, or ${name} ** 2.`)
    return said(at, to, `For a power write ** and the number${name && `: ${name} ** ${number}`}.`)
  }
  const known = keys.find(([signs]) => sign !== "" && signs.includes(sign))
  return known ? said(at, at + 1, known[1]) : null
}

/** Of two whole numbers with a comma between them, as it was written: 0,5. */
export const decimalComma = (seen: string): { readonly text: string; readonly todo: string } => ({
  text: `The comma in ${seen} does not make one number of it.`,
  todo: `Write the number with a point: ${seen.replace(",", ".")}.`,
})

/** A name that was meant as a product, for a raised dot may stand in a name: `k·y`. Null for any other name. */
export function dottedName(name: string): { readonly text: string; readonly todo: string } | null {
  if (!name.includes("·")) return null
  return {
    text: `${name} is read as one name: the sign · joins its letters.`,
    todo: `For a product write the * sign: ${name.split("·").filter(Boolean).join(" * ")}.`,
  }
}
