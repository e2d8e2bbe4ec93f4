import { parseLength, type Units } from '../../length/index.ts'
import type { Data, EditValue } from '../../project/index.ts'
import type { Control } from './control.ts'

/** What a field's text comes to: a value for the definition, nothing at all, or what should have been typed. */
export type Typed =
  | { readonly ok: true; readonly value: EditValue | undefined }
  | { readonly ok: false; readonly expected: string }

const good = (value: EditValue | undefined): Typed => ({ ok: true, value })
const bad = (expected: string): Typed => ({ ok: false, expected })

const PLAIN_NUMBER = /^-?(\d+\.?\d*|\.\d+)$/
const WITH_UNIT = /^(\d+\.?\d*|\.\d+)\s*(kg|lb|kg\/m2|kg\/m²|lb\/ft2|lb\/ft²)?$/

/**
 * What is typed into a field as the value to write: lengths and masses as they were typed, bare numbers as numbers,
 * so that they stand in the definition without quotes. An empty field is no value.
 */
export function typedValue(control: Control, text: string, units: Units): Typed {
  const typed = text.trim()
  if (typed === '') return good(undefined)
  switch (control.kind) {
    case 'length':
      return typedLength(control, typed, units)
    case 'number':
      if (control.words.includes(typed)) return good(typed)
      if (PLAIN_NUMBER.test(typed)) return good(Number(typed))
      if (control.units && WITH_UNIT.test(typed)) return good(typed)
      return bad(control.units ? 'a number, with its unit or without: 40, 40 kg, 90 lb' : 'a number such as 2')
    case 'choice':
      return good(control.namings.length > 0 ? typed : plainWord(typed))
    case 'text':
      return good(typed)
    case 'list':
      return typedList(control, typed, units)
    default:
      return control satisfies never
  }
}

function typedLength(control: Extract<Control, { kind: 'length' }>, typed: string, units: Units): Typed {
  if (control.words.includes(typed)) return good(typed)
  const parsed = parseLength(typed, units, { negative: control.negative })
  if (!parsed.ok) {
    const words = control.words.length > 0 ? `${parsed.expected}; or: ${control.words.join(', ')}` : parsed.expected
    return bad(words)
  }
  return good(PLAIN_NUMBER.test(typed) ? Number(typed) : typed)
}

/** `true`, `90` and `2007` are no texts where they are words to choose from. */
function plainWord(word: string): EditValue {
  if (word === 'true' || word === 'false') return word === 'true'
  return PLAIN_NUMBER.test(word) ? Number(word) : word
}

function typedList({ of, words, single }: Extract<Control, { kind: 'list' }>, typed: string, units: Units): Typed {
  if (words.includes(typed)) return good(typed)
  // A number alone where a number may stand: how many hinges, not a list of one height.
  const parts = typed.split(/[,;]/).map((part) => part.trim())
  // 17,8 is what one who writes decimals with a comma means by 17.8: never two readings. A sheet needs two lengths.
  if (single && /\d\s*,\d/.test(typed)) {
    return bad('a length with a decimal point, such as 17.8; between two of them a comma and a space')
  }
  if (single && parts.length === 1 && PLAIN_NUMBER.test(typed)) return good(Number(typed))
  const values: EditValue[] = []
  for (const part of parts) {
    const one = typedValue(of, part, units)
    if (!one.ok) return one
    if (one.value === undefined) return bad('something before and behind each comma')
    values.push(one.value)
  }
  const [only] = values
  return good(single && values.length === 1 && only !== undefined ? only : values)
}

/** A value of the definition as a field shows it; nothing for what no field can show. */
export function shownValue(value: Data | EditValue | undefined): string | undefined {
  if (value === undefined || value === null) return ''
  if (Array.isArray(value)) {
    const parts = value.map(shownValue)
    return value.some((part) => typeof part === 'object') || parts.includes(undefined) ? undefined : parts.join(', ')
  }
  return typeof value === 'object' ? undefined : String(value)
}
