import type { PanelId, PlacedHardware } from '../../assembly/index.ts'
import { type Box, boundsOfSolid, placedSolid } from '../../geometry/index.ts'
import { type BodyName, bodiesOf, type Surroundings } from '../../hardware/index.ts'
import { sameItems } from '../../memory/index.ts'
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
    return bodiesOfPiece(index, piece).filter(({ name }) => names.includes(name))
  })
}

interface Known {
  /** Of the boards that it grips: all else that bodies go by belongs to the piece. */
  readonly thicknesses: readonly number[]
  readonly bodies: readonly PlacedBody[]
}

const known = new WeakMap<PlacedHardware, Known>()

function bodiesOfPiece(index: LaidIndex, piece: PlacedHardware): readonly PlacedBody[] {
  const thicknesses = piece.stations.map(({ panel }) => index.panels.get(panel)?.thickness ?? 0)
  const last = known.get(piece)
  if (last !== undefined && sameItems(last.thicknesses, thicknesses)) return last.bodies
  const parts = piece.stations.map(({ part }) => part)
  const bodies = bodiesOf(piece.item, parts, surroundingsOf(index, piece)).flatMap(({ part, name, solid }, k) =>
    piece.stations
      .filter((station) => station.part === part)
      .map(
        ({ pose, panel }): PlacedBody => ({
          key: `${piece.id} ${name} ${k}`,
          panel,
          name,
          piece,
          box: boundsOfSolid(placedSolid(pose, solid)),
        }),
      ),
  )
  known.set(piece, { thicknesses, bodies })
  return bodies
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

/** The box of a body, module frame; of the wheel of a swivel caster itself, in the place of all that it sweeps. */
export function wheelBox({ name, piece: { item }, box }: PlacedBody): Box {
  if (name !== 'wheel' || item.kind !== 'caster' || item.wheel !== undefined) return box
  const diameter = item.overallHeight * WHEEL_SHARE
  const [x, y] = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2]
  const half = (diameter * WHEEL_WIDTH) / 2
  return { min: [x - half, y - diameter / 2, box.min[2]], max: [x + half, y + diameter / 2, box.max[2]] }
}

/** Its width as a share of its diameter; own choice, for the drawing alone. */
const WHEEL_WIDTH = 0.4
