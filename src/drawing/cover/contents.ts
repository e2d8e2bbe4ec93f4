import type { PieceKind } from '../../templates/index.ts'
import type { Face } from '../face.ts'
import type { Block, Cell } from './flow.ts'
import type { Tool } from './tools.ts'

/** The pages of one face of a panel. */
export interface CoverFace {
  readonly face: Face
  readonly sheets: number
  /** Kinds of what is on them, each once. */
  readonly kinds: readonly PieceKind[]
}

export interface CoverPanel {
  readonly module: string
  readonly panel: string
  /** Empty where nothing is to be marked: the panel is only cut. */
  readonly faces: readonly CoverFace[]
}

const KINDS: Readonly<Record<PieceKind, string>> = {
  face: 'whole face',
  strip: 'strips',
  repeated: 'strips, moved along',
  hardware: 'hardware',
}

/** Shares of a column: what it is, face and kind, sheets, pages. */
const SHARES = [0.36, 0.3, 0.12, 0.22] as const

function line(texts: readonly [string, string, string, string], bold = false): Cell[] {
  return texts.map((text, k) => ({ text, share: SHARES[k] ?? 0, anchor: k > 1 ? 'end' : 'start', bold, whole: k > 1 }))
}

/** Every panel once, module by module, with its pages in the file; the first page of the first panel is `first`. */
export function contentsOf(panels: readonly CoverPanel[], first: number): Block[] {
  const blocks: Block[] = [
    { kind: 'heading', text: 'Contents' },
    { kind: 'cells', cells: line(['', 'face', 'sheets', 'pages'], true), keep: true },
  ]
  let page = first
  let module: string | undefined
  for (const { module: name, panel, faces } of panels) {
    if (name !== module) {
      module = name
      blocks.push({ kind: 'cells', cells: [{ text: name, share: 1, bold: true }], keep: true, before: 0.5 })
    }
    const over = `${name}, on`
    if (faces.length === 0) blocks.push({ kind: 'cells', cells: line([panel, 'cut only', '', '']), over })
    faces.forEach(({ face, sheets, kinds }, k) => {
      const what = `${face}: ${kinds.map((kind) => KINDS[kind]).join(', ')}`
      const pages = sheets === 1 ? String(page) : `${page}–${page + sheets - 1}`
      blocks.push({
        kind: 'cells',
        cells: line([k === 0 ? panel : '', what, String(sheets), pages]),
        keep: k < faces.length - 1,
        over,
      })
      page += sheets
    })
  }
  return blocks
}

/** Every bit with what it is set to, how often, and what for. */
export function toolBlocks(tools: readonly Tool[]): Block[] {
  if (tools.length === 0) return []
  const blocks: Block[] = [{ kind: 'heading', text: 'Bits, stop collars, cuts' }]
  for (const { name, settings } of tools) {
    blocks.push({ kind: 'cells', cells: [{ text: name, share: 1, bold: true }], keep: true, before: 0.5 })
    for (const { words, count, purposes } of settings) {
      blocks.push({
        kind: 'cells',
        cells: [
          { text: words, share: 0.42 },
          { text: `${count} ×`, share: 0.12, anchor: 'end', whole: true },
          { text: purposes.join(', '), share: 0.46 },
        ],
      })
    }
  }
  return blocks
}
