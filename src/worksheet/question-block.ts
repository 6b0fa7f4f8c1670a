import type { Question, QuestionKey } from "./contract.ts"
import { suggest } from "./nearest.ts"
import { checkUnit } from "./parameters.ts"
import { setLine } from "./prose.ts"
import type { QuestionYaml } from "./schema.ts"
import { type Findings, report } from "./source.ts"

/** Turns a question's YAML into what the student sees and what only the marker has. */
export function readQuestion(
  findings: Findings,
  name: string,
  yaml: QuestionYaml,
  lineOf: (...path: string[]) => number,
): { question: Question; key: QuestionKey } | null {
  const before = findings.problems.length
  const wrong = (key: string, text: string, todo: string): void =>
    report(findings, lineOf(key), { code: "question-answer", text: `The question “${name}” ${text}`, todo })
  const choices = Object.entries(yaml.choices ?? {}).map(([key, value]) => ({
    key,
    text: String(value),
    html: setLine(String(value)).html,
  }))
  let answer: string | number | null = yaml.answer ?? null
  switch (yaml.kind) {
    case "choice": {
      if (choices.length < 2)
        wrong("choices", "is a choice with fewer than two choices.", "List them under “choices:”.")
      if (answer === null) wrong("kind", "has no “answer”.", "Name the right choice: “answer: b”.")
      else if (choices.length > 0 && !choices.some(choice => choice.key === String(answer)))
        wrong(
          "answer",
          `has the answer “${answer}”, which is none of its choices.`,
          suggest(
            String(answer),
            choices.map(choice => choice.key),
          ),
        )
      answer = answer === null ? null : String(answer)
      break
    }
    case "number":
      checkUnit(findings, lineOf("unit"), yaml.unit, `question “${name}”`)
      if (typeof answer !== "number" || !Number.isFinite(answer))
        wrong(
          "answer",
          "asks for a number, and its answer is none.",
          "Write “answer: 12.5” and the unit under “unit:”.",
        )
      break
    case "text":
      if (yaml.points > 0)
        wrong(
          "points",
          "is short text, which you read yourself, yet it has points here.",
          "Take “points” out: text is left for you to mark.",
        )
      if (answer !== null) answer = String(answer)
      break
  }
  if (yaml.kind !== "choice" && choices.length > 0)
    wrong(
      "choices",
      `is of kind “${yaml.kind}”; choices have no effect.`,
      "Take them out, or make it “kind: choice”.",
    )
  if (yaml.kind !== "number" && yaml.figures !== undefined)
    wrong(
      "figures",
      `is of kind “${yaml.kind}”; “figures” has no effect.`,
      "Take it out: only a number has significant figures.",
    )
  if (findings.problems.length > before) return null
  return {
    question: {
      name,
      kind: yaml.kind,
      ask: yaml.ask,
      askHtml: setLine(yaml.ask).html,
      choices,
      unit: yaml.kind === "number" ? yaml.unit : "1",
      points: yaml.points,
    },
    key: { name, answer, tolerance: yaml.tolerance, figures: yaml.figures ?? null, why: yaml.why },
  }
}
