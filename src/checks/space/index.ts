import { boxIndex, nearPairs } from '../../geometry/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { bothOpen } from './both-open.ts'
import { fastenersCross } from './fasteners-cross.ts'
import { flipRoom } from './flip-room.ts'
import { floorOf } from './floor.ts'
import { frontsGap } from './fronts-gap.ts'
import { headOnPanel } from './head-on-panel.ts'
import { hingeArm } from './hinge-arm.ts'
import { specsOf } from './parts-of.ts'
import { pulling } from './pulling.ts'
import { type Finder, sceneOf } from './scene.ts'
import { screwThrough } from './screw-through.ts'
import { swings } from './swings.ts'

/** Panels and hardware against each other in three dimensions. */
export const space: Rule = {
  ids: [
    'screw-through',
    'fasteners-cross',
    'head-on-panel',
    'hinge-arm',
    'fronts-gap',
    'door-swing',
    'corner-swing',
    'flap-arc',
    'flip-room',
    'drawer-room',
  ],
  check: (subject) => spaceBy(subject, { index: boxIndex, pairs: nearPairs }),
}

/** The same, with a way to find boxes. */
export function spaceBy(subject: Subject, finder: Finder): Finding[] {
  const scene = sceneOf(subject, finder)
  const specs = specsOf(subject.project)
  const floor = floorOf(scene)
  const moving = [...swings(scene, floor), ...pulling(scene, floor)]
  return [
    ...screwThrough(subject),
    ...fastenersCross(scene),
    ...headOnPanel(scene),
    ...hingeArm(scene, specs),
    ...frontsGap(scene, specs, floor),
    ...moving,
    ...flipRoom(scene, floor),
    ...bothOpen(scene, floor, moving),
  ]
}
