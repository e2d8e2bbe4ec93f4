/** Acceleration of free fall, m/s². */
export const GRAVITY = 9.81

/** A beam on two supports at its ends: span in mm, stiffness E in N/mm², second moment of area I in mm⁴. */
export interface Beam {
  readonly span: number
  readonly stiffness: number
  readonly inertia: number
}

/** Second moment of area of a rectangle about its own middle line, mm⁴: b h³ / 12. */
export const rectangleInertia = (width: number, height: number): number => (width * height ** 3) / 12

/** Sag in the middle, mm, of a mass (kg) spread evenly over the span: 5 w L⁴ / (384 E I), beam tables. */
export function uniformSag({ span, stiffness, inertia }: Beam, mass: number): number {
  const perLength = (mass * GRAVITY) / span
  return (5 * perLength * span ** 4) / (384 * stiffness * inertia)
}

/** Sag in the middle, mm, of a mass (kg) that stands right there: W L³ / (48 E I), beam tables. */
export function middleSag({ span, stiffness, inertia }: Beam, mass: number): number {
  return (mass * GRAVITY * span ** 3) / (48 * stiffness * inertia)
}

/** Longest span, mm, for a sag of span / n under a load on its area (N/mm²): ∛(6.4 E t³ / (n q)) (S46, its table). */
export function longestSpan(stiffness: number, thickness: number, pressure: number, n: number): number {
  return Math.cbrt((6.4 * stiffness * thickness ** 3) / (n * pressure))
}

/** What kitchen cabinets are allowed, mm: 1.6 for each 305 of span, not over 6.4 (S23). */
export const kitchenSag = (span: number): number => Math.min(6.4, (1.6 * span) / 305)

/** One board of a section that bends as one: glued up. Lengths in mm. */
export interface Layer {
  readonly width: number
  readonly height: number
  /** From the upper face of the section down to the board's own upper edge. */
  readonly down: number
  /** N/mm² */
  readonly stiffness: number
}

/**
 * Second moment of area of a section of several boards, mm⁴, as if all of it had one stiffness (N/mm²): each board's
 * width times the ratio of the stiffnesses, about the common middle line (transformed sections).
 */
export function compositeInertia(layers: readonly Layer[], stiffness: number): number {
  const parts = layers.map(({ width, height, down, stiffness: own }) => {
    const scaled = (width * own) / stiffness
    return { area: scaled * height, middle: down + height / 2, own: rectangleInertia(scaled, height) }
  })
  const area = parts.reduce((sum, part) => sum + part.area, 0)
  const line = parts.reduce((sum, part) => sum + part.area * part.middle, 0) / area
  return parts.reduce((sum, part) => sum + part.own + part.area * (part.middle - line) ** 2, 0)
}
