import { type Extension, RangeSetBuilder } from '@codemirror/state'
import { Decoration, type DecorationSet, type EditorView, ViewPlugin, type ViewUpdate } from '@codemirror/view'

/** Gaps, rules and indents within a comment: what stands above and below must stay above and below. */
const DRAWN = /^\s*#(?:.*\S {3,}\S|.*[-+|=_]{4}| {4,}\S)/

/** Whether a line of a definition is part of a drawing in characters, which wrapping would break. */
export function isDrawn(line: string): boolean {
  return DRAWN.test(line)
}

const drawn = Decoration.line({ class: 'tx-drawn' })

function drawnIn({ state, visibleRanges }: EditorView): DecorationSet {
  const found = new RangeSetBuilder<Decoration>()
  let next = 0
  for (const { from, to } of visibleRanges) {
    for (let at = Math.max(from, next); at <= to; ) {
      const line = state.doc.lineAt(at)
      if (isDrawn(line.text)) found.add(line.from, line.from, drawn)
      at = line.to + 1
      next = at
    }
  }
  return found.finish()
}

/** Leaves the lines of such drawings whole; the text is scrolled sideways to see their ends. */
export const drawnComments: Extension = ViewPlugin.fromClass(
  class {
    lines: DecorationSet
    constructor(view: EditorView) {
      this.lines = drawnIn(view)
    }
    update({ docChanged, viewportChanged, view }: ViewUpdate): void {
      if (docChanged || viewportChanged) this.lines = drawnIn(view)
    }
  },
  { decorations: ({ lines }) => lines },
)
