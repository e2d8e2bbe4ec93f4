import cart from '../../out-samples/clay-cart.yaml?raw'
import carts from '../../out-samples/kiln-carts.yaml?raw'
import studio from '../../out-samples/pottery-studio.yaml?raw'
import mark from '../../out-samples/studio-mark.svg?raw'
import type { DrawerAsk } from './protocol.ts'
import type { OpenedText } from './state/document.ts'

/** The sample that the page begins with. */
export const SAMPLE: OpenedText = {
  text: studio,
  file: 'pottery-studio.yaml',
  files: new Map([['studio-mark.svg', mark]]),
}

type AskOfText = Extract<DrawerAsk, { kind: 'text' }>

/** What a page that begins with the sample asks of the drawing before all else. */
export function firstAsk(): AskOfText {
  const { text, file, files } = SAMPLE
  return { kind: 'text', number: 1, source: { text, file, files: [...files] }, look: undefined, units: undefined }
}

/** Whether an ask is answered as the first one is. */
export const isFirstAsk = (ask: DrawerAsk): boolean => JSON.stringify(ask) === JSON.stringify(firstAsk())

/** All samples, with what each is. */
export const SAMPLES: readonly (readonly [words: string, sample: OpenedText])[] = [
  ['Pottery studio, nine cabinets', SAMPLE],
  ['Clay cart, in inches', { text: cart, file: 'clay-cart.yaml', files: new Map() }],
  ['Two kiln carts out of one sheet', { text: carts, file: 'kiln-carts.yaml', files: new Map() }],
]
