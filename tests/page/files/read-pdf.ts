import { inflateSync } from 'node:zlib'

/** What is stroked on a page of a PDF, mm from its upper left corner, y down. Ours and a browser's are read alike. */
export interface StrokedPage {
  readonly width: number
  readonly height: number
  /** Straight strokes of one piece. */
  readonly lines: readonly Stroke[]
  /** Dashed ones. A browser fills each dash by itself, so that the end may lie in the gap that would follow the last one. */
  readonly dashed: readonly Stroke[]
  /** Closed curves that are as wide as high, by the box about them. */
  readonly rounds: readonly { readonly at: Spot; readonly diameter: number }[]
}

type Spot = readonly [x: number, y: number]
export type Stroke = readonly [from: Spot, to: Spot]

/** ISO 32000-1, 8.3.2.3: a unit is 1/72 inch. */
const MM = 25.4 / 72

/** Objects of a file by their number: dictionary, and the stream behind it. */
interface Objects {
  readonly dictionary: (number: number) => string
  readonly stream: (number: number) => string
}

function objectsOf(pdf: Buffer): Objects {
  const text = pdf.toString('latin1')
  const found = new Map<number, { readonly dictionary: string; readonly from: number; readonly to: number }>()
  for (const match of text.matchAll(/^(\d+) 0 obj\r?\n?/gm)) {
    const start = match.index + match[0].length
    const end = text.indexOf('endobj', start)
    const stream = text.slice(start, end).search(/stream\r?\n/)
    const dictionary = text.slice(start, stream < 0 ? end : start + stream)
    const from = stream < 0 ? end : start + stream + (/^stream\r?\n/.exec(text.slice(start + stream))?.[0].length ?? 0)
    // The bytes of a stream may hold any word, so its length counts, and not where it seems to end.
    const length = Number(/\/Length (\d+)(?! 0 R)/.exec(dictionary)?.[1] ?? text.indexOf('endstream', from) - from)
    found.set(Number(match[1]), { dictionary, from, to: from + length })
  }
  return {
    dictionary: (number) => found.get(number)?.dictionary ?? '',
    stream: (number) => {
      const one = found.get(number)
      if (one === undefined) return ''
      const bytes = pdf.subarray(one.from, one.to)
      return (one.dictionary.includes('/FlateDecode') ? inflateSync(bytes) : bytes).toString('latin1')
    },
  }
}

const reference = (dictionary: string, key: string): number =>
  Number(new RegExp(`/${key} (?:\\[\\s*)?(\\d+) 0 R`).exec(dictionary)?.[1])

/** The pages in their order. */
export function strokesOf(pdf: Buffer): StrokedPage[] {
  const objects = objectsOf(pdf)
  const root = reference(/trailer([\s\S]*?)startxref/.exec(pdf.toString('latin1'))?.[1] ?? '', 'Root')
  const pagesBelow = (number: number): number[] => {
    const dictionary = objects.dictionary(number)
    const kids = /\/Kids \[([^\]]*)\]/.exec(dictionary)?.[1]
    if (kids === undefined) return [number]
    return [...kids.matchAll(/(\d+) 0 R/g)].flatMap(([, kid]) => pagesBelow(Number(kid)))
  }
  return pagesBelow(reference(objects.dictionary(root), 'Pages')).map((number) => {
    const dictionary = objects.dictionary(number)
    const [, box = ''] = /\/MediaBox \[([^\]]*)\]/.exec(dictionary) ?? []
    const [, , width = 0, height = 0] = box.trim().split(/\s+/).map(Number)
    return {
      width: width * MM,
      height: height * MM,
      ...drawn(objects.stream(reference(dictionary, 'Contents')), height),
    }
  })
}

type Matrix = readonly [number, number, number, number, number, number]

/** One matrix after another, as `cm` puts them together (ISO 32000-1, 8.3.4). */
const product = ([a, b, c, d, e, f]: Matrix, [A, B, C, D, E, F]: Matrix): Matrix => [
  a * A + b * C,
  a * B + b * D,
  c * A + d * C,
  c * B + d * D,
  e * A + f * C + E,
  e * B + f * D + F,
]

function drawn(content: string, height: number): Omit<StrokedPage, 'width' | 'height'> {
  const lines: Stroke[] = []
  const dashed: Stroke[] = []
  const rounds: { at: Spot; diameter: number }[] = []
  const saved: Matrix[] = []
  let now: Matrix = [1, 0, 0, 1, 0, 0]
  let path: Spot[] = []
  let curves = 0
  /** Where the parts of a path before its last one lie. */
  let parts: Spot[][] = []
  let isDashed = false
  let operands: number[] = []
  const spot = (x = 0, y = 0): Spot => [
    (now[0] * x + now[2] * y + now[4]) * MM,
    (height - (now[1] * x + now[3] * y + now[5])) * MM,
  ]
  const stroke = (): void => {
    const [from, to, more] = path
    if (curves === 0 && from !== undefined && to !== undefined && more === undefined)
      (isDashed ? dashed : lines).push([from, to])
    const sides = ([0, 1] as const).map((k) => {
      const along = path.map((one) => one[k])
      return { low: Math.min(...along), high: Math.max(...along) }
    })
    const [x, y] = sides
    if (curves >= 4 && x !== undefined && y !== undefined && Math.abs(x.high - x.low - (y.high - y.low)) < 0.1)
      rounds.push({ at: [(x.low + x.high) / 2, (y.low + y.high) / 2], diameter: (x.high - x.low + y.high - y.low) / 2 })
  }
  /** The middles of the short sides of the first and the last of many narrow boxes. */
  const fill = (): void => {
    const boxes = [...parts, path]
    const [first] = boxes
    const last = boxes.at(-1)
    if (boxes.length < 3 || first === undefined || last === undefined || boxes.some((box) => box.length !== 4)) return
    const middle = (points: Spot[]): Spot =>
      [0, 1].map((k) => points.reduce((sum, one) => sum + (one[k] ?? 0), 0) / points.length) as [number, number]
    const [start, end] = [middle(first), middle(last)]
    const axis = Math.abs(start[0] - end[0]) > Math.abs(start[1] - end[1]) ? 0 : 1
    const way = Math.sign(end[axis] - start[axis])
    const reach = (box: Spot[], to: number): number => Math.max(...box.map((one) => one[axis] * to)) * to
    const at = (along: number, spot: Spot): Spot => (axis === 0 ? [along, spot[1]] : [spot[0], along])
    dashed.push([at(reach(first, -way), start), at(reach(last, way), end)])
  }
  const forget = (): void => {
    parts = []
    path = []
    curves = 0
  }
  for (const [word] of content.replace(/\((?:\\.|[^\\)])*\)|<[0-9a-fA-F\s]*>/g, '').matchAll(/[^\s[\]]+/g)) {
    if (/^[-+.\d]/.test(word)) {
      operands.push(Number(word))
      continue
    }
    const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0] = operands
    if (word === 'q') saved.push(now)
    if (word === 'Q') now = saved.pop() ?? now
    if (word === 'cm') now = product([a, b, c, d, e, f], now)
    if (word === 'd') isDashed = operands.length > 1
    if (word === 'm') {
      if (path.length > 0) parts.push(path)
      path = [spot(a, b)]
    }
    if (word === 'l') path.push(spot(a, b))
    // The handles of a whole round reach no further than its sides.
    if (word === 'c') {
      path.push(spot(e, f))
      curves += 1
    }
    if (word === 'S' || word === 's') stroke()
    if (word === 'f') fill()
    if (/^(?:[SsfFBbn]\*?|W\*?)$/.test(word) && word !== 'W' && word !== 'W*') forget()
    operands = []
  }
  return { lines, dashed, rounds }
}
