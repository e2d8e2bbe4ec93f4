import type { Stock } from '../../project/index.ts'
import { board } from '../boards.ts'
import type { PanelRole, PlacedPanel } from '../types.ts'
import type { FlipPlace } from './place.ts'

export interface PlatformBoards {
  readonly upper: PlacedPanel
  readonly lower: PlacedPanel
  /** In front of the channel for the axle, and behind it. */
  readonly front: PlacedPanel
  readonly rear: PlacedPanel
}

/** Two skins, and between them a front and a rear core board that leave the channel for the axle. */
export function platformBoards(place: FlipPlace): PlatformBoards {
  const { spec, flip, sizes, axle } = place
  const half = flip.core.thickness / 2
  const outer = sizes.thickness / 2
  const channel = flip.axle.channel / 2
  const make = (role: PanelRole, name: string, stock: Stock, y: [number, number], z: [number, number]): PlacedPanel =>
    board({
      module: spec.key,
      role,
      name,
      stock,
      box: { min: [place.x0, y[0], z[0]], max: [place.x1, y[1], z[1]] },
      at: flip.at,
    })
  const whole: [number, number] = [sizes.front, sizes.rear]
  const core: [number, number] = [axle.z - half, axle.z + half]
  const skin = (role: 'platform upper skin' | 'platform lower skin', z: [number, number]): PlacedPanel =>
    make(role, role, flip.skin, whole, z)
  return {
    upper: skin('platform upper skin', [axle.z + half, axle.z + outer]),
    lower: skin('platform lower skin', [axle.z - outer, axle.z - half]),
    front: make('platform core', 'platform core front', flip.core, [sizes.front, axle.y - channel], core),
    rear: make('platform core', 'platform core rear', flip.core, [axle.y + channel, sizes.rear], core),
  }
}
