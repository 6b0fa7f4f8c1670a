import type { ComponentChildren } from "preact"
import { useEffect, useRef, useState } from "preact/hooks"
import { drawerOpen, keepDrawer } from "./drawer-memory.ts"

/** A part of the bench that opens and shuts, and is found as it was left. Shut, it costs nothing: its content is not drawn. */
export function Drawer({
  sheet,
  name,
  title,
  note = "",
  open: usual,
  calls = 0,
  children,
}: {
  sheet: string
  name: string
  title: string
  note?: string
  open: boolean
  /** counts what was put into it from elsewhere: with each more it opens, so that it is seen */
  calls?: number
  children: () => ComponentChildren
}) {
  const [open, setOpen] = useState(() => drawerOpen(sheet, name, usual))
  const before = useRef(calls)
  useEffect(() => {
    if (calls > before.current) setOpen(true)
    before.current = calls
  }, [calls])
  return (
    <details
      class={`bn-drawer bn-drawer-${name}`}
      open={open}
      onToggle={event => {
        const now = event.currentTarget.open
        if (now === open) return
        setOpen(now)
        keepDrawer(sheet, name, now)
      }}
    >
      <summary>
        <span class="bn-drawer-title">{title}</span>
        {note && <span class="bn-drawer-note">{note}</span>}
      </summary>
      {open && <div class="bn-drawer-body">{children()}</div>}
    </details>
  )
}
