import { boardBox, type PlacedHardware, type PlacedModule, type PlacedPanel } from '../../assembly/index.ts'
import { type Box, NOISE_MM, placeBack, turn } from '../../geometry/index.ts'
import type { FlapStay } from '../../hardware/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { looseShelvesAt } from '../bays.ts'
import { typedLength } from '../typed.ts'
import type { Finding, Mend, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Space that the arm or cylinder of a stay takes beside the wall, mm; common practice, measure yours. */
const ARM_MM = 20

/** Flap stays whose bracket lies on holes of other hardware, or whose arm meets a loose shelf. */
export const stays: Rule = {
  ids: ['stay-clear'],
  check: (subject) => {
    const modules = new Map(subject.assembly.modules.map((module) => [module.key, module]))
    return subject.assembly.hardware.flatMap((piece) => {
      const { item } = piece
      const module = modules.get(piece.frame)
      if (item.kind !== 'flap stay' || module === undefined) return []
      return [...holesUnder(subject, piece, item), ...shelvesBeside(subject, piece, item, module)]
    })
  },
}

/** Holes of other hardware under the bracket on the wall: it cannot be turned about them, so they or it must move. */
function holesUnder(subject: Subject, piece: PlacedHardware, item: FlapStay): Finding[] {
  const station = piece.stations.find(({ part }) => part === 'carcase')
  if (station === undefined) return []
  const panel = subject.panelOf(station.panel)
  const [x, y, z] = placeBack(panel.moduleFromPanel, station.pose.origin)
  const face = z > -NOISE_MM ? 'A' : 'B'
  const upright = Math.abs(turn(panel.moduleFromPanel, [1, 0, 0])[2]) > 0.5
  const [alongX, alongY] = upright ? [item.bracket.y, item.bracket.x] : [item.bracket.x, item.bracket.y]
  return panel.bores
    .filter((bore) => bore.surface === face || (bore.through && (bore.surface === 'A' || bore.surface === 'B')))
    .filter((bore) => bore.uses.every(({ hardware }) => hardware !== piece.id))
    .flatMap((bore) => {
      const [offX, offY] = [Math.abs(bore.at[0] - x), Math.abs(bore.at[1] - y)]
      const into = [alongX + bore.diameter / 2 - offX, alongY + bore.diameter / 2 - offY]
      if (Math.min(...into) <= NOISE_MM) return []
      return [holeFinding(subject, panel, piece, bore, upright ? (into[1] ?? 0) : (into[0] ?? 0))]
    })
}

function holeFinding(subject: Subject, panel: Panel, piece: PlacedHardware, bore: Bore, by: number): Finding {
  const pin = bore.uses.some(({ purpose }) => purpose === 'shelf pin')
  const move = `${mm(Math.ceil(by * 10) / 10)} mm or more`
  const away = `move the column of pins ${move} away from it (\`front setback\` or \`rear setback\`), or choose another stay`
  const mend = pin ? { fix: away } : (subject.mend(bore.uses) ?? { fix: `move one of them ${move}` })
  return {
    rule: 'stay-clear',
    severity: 'warn',
    panels: [panel.id],
    places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
    message: `${panelWords(panel)}: the bracket of the ${piece.item.id} lies on the ${boreWords(panel, bore)}`,
    ...mend,
    at: piece.at,
  }
}

/** The stretch of wall between the two brackets of a shut stay, module frame. */
function armBox(piece: PlacedHardware, item: FlapStay): Box | undefined {
  const wall = piece.stations.find(({ part }) => part === 'carcase')?.pose
  const flap = piece.stations.find(({ part }) => part === 'flap')?.pose
  if (wall === undefined || flap === undefined) return undefined
  // The station's z goes into the wall.
  const beside = wall.origin[0] - wall.z[0] * ARM_MM
  const [x, y] = [item.bracket.x, item.bracket.y]
  return {
    min: [Math.min(wall.origin[0], beside), flap.origin[1], Math.min(wall.origin[2], flap.origin[2]) - y],
    max: [Math.max(wall.origin[0], beside), wall.origin[1] + x, Math.max(wall.origin[2], flap.origin[2]) + y],
  }
}

function shelvesBeside(subject: Subject, piece: PlacedHardware, item: FlapStay, module: PlacedModule): Finding[] {
  const arm = armBox(piece, item)
  if (arm === undefined) return []
  return module.panels
    .filter(({ role }) => role === 'loose shelf')
    .flatMap((shelf): Finding[] => {
      const box = boardBox(shelf)
      const meets = ([0, 1, 2] as const).every((axis) => box.min[axis] < arm.max[axis] && box.max[axis] > arm.min[axis])
      if (!meets) return []
      return [
        {
          rule: 'stay-clear',
          severity: 'warn',
          panels: [shelf.id],
          places: [],
          message: `${module.name}: ${shelf.name} stands in the way of the ${item.id}`,
          fix: `keep the shelf ${mm(arm.max[1] - box.min[1])} mm further back (\`front setback\` of the loose shelves), set it above or below the stay, or choose another stay`,
          ...setBack(subject, module, shelf, arm.max[1] - box.min[1]),
          at: piece.at,
        },
      ]
    })
}

/** The edit that sets a loose shelf so much further back. */
function setBack({ project }: Subject, module: PlacedModule, shelf: PlacedPanel, by: number): Partial<Mend> {
  const shelves = looseShelvesAt(project, module.key, shelf.at)
  if (shelves === undefined) return {}
  const value = typedLength(shelves.frontSetback + by, project.units, 'up')
  return { change: [{ path: [...shelves.at, 'front setback'], value }] }
}
