import { expect, test } from 'vitest'
import { outputFile, outputFiles, outputPaths, printedPages } from '../../src/outputs/index.ts'
import { FONTS } from '../support/fonts.ts'
import { openSample } from '../support/samples.ts'

const { built, definition } = openSample('kiln-carts')

test.each([[undefined], ['DO NOT CUT: 1 STOP STANDS']])(
  'each file alone is the one among all, stamp %s',
  async (stamp) => {
    const options = stamp === undefined ? {} : { stamp }
    const all = new Map<string, Uint8Array>()
    for await (const { path, bytes } of outputFiles(built, FONTS, definition, options)) all.set(path, bytes)
    expect([...all.keys()]).toEqual(outputPaths(built))
    // One of each kind: those of all pages take as long as all.
    const tried = [
      'svg/left-cart/left-side-a.svg',
      'dxf/right-cart/left-side-a.dxf',
      'templates/left-cart/left-side.pdf',
    ]
    tried.push('templates/measure-first.pdf', 'templates/pages.json', 'panels.json', 'findings.json', 'findings.txt')
    for (const path of tried) {
      const file = await outputFile(built, FONTS, definition, path, options)
      const whole = all.get(path)
      expect(whole, path).toBeDefined()
      expect(file?.path).toBe(path)
      expect(Buffer.compare(file?.bytes ?? new Uint8Array(), whole ?? new Uint8Array()), path).toBe(0)
    }
  },
)

test('there is no file at another path', async () => {
  for (const path of ['svg/left-cart/lid-a.svg', 'notes.txt']) {
    expect(await outputFile(built, FONTS, definition, path)).toBeUndefined()
  }
})

/** All pages of a choice, and the count at its end. */
function printed(choice: Parameters<typeof printedPages>[1]) {
  const pages = printedPages(built, choice)
  const titles: { readonly of: string; readonly sheets: number; readonly front: boolean }[] = []
  for (let step = pages.next(); ; step = pages.next()) {
    if (step.done === true) return { titles, count: step.value }
    titles.push({ of: step.value.of, sheets: step.value.drawings.length, front: step.value.front })
  }
}

// The command says of kiln-carts: 14 sheets from a roll 610 mm wide; two carts that are alike, so 7 each; besides a page to measure and a cover.
test('what is printed of all, of a module, of a panel, to measure', () => {
  const all = printed({ of: 'all' })
  expect(all.count).toMatchObject({ sheets: 14, grid: 14, overBudget: 0 })
  expect(all.titles.filter(({ front }) => front)).toEqual([{ of: 'cover', sheets: 2, front: true }])
  expect(all.titles.filter(({ front }) => !front).reduce((sum, { sheets }) => sum + sheets, 0)).toBe(14)
  expect(printed({ of: 'module', module: 'left-cart' }).count.sheets).toBe(7)
  const [one] = built.panels
  const panel = printed({ of: 'panel', panel: one?.id ?? '' })
  expect(panel.titles).toEqual([{ of: `${one?.moduleName}: ${one?.name}`, sheets: panel.count.sheets, front: false }])
  expect(printed({ of: 'measuring' })).toEqual({
    titles: [{ of: 'measure first', sheets: 1, front: true }],
    count: { sheets: 0, grid: 0, least: 0, overBudget: 0 },
  })
  expect(printed({ of: 'module', module: 'no such' }).titles).toEqual([])
})
