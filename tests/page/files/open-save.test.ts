import { afterAll, beforeAll, expect, test } from 'vitest'
import { inOneChain } from '../support/chain.ts'
import { textField, wholeText } from '../support/definition.ts'
import { DESK, type OpenPage, openPage, PHONE } from '../support/open-page.ts'
import { drop, fileState, openText, sampleFile, taken } from './doings.ts'

inOneChain()

let desk: OpenPage

beforeAll(async () => {
  desk = await openPage(DESK)
})
afterAll(() => desk.close())

/** In place of what the browser asks its person: chooses these files, and notes what is written into them. */
async function withPickers(open: Readonly<Record<string, string>>, saveAs: string): Promise<void> {
  await desk.page.evaluate(
    ([files, name]) => {
      const written: [string, string][] = []
      const handle = (file: string, text: string) => ({
        kind: 'file',
        name: file,
        getFile: async () => new File([text], file),
        createWritable: async () => {
          let all = ''
          return {
            write: async (data: string) => {
              all += data
            },
            close: async () => {
              written.push([file, all])
            },
          }
        },
      })
      Object.assign(window, {
        written,
        showOpenFilePicker: async () => Object.entries(files).map(([file, text]) => handle(file, text)),
        showSaveFilePicker: async () => {
          if (name === '') throw new DOMException('given up', 'AbortError')
          return handle(name, '')
        },
      })
    },
    [open, saveAs] as const,
  )
}

const written = (): Promise<[string, string][]> =>
  desk.page.evaluate(() => (window as never as { written: [string, string][] }).written)

/** Changes the definition as the text does. */
async function type(words: string): Promise<void> {
  const { page } = desk
  await (await textField(page)).focus()
  await page.keyboard.press('Control+End')
  await page.keyboard.type(words)
}

test('open, change, save by key into the same file, save under another name', async () => {
  const { page } = desk
  const text = sampleFile('clay-cart.yaml')
  await withPickers({ 'cart.yaml': text }, 'other.yaml')
  await page.keyboard.press('Control+o')
  await fileState(page, 'cart.yaml', 'saved')
  await type('# mine')
  await fileState(page, 'cart.yaml', 'not saved')
  await page.locator('.file-mark .filled').waitFor()
  await page.keyboard.press('Control+s')
  await fileState(page, 'cart.yaml', 'saved')
  expect(await written()).toEqual([['cart.yaml', `${text}# mine`]])
  await page.keyboard.press('Control+Shift+S')
  await fileState(page, 'other.yaml', 'saved')
  expect((await written())[1]?.[0]).toBe('other.yaml')
  // Given up: nothing is written, and nothing is said.
  await type(' too')
  await withPickers({}, '')
  await page.keyboard.press('Control+Shift+S')
  await fileState(page, 'other.yaml', 'not saved')
  expect(await written()).toEqual([])
})

test('another definition over unsaved work is asked about first: stay, or go on and find it kept', async () => {
  const { page } = desk
  const carts = [['carts.yaml', sampleFile('kiln-carts.yaml')]] as const
  await drop(page, carts)
  const question = page.getByRole('dialog')
  await question.getByRole('button', { name: 'Stay here' }).click()
  await question.waitFor({ state: 'detached' })
  await fileState(page, 'other.yaml', 'not saved')
  await drop(page, carts)
  await question.waitFor()
  await page.keyboard.press('Escape')
  await question.waitFor({ state: 'detached' })
  await fileState(page, 'other.yaml', 'not saved')
  await drop(page, carts)
  await question.getByRole('button', { name: 'Go on without saving' }).click()
  await fileState(page, 'carts.yaml', 'saved')
  await page.getByRole('listbox', { name: /kiln cart/i }).waitFor()
  await page.locator('summary', { hasText: 'More files' }).click()
  await page.getByRole('button', { name: /^other\.yaml from .*, not saved$/ }).click()
  await fileState(page, 'other.yaml', 'not saved')
  expect(await wholeText(page)).toContain('# mine too')
})

test('the browser asks before it leaves unsaved work, and not where all is saved', async () => {
  const { page } = desk
  const prevented = () =>
    page.evaluate(() => {
      const leaving = new Event('beforeunload', { cancelable: true })
      window.dispatchEvent(leaving)
      return leaving.defaultPrevented
    })
  expect(await prevented()).toBe(true)
  await withPickers({}, 'other.yaml')
  await page.keyboard.press('Control+s')
  await fileState(page, 'other.yaml', 'saved')
  expect(await prevented()).toBe(false)
})

test('a file that is named and not there is asked for, and the drawing comes with it', async () => {
  const { page } = desk
  await drop(page, [['studio.yaml', sampleFile('pottery-studio.yaml')]])
  const lacking = page.getByRole('region', { name: 'Files that are lacking' })
  await lacking.getByText('studio-mark.svg is named but not here').waitFor()
  // Whatever the file is called: it was asked for by its name.
  await withPickers({ 'mark (1).svg': sampleFile('studio-mark.svg') }, '')
  await lacking.getByRole('button', { name: 'Add studio-mark.svg…' }).click()
  await lacking.waitFor({ state: 'detached' })
  await page.locator('.take button.main:enabled', { hasText: 'All 427 files' }).waitFor()
})

test.each([
  ['too large', [['big.yaml', '#'.repeat(4_194_305)]], 'The definition big.yaml is larger than 4 MiB'],
  ['not UTF-8', [['old.yaml', [0x54, 0xf6, 0x70]]], 'line 1 has the byte f6 where it makes no character.'],
  [
    'two at once',
    [
      ['a.yaml', ''],
      ['b.yaml', ''],
    ],
    '2 definitions at once: a.yaml, b.yaml. Open one of them.',
  ],
] as const)('dropped, %s: refused in words, and what is open stays', async (_, files, words) => {
  const { page } = desk
  await drop(
    page,
    files.map(([name, content]) => [name, typeof content === 'string' ? content : [...content]] as const),
  )
  const alert = page.getByRole('alert')
  await alert.getByText(words).waitFor()
  await fileState(page, 'studio.yaml', 'saved')
  await alert.getByRole('button', { name: 'Put away' }).click()
  await alert.getByText(words).waitFor({ state: 'detached' })
})

test('new: a definition with words that explain it, which draws', async () => {
  const { page } = desk
  await page.locator('summary', { hasText: 'More files' }).click()
  await page.getByRole('button', { name: 'New, with words that explain it' }).click()
  await fileState(page, 'my-cabinets.yaml', 'new')
  await page.locator('.take button.main:enabled').first().waitFor()
})

test('paper and printer: readings of the bars are written and undone, and what no printer does is refused', async () => {
  const { page } = desk
  await openText(page, (text) => text)
  await page.locator('.take button.main:enabled', { hasText: 'All 427 files' }).waitFor()
  await page.locator('summary', { hasText: 'Paper and printer' }).click()
  const [across, down] = [page.getByLabel('across (short side)'), page.getByLabel('down (long side)')]
  await across.fill('18')
  await down.fill('180')
  await page.getByRole('button', { name: 'Correct the pages' }).click()
  await page.getByText('No printer is so far off: 18 and 180 mm are to be about 180 mm each.').waitFor()
  await across.fill('179.1')
  await page.getByRole('button', { name: 'Correct the pages' }).click()
  // 180 / 179.1 = 1.005025.
  await page.getByText('Pages are drawn 0.503 % larger across and as they are down.').waitFor()
  expect(await wholeText(page)).toMatch(/check bars:\s*(?:\[\s*179\.1, 180\s*\]|- 179\.1\s*- 180)/)
  await page.getByRole('button', { name: 'Undo' }).click()
  await page.getByText('Pages are drawn as they are.').waitFor()
  await page.locator('#paper-name').selectOption('A3')
  await page.getByLabel('Left blank at each side').fill('half')
  await page.getByLabel('Left blank at each side').blur()
  await page.getByText(/a length such as 600/).waitFor()
  expect(await wholeText(page)).toMatch(/outputs:\s*paper: A3/)
})

test('nothing of the page went wrong', () => {
  expect(desk.troubles).toEqual([])
})

test('a browser without pickers saves to the downloads; on a phone all of it stands on the slip', async () => {
  const phone = await openPage(PHONE)
  const { page } = phone
  await page.evaluate(() => Object.assign(window, { showSaveFilePicker: undefined, showOpenFilePicker: undefined }))
  const { name, bytes } = await taken(page, () => page.getByRole('button', { name: 'Save', exact: true }).click())
  expect(name).toBe('pottery-studio.yaml')
  expect(bytes.toString('utf8')).toBe(sampleFile('pottery-studio.yaml'))
  await page.locator('summary', { hasText: 'More files' }).click()
  const choosing = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open a definition…' }).click()
  await (await choosing).setFiles({
    name: 'cart.yaml',
    mimeType: '',
    buffer: Buffer.from(sampleFile('clay-cart.yaml')),
  })
  await fileState(page, 'cart.yaml', 'saved')
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width)
  expect(phone.troubles).toEqual([])
  await phone.close()
})
