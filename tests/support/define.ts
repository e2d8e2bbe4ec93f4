import { type Built, build, type DefinitionText } from '../../src/outputs/index.ts'
import type { Panel } from '../../src/panel/index.ts'
import { type Project, readDefinition, renderProblems } from '../../src/project/index.ts'
import { kept } from './kept.ts'

/** A hundred random definitions, each in two ways, and some examples beside them. */
const KEPT = 250

/** The project of a definition, or its errors as they are shown. */
const readOnce = kept(KEPT, (text): Project | string => {
  const read = readDefinition(text, 'test.yaml')
  return read.ok ? read.project : renderProblems(read.problems)
})

export const isReadable = (text: string): boolean => typeof readOnce(text) !== 'string'

/** The project of a definition that is expected to be right; fails the test with the errors when it is not. */
export function projectOf(text: string): Project {
  const read = readOnce(text)
  if (typeof read === 'string') throw new Error(read)
  return read
}

const builtOnce = kept(KEPT, (text) => build(projectOf(text)))

/** A definition that is expected to be right, worked out to the last hole. */
export function built(text: string): Built {
  return builtOnce(text)
}

/** A panel by its id; fails the test with the ids that there are. */
export function panelOf(of: Built, id: string): Panel {
  const panel = of.panels.find((one) => one.id === id)
  if (panel === undefined) throw new Error(`no panel ${id}; there are ${of.panels.map((one) => one.id).join(', ')}`)
  return panel
}

/** Stocks with round figures, so that examples can be worked by hand. */
export const ROUND_STOCK = `
storyrod: 1
stock:
  board: { thickness: 18, sheet: [2500, 1250], density: 685 }
  thin: { thickness: 6, sheet: [2500, 1250], density: 670 }
`

/** `x y` of the bores of a panel on one surface for one purpose, rounded to 0.001, in the panel's own order. */
export function places(panel: Panel, surface: string, purpose: string): string[] {
  return panel.bores
    .filter((bore) => bore.surface === surface && bore.purpose.includes(purpose))
    .map((bore) => `${Math.round(bore.at[0] * 1000) / 1000 + 0} ${Math.round(bore.at[1] * 1000) / 1000 + 0}`)
}

/** A text that has but one place, for outputs whose findings are not looked at. */
export const NO_TEXT: DefinitionText = { file: 'test.yaml', locate: () => ({ line: 1, column: 1 }) }
