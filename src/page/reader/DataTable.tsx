import type { DataBlock } from "../../worksheet/contract.ts"

/** A true minus, as typography sets it. */
const set = (n: number): string => String(n).replace("-", "\u2212")

/** Numbers given with the worksheet; each column is headed by its quantity over its unit. */
export function DataTable({ data }: { data: DataBlock }) {
  return (
    <figure class="data">
      {/* a region that scrolls can be reached by keyboard to do so */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls */}
      <section class="data-scroll" tabIndex={0} aria-label={`readings ${data.name}`}>
        <table>
          <caption>{data.name}</caption>
          <thead>
            <tr>
              {data.columns.map(column => (
                <th key={column.name} scope="col">
                  <i>{column.name}</i>
                  {column.unit !== "1" && column.unit !== "" && <span class="unit"> / {column.unit}</span>}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {data.rows.map((row, i) => (
              <tr key={i}>
                {row.map((value, j) => (
                  <td key={data.columns[j]?.name}>{set(value)}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </figure>
  )
}
