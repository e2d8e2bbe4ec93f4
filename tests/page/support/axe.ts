import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/**
 * What axe says against the page as it is shown now, or against some parts of it, one line a rule and element, with contrast
 * of AAA too. The page's policy lets no script in; the browser's own tools evaluate it beside the page.
 */
export async function axeFaults(page: Page, ...parts: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source)
  return page.evaluate(async (within) => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') }
    const { violations } = await axe.run(within.length === 0 ? document : { include: [...within] }, {
      rules: { 'color-contrast-enhanced': { enabled: true } },
      // What passes is many times as much, and nobody reads it.
      resultTypes: ['violations'],
    })
    return violations.flatMap(({ id, help, nodes }) =>
      nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html.slice(0, 160)}: ${failureSummary ?? ''}`),
    )
  }, parts)
}
