import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { formatInch } from '../src/length/index.ts'
import { DEFAULTS, DENSITY, STIFFNESS } from '../src/project/defaults.ts'

const readme = readFileSync(new URL('../README.md', import.meta.url), 'utf8')

/** The row of a key in its section of the definition table. */
function rowOf(section: string, key: string): string {
  const lines = readme.split('\n')
  const start = lines.findIndex((line) => line.startsWith(`| **${section}**`))
  const rest = lines.slice(start + 1)
  const end = rest.findIndex((line) => !line.startsWith('| `') && !line.startsWith('| \\`'))
  return rest.slice(0, end).find((line) => line.split('|')[1]?.includes(`\`${key}\``)) ?? ''
}

/** A default as the table says it: `2 \| 1/16`, mm first, inches behind. */
function written(value: number | { readonly mm: number; readonly in: number }): string {
  if (typeof value === 'number') return String(value)
  return `${value.mm} \\| ${formatInch(value.in).replace(/ in$/, '')}`
}

describe('the defaults that the README states are those of the code', () => {
  const rows: [string, string, keyof typeof DEFAULTS][] = [
    ['root', 'kerf', 'kerf'],
    ['stock', 'edge trim', 'edgeTrim'],
    ['carcase', 'rails', 'stripWidth'],
    ['carcase', 'front gap', 'frontGap'],
    ['stretchers', 'width', 'stripWidth'],
    ['back', 'groove depth', 'grooveDepth'],
    ['back', 'groove setback', 'grooveSetback'],
    ['back', 'groove play', 'groovePlay'],
    ['back', 'rebate width', 'rebateWidth'],
    ['back', 'rebate width', 'rebateLeaves'],
    ['back', 'edge play', 'edgePlay'],
    ['back', 'joint', 'thinBack'],
    ['joint', 'end distance', 'endDistance'],
    ['joint', 'spacing', 'spacing'],
    ['joint', 'depth', 'housingPlay'],
    ['loose shelves', 'clearance', 'shelfClearance'],
    ['loose shelves', 'front setback', 'shelfFront'],
    ['loose shelves', 'front setback', 'shelfFrontBehindDoor'],
    ['loose shelves', 'rear gap', 'rearGap'],
    ['pins', 'front setback', 'pinSetback'],
    ['pins', 'keep clear', 'keepClear'],
    ['drawer box', 'groove depth', 'drawerGrooveDepth'],
    ['drawer box', 'groove depth', 'drawerGrooveHeight'],
    ['drawer box', 'clearance above', 'drawerAbove'],
    ['drawer box', 'clearance above', 'drawerBelow'],
    ['drawer box', 'behind', 'behindSlide'],
    ['front', 'reveal', 'reveal'],
    ['front', 'gap', 'gap'],
    ['front', 'inset gap', 'insetGap'],
    ['front', 'hinge end', 'hingeEnd'],
    ['pull', 'edge distance', 'pullEdge'],
    ['pull', 'end distance', 'pullEnd'],
    ['base', 'inset', 'footInset'],
    ['base', 'footprint gap', 'footprintGap'],
    ['worktop', 'fix', 'endDistance'],
    ['worktop', 'fix', 'topSpacing'],
    ['insert', 'play', 'insertPlay'],
    ['plinth', 'front recess', 'plinthFront'],
    ['plinth', 'side recess', 'plinthBehind'],
    ['lipping', 'take off from', 'lippingFrom'],
    ['flip-over top', 'locking bolts', 'lockEdge'],
    ['flip-over top', 'well', 'wellStep'],
    ['flip-over top', 'gap', 'platformGap'],
    ['flip-over top', 'turning clearance', 'turningClearance'],
    ['outputs', 'margin', 'printMargin'],
    ['outputs', 'overlap', 'pageOverlap'],
    ['rows', 'join', 'boltEnd'],
    ['rows', 'join', 'boltSide'],
  ]

  test.each(rows)('%s, %s: %s', (section, key, name) => {
    const text = written(DEFAULTS[name])
    expect(rowOf(section, key)).toMatch(new RegExp(`(^|[^\\d./])${text.replace(/[\\|.]/g, '\\$&')}($|[^\\d./])`))
  })

  test('of a sheet, of sizes that are as large as fits, and of the screws of a back', () => {
    const { sheetLength, sheetWidth, fitStep, fitMost, backSpacing } = DEFAULTS
    const inches = (mm: number): string => formatInch(mm).replace(' in', '')
    const sheet = `${sheetLength.mm} × ${sheetWidth.mm} \\| ${inches(sheetLength.in)} × ${inches(sheetWidth.in)} in`
    expect(rowOf('stock', 'sheet')).toContain(`| ${sheet} |`)
    const fit = `${fitStep.mm}, ${fitMost.mm} \\| ${inches(fitStep.in)}, ${inches(fitMost.in)} in`
    expect(rowOf('root', 'fit')).toContain(`| ${fit} |`)
    expect(rowOf('back', 'joint')).toContain(`every ${backSpacing.mm} `)
    expect(rowOf('back', 'joint')).toContain(`every ${inches(backSpacing.in)} in`)
    expect(rowOf('stock', 'density')).toContain(`| ${DENSITY} |`)
    expect(rowOf('stock', 'stiffness')).toContain(`| ${STIFFNESS} |`)
  })
})
