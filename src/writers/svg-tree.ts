import type { INode } from 'svgson'
import { roundMm } from '../geometry/index.ts'

/** The elements that are ever written; user text only goes into `title` and `text`. */
export type ElementName = 'svg' | 'title' | 'g' | 'circle' | 'path' | 'line' | 'text'

type AttributeName =
  | 'xmlns'
  | 'width'
  | 'height'
  | 'viewBox'
  | 'preserveAspectRatio'
  | 'style'
  | 'id'
  | 'class'
  | 'data-layer'
  | 'data-operation'
  | 'data-diameter'
  | 'fill'
  | 'stroke'
  | 'stroke-width'
  | 'stroke-dasharray'
  | 'stroke-linejoin'
  | 'pointer-events'
  | 'cx'
  | 'cy'
  | 'r'
  | 'd'
  | 'x'
  | 'y'
  | 'x1'
  | 'y1'
  | 'x2'
  | 'y2'
  | 'font-family'
  | 'font-size'
  | 'font-weight'
  | 'text-anchor'
  | 'transform'

export type Attributes = { readonly [name in AttributeName]?: string | number | undefined }

/** One element of the svgson tree. Numbers go through `num`; attributes that are undefined are left out. */
export function el(name: ElementName, attributes: Attributes, children: readonly INode[] = []): INode {
  const written: Record<string, string> = {}
  for (const [key, value] of Object.entries(attributes)) {
    if (value !== undefined) written[key] = typeof value === 'number' ? num(value) : value
  }
  return { name, type: 'element', value: '', attributes: written, children: [...children] }
}

/** Text for a person, made safe for XML. */
export function words(text: string): INode {
  return { name: '', type: 'text', value: plainText(text), attributes: {}, children: [] }
}

/** A line break between elements, so that a file can be read and compared line by line. */
export function lines(children: readonly INode[]): INode[] {
  const end: INode = { name: '', type: 'text', value: '\n', attributes: {}, children: [] }
  return children.flatMap((child) => [end, child]).concat(children.length > 0 ? [end] : [])
}

/** A number in mm as every attribute writes it: 0.001 steps, no exponent, no `-0`. Throws when not finite or beyond 1 km. */
export function num(value: number): string {
  if (!(Math.abs(value) < 1e6)) throw new RangeError(`not a length that can be written: ${value}`)
  return String(roundMm(value))
}

/**
 * What XML 1.0 cannot hold (control characters, halves of surrogate pairs, U+FFFE, U+FFFF) and what would break the
 * writer's CDATA (`]]>`) is replaced; line breaks, and marks that turn the direction of writing, become spaces.
 */
export function plainText(text: string): string {
  return text
    .replace(/[\p{Cc}\u2028\u2029\u202a-\u202e\u2066-\u2069]/gu, ' ')
    .replace(/[\p{Cs}\ufffe\uffff]/gu, '\ufffd')
    .replaceAll(']]>', ']] >')
}
