import { formatMm, parseLength } from '../../length/index.ts'
import { applyEdits, BAR_MM, believable, type EditValue, readOutputs } from '../../project/index.ts'
import type { Page } from '../state/page.ts'

/** A number alone is in the definition's unit, so it is written as one; all else as it was typed. Nothing: the default. */
export function typedLength(typed: string): EditValue | undefined {
  const text = typed.trim()
  if (text === '') return undefined
  return /^\d+(?:\.\d+)?$/.test(text) ? Number(text) : text
}

/** Sets a key of `outputs`, or takes it out. Returns why it cannot be so, in the words of the command; the text stays as it was. */
export function setOutput({ document, say }: Page, key: string, value: EditValue | undefined): string | undefined {
  const edits = [{ path: ['outputs', key], value }]
  const before = document.text.peek()
  try {
    const read = readOutputs(applyEdits(before, edits), document.file.peek())
    const [problem] = read.ok ? [] : read.problems
    if (problem !== undefined) return `${problem.message}. Expected: ${problem.expected}`
    document.edit(edits)
  } catch {
    return 'The definition has mistakes that must be mended first; Judge names them.'
  }
  say(value === undefined ? `${key} is as usual` : `${key} is changed`)
  return undefined
}

/**
 * Writes what the two check bars measure, so that pages are corrected; both empty takes it out. Readings are lengths, mm where
 * they say no unit. Returns why they cannot be readings of the bars.
 */
export function barsTyped(page: Page, across: string, down: string): string | undefined {
  if (across.trim() === '' && down.trim() === '') return setOutput(page, 'check bars', undefined)
  const readings = [across, down].map((typed) => parseLength(typed.trim(), 'mm'))
  const [first, second] = readings
  const wrong = readings.find((reading) => !reading.ok)
  if (wrong !== undefined && !wrong.ok) return `Two readings are needed: ${wrong.expected}`
  if (first?.ok !== true || second?.ok !== true) return 'Two readings are needed.'
  if (!believable({ across: first.mm, down: second.mm }))
    return `No printer is so far off: ${formatMm(first.mm)} and ${formatMm(second.mm)} mm are to be about ${BAR_MM} mm each. Print the page to measure at actual size and measure its whole bars, between the end ticks.`
  const isIn = page.workshop.outline.peek()?.units === 'in'
  const written = ({ mm }: { readonly mm: number }): EditValue => (isIn ? `${formatMm(mm)} mm` : Number(formatMm(mm)))
  return setOutput(page, 'check bars', [written(first), written(second)])
}
