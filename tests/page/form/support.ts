import fc from 'fast-check'
import { layOutDefinition } from '../../../src/outputs/index.ts'
import {
  applyEdits,
  type Data,
  type Edit,
  type Problem,
  readDefinition,
  renderProblems,
} from '../../../src/project/index.ts'
import { anyDefinition } from '../../support/random.ts'
import { sampleStems, sampleText } from '../../support/samples.ts'

/** Random definitions, and the samples among them. */
export const definitions: fc.Arbitrary<string> = fc.oneof(
  { arbitrary: anyDefinition, weight: 4 },
  { arbitrary: fc.constantFrom(...sampleStems.map(sampleText)), weight: 1 },
)

/** Of the samples; what they say does not matter to a form. */
export const FILES = new Map([
  ['studio-mark.svg', '<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 0H9V9Z"/></svg>'],
])

/** What a definition says; fails the test where it is no YAML. */
export function dataOf(text: string): Data {
  const read = readDefinition(text, 'test.yaml', FILES)
  if (read.data === undefined) throw new Error(read.ok ? 'no data' : renderProblems(read.problems))
  return read.data
}

export function laidOut(text: string) {
  const opened = layOutDefinition(text, 'test.yaml', FILES)
  if (!opened.ok) throw new Error(renderProblems(opened.problems))
  return opened.laid
}

export function changed(
  text: string,
  edits: readonly Edit[],
): { text: string; data: Data; problems: readonly Problem[] } {
  const next = applyEdits(text, edits)
  const read = readDefinition(next, 'test.yaml', FILES)
  return { text: next, data: dataOf(next), problems: read.ok ? [] : read.problems }
}
