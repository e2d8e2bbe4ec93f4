import { describe, expect, test } from 'vitest'
import { facesDrawn, hasWork } from '../../src/drawing/face.ts'
import { pageDrawings } from '../../src/drawing/pages/face-pages.ts'
import { openSample, sampleStems } from '../support/samples.ts'
import { blurred, circlesOf, faults, wordsOf } from './page-faults.ts'

describe.each(sampleStems)('full-size pages of %s', (stem) => {
  const { built } = openSample(stem)

  test.each(['A4', 'Letter', 'A3'] as const)('on %s: no words on a hole or on words, and no bore left out', (paper) => {
    const found: string[] = []
    const speechless: string[] = []
    for (const panel of built.panels) {
      const shown = new Set<string>()
      for (const face of facesDrawn(panel)) {
        if (!hasWork(panel, face) && face === 'B') continue
        for (const page of pageDrawings(panel, face, paper, built.project.units)) {
          found.push(...faults(page), ...blurred(page))
          for (const text of wordsOf(page)) if (text.includes('no room for')) speechless.push(`${page.title}: ${text}`)
          for (const { id } of circlesOf(page, 'BORE')) if (id !== undefined) shown.add(id)
        }
      }
      const edges = { x0: 0, x1: panel.length, y0: 0, y1: panel.width }
      for (const { id, surface, at, leanDeg } of panel.bores) {
        // Pockets and the bores at shoulders of rebates have no circle.
        const plane = surface === 'A' || surface === 'B' ? undefined : edges[surface]
        const atEdge = plane === undefined || Math.abs((surface.startsWith('x') ? at[0] : at[1]) - plane) < 1e-6
        if (leanDeg === undefined && atEdge && !shown.has(id)) found.push(`${panel.id}: ${id} is on no page`)
      }
    }
    expect(found).toEqual([])
    expect(speechless).toEqual([])
  })
})
