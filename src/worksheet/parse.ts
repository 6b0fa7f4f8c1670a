import type { CellSource } from "../cell/contract.ts"
import type { Problem } from "../cell/problem.ts"
import { parseCellFence } from "./cell-fence.ts"
import { readCheck } from "./check-block.ts"
import type {
  Block,
  Check,
  DataBlock,
  Parameter,
  PlotBlock,
  Question,
  QuestionKey,
  Scene,
  StudentSheet,
  Worksheet,
} from "./contract.ts"
import { readData } from "./data-block.ts"
import { digestOf } from "./digest.ts"
import { type Fence, splitDocument } from "./document.ts"
import { suggest } from "./nearest.ts"
import { readParameters } from "./parameters.ts"
import { setLine, setProse } from "./prose.ts"
import { readQuestion } from "./question-block.ts"
import { readScene } from "./scene-block.ts"
import { checkSchema, frontMatterSchema, plotSchema, questionSchema, sceneSchema } from "./schema.ts"
import { type Findings, hyphenated, identifier, normalise, report } from "./source.ts"
import { readYaml } from "./yaml-block.ts"

export type ParseResult =
  | { readonly ok: true; readonly worksheet: Worksheet; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] }

/** What stands behind the language word of a fence, and the language it goes with. */
const kinds: Record<string, string> = {
  cell: "ts",
  check: "yaml",
  question: "yaml",
  scene: "yaml",
  plot: "yaml",
  data: "csv",
}

interface Draft {
  blocks: Block[]
  cells: CellSource[]
  scenes: Scene[]
  plots: PlotBlock[]
  data: DataBlock[]
  questions: Question[]
  keys: QuestionKey[]
  checks: Check[]
  answers: Record<string, string>
  lines: Record<string, number>
  images: string[]
}

/**
 * Reads a worksheet file. All faults are collected, each with file, line, what is wrong and what to do;
 * a worksheet comes back only when there is none.
 *
 * @param text the file's text
 * @param file its name, for messages
 */
export function parseWorksheet(text: string, file: string): ParseResult {
  const findings: Findings = { file, problems: [] }
  const draft: Draft = {
    blocks: [],
    cells: [],
    scenes: [],
    plots: [],
    data: [],
    questions: [],
    keys: [],
    checks: [],
    answers: {},
    lines: {},
    images: [],
  }
  const document = splitDocument(findings, normalise(text))
  if (document === null) return { ok: false, problems: findings.problems }
  const front = readYaml(findings, document.frontMatter, frontMatterSchema)
  const parameters = front ? readParameters(findings, front.value.parameters, front.lineOf) : []
  for (const part of document.parts) {
    if (part.kind === "prose") addProse(findings, draft, part.text, part.line)
    else addFence(findings, draft, part.fence)
  }
  crossCheck(findings, draft, parameters)
  if (front === null || findings.problems.length > 0) return { ok: false, problems: findings.problems }
  const { title, id, version, summary, timeStep, reference } = front.value
  const lesson = front.value.lesson ?? null
  const task: Omit<StudentSheet, "digest"> = {
    id,
    title,
    version,
    summary,
    lesson,
    timeStep,
    reference,
    parameters,
    blocks: draft.blocks,
    cells: draft.cells,
    scenes: draft.scenes,
    plots: draft.plots,
    data: draft.data,
    questions: draft.questions,
    checks: draft.checks,
  }
  return {
    ok: true,
    problems: [],
    worksheet: {
      file,
      sheet: { ...task, digest: digestOf(task) },
      answers: draft.answers,
      keys: draft.keys,
      lines: draft.lines,
      images: [...new Set(draft.images)],
    },
  }
}

function addProse(findings: Findings, draft: Draft, text: string, line: number): void {
  if (text.trim() === "") return
  const prose = setProse(text)
  for (const fault of prose.faults) {
    const before = text.slice(0, Math.max(0, text.indexOf(fault.tex)))
    report(findings, line + before.split("\n").length - 1, {
      code: "equation",
      text: `The equation “${fault.tex.trim().slice(0, 60)}” cannot be set: ${fault.reason.replace(/^KaTeX parse error: /, "")}.`,
      todo: "Correct the TeX between the dollar signs; write \\$ for a plain dollar sign.",
    })
  }
  draft.images.push(...prose.images)
  draft.blocks.push({ kind: "prose", html: prose.html })
}

function addFence(findings: Findings, draft: Draft, fence: Fence): void {
  const { language, kind, name, line } = fence
  const known = Object.keys(kinds)
  if (!(kind in kinds)) {
    report(findings, line, {
      code: "unknown-kind",
      text: `The fence “${fence.info}” is of the unknown kind “${kind}”.`,
      todo: suggest(kind, known),
    })
    return
  }
  if (language !== kinds[kind]) {
    report(findings, line, {
      code: "unknown-kind",
      text: `The fence “${fence.info}” is written in “${language}”; a ${kind} is written in ${kinds[kind]}.`,
      todo: `Write “${kinds[kind]} ${kind} ${name || "NAME"}”.`,
    })
    return
  }
  const rule = kind === "cell" ? identifier : hyphenated
  if (!rule.test(name)) {
    report(findings, line, {
      code: "fence-name",
      text: name === "" ? `This ${kind} has no name.` : `“${name}” cannot name a ${kind}.`,
      todo: `Write “${language} ${kind} NAME”, the name with letters${kind === "cell" ? "" : ", hyphens"} and digits, a letter first.`,
    })
    return
  }
  const slot = `${kind === "question" ? "check" : kind}:${name}`
  const taken = draft.lines[slot]
  if (taken !== undefined) {
    report(findings, line, {
      code: "duplicate-name",
      text: `The name “${name}” is taken by the ${kind === "check" || kind === "question" ? "check or question" : kind} at line ${taken}.`,
      todo: "Give each of them a name of its own.",
    })
    return
  }
  draft.lines[slot] = line
  const block = { text: fence.body, line: line + 1, what: `${kind} “${name}”` }
  switch (kind) {
    case "cell": {
      const parts = parseCellFence(findings, fence.body, line + 1)
      for (const [blank, at] of Object.entries(parts.lines)) {
        const other = draft.lines[`blank:${blank}`]
        if (other !== undefined)
          report(findings, at, {
            code: "duplicate-name",
            text: `There are two blanks named “${blank}” (the other at line ${other}).`,
            todo: "Give each blank of the worksheet a name of its own.",
          })
        draft.lines[`blank:${blank}`] = at
      }
      Object.assign(draft.answers, parts.answers)
      draft.cells.push({ name, line: line + 1, segments: parts.segments })
      draft.blocks.push({ kind: "cell", name })
      return
    }
    case "check": {
      const read = readYaml(findings, block, checkSchema)
      const check = read && readCheck(findings, name, read.value, read.lineOf)
      if (check) draft.checks.push(check)
      return
    }
    case "question": {
      const read = readYaml(findings, block, questionSchema)
      const question = read && readQuestion(findings, name, read.value, read.lineOf)
      if (!question) return
      draft.questions.push(question.question)
      draft.keys.push(question.key)
      draft.blocks.push({ kind: "question", name })
      return
    }
    case "scene": {
      const read = readYaml(findings, block, sceneSchema)
      if (!read) return
      const other = draft.lines[`scene-of:${read.value.cell}`]
      if (other !== undefined) {
        report(findings, read.lineOf("cell"), {
          code: "duplicate-name",
          text: `The cell “${read.value.cell}” has a scene already, at line ${other}.`,
          todo: "Draw everything in one scene block.",
        })
        return
      }
      draft.lines[`scene-of:${read.value.cell}`] = line
      const scene = readScene(findings, name, read.value, read.lineOf)
      if (scene) draft.scenes.push(scene)
      return
    }
    case "plot": {
      const read = readYaml(findings, block, plotSchema)
      if (!read) return
      draft.plots.push({ name, ...read.value, caption: setLine(read.value.caption).html })
      draft.blocks.push({ kind: "plot", name })
      return
    }
    case "data": {
      const table = readData(findings, name, fence.body, line + 1)
      if (!table) return
      draft.data.push(table)
      draft.blocks.push({ kind: "data", name })
      return
    }
  }
}

/** What no single block can know: cells that are named must exist, a worksheet needs a cell, names must not collide. */
function crossCheck(findings: Findings, draft: Draft, parameters: readonly Parameter[]): void {
  const cells = draft.cells.map(cell => cell.name)
  if (cells.length === 0 && !findings.problems.some(p => p.code === "unknown-kind"))
    report(findings, 1, {
      code: "no-cell",
      text: "The worksheet has no cell, so nothing can run.",
      todo: "Add a fence ```ts cell NAME with the program.",
    })
  for (const [owner, list] of [
    ["check", draft.checks],
    ["plot", draft.plots],
    ["scene", draft.scenes],
  ] as const) {
    for (const item of list) {
      if (cells.includes(item.cell)) continue
      const name = "name" in item ? item.name : ""
      report(findings, draft.lines[owner === "scene" ? `scene-of:${item.cell}` : `${owner}:${name}`] ?? 1, {
        code: "unknown-cell",
        text: `The ${owner}${name ? ` “${name}”` : ""} belongs to a cell “${item.cell}”, which is not there.`,
        todo: suggest(item.cell, cells),
      })
    }
  }
  for (const parameter of parameters)
    if (cells.includes(parameter.name))
      report(findings, draft.lines[`cell:${parameter.name}`] ?? 1, {
        code: "duplicate-name",
        text: `“${parameter.name}” names a parameter and a cell.`,
        todo: "Rename one of them.",
      })
}
