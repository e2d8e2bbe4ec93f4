import { expect, test } from 'vitest'
import { axeFaults } from '../support/axe.ts'
import { checksAtRest, writeDefinition } from '../support/definition.ts'
import { DESK, openPage, PHONE } from '../support/open-page.ts'

const AREAS = ['Define', 'See', 'Judge', 'Take away']

test.each(['light', 'dark'] as const)(
  'on a desk, %s: form, text, settings, a definition with mistakes',
  async (colorScheme) => {
    const { page, close } = await openPage(DESK, { colorScheme })
    await checksAtRest(page)
    expect(await axeFaults(page)).toEqual([])
    await page.getByText('Settings', { exact: true }).click()
    await page.locator('.cautions summary').click()
    await page.locator('.rule summary').first().click()
    expect(await axeFaults(page)).toEqual([])
    await writeDefinition(page, 'storyrod: 1\nmodules:\n  a: { widht: 600 }\n')
    expect(await axeFaults(page)).toEqual([])
    await close()
  },
)

test.each(['light', 'dark'] as const)('on a phone, %s: each area', async (colorScheme) => {
  const { page, close } = await openPage(PHONE, { colorScheme })
  for (const area of AREAS) {
    await page.locator('.area-bar').getByRole('button', { name: area }).click()
    expect(await axeFaults(page), area).toEqual([])
  }
  await close()
})
