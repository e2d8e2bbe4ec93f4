import { check } from '../../../src/checks/index.ts'
import type { Built } from '../../../src/outputs/index.ts'
import type { Panel } from '../../../src/panel/index.ts'
import { built, panelOf } from '../../support/define.ts'

/** A definition worked out, one of its panels changed behind the program's back, and checked again. */
export function tampered(text: string, id: string, change: (panel: Panel) => Panel): () => Built {
  return () => {
    const of = built(text)
    const changed = change(panelOf(of, id))
    const panels = of.panels.map((panel) => (panel.id === id ? changed : panel))
    return { ...of, panels, findings: check(of.project, of.assembly, panels) }
  }
}
