import { discMeets, grown, overlaps, textArea } from '../../src/drawing/areas.ts'
import type { Circle, Drawing, Entity, Line, Point, Text } from '../../src/drawing/types.ts'

export const entitiesOf = (page: Drawing, ...layers: string[]): Entity[] =>
  page.layers.filter((layer) => layers.length === 0 || layers.includes(layer.name)).flatMap((layer) => layer.entities)
export const textsOf = (page: Drawing): Text[] => entitiesOf(page).filter((entity) => entity.kind === 'text')
export const wordsOf = (page: Drawing): string[] => textsOf(page).map((text) => text.text)
export const circlesOf = (page: Drawing, ...layers: string[]): Circle[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'circle')
export const linesOf = (page: Drawing, ...layers: string[]): Line[] =>
  entitiesOf(page, ...layers).filter((entity) => entity.kind === 'line')
export const allWords = (pages: readonly Drawing[]): string[] => pages.flatMap(wordsOf)

/** The arms of a hole's cross reach so far beyond its rim, mm: no word lies on them either. */
const ARM = 2.5

/** What breaks the promises of a page: words on a hole, a mark or other words, and anything near the sheet's edge. */
export function faults(page: Drawing): string[] {
  const found: string[] = []
  const texts = textsOf(page)
  const [rims, marks] = [circlesOf(page, 'BORE', 'COUNTERSINK'), circlesOf(page, 'MARK')]
  const arms = rims.map(({ at, radius }) => ({ at, radius: radius + ARM }))
  // The arms end where the window does, so that none reaches the furniture.
  const furniture = new Set(entitiesOf(page, 'SHEET'))
  texts.forEach((text, index) => {
    // The lines of one label touch; float noise must not make that an overlap.
    const area = grown(textArea(text), -0.01)
    for (const { at, radius } of [...marks, ...(furniture.has(text) ? rims : arms)])
      if (discMeets(area, at, radius)) found.push(`${page.title}: "${text.text}" on a circle at ${at}`)
    for (const other of texts.slice(index + 1))
      if (overlaps(area, textArea(other))) found.push(`${page.title}: "${text.text}" on "${other.text}"`)
    const { min, max } = page.view
    // Letters may come as near as 10 mm to the edge of the sheet; the room for accents may come a little nearer.
    if (
      area.min[0] < min[0] + 9.5 ||
      area.min[1] < min[1] + 9 ||
      area.max[0] > max[0] - 9.5 ||
      area.max[1] > max[1] - 9.5
    )
      found.push(`${page.title}: "${text.text}" in the margin`)
  })
  for (const line of linesOf(page))
    for (const [x, y] of [line.from, line.to])
      if (x < 10 - 1e-9 || y < 10 - 1e-9 || x > page.view.max[0] - 10 + 1e-9 || y > page.view.max[1] - 10 + 1e-9)
        found.push(`${page.title}: a line in the margin at ${x}, ${y}`)
  return found
}

/**
 * Holes in which an awl finds more than the dot: a line nearer to the middle than 0.8 mm, or than 0.6 of the radius of a
 * hole that is smaller than that asks for.
 */
export function blurred(page: Drawing): string[] {
  const lines = linesOf(page)
  return circlesOf(page, 'BORE').flatMap(({ at, radius }) => {
    const clear = Math.min(0.8, 0.6 * radius)
    return lines
      .filter(({ from, to }) => distance(at, from, to) < clear - 1e-6)
      .map(({ from, to }) => `${page.title}: a line from ${from} to ${to} in the hole at ${at}`)
  })
}

function distance(at: Point, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]]
  const along = ((at[0] - from[0]) * dx + (at[1] - from[1]) * dy) / (dx * dx + dy * dy)
  const t = Math.min(1, Math.max(0, along))
  return Math.hypot(at[0] - from[0] - t * dx, at[1] - from[1] - t * dy)
}
