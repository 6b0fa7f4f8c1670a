import {
  Annotation,
  EditorState,
  type Extension,
  StateEffect,
  StateField,
  type Transaction,
  type TransactionSpec,
} from "@codemirror/state"
import { clipEdit, followRegions, type Replacement } from "./clip.ts"
import type { Region } from "./listing.ts"

/** Marks a change that the page makes itself, inside a region: loading, putting back, another window's text. */
export const byPage = Annotation.define<boolean>()

/** Sent with nothing changed when an edit fell on given lines. */
export const refusedEdit = StateEffect.define<null>()

/** Where a listing's blanks are now. */
export const regionsField = StateField.define<readonly Region[]>({
  create: () => [],
  update: (regions, transaction) =>
    transaction.docChanged
      ? followRegions(regions, (position, side) => transaction.changes.mapPos(position, side))
      : regions,
})

function editOf(transaction: Transaction): Replacement[] {
  const edit: Replacement[] = []
  transaction.changes.iterChanges((from, to, _fromB, _toB, inserted) => {
    edit.push({ from, to, insert: inserted.toString() })
  })
  return edit
}

const filter = EditorState.transactionFilter.of(
  (transaction): TransactionSpec | readonly TransactionSpec[] => {
    if (!transaction.docChanged || transaction.annotation(byPage)) return transaction
    if (transaction.isUserEvent("undo") || transaction.isUserEvent("redo")) return transaction
    const regions = transaction.startState.field(regionsField)
    const edit = editOf(transaction)
    const whole = transaction.isUserEvent("move") || transaction.isUserEvent("input.copyline")
    const clipped = clipEdit(transaction.startState.doc.toString(), regions, edit, whole)
    const same =
      clipped.changes.length === edit.length &&
      clipped.changes.every((change, i) => {
        const was = edit[i]!
        return change.from === was.from && change.to === was.to && change.insert === was.insert
      })
    if (same) return transaction
    const effects = clipped.refused ? [refusedEdit.of(null)] : []
    if (clipped.changes.length === 0) return { effects }
    const changes = transaction.startState.changes([...clipped.changes])
    const first = clipped.changes[0]!
    return {
      changes,
      effects,
      selection: { anchor: changes.mapPos(first.from, -1) + first.insert.length },
      scrollIntoView: true,
      userEvent: transaction.isUserEvent("delete") ? "delete" : "input",
    }
  },
)

/** Locks everything outside the given regions; caret, selection and copying pass freely. */
export function lockGiven(regions: readonly Region[]): Extension {
  return [regionsField.init(() => regions), filter]
}

/** The text of each blank as it stands. */
export function textsOf(state: EditorState): Record<string, string> {
  const texts: Record<string, string> = {}
  for (const region of state.field(regionsField)) texts[region.name] = state.sliceDoc(region.from, region.to)
  return texts
}
