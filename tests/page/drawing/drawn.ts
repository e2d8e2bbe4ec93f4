import type { Locator, Page } from 'playwright-core'

/** Does something and waits until another drawing is on the sheet. */
export async function redrawn(page: Page, act: () => Promise<unknown>): Promise<void> {
  const drawing = page.locator('svg[data-drawn]')
  const before = await drawing.getAttribute('data-drawn')
  await act()
  await page.waitForFunction(
    (old) => document.querySelector('svg[data-drawn]')?.getAttribute('data-drawn') !== old,
    before,
  )
}

/** Looks at a panel of a module, by the title block. */
export async function lookAtPanel(page: Page, module: string, panel: string): Promise<void> {
  await redrawn(page, () => page.getByLabel('module', { exact: true }).selectOption({ label: module }))
  await redrawn(page, () => page.getByLabel('panel', { exact: true }).selectOption({ label: panel }))
}

/** Presses a radio button of the title block. */
export const choose = (page: Page, name: string): Promise<void> =>
  redrawn(page, () => page.getByRole('radio', { name, exact: true }).check({ force: true }))

/** Where a point of the drawing (mm) is on the screen, CSS px: asked of the browser, not of our camera. */
export async function onScreen(page: Page, x: number, y: number): Promise<{ x: number; y: number }> {
  return page.locator('svg[data-drawn] .world').evaluate(
    (world, [left, top]) => {
      if (!(world instanceof SVGGElement)) throw new Error('the drawing has no group')
      const point = new DOMPoint(left, top).matrixTransform(world.getScreenCTM() ?? undefined)
      return { x: point.x, y: point.y }
    },
    [x, y] as const,
  )
}

/** Middles of rings that are drawn, CSS px. */
export async function rings(page: Page, kind: 'chosen' | 'partner' | 'place'): Promise<{ x: number; y: number }[]> {
  return page.locator(`svg[data-drawn] .ring.${kind}`).evaluateAll((all) =>
    all.map((ring) => {
      const { x, y, width, height } = ring.getBoundingClientRect()
      return { x: x + width / 2, y: y + height / 2 }
    }),
  )
}

/** What can be read of an element: its pieces of text, each behind a blank. */
export const wordsOf = (element: Locator): Promise<string> =>
  element.evaluate((root) => {
    const walker = document.createTreeWalker(root, NodeFilter.SHOW_TEXT)
    const words: string[] = []
    while (walker.nextNode()) words.push(walker.currentNode.nodeValue ?? '')
    return words.join(' ').replaceAll(/\s+/g, ' ').replaceAll(' ,', ',').trim()
  })

/** Waits until the page has been laid out anew after what was just done. */
export const settled = (page: Page): Promise<void> =>
  page.evaluate(() => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))))
