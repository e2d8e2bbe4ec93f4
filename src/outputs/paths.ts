import { type Face, facesDrawn } from '../drawing/index.ts'
import type { Panel } from '../panel/index.ts'

/** Files of one panel, relative to the output folder, with forward slashes. */
export interface PanelFiles {
  readonly svg: readonly string[]
  readonly dxf: readonly string[]
  readonly pdf: readonly string[]
}

/** `svg/glaze-store/left-side-a.svg`; module and panel keys are safe as file names by construction. */
export function facePath(kind: keyof PanelFiles, panel: Panel, face: Face): string {
  const folder = kind === 'pdf' ? 'templates' : kind
  return `${folder}/${panel.module}/${panel.key}-${face.toLowerCase()}.${kind}`
}

/** All files of a panel. */
export function filesOf(panel: Panel): PanelFiles {
  const faces = facesDrawn(panel)
  const of = (kind: keyof PanelFiles): string[] => faces.map((face) => facePath(kind, panel, face))
  return { svg: of('svg'), dxf: of('dxf'), pdf: of('pdf') }
}
