import type { Vec2 } from '../../geometry/index.ts'

/** x' = a x + c y + e, y' = b x + d y + f, as `matrix(a b c d e f)` of SVG. */
export interface Matrix {
  readonly a: number
  readonly b: number
  readonly c: number
  readonly d: number
  readonly e: number
  readonly f: number
}

export const PLAIN: Matrix = { a: 1, b: 0, c: 0, d: 1, e: 0, f: 0 }

/** First `inner`, then `outer`. */
export function after(outer: Matrix, inner: Matrix): Matrix {
  return {
    a: outer.a * inner.a + outer.c * inner.b,
    b: outer.b * inner.a + outer.d * inner.b,
    c: outer.a * inner.c + outer.c * inner.d,
    d: outer.b * inner.c + outer.d * inner.d,
    e: outer.a * inner.e + outer.c * inner.f + outer.e,
    f: outer.b * inner.e + outer.d * inner.f + outer.f,
  }
}

export const mapped = ({ a, b, c, d, e, f }: Matrix, [x, y]: Vec2): Vec2 => [a * x + c * y + e, b * x + d * y + f]

/** +1 where circles stay circles and turn the same way, −1 where they are mirrored, 0 where they become ellipses. */
export function keepsCircles({ a, b, c, d }: Matrix): 1 | -1 | 0 {
  const size = Math.hypot(a, b, c, d)
  const near = (p: number, q: number): boolean => Math.abs(p - q) <= size * 1e-9
  if (near(a, d) && near(b, -c)) return 1
  return near(a, -d) && near(b, c) ? -1 : 0
}

/** A list of transforms as SVG writes it (SVG 1.1, section 7.6); nothing where it is none. */
export function readTransform(text: string): Matrix | undefined {
  const pieces = [...text.matchAll(/([a-zA-Z]+)\s*\(([^)]*)\)/g)]
  const rest = text.replace(/([a-zA-Z]+)\s*\(([^)]*)\)/g, '').replace(/[\s,]/g, '')
  if (rest !== '') return undefined
  let whole: Matrix = PLAIN
  for (const [, name = '', list = ''] of pieces) {
    const numbers = list
      .split(/[\s,]+/)
      .filter((word) => word !== '')
      .map(Number)
    const one = numbers.every(Number.isFinite) ? transformOf(name, numbers) : undefined
    if (one === undefined) return undefined
    whole = after(whole, one)
  }
  return whole
}

function transformOf(name: string, n: readonly number[]): Matrix | undefined {
  const [p = 0, q = 0, r = 0, s = 0, t = 0, u = 0] = n
  const degrees = (p * Math.PI) / 180
  switch (name) {
    case 'matrix':
      return n.length === 6 ? { a: p, b: q, c: r, d: s, e: t, f: u } : undefined
    case 'translate':
      return n.length === 1 || n.length === 2 ? { ...PLAIN, e: p, f: q } : undefined
    case 'scale':
      return n.length === 1 || n.length === 2 ? { ...PLAIN, a: p, d: n.length === 1 ? p : q } : undefined
    case 'rotate':
      return n.length === 1 || n.length === 3 ? rotated(degrees, q, r) : undefined
    case 'skewX':
      return n.length === 1 ? { ...PLAIN, c: Math.tan(degrees) } : undefined
    case 'skewY':
      return n.length === 1 ? { ...PLAIN, b: Math.tan(degrees) } : undefined
    default:
      return undefined
  }
}

function rotated(angle: number, x: number, y: number): Matrix {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return { a: cos, b: sin, c: -sin, d: cos, e: x - cos * x + sin * y, f: y - sin * x - cos * y }
}
