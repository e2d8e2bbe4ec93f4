import cart from '../../out-samples/clay-cart.yaml?raw'
import carts from '../../out-samples/kiln-carts.yaml?raw'
import studio from '../../out-samples/pottery-studio.yaml?raw'
import mark from '../../out-samples/studio-mark.svg?raw'
import type { OpenedText } from './state/document.ts'

/** The sample that the page begins with. */
export const SAMPLE: OpenedText = {
  text: studio,
  file: 'pottery-studio.yaml',
  files: new Map([['studio-mark.svg', mark]]),
}

/** All samples, with what each is. */
export const SAMPLES: readonly (readonly [words: string, sample: OpenedText])[] = [
  ['Pottery studio, nine cabinets', SAMPLE],
  ['Clay cart, in inches', { text: cart, file: 'clay-cart.yaml', files: new Map() }],
  ['Two kiln carts out of one sheet', { text: carts, file: 'kiln-carts.yaml', files: new Map() }],
]
