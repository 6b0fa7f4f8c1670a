import { useRef, useState } from "preact/hooks"
import { maxAnswerFileBytes, writeAnswerFile } from "../../worksheet/answers.ts"
import { answerFileName, makeAnswerFile, type Opened, openAnswerFile } from "../keep/answerFile.ts"
import type { Student } from "../keep/device.ts"
import type { Texts } from "../keep/keeper.ts"
import { ProblemWords } from "../ProblemWords.tsx"
import { pointsOfQuestions, type Session } from "../session.ts"
import { momentWords, plural } from "../words.ts"
import { unreadWords } from "./unread.ts"

function save(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/json" }))
  const link = document.createElement("a")
  link.href = address
  link.download = name
  link.click()
  // the browser has taken the file over by the next turn; a minute is generous
  setTimeout(() => URL.revokeObjectURL(address), 60_000)
}

interface Done {
  readonly words: string
  readonly back: (() => void) | null
}

/** The answer file: out to the teacher, and in again here or on another device. */
export function HandIn({ session }: { session: Session }) {
  const { keeper, edition } = session
  const chooser = useRef<HTMLInputElement>(null)
  const [opened, setOpened] = useState<Opened | null>(null)
  const [done, setDone] = useState<Done | null>(null)
  const [nameless, setNameless] = useState(false)
  const unread = unreadWords(edition.sheet, session.state.value, session.problems.value)

  const download = (): void => {
    const student = keeper.student.peek()
    const missing =
      student.name.trim() === "" ? "student-name" : student.id.trim() === "" ? "student-id" : null
    setNameless(missing !== null)
    if (missing) {
      document.getElementById(missing)?.focus()
      return
    }
    const texts = { answers: keeper.answers.peek(), questions: keeper.questions.peek() }
    const file = makeAnswerFile(edition.sheet, student, texts, new Date())
    save(answerFileName(file), writeAnswerFile(file))
    setOpened(null)
    setDone({
      words: [unread, `${answerFileName(file)} is in your downloads. Hand in that file unchanged.`]
        .join(" ")
        .trim(),
      back: null,
    })
  }

  const take = (texts: Texts, student: Student, words: string): void => {
    const before = { answers: currentAnswers(session, texts), questions: currentQuestions(session, texts) }
    const studentBefore = keeper.student.peek()
    keeper.replace(texts, "before an answer file was opened")
    if (student.name !== "" || student.id !== "") keeper.writeStudent(student)
    setOpened(null)
    setDone({
      words,
      back: () => {
        keeper.replace(before, "from the answer file")
        keeper.writeStudent(studentBefore)
        setDone({
          words: "Back to what was here. The file's text is among the earlier texts of each blank.",
          back: null,
        })
      },
    })
  }

  const choose = async (file: File): Promise<void> => {
    setDone(null)
    const text = file.size > maxAnswerFileBytes ? "" : await file.text().catch(() => "")
    const result = openAnswerFile(edition.sheet, file.size, text)
    if (result.kind === "fits")
      take(
        result.texts,
        result.file.student,
        `Opened the answers of ${result.file.student.name || "a student without a name"}, saved ${savedWords(result.file.savedAt)}.`,
      )
    else setOpened(result)
  }

  return (
    <section class="hand-in row screen-only" aria-labelledby="hand-in-title">
      <h2 id="hand-in-title">Hand in</h2>
      <p>
        The answer file holds your name, number and everything you wrote here. Give it to your teacher as it
        is; you can also open it again, here or on another device.{" "}
        {pointsOfQuestions(edition) > 0 &&
          `The questions (${plural(pointsOfQuestions(edition), "point")}) are marked after you hand in.`}
      </p>
      {unread !== "" && <p class="hand-in-unread">{unread}</p>}
      <p class="hand-in-actions">
        <button type="button" class="word-button strong" onClick={download}>
          Download answer file
        </button>
        <button type="button" class="word-button" onClick={() => chooser.current?.click()}>
          Open an answer file
        </button>
        <input
          ref={chooser}
          type="file"
          class="unseen"
          tabIndex={-1}
          aria-label="Answer file"
          accept=".json,application/json"
          onChange={event => {
            const file = event.currentTarget.files?.[0]
            event.currentTarget.value = ""
            if (file) void choose(file)
          }}
        />
      </p>
      <div class="hand-in-said" role="status">
        {nameless && <p>Write your name and number at the head of the sheet first, then download again.</p>}
        {done && (
          <p>
            {done.words}{" "}
            {done.back && (
              <button type="button" class="word-button" onClick={done.back}>
                Back to what was here
              </button>
            )}
          </p>
        )}
        {opened && opened.kind !== "fits" && <ProblemWords problem={opened.problem} />}
        {opened?.kind === "other-edition" && (
          <button
            type="button"
            class="word-button"
            onClick={() =>
              take(
                opened.texts,
                opened.file.student,
                "Brought over what fits; please look through each blank.",
              )
            }
          >
            Bring over {plural(Object.keys(opened.texts.answers).length, "blank")}
          </button>
        )}
      </div>
    </section>
  )
}

const savedWords = (savedAt: string): string => {
  const at = Date.parse(savedAt)
  return Number.isFinite(at) ? momentWords(at) : "at an unknown time"
}

function currentAnswers(session: Session, texts: Texts): Record<string, string> {
  const typed = session.keeper.answers.peek()
  const now: Record<string, string> = {}
  for (const cell of session.edition.sheet.cells)
    for (const segment of cell.segments)
      if (segment.kind === "blank" && segment.name in texts.answers)
        now[segment.name] = typed[segment.name] ?? segment.starter
  return now
}

function currentQuestions(session: Session, texts: Texts): Record<string, string> {
  const typed = session.keeper.questions.peek()
  return Object.fromEntries(Object.keys(texts.questions).map(name => [name, typed[name] ?? ""]))
}
