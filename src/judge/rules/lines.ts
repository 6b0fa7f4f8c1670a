import { type BlankWords, namesThing } from "../../cell/blank-words.ts"
import { type Asked, type Finding, found } from "../finding.ts"
import { listWords } from "./list-words.ts"

const notLooked = found({ met: false, wrong: "The lines of this answer could not be looked at." })

/** The units run raises no alarm in the check's cell. */
export function unitsAgree({ check, looked }: Asked): Finding {
  if (!looked) return notLooked
  const alarms = looked.units.filter(problem => problem.where?.cell === check.cell)
  const [first] = alarms
  if (first === undefined) return found({ met: true, right: "The units of all lines agree." })
  const where = first.where === undefined ? "" : `In line ${first.where.line} of “${check.cell}”: `
  return found({ met: false, wrong: `${where}${first.text}`, look: first.todo, ratio: 1 + alarms.length })
}

/** The lines of the cell's blanks name all of these things. */
export function uses({ check, looked }: Asked, names: readonly string[]): Finding {
  const words = looked?.words[check.cell]
  if (words === undefined) return notLooked
  const lost = names.filter(name => !namesThing(words, name))
  return lost.length === 0
    ? found({ met: true, right: `Your lines use ${list(names)}.` })
    : found({
        met: false,
        wrong: `Your lines do not use ${list(lost)}, which this sheet asks for.`,
        ratio: 2,
      })
}

/** … or none of these; what the lines define under such a name is the student's own and not the thing. */
export function avoids({ check, looked }: Asked, names: readonly string[]): Finding {
  const words = looked?.words[check.cell]
  if (words === undefined) return notLooked
  const used = names.filter(name => namesThing(words, name) && !defines(words, name))
  return used.length === 0
    ? found({ met: true, right: `Your lines do without ${list(names)}.` })
    : found({
        met: false,
        wrong: `Your lines use ${list(used)}, which this sheet asks to do without.`,
        ratio: 2,
      })
}

const defines = ({ own, read }: BlankWords, name: string): boolean =>
  own.includes(name) && !read.includes(`.${name}`)

const list = (names: readonly string[]): string => listWords(names.map(name => `“${name}”`))
