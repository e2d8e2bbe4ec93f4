import { bench, describe } from 'vitest'
import { type LayoutKeeper, layOutDefinition, layoutKeeper } from '../../src/outputs/index.ts'
import { sampleFiles, sampleText } from '../support/samples.ts'
import { workshopText } from '../support/workshop.ts'

// Question: how much of the time that a definition takes to be laid out is left when one digit of one module has changed?
// The aim is a tenth, so that the drawing follows the typing. Ratios of two figures from one run; no time is asserted.
const STUDIO = sampleText('pottery-studio')
const WORKSHOP = workshopText(200)

/** A width of one module, and the same with another last digit, in turn: as one types. */
function typing(text: string, width: string): () => string {
  const texts = [text, text.replace(`width: ${width}`, `width: ${width.slice(0, -1)}3`)]
  if (texts[0] === texts[1]) throw new Error(`no module is ${width} wide`)
  let k = 0
  return () => texts[++k % 2] ?? text
}

function layOutNext(keeper: LayoutKeeper, next: () => string): void {
  const laid = keeper(next(), 'bench.yaml', sampleFiles)
  if (!laid.ok || laid.laid.panels.length < 100) throw new Error('too little was laid out')
}

describe('the pottery studio, a digit of one module changed', () => {
  const [again, afresh] = [typing(STUDIO, '900'), typing(STUDIO, '900')]
  const keeper = layoutKeeper()
  bench('by a keeper', () => layOutNext(keeper, again))
  bench('afresh', () => layOutNext(layOutDefinition, afresh))
})

describe('200 modules, a digit of one changed', () => {
  const [again, afresh] = [typing(WORKSHOP, '700'), typing(WORKSHOP, '700')]
  const keeper = layoutKeeper()
  bench('by a keeper', () => layOutNext(keeper, again))
  bench('afresh', () => layOutNext(layOutDefinition, afresh), { iterations: 3, warmupIterations: 1 })
})
