import { NOISE_MM, nearPairs } from '../geometry/index.ts'
import type { Bore, BoreUse, Panel } from '../panel/index.ts'
import { limitOf, type Project } from '../project/index.ts'
import { byDesign, type Designs } from './by-design.ts'
import { type SolidWork, type Work, wallBetween, worksOf } from './works.ts'

/** Two works of one panel that meet, or leave too thin a wall between them. */
export interface Meeting {
  readonly a: Work
  readonly b: Work
  /** Wood between them, mm; 0 where they run into each other. */
  readonly wall: number
}

/** The walls that a project wants between works of a panel, mm. */
export interface Walls {
  /** Less than this between two works is a finding. */
  readonly between: (a: Work, b: Work) => number
  /** The thickest of them: no two works further apart need be looked at. */
  readonly thickest: number
}

/** Wood between two bores, a bore and a groove, two grooves over or beside each other, and a cutout and anything. */
export function wallsOf(project: Pick<Project, 'findings'>): Walls {
  const bores = limitOf(project, 'bores-near', 'warn')
  const inGroove = limitOf(project, 'bore-in-groove', 'warn')
  const under = limitOf(project, 'groove-wood', 'warn')
  const beside = limitOf(project, 'groove-wood', 'lip warn')
  const cutout = limitOf(project, 'cutout-near', 'warn')
  return {
    between: (a, b) => {
      if (a.kind === 'cutout' || b.kind === 'cutout') return cutout
      if (a.kind === 'bore' && b.kind === 'bore') return bores
      if (a.kind === 'groove' && b.kind === 'groove') return a.groove.face === b.groove.face ? beside : under
      return inGroove
    },
    thickest: Math.max(bores, inGroove, under, beside, cutout),
  }
}

/**
 * All pairs of works of a panel with less wood between them than there should be, in three dimensions, each once: bores
 * first, then grooves, then cutouts, and in the panel's own order. What lies so by design is left out.
 */
export function meetingsIn(panel: Panel, walls: Walls, designs: Designs): Meeting[] {
  const works = worksOf(panel)
  const boxes = works.map(({ box }) => box)
  return nearPairs(boxes, walls.thickest).flatMap(([k, n]): Meeting[] => {
    const [a, b] = [works[k], works[n]]
    return a === undefined || b === undefined ? [] : meetingOf(panel, a, b, walls, designs)
  })
}

/** Whether two works of a panel leave too little wood: the one pair, or nothing. */
export function meetingOf(panel: Panel, a: SolidWork, b: SolidWork, walls: Walls, designs: Designs): Meeting[] {
  const enough = walls.between(a.work, b.work) - NOISE_MM
  if (boxesApart(a, b, enough) || byDesign(panel, a, b, designs)) return []
  const wall = wallBetween(a, b, enough)
  return wall < enough ? [{ a: a.work, b: b.work, wall }] : []
}

/** Far enough apart along one axis, so that nothing needs to be worked out. */
const boxesApart = ({ box: a }: SolidWork, { box: b }: SolidWork, enough: number): boolean =>
  ([0, 1, 2] as const).some((axis) => a.min[axis] - b.max[axis] >= enough || b.min[axis] - a.max[axis] >= enough)

/**
 * The deepest fastener from either face, where the two would meet in the hole that they share. Shelf pins do not count:
 * they are short, and a hole that a plate has taken is simply not used for a pin.
 */
export function meetingInHole(panel: Panel, bore: Bore): { readonly a: BoreUse; readonly b: BoreUse } | undefined {
  const deepest = (surface: 'A' | 'B'): BoreUse | undefined =>
    bore.uses
      .filter((use) => use.surface === surface && use.purpose !== 'shelf pin')
      .sort((a, b) => b.depth - a.depth)[0]
  const a = deepest('A')
  const b = deepest('B')
  if (a === undefined || b === undefined || a.depth + b.depth <= panel.thickness - NOISE_MM) return undefined
  return { a, b }
}
