import ts from "typescript"

/** An operator that is a call in the checking text. */
export interface SetOperator {
  readonly sign: string
  /** the sign in the program's text */
  readonly from: number
  readonly to: number
}

/** The program as the checker reads it, and the ways between it and what the student typed. */
export interface CheckingText {
  readonly text: string
  /** by the place in the checking text where the call begins */
  readonly operators: ReadonlyMap<number, SetOperator>
  /** a stretch of the checking text as one of the program's text; null for what is none of it */
  toSource(from: number, to: number): { readonly from: number; readonly to: number } | null
  /** an offset of the program's text in the checking text; behind a word it stays behind it */
  toChecking(offset: number): number
}

const called: ReadonlyMap<ts.SyntaxKind, string> = new Map([
  [ts.SyntaxKind.PlusToken, "add"],
  [ts.SyntaxKind.MinusToken, "subtract"],
  [ts.SyntaxKind.AsteriskToken, "multiply"],
  [ts.SyntaxKind.SlashToken, "divide"],
  [ts.SyntaxKind.PlusEqualsToken, "add"],
  [ts.SyntaxKind.MinusEqualsToken, "subtract"],
  [ts.SyntaxKind.AsteriskEqualsToken, "multiply"],
  [ts.SyntaxKind.SlashEqualsToken, "divide"],
])

/** What is put in place of a stretch of the program's text. */
interface Edit {
  readonly from: number
  readonly to: number
  readonly text: string
  /** set where the text begins a call */
  readonly operator?: { readonly behind: number; readonly mark: SetOperator }
  /** a stretch of the program that `text` holds a second time, and how far behind its beginning */
  readonly again?: { readonly behind: number; readonly from: number; readonly to: number }
}

/**
 * Sets the operators that vectors have as calls of typed functions (operators-text.ts), so that the checker knows what
 * `r + v * dt` is; everything else stays as typed. `p += F * dt` becomes `p = add(p, F * dt)`: nothing is run, so what is read
 * twice does no harm. The tree is the checker's own, which reads on behind a fault: a half-typed line is set too.
 *
 * @param source the program's text
 * @param prefix begins every name that the text must not hold itself
 * @param head text before the program
 * @param tail text behind it
 */
export function checkingText(source: string, prefix: string, head: string, tail: string): CheckingText {
  const file = ts.createSourceFile("source.ts", source, ts.ScriptTarget.ES2023, false, ts.ScriptKind.TS)
  const opens: Edit[] = []
  const closes: Edit[] = []

  const visit = (node: ts.Node): void => {
    if (ts.isBinaryExpression(node)) operator(node)
    else if (ts.isPrefixUnaryExpression(node) && node.operator === ts.SyntaxKind.MinusToken) minus(node)
    ts.forEachChild(node, visit)
  }
  const operator = ({ left, operatorToken, right }: ts.BinaryExpression): void => {
    const name = called.get(operatorToken.kind)
    if (name === undefined) return
    const from = operatorToken.getStart(file)
    const to = operatorToken.end
    const sign = source.slice(from, to)
    const mark = { sign, from, to }
    const call = `${prefix}${name}(`
    if (sign.length === 2) {
      const start = left.getStart(file)
      const text = `= ${call}`
      opens.push({
        from,
        to,
        text: `${text}${source.slice(start, left.end)},`,
        operator: { behind: 2, mark },
        again: { behind: text.length, from: start, to: left.end },
      })
    } else {
      const at = left.getStart(file)
      opens.push({ from: at, to: at, text: call, operator: { behind: 0, mark } })
      opens.push({ from, to, text: "," })
    }
    closes.push({ from: right.end, to: right.end, text: ")" })
  }
  const minus = (node: ts.PrefixUnaryExpression): void => {
    if (ts.isNumericLiteral(node.operand) || ts.isBigIntLiteral(node.operand)) return
    const from = node.getStart(file)
    const mark = { sign: "-", from, to: from + 1 }
    opens.push({ from, to: from + 1, text: `${prefix}negate(`, operator: { behind: 0, mark } })
    closes.push({ from: node.operand.end, to: node.operand.end, text: ")" })
  }
  visit(file)
  // outer calls open first and close last; what closes at a place closes before anything opens there
  const edits = [...closes.reverse(), ...opens].sort((a, b) => a.from - b.from || a.to - b.to)
  return applied(source, edits, head, tail)
}

/** A stretch of the checking text that is a stretch of the program's own, letter for letter. */
interface Copied {
  readonly at: number
  readonly from: number
  readonly length: number
}

function applied(source: string, edits: readonly Edit[], head: string, tail: string): CheckingText {
  const parts = [head]
  const all: Copied[] = []
  const first: Copied[] = []
  const operators = new Map<number, SetOperator>()
  let length = head.length
  let done = 0
  const copy = (to: number): void => {
    if (to <= done) return
    const one = { at: length, from: done, length: to - done }
    all.push(one)
    first.push(one)
    parts.push(source.slice(done, to))
    length += one.length
    done = to
  }
  for (const { from, to, text, operator, again } of edits) {
    copy(from)
    if (operator) operators.set(length + operator.behind, operator.mark)
    if (again) all.push({ at: length + again.behind, from: again.from, length: again.to - again.from })
    parts.push(text)
    length += text.length
    done = Math.max(done, to)
  }
  copy(source.length)
  return { text: parts.join("") + tail, operators, ...ways(all, first, length) }
}

function ways(
  all: readonly Copied[],
  first: readonly Copied[],
  end: number,
): Pick<CheckingText, "toSource" | "toChecking"> {
  /** The last stretch that begins at or before the place. */
  const lastBefore = (at: number, list: readonly Copied[], key: "at" | "from"): number => {
    let low = 0
    let high = list.length
    while (low < high) {
      const middle = (low + high) >> 1
      if (list[middle]![key] <= at) low = middle + 1
      else high = middle
    }
    return low - 1
  }
  return {
    toSource(from, to) {
      const start = all[0]?.at ?? end
      if (all.length === 0 || from < start || from > end) return null
      const i = lastBefore(from, all, "at")
      const inside = all[i]!
      const begin =
        from < inside.at + inside.length || i + 1 >= all.length
          ? inside.from + Math.min(from - inside.at, inside.length)
          : all[i + 1]!.from
      const j = lastBefore(Math.max(to - 1, from), all, "at")
      const last = all[j]!
      const stop = last.from + Math.min(to - last.at, last.length)
      return { from: begin, to: Math.max(begin, stop) }
    },
    toChecking(offset) {
      if (first.length === 0) return end
      // behind a word belongs to the word
      const i = Math.max(0, lastBefore(offset - 1, first, "from"))
      const one = first[i]!
      return one.at + Math.min(Math.max(0, offset - one.from), one.length)
    },
  }
}
