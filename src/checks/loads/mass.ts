import { areaOf, middleOf, place, type Vec3 } from '../../geometry/index.ts'
import type { Panel } from '../../panel/index.ts'

/** A mass (kg) and its middle (mm). */
export interface Body {
  readonly mass: number
  readonly at: Vec3
}

/** All bodies as one; without mass it lies at the origin of the frame. */
export function together(bodies: readonly Body[]): Body {
  const mass = bodies.reduce((sum, body) => sum + body.mass, 0)
  const middle = (axis: 0 | 1 | 2): number =>
    mass === 0 ? 0 : bodies.reduce((sum, body) => sum + body.mass * body.at[axis], 0) / mass
  return { mass, at: [middle(0), middle(1), middle(2)] }
}

/**
 * Mass of a panel, kg, and its middle in the module frame: area × thickness × density of the finished outline (lippings
 * count as the board), less its openings and recesses. Bores, grooves and hardware are left out.
 */
export function panelBody(panel: Panel): Body {
  const { length, width, thickness, stock } = panel
  const own: Body = {
    mass: (length * width * thickness * stock.density) / 1e9,
    at: [length / 2, width / 2, -thickness / 2],
  }
  const taken = panel.cutouts.map(({ path, depth, face }): Body => {
    const [x, y] = middleOf(path)
    return {
      mass: -(Math.abs(areaOf(path)) * depth * stock.density) / 1e9,
      at: [x, y, face === 'A' ? -depth / 2 : depth / 2 - thickness],
    }
  })
  const { mass, at } = together([own, ...taken])
  return { mass, at: place(panel.moduleFromPanel, at) }
}
