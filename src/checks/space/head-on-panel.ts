import { boardBox, type PanelRole } from '../../assembly/index.ts'
import { type Box, gapBetweenSolids, IDENTITY, NOISE_MM } from '../../geometry/index.ts'
import type { Item } from '../../hardware/index.ts'
import type { Finding } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import { FRONTS } from './floor.ts'
import { freeHeightWords } from './free-heights.ts'
import { movedHinges } from './hinge-places.ts'
import { bodyWords, depthOf, placeOf, rounded, touches, woodIn } from './parts-of.ts'
import type { BoxedPanel, ModuleScene, PlacedBody, Scene } from './scene.ts'

/** Whether a body is a head, a nut or a plate that panels and other hardware must leave room for. */
function isHead({ piece, name }: PlacedBody): boolean {
  const { kind } = piece.item
  if (name === 'screw head') return true
  if (name === 'nut') return true
  return kind === 'joining bolt' || (kind === 'cup hinge' && name === 'plate')
}

/** Heads, nuts and plates that a panel or other hardware stands in the way of. */
export function headOnPanel(scene: Scene): Finding[] {
  return scene.modules.flatMap((own) =>
    own.bodies.flatMap((body, k) =>
      isHead(body) ? [...onPanels(scene, own, body), ...onBodies(scene, own, body, k)] : [],
    ),
  )
}

function onPanels(scene: Scene, own: ModuleScene, body: PlacedBody): Finding[] {
  // `hinge-arm` looks at the plates of hinges.
  if (body.piece.item.kind === 'cup hinge') return []
  return own.panelsNear(body.box, 0).flatMap((k): Finding[] => {
    const other = own.panels[k]
    if (other === undefined || body.piece.stations.some(({ panel }) => panel === other.panel.id)) return []
    if (isCovered(body, other)) return []
    const wood = woodIn(other.panel, other.box, body.box).filter(
      (box) => gapBetweenSolids(body.solid, { kind: 'box', pose: IDENTITY, box }) <= NOISE_MM,
    )
    if (wood.length === 0) return []
    const loose = other.panel.role === 'loose shelf'
    return [
      {
        rule: 'head-on-panel',
        severity: loose || body.name === 'screw head' ? 'warn' : 'stop',
        panels: [body.panel.id, other.panel.id],
        places: [placeOf(body)],
        message: `${panelWords(body.panel)}: ${bodyWords(body)} is in the way of ${other.panel.name}`,
        fix: loose ? freeHeightWords(scene, own, other.panel) : moveWords(body, wood),
        at: loose ? other.panel.at : body.piece.at,
      },
    ]
  })
}

const moveWords = ({ name }: PlacedBody, wood: readonly Box[]): string =>
  name === 'screw head'
    ? 'move the pull off it, or sink the heads of its screws'
    : `move one of them ${mm(rounded(depthOf(wood)))} mm or more`

/** What stands around a bottom; `foot-place` keeps feet clear of it. */
const AROUND: readonly PanelRole[] = ['left side', 'right side', 'back', ...FRONTS]

/** Bolts and feet under a panel that lies on their board, and holes under it, are found by `hole-covered`. */
function isCovered({ piece, panel, box }: PlacedBody, other: BoxedPanel): boolean {
  if (piece.item.kind === 'levelling foot' && AROUND.includes(other.panel.role)) return true
  if (!touches(panel, other.box)) return false
  const { kind } = piece.item
  if (kind === 'joining bolt' || kind === 'levelling foot') return true
  // The middle of a nut is that of its hole.
  const own = boardBox(panel)
  return ([0, 1, 2] as const).every((k) => {
    const flat = own.max[k] - own.min[k] <= panel.thickness + NOISE_MM
    const middle = (box.min[k] + box.max[k]) / 2
    return flat || (middle > other.box.min[k] && middle < other.box.max[k])
  })
}

const WITH_HEADS: readonly Item['kind'][] = ['joining bolt', 'levelling foot', 'caster', 'cup hinge']

function onBodies(scene: Scene, own: ModuleScene, body: PlacedBody, place: number): Finding[] {
  if (!WITH_HEADS.includes(body.piece.item.kind)) return []
  return own.bodiesNear(body.box, 0).flatMap((k): Finding[] => {
    const other = own.bodies[k]
    if (other === undefined || k <= place || !isHead(other) || !WITH_HEADS.includes(other.piece.item.kind)) return []
    if (other.piece.id === body.piece.id || other.panel.id !== body.panel.id) return []
    // Two hinges of one door that are too near each other are found where they are placed.
    if (other.piece.series === body.piece.series || gapBetweenSolids(body.solid, other.solid) > NOISE_MM) return []
    return [
      {
        rule: 'head-on-panel',
        severity: 'stop',
        panels: [body.panel.id],
        places: [placeOf(body), placeOf(other)],
        message: `${panelWords(body.panel)}: ${bodyWords(body)}, lies on ${bodyWords(other)}`,
        ...mendOf(scene, own, [body, other]),
        at: body.piece.at,
      },
    ]
  })
}

/** A hinge is set beside what is in its way; else one of the two is moved by hand. */
function mendOf(scene: Scene, own: ModuleScene, pair: readonly PlacedBody[]): Pick<Finding, 'fix' | 'change'> {
  const hinge = pair.find(({ piece }) => piece.item.kind === 'cup hinge')
  const moved = hinge && movedHinges(scene, own, hinge, isHead)
  return moved ?? { fix: 'move one of them: bolts and feet by their insets, hinges by `hinges: [ … ]`' }
}
