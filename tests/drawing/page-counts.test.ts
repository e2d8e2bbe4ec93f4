import { expect, test } from 'vitest'
import { facesDrawn } from '../../src/drawing/index.ts'
import { planFace } from '../../src/drawing/pages/face-pages.ts'
import { setupOf } from '../../src/drawing/pages/setup.ts'
import { faceView } from '../../src/drawing/pages/view.ts'
import type { PaperName } from '../../src/project/index.ts'
import { openSample, sampleStems } from '../support/samples.ts'

/** Sheets of all faces of a sample, those of plain grids over the same faces, and those that no choice could do without. */
function counts(stem: string, paper: PaperName): { sheets: number; grid: number; least: number } {
  const { panels } = openSample(stem).built
  const setup = setupOf(paper, 'mm', undefined)
  const plans = panels.flatMap((panel) => facesDrawn(panel).map((face) => planFace(faceView(panel, face), setup)))
  const marked = plans.filter(({ sheets }) => sheets > 0)
  const sum = (of: (plan: (typeof plans)[number]) => number): number => marked.reduce((all, plan) => all + of(plan), 0)
  return { sheets: sum(({ sheets }) => sheets), grid: sum(({ grid }) => grid), least: sum(({ least }) => least) }
}

test.each(sampleStems)(
  '%s on A4 takes at most 60 % of the sheets of plain grids, and few more than are needed',
  (stem) => {
    const { sheets, grid, least } = counts(stem, 'A4')
    expect(sheets / grid).toBeLessThan(0.6)
    expect(sheets / least).toBeLessThan(1.2)
  },
)
