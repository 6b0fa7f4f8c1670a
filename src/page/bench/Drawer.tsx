import type { ComponentChildren } from "preact"
import { useState } from "preact/hooks"
import { drawerOpen, keepDrawer } from "./drawer-memory.ts"

/** A part of the bench that opens and shuts, and is found as it was left. Shut, it costs nothing: its content is not drawn. */
export function Drawer({
  sheet,
  name,
  title,
  note = "",
  open: usual,
  children,
}: {
  sheet: string
  name: string
  title: string
  note?: string
  open: boolean
  children: () => ComponentChildren
}) {
  const [open, setOpen] = useState(() => drawerOpen(sheet, name, usual))
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
