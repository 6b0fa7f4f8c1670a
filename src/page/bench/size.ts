import type { RefObject } from "preact"
import { useLayoutEffect, useState } from "preact/hooks"

/** The width of an element as laid out, in whole px, kept current. */
export function useWidth(ref: RefObject<HTMLElement | null>, first: number): number {
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const element = ref.current
    if (!element) return
    const measure = () => setWidth(Math.max(120, Math.floor(element.clientWidth)))
    measure()
    const watch = new ResizeObserver(measure)
    watch.observe(element)
    return () => watch.disconnect()
  }, [ref])
  return width
}
