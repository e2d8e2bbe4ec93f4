import { type INode, parseSync } from 'svgson'
import { MM_PER_INCH } from '../../length/index.ts'
import { after, type Matrix, PLAIN, readTransform } from './matrix.ts'
import { readPathData, type Subpath } from './path-data.ts'

export type SvgUnit = 'mm' | 'in' | 'px'

/** Why a drawing cannot be used, and what would do. */
export interface Refusal {
  readonly reason: string
  readonly expected: string
}

/** Contours with the way from their user units to the document's, and how many mm one of those has. */
export interface DrawnPaths {
  readonly contours: readonly { readonly subpath: Subpath; readonly matrix: Matrix }[]
  readonly mmPerUnit: number
}

/** CSS lengths: 96 px, 72 pt and 6 pc to the inch (CSS Values and Units 3, section 6.2). */
const MM_PER: Readonly<Record<string, number>> = {
  mm: 1,
  cm: 10,
  q: 0.25,
  in: MM_PER_INCH,
  px: MM_PER_INCH / 96,
  pt: MM_PER_INCH / 72,
  pc: MM_PER_INCH / 6,
}

/** Elements that draw nothing themselves. */
const SILENT = [
  'title',
  'desc',
  'metadata',
  'style',
  'defs',
  'symbol',
  'clipPath',
  'mask',
  'pattern',
  'marker',
  'linearGradient',
  'radialGradient',
  'filter',
  'script',
]
const GROUPS = ['g', 'a', 'svg']
/** Groups within each other, at most. */
const MOST_LEVELS = 50

/** The contours of an SVG document, or of the `d` of a path alone. Never throws. */
export function readSvg(text: string, unit: SvgUnit | undefined): DrawnPaths | Refusal {
  if (!text.trimStart().startsWith('<')) return pathsOf(text, PLAIN, MM_PER[unit ?? 'px'] ?? 1)
  const root = rootOf(text)
  if (root === undefined) {
    return {
      reason: 'this is no SVG document',
      expected: 'an <svg> document, or the d of a path such as M0 0 H60 V40 Z',
    }
  }
  const mmPerUnit = unit === undefined ? unitOf(root) : (MM_PER[unit] ?? 1)
  if (typeof mmPerUnit !== 'number') return mmPerUnit
  const contours: DrawnPaths['contours'][number][] = []
  const refusal = collect(root, PLAIN, contours, 0)
  return refusal ?? { contours, mmPerUnit }
}

function rootOf(text: string): INode | undefined {
  try {
    const node = parseSync(text)
    return node.name === 'svg' ? node : undefined
  } catch {
    return undefined
  }
}

/**
 * The mm of a user unit: from a physical width or height and the viewBox; a width without a viewBox, and a document
 * without a width, are in px.
 */
function unitOf({ attributes }: INode): number | Refusal {
  const box = (attributes.viewBox ?? '')
    .trim()
    .split(/[\s,]+/)
    .map(Number)
  const hasBox = box.length === 4 && box.every(Number.isFinite) && (box[2] ?? 0) > 0 && (box[3] ?? 0) > 0
  const size = (key: 'width' | 'height'): number | undefined => {
    const said = /^\s*([\d.]+(?:e[+-]?\d+)?)\s*([a-z]*)\s*$/i.exec(attributes[key] ?? '')
    const per = said && MM_PER[(said[2] ?? '') === '' ? 'px' : (said[2] ?? '').toLowerCase()]
    const mm = said && per ? Number(said[1]) * per : 0
    return mm > 0 ? mm : undefined
  }
  const px = MM_PER.px ?? 1
  if (!hasBox) return px
  const [width, height] = [size('width'), size('height')]
  const across = width && width / (box[2] ?? 1)
  const up = height && height / (box[3] ?? 1)
  if (across !== undefined && up !== undefined && Math.abs(across - up) > 1e-3 * across) {
    return {
      reason: 'width, height and viewBox of the document give two different scales',
      expected: 'a width and height in the proportion of the viewBox, or the key unit',
    }
  }
  return across ?? up ?? px
}

function collect(
  node: INode,
  outer: Matrix,
  into: DrawnPaths['contours'][number][],
  level: number,
): Refusal | undefined {
  const { name, attributes } = node
  if (node.type !== 'element' || SILENT.includes(name) || name.includes(':') || attributes.display === 'none')
    return undefined
  const own = attributes.transform === undefined ? PLAIN : readTransform(attributes.transform)
  if (own === undefined)
    return {
      reason: `the transform "${attributes.transform}" cannot be read`,
      expected: 'matrix, translate, scale, rotate or skew',
    }
  const matrix = after(outer, own)
  if (GROUPS.includes(name)) {
    if (name === 'svg' && level > 0) return { reason: 'a document within the document', expected: 'one <svg>' }
    if (level > MOST_LEVELS)
      return { reason: `groups lie more than ${MOST_LEVELS} deep within each other`, expected: 'fewer groups' }
    for (const child of node.children) {
      const refusal = collect(child, matrix, into, level + 1)
      if (refusal !== undefined) return refusal
    }
    return undefined
  }
  const d = dataOf(name, attributes)
  if (d === undefined)
    return {
      reason: `<${name}> draws no contour that can be cut`,
      expected: 'path, rect, circle, ellipse or polygon; turn everything else into paths',
    }
  const read = pathsOf(d, matrix, 1)
  if ('reason' in read) return read
  into.push(...read.contours)
  return undefined
}

/** The simple shapes as the paths that they stand for (SVG 1.1, chapter 9). */
function dataOf(name: string, attributes: INode['attributes']): string | undefined {
  const n = (key: string, otherwise = 0): number => {
    const value = Number.parseFloat(attributes[key] ?? '')
    return Number.isFinite(value) ? value : otherwise
  }
  if (name === 'path') return attributes.d ?? ''
  if (name === 'polygon') return attributes.points ? `M${attributes.points}Z` : ''
  if (name === 'circle' || name === 'ellipse') {
    const [rx, ry] = name === 'circle' ? [n('r'), n('r')] : [n('rx'), n('ry')]
    const arc = `a${rx} ${ry} 0 0 1`
    return `M${n('cx') - rx} ${n('cy')}${arc} ${2 * rx} 0${arc} ${-2 * rx} 0Z`
  }
  if (name !== 'rect') return undefined
  const [w, h] = [n('width'), n('height')]
  const rx = Math.min(n('rx', n('ry')), w / 2)
  const ry = Math.min(n('ry', n('rx')), h / 2)
  const start = `M${n('x') + rx} ${n('y')}h${w - 2 * rx}`
  if (!(rx > 0 && ry > 0)) return `${start}v${h}h${-w}Z`
  const corner = (x: number, y: number): string => `a${rx} ${ry} 0 0 1 ${x} ${y}`
  return `${start}${corner(rx, ry)}v${h - 2 * ry}${corner(-rx, ry)}h${2 * rx - w}${corner(-rx, -ry)}v${2 * ry - h}${corner(rx, -ry)}Z`
}

function pathsOf(d: string, matrix: Matrix, mmPerUnit: number): DrawnPaths | Refusal {
  const read = readPathData(d)
  if ('wrong' in read) {
    return { reason: `the path cannot be read at "${read.wrong}"`, expected: 'the d of a path such as M0 0 H60 V40 Z' }
  }
  return { contours: read.subpaths.map((subpath) => ({ subpath, matrix })), mmPerUnit }
}
