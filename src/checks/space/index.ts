import { boxIndex } from '../../geometry/index.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { fastenersCross } from './fasteners-cross.ts'
import { headOnPanel } from './head-on-panel.ts'
import { hingeArm } from './hinge-arm.ts'
import { specsOf } from './parts-of.ts'
import { type MakeIndex, sceneOf } from './scene.ts'
import { screwThrough } from './screw-through.ts'

/** Panels and hardware against each other in three dimensions. */
export const space: Rule = {
  ids: ['screw-through', 'fasteners-cross', 'head-on-panel', 'hinge-arm'],
  check: (subject) => spaceBy(subject, boxIndex),
}

/** The same, with a way to look for boxes. */
export function spaceBy(subject: Subject, makeIndex: MakeIndex): Finding[] {
  const scene = sceneOf(subject, makeIndex)
  const specs = specsOf(subject.project)
  return [...screwThrough(subject), ...fastenersCross(subject), ...headOnPanel(scene), ...hingeArm(scene, specs)]
}
