import type { Vec2 } from '../../geometry/index.ts'

/** A point on the floor that carries, mm, and how far a wheel there can swivel in under the body. */
export interface Contact {
  readonly at: Vec2
  readonly inward: number
}

/** One edge that a body can tip over: from a to b, counter-clockwise, and how far inward its wheels can swivel, mm. */
export interface TippingEdge {
  readonly from: Vec2
  readonly to: Vec2
  readonly inward: number
}

const cross = (o: Vec2, a: Vec2, b: Vec2): number => (a[0] - o[0]) * (b[1] - o[1]) - (a[1] - o[1]) * (b[0] - o[0])

/** The convex hull of the contacts, counter-clockwise, as its edges; none for fewer than three points that span one. */
export function tippingEdges(contacts: readonly Contact[]): TippingEdge[] {
  const sorted = [...contacts].sort((a, b) => a.at[0] - b.at[0] || a.at[1] - b.at[1])
  const half = (points: readonly Contact[]): Contact[] => {
    const chain: Contact[] = []
    for (const point of points) {
      for (;;) {
        const [a, b] = [chain.at(-2), chain.at(-1)]
        if (a === undefined || b === undefined || cross(a.at, b.at, point.at) > 0) break
        chain.pop()
      }
      chain.push(point)
    }
    return chain.slice(0, -1)
  }
  const hull = [...half(sorted), ...half(sorted.reverse())]
  if (hull.length < 3) return []
  return hull.flatMap((a, k): TippingEdge[] => {
    const b = hull[(k + 1) % hull.length]
    return b === undefined ? [] : [{ from: a.at, to: b.at, inward: Math.max(a.inward, b.inward) }]
  })
}

/** Distance, mm, of a point on the floor from a tipping edge, wheels swivelled inward; below 0 beyond it. */
export function fromEdge({ from, to, inward }: TippingEdge, point: Vec2): number {
  return cross(from, to, point) / Math.hypot(to[0] - from[0], to[1] - from[1]) - inward
}

/** Tip angle, degrees: how far the floor may lean until a middle of mass at that height (mm) stands over the edge. */
export const tipAngle = (distance: number, height: number): number => (Math.atan2(distance, height) * 180) / Math.PI

/** The distance (mm) from the edge that gives a tip angle (degrees) at a height. */
export const distanceFor = (angle: number, height: number): number => height * Math.tan((angle * Math.PI) / 180)

/** A push at a height (mm) that tips a mass (kg) over an edge at a distance: as a mass in kg, its weight pulling level. */
export const tippingPush = (mass: number, distance: number, height: number): number => (mass * distance) / height

/**
 * Load on each of n wheels or feet, kg: (tare + load) / (n − 1), since on a floor that is never flat one of them hangs
 * (S45); with a factor of safety: (tare + load) × factor / n.
 */
export function wheelLoad(tare: number, load: number, wheels: number, factor?: number): number {
  return factor === undefined ? (tare + load) / (wheels - 1) : ((tare + load) * factor) / wheels
}
