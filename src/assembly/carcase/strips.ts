import type { Box } from '../../geometry/index.ts'
import type { ModuleSpec, StretcherSpec } from '../../project/index.ts'
import { board } from '../boards.ts'
import { placeJoint } from '../joints/index.ts'
import { type Parts, partsOf } from '../parts.ts'
import type { PlacedPanel } from '../types.ts'

/** Planes of the carcase that strips across it go by, module frame, mm. */
export interface StripPlanes {
  readonly front: number
  readonly insideRear: number
  readonly topFace: number
}

/** The two rails in the place of a top: flat between the sides, at the front edges and at the inside of the back. */
export function topRails(spec: ModuleSpec, { front, insideRear, topFace }: StripPlanes): PlacedPanel[] {
  const { rails } = spec.carcase
  if (rails === undefined) return []
  const t = spec.stock.thickness
  const make = (name: string, y0: number): PlacedPanel => {
    const box: Box = {
      min: [t, y0, topFace - rails.stock.thickness],
      max: [spec.width - t, y0 + rails.width, topFace],
    }
    return board({ module: spec.key, role: 'top rail', name, stock: rails.stock, box, at: [...spec.at, 'carcase'] })
  }
  return [make('front top rail', front), make('rear top rail', insideRear - rails.width)]
}

/** The stretchers of a module and their joints with both sides; `under` is the height of the clear inside's upper end. */
export function placeStretchers(
  spec: ModuleSpec,
  planes: StripPlanes,
  under: number,
  sides: readonly PlacedPanel[],
): Parts[] {
  return spec.carcase.stretchers.flatMap((stretcher, k) => {
    const tip = stretcherBoard(spec, stretcher, `stretcher ${k + 1}`, planes, under)
    const joints = sides.map((head) =>
      partsOf(
        placeJoint({
          module: spec.key,
          head,
          tip,
          joint: stretcher.joint,
          at: stretcher.at,
          asked: [...stretcher.at, 'joint'],
          limits: spec,
        }),
      ),
    )
    return [partsOf({ panels: [tip] }), ...joints]
  })
}

function stretcherBoard(
  spec: ModuleSpec,
  stretcher: StretcherSpec,
  name: string,
  planes: StripPlanes,
  under: number,
): PlacedPanel {
  const { stock, width, height, end, at } = stretcher
  const t = spec.stock.thickness
  const z0 = height === 'below top' ? under - width : height
  const y0 = end === 'front' ? planes.front : planes.insideRear - stock.thickness
  const box: Box = { min: [t, y0, z0], max: [spec.width - t, y0 + stock.thickness, z0 + width] }
  const role = end === 'front' ? 'front stretcher' : 'rear stretcher'
  return board({ module: spec.key, role, name, stock, box, at })
}
