import { type Edit, pathInWords } from '../../project/index.ts'

/** What edits of a definition did, for a person: `modules › glaze store › width is now 640 mm`. */
export function changeWords(edits: readonly Edit[]): string {
  return edits
    .map((edit) => {
      const where = pathInWords(edit.path)
      if (!('value' in edit)) return `${where} is changed`
      return edit.value === undefined ? `${where} is taken out` : `${where} is now ${valueWords(edit.value)}`
    })
    .join('; ')
}

/** A value as one writes it on one line. */
function valueWords(value: unknown): string {
  if (Array.isArray(value)) return value.length === 0 ? 'an empty list' : value.map(valueWords).join(', ')
  if (typeof value !== 'object' || value === null) return String(value)
  return Object.entries(value)
    .map(([key, one]) => `${key}: ${valueWords(one)}`)
    .join(', ')
}
