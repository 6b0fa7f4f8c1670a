import type { Block } from "../../worksheet/contract.ts"
import type { Session } from "../session.ts"
import { CellBlock } from "./CellBlock.tsx"
import { DataTable } from "./DataTable.tsx"
import { HandIn } from "./HandIn.tsx"
import { Head } from "./Head.tsx"
import { QuestionBlock } from "./QuestionBlock.tsx"
import { useWideEquations } from "./wideEquations.ts"

/** Numbers within their kind, by document order. */
function numbered(blocks: readonly Block[]): readonly { readonly block: Block; readonly number: number }[] {
  const counts = new Map<string, number>()
  return blocks.map(block => {
    const number = (counts.get(block.kind) ?? 0) + 1
    counts.set(block.kind, number)
    return { block, number }
  })
}

/** The typeset half of the page. */
export function Handout({ session, onCell }: { session: Session; onCell: (name: string) => void }) {
  const { sheet } = session.edition
  useWideEquations()
  return (
    <article class="sheet">
      <Head session={session} />
      {numbered(sheet.blocks).map(({ block, number }) => (
        <Piece
          key={`${block.kind} ${number}`}
          block={block}
          number={number}
          session={session}
          onCell={onCell}
        />
      ))}
      <HandIn session={session} />
    </article>
  )
}

function Piece(props: { block: Block; number: number; session: Session; onCell: (name: string) => void }) {
  const { block, number, session, onCell } = props
  const { sheet } = session.edition
  switch (block.kind) {
    case "prose":
      return <div class="prose" dangerouslySetInnerHTML={{ __html: block.html }} />
    case "cell": {
      const cell = sheet.cells.find(candidate => candidate.name === block.name)
      return cell ? (
        <CellBlock session={session} cell={cell} number={number} onFocus={() => onCell(cell.name)} />
      ) : null
    }
    case "plot": {
      const plot = sheet.plots.find(candidate => candidate.name === block.name)
      return plot ? (
        <p class="plot-line">
          <span class="caps">Plot {number}</span> {plot.caption === "" ? plot.name : plot.caption}{" "}
          <span class="plot-where">(on the bench)</span>
        </p>
      ) : null
    }
    case "data": {
      const data = sheet.data.find(candidate => candidate.name === block.name)
      return data ? <DataTable data={data} /> : null
    }
    case "question": {
      const question = sheet.questions.find(candidate => candidate.name === block.name)
      return question ? <QuestionBlock question={question} number={number} session={session} /> : null
    }
  }
}
