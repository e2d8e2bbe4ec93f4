import {
  acceptCompletion,
  autocompletion,
  type Completion,
  type CompletionContext,
  type CompletionResult,
  completionKeymap,
  pickedCompletion,
  startCompletion,
} from '@codemirror/autocomplete'
import { defaultKeymap, historyKeymap, indentWithTab } from '@codemirror/commands'
import { yaml } from '@codemirror/lang-yaml'
import { bracketMatching, HighlightStyle, indentOnInput, indentService, syntaxHighlighting } from '@codemirror/language'
import { lintKeymap } from '@codemirror/lint'
import { highlightSelectionMatches, search, searchKeymap } from '@codemirror/search'
import type { EditorState, Extension } from '@codemirror/state'
import {
  drawSelection,
  EditorView,
  highlightActiveLine,
  highlightSpecialChars,
  hoverTooltip,
  keymap,
  lineNumbers,
  type Tooltip,
} from '@codemirror/view'
import { tags } from '@lezer/highlight'
import { drawnComments } from './drawn-comments.ts'
import { type Explanation, explanationAt } from './explain.ts'
import { namesIn, pathAt } from './path-at.ts'
import { type Suggestion, suggestionsAt } from './suggest.ts'
import { isFilledBelow, marginOf, takingOf } from './taking.ts'

/** The element that says how the editor is left by the keyboard. */
export const HELP_ID = 'text-help'

const paper = HighlightStyle.define([
  { tag: [tags.propertyName, tags.definition(tags.propertyName)], class: 'tx-key' },
  { tag: [tags.content, tags.string, tags.literal], class: 'tx-value' },
  { tag: [tags.comment, tags.lineComment], class: 'tx-comment' },
  { tag: [tags.labelName, tags.typeName, tags.meta], class: 'tx-name' },
  { tag: [tags.separator, tags.punctuation, tags.squareBracket, tags.brace], class: 'tx-mark' },
])

/** Everything that the text editor does, apart from what the page tells it. */
export function textExtensions(): readonly Extension[] {
  return [
    lineNumbers(),
    highlightSpecialChars(),
    drawSelection(),
    highlightActiveLine(),
    bracketMatching(),
    indentOnInput(),
    highlightSelectionMatches(),
    EditorView.lineWrapping,
    drawnComments,
    yaml(),
    belowKeys,
    syntaxHighlighting(paper),
    search({ top: true }),
    autocompletion({ override: [complete], icons: false, activateOnCompletion: ({ type }) => type === 'key' }),
    hoverTooltip(hover),
    EditorView.contentAttributes.of({
      'aria-label': 'Definition',
      'aria-describedby': HELP_ID,
      spellcheck: 'false',
      // What can be edited takes the keyboard anyway; said aloud for those tools that look for it here.
      tabindex: '0',
    }),
    keymap.of([
      { key: 'Tab', run: acceptCompletion },
      ...completionKeymap,
      ...lintKeymap,
      ...searchKeymap,
      ...historyKeymap,
      ...defaultKeymap,
      indentWithTab,
    ]),
  ]
}

/** A new line below a key that has nothing behind it is indented. */
const belowKeys = indentService.of((context, at) => {
  const before = context.state.doc.lineAt(Math.max(0, at - 1))
  const line = at > before.to ? before : context.state.doc.lineAt(at)
  const above = /^(?:\s|- )*[^\s#-].*?:[ \t]*(?:#.*)?$/.exec(line.text.slice(0, Math.max(0, at - line.from)))
  const first = /[^\s-]/.exec(line.text)
  return above === null || first === null ? undefined : first.index + context.unit
})

function complete({ state, pos, explicit }: CompletionContext): CompletionResult | null {
  const text = state.doc.toString()
  const here = pathAt(text, pos)
  if (here === undefined || (!explicit && here.word === '' && !isOffered(state, pos))) return null
  if (isFilledBelow(text, here)) return null
  const found = suggestionsAt(here, () => namesIn(text), marginOf(text, here.from))
  const typed = text.slice(here.from, pos)
  // What is typed to its end needs no help, and the next Enter is a new line.
  if (!explicit && found.some(({ label }) => label === typed)) return null
  const options = found.map((one, i) => optionOf(one, -i))
  return options.length === 0 ? null : { from: here.from, to: here.to, options }
}

/** Behind a key that has just been put in. */
function isOffered(state: EditorState, pos: number): boolean {
  return /: $/.test(state.sliceDoc(Math.max(0, pos - 2), pos)) && state.selection.main.empty
}

function optionOf(one: Suggestion, boost: number): Completion {
  const { label, kind, about, text } = one
  return {
    label,
    type: kind,
    apply: (view, completion) => take(view, completion, one),
    // The order of the schema, where the typed letters fit equally well.
    boost: Math.max(-99, boost),
    // A word and a key may have one name: dowel, or what is said of dowels.
    ...(kind === 'word' || (kind === 'key' && text.startsWith(label)) ? {} : { detail: kind }),
    ...(about !== '' && { info: about }),
  }
}

function take(view: EditorView, completion: Completion, one: Suggestion): void {
  const text = view.state.doc.toString()
  const here = pathAt(text, view.state.selection.main.head)
  if (here === undefined) return
  const { changes, cursor } = takingOf(text, here, one)
  view.dispatch({
    changes,
    selection: { anchor: cursor },
    annotations: pickedCompletion.of(completion),
    userEvent: 'input.complete',
    scrollIntoView: true,
  })
}

function hover(view: EditorView, pos: number): Tooltip | null {
  const here = pathAt(view.state.doc.toString(), pos)
  const explained = here && here.word !== '' ? explanationAt(here) : undefined
  if (here === undefined || explained === undefined) return null
  return { pos: here.from, end: here.to, above: true, create: () => ({ dom: explanationBox(explained) }) }
}

function explanationBox({ key, about, accepts }: Explanation): HTMLElement {
  const box = document.createElement('div')
  box.className = 'tx-explained'
  for (const [name, words] of [
    ['strong', key],
    ['p', about],
    ['p', accepts === '' ? '' : `Write ${accepts}`],
  ] as const) {
    if (words === '') continue
    const part = document.createElement(name)
    part.textContent = words
    box.append(part)
  }
  return box
}

export { startCompletion }
