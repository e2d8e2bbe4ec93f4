import cart from '../../out-samples/clay-cart.yaml?raw'
import carts from '../../out-samples/kiln-carts.yaml?raw'
import studio from '../../out-samples/pottery-studio.yaml?raw'
import mark from '../../out-samples/studio-mark.svg?raw'
import type { OpenedText } from './state/document.ts'

/**
 * A sample in the words of the page, which draws it by itself: the line for a terminal is another. There are as many lines
 * as in the file, so that the findings name the same ones.
 */
const onThePage = (text: string): string =>
  text.replace(/^# Draw it with:.*$/m, '# Change what you like, here or in the form: the drawing follows.')

/** The sample that the page begins with. */
export const SAMPLE: OpenedText = {
  text: onThePage(studio),
  file: 'pottery-studio.yaml',
  files: new Map([['studio-mark.svg', mark]]),
}

/** All samples, with what each is. */
export const SAMPLES: readonly (readonly [words: string, sample: OpenedText])[] = [
  ['Pottery studio, nine cabinets', SAMPLE],
  ['Clay cart, in inches', { text: onThePage(cart), file: 'clay-cart.yaml', files: new Map() }],
  ['Two kiln carts out of one sheet', { text: onThePage(carts), file: 'kiln-carts.yaml', files: new Map() }],
]
