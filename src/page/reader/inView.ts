import { useEffect, useState } from "preact/hooks"

/** The share of the window's height above which a listing counts as being read. */
const readingLine = 0.55

/**
 * The cell that the reader is at: the last one whose listing has come above the reading line, or the one that
 * the caret was just put in.
 */
export function useCellInView(names: readonly string[]): readonly [string, (name: string) => void] {
  const [cell, setCell] = useState(names[0] ?? "")
  useEffect(() => {
    let frame = 0
    const look = (): void => {
      frame = 0
      const line = innerHeight * readingLine
      let current = names[0] ?? ""
      for (const block of document.querySelectorAll<HTMLElement>("[data-cell]"))
        if (block.getBoundingClientRect().top < line) current = block.dataset.cell ?? current
      setCell(current)
    }
    const ask = (): void => {
      frame ||= requestAnimationFrame(look)
    }
    addEventListener("scroll", ask, { passive: true })
    addEventListener("resize", ask, { passive: true })
    return () => {
      cancelAnimationFrame(frame)
      removeEventListener("scroll", ask)
      removeEventListener("resize", ask)
    }
  }, [names])
  return [cell, setCell]
}
