import { same } from '../geometry/index.ts'
import type { Panel } from '../panel/index.ts'
import { NEAR_EDGE_MM, optionOf } from './hardware-folds.ts'
import { holePatterns, seenEdge } from './hardware-holes.ts'
import { layings, turnedSide } from './hardware-turns.ts'
import type { HardwareHand, Pattern, PieceFold } from './hardware-types.ts'
import type { PieceEdge } from './piece-use.ts'

/** The panels of the module that are made like this one, on the same or on the other hand. */
export function othersOf(panel: Panel, panels: readonly Panel[]): Panel[] {
  const kindOf = ({ role }: Panel): string => role.replace(/\b(left|right)\b/, 'hand')
  return panels.filter(
    (other) => other.id !== panel.id && other.module === panel.module && kindOf(other) === kindOf(panel),
  )
}

/**
 * Which other panels a piece serves as well: those where it can be laid, by turning it, so that all its holes are wanted and
 * its folds lie on edges at the same distances. Pieces of paper are never turned over.
 */
export function handsOf(
  pattern: Pattern,
  folds: readonly PieceFold[],
  arrow: PieceEdge,
  face: 'A' | 'B',
  others: readonly Panel[],
): HardwareHand[] {
  if (pattern.holes.length === 0 || folds.length === 0) return []
  return others.flatMap((other): HardwareHand[] => {
    for (const one of holePatterns(other, face, new Set())) {
      const laying = layings(pattern, one).find((way) => {
        const { near } = optionOf(other, pattern, way, NEAR_EDGE_MM)
        const [main, ...seconds] = folds.map(({ side, mm, needed }) => needed || same(near.get(side) ?? Number.NaN, mm))
        // Of two second folds, one for each hand, one lies on an edge.
        return main === true && (seconds.length === 0 || seconds.includes(true))
      })
      if (laying === undefined) continue
      const toward = other.edges[seenEdge(face, turnedSide(arrow, laying.turns))]
      return [{ name: other.name, turns: laying.turns, toward }]
    }
    return []
  })
}
