import { lazy, Suspense } from "preact/compat"
import { worksheetOpen } from "./address.ts"
import { ShelfView } from "./shelf/ShelfView.tsx"

const loadReader = () => import("./reader/Reader.tsx").then(module => ({ default: module.Reader }))
const Reader = lazy(loadReader)

/** The shelf, or the worksheet that the address names. */
export function App() {
  const id = worksheetOpen.value
  if (id === null) return <ShelfView />
  return (
    <Suspense fallback={<p class="waiting">Opening the worksheet …</p>}>
      <Reader key={id} id={id} />
    </Suspense>
  )
}
