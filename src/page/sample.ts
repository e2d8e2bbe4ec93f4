import text from '../../out-samples/pottery-studio.yaml?raw'
import mark from '../../out-samples/studio-mark.svg?raw'
import type { OpenedText } from './state/document.ts'

/** The sample that the page begins with. */
export const SAMPLE: OpenedText = { text, file: 'pottery-studio.yaml', files: new Map([['studio-mark.svg', mark]]) }
