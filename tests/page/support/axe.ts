import { readFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import type { AxeResults } from 'axe-core'
import type { Page } from 'playwright-core'

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

/**
 * What axe says against the page as it is shown now, one line a rule and element, with contrast of AAA too. The page's policy
 * lets no script in; the browser's own tools evaluate it beside the page.
 */
export async function axeFaults(page: Page): Promise<string[]> {
  await page.evaluate(source)
  const results = await page.evaluate(async (): Promise<AxeResults> => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') }
    return axe.run(document, { rules: { 'color-contrast-enhanced': { enabled: true } } })
  })
  return results.violations.flatMap(({ id, help, nodes }) =>
    nodes.map(({ html, failureSummary }) => `${id}: ${help}: ${html.slice(0, 160)}: ${failureSummary ?? ''}`),
  )
}
