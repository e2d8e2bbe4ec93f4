import { NOISE_MM } from '../../geometry/index.ts'
import { coreOf, type Panel } from '../../panel/index.ts'
import { limitOf, type Project, type Stock } from '../../project/index.ts'
import type { Finding, Rule } from '../types.ts'
import { mm } from '../words.ts'

/** Pieces that are small to hold while they are machined: one finding a stock. */
export const pieces: Rule = {
  ids: ['piece-small'],
  check: ({ project, panels }) => {
    const small = new Map<Stock, Panel[]>()
    for (const panel of panels) {
      if (!isSmall(project, panel)) continue
      const list = small.get(panel.stock)
      if (list === undefined) small.set(panel.stock, [panel])
      else list.push(panel)
    }
    return [...small].map(([stock, list]) => finding(project, stock, list))
  },
}

function isSmall(project: Project, panel: Panel): boolean {
  const { length, width } = coreOf(panel)
  return (
    Math.max(length, width) < limitOf(project, 'piece-small', 'length') - NOISE_MM ||
    Math.min(length, width) < limitOf(project, 'piece-small', 'width') - NOISE_MM
  )
}

/** So many are named; the rest is counted. */
const NAMED = 3

function finding(project: Project, stock: Stock, list: readonly Panel[]): Finding {
  const names = list.slice(0, NAMED).map((panel) => {
    const { length, width } = coreOf(panel)
    return `${panel.moduleName}, ${panel.name} ${mm(length)} × ${mm(width)}`
  })
  const rest = list.length - names.length
  const [length, width] = [limitOf(project, 'piece-small', 'length'), limitOf(project, 'piece-small', 'width')]
  const [are, each] = list.length === 1 ? ['1 piece is', 'it'] : [`${list.length} pieces are`, 'them']
  return {
    rule: 'piece-small',
    severity: 'note',
    panels: [],
    places: [],
    message: `${stock.name}: ${are} shorter than ${mm(length)} mm or narrower than ${mm(width)} mm: ${names.join('; ')}${rest > 0 ? `; and ${rest} more` : ''}`,
    fix: `bore and groove ${each} while still part of a larger board, and cut ${each} off last, with push sticks or on a sled`,
    at: stock.at,
  }
}
