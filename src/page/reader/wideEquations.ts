import { useEffect } from "preact/hooks"

/** Equations and set lines wider than the column scroll sideways; those, and only those, can be reached by keyboard to do so. */
export function useWideEquations(): void {
  useEffect(() => {
    const equations = [...document.querySelectorAll<HTMLElement>(".equation .katex-display, .prose pre")]
    const look = (): void => {
      for (const equation of equations) {
        if (equation.scrollWidth > equation.clientWidth + 1) {
          equation.tabIndex = 0
          equation.setAttribute("role", "group")
          equation.setAttribute("aria-label", equation.tagName === "PRE" ? "wide line" : "wide equation")
        } else for (const name of ["tabindex", "role", "aria-label"]) equation.removeAttribute(name)
      }
    }
    const watch = new ResizeObserver(look)
    for (const equation of equations) watch.observe(equation)
    void document.fonts.ready.then(look)
    return () => watch.disconnect()
  }, [])
}
