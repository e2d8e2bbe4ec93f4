import { afterAll, beforeAll, expect, test } from 'vitest'
import { inOneChain } from '../support/chain.ts'
import { type OpenPage, openPage } from '../support/open-page.ts'
import { drop, fileState, sampleFile } from './doings.ts'

inOneChain()

let desk: OpenPage

beforeAll(async () => {
  desk = await openPage()
})
afterAll(() => desk.close())

const offer = (page: OpenPage['page']) => page.getByRole('region', { name: 'Your last work' })

test('work is offered back after the page was closed, and gone on with', async () => {
  const { page } = desk
  await drop(page, [['cart.yaml', sampleFile('clay-cart.yaml').replace('Clay cart', 'My own cart')]])
  await fileState(page, 'cart.yaml', 'saved')
  await page.waitForFunction(() => Object.keys(localStorage).some((key) => key.startsWith('storyrod work ')))
  await page.reload()
  await fileState(page, 'pottery-studio.yaml', 'sample')
  await offer(page)
    .getByText(/Your last work: cart\.yaml from \d\d:\d\d, saved\./)
    .waitFor()
  await offer(page).getByRole('button', { name: 'Go on with it' }).click()
  await fileState(page, 'cart.yaml', 'saved')
  await offer(page).waitFor({ state: 'detached' })
  await page.waitForFunction(() => document.title.includes('My own cart'))
})

test('a second tab is not offered what is open in the first, works for itself, and takes nothing from it', async () => {
  const first = desk.page
  const second = await first.context().newPage()
  await second.goto(first.url())
  await second.locator('[data-drawn]').waitFor()
  await fileState(second, 'pottery-studio.yaml', 'sample')
  await drop(second, [['carts.yaml', sampleFile('kiln-carts.yaml')]])
  await fileState(second, 'carts.yaml', 'saved')
  const kept = () =>
    second.evaluate(() =>
      Object.entries(localStorage).flatMap(([key, value]) =>
        key.startsWith('storyrod work ') ? [JSON.parse(String(value)).file] : [],
      ),
    )
  await expect.poll(kept).toContain('carts.yaml')
  expect(await kept()).toContain('cart.yaml')
  expect(await offer(second).count()).toBe(0)
  await second.close()
  // On a busy machine a tab that was closed is gone a moment later.
  await expect
    .poll(() => first.evaluate(async () => (await navigator.locks.query()).held?.length ?? 0), { timeout: 20_000 })
    .toBeLessThanOrEqual(1)
  await first.reload()
  await offer(first).getByText('Your last work: carts.yaml').waitFor()
  await offer(first).getByText('1 more under More files.').waitFor()
})

test('to begin with the sample loses nothing: the work is under More files until it is thrown away', async () => {
  const { page } = desk
  await offer(page).getByRole('button', { name: 'Begin with the sample' }).click()
  await offer(page).waitFor({ state: 'detached' })
  await page.locator('summary', { hasText: 'More files' }).click()
  await page.getByRole('button', { name: /^Throw away carts\.yaml/ }).click()
  await page.getByRole('button', { name: /^carts\.yaml from/ }).waitFor({ state: 'detached' })
  await page.getByRole('button', { name: /^cart\.yaml from/ }).click()
  await fileState(page, 'cart.yaml', 'saved')
  expect(desk.troubles).toEqual([])
})
