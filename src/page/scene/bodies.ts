import { FLOOR, type PanelId, type PlacedHardware } from '../../assembly/index.ts'
import { type Box, boundsOfSolid, placedSolid } from '../../geometry/index.ts'
import { type BodyName, bodiesOf, type Surroundings } from '../../hardware/index.ts'
import type { LaidIndex } from './laid-index.ts'

/** A piece of hardware besides its holes, as the box around it in the frame of its module. */
export interface PlacedBody {
  readonly key: string
  readonly panel: PanelId
  readonly name: BodyName
  readonly piece: PlacedHardware
  readonly box: Box
}

/** The bodies of those names of the hardware of a module. */
export function bodiesIn(index: LaidIndex, module: string, names: readonly BodyName[]): PlacedBody[] {
  return (index.hardwareOf.get(module) ?? []).flatMap((piece) => {
    if (!KINDS.includes(piece.item.kind)) return []
    const parts = piece.stations.map(({ part }) => part)
    return bodiesOf(piece.item, parts, surroundingsOf(index, piece)).flatMap(
      ({ part, name, solid }, k): PlacedBody[] => {
        if (!names.includes(name)) return []
        return piece.stations
          .filter((station) => station.part === part)
          .map(({ pose, panel }) => ({
            key: `${piece.id} ${name} ${k}`,
            panel,
            name,
            piece,
            box: boundsOfSolid(placedSolid(pose, solid)),
          }))
      },
    )
  })
}

/** What is seen of hardware from some way off; screws and pins go whole into their holes. */
const KINDS: readonly PlacedHardware['item']['kind'][] = [
  'caster',
  'levelling foot',
  'cup hinge',
  'pull',
  'drawer slide',
]

function surroundingsOf({ panels }: LaidIndex, piece: PlacedHardware): Surroundings {
  return {
    thicknessOf: (part) => {
      const station = piece.stations.find((one) => one.part === part)
      return (station && panels.get(station.panel)?.thickness) ?? 0
    },
    setting: (name) => piece.settings[name],
  }
}

/** A swivel caster's wheel is three quarters of its height where it does not say: as for wheel loads. */
export const WHEEL_SHARE = 0.75

export const isOnFloor = ({ frame }: PlacedHardware): boolean => frame === FLOOR
