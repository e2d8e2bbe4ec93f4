import { describe, expect, test } from 'vitest'
import { fakeEngine } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder } from './helpers/temp.ts'

function shop(): string {
  const folder = tempFolder()
  fill(folder, { 'studio.yaml': 'title: studio\n' })
  return folder
}

describe('progress', () => {
  const wipe = '\r\u001b[K'

  test('is one line on a terminal, rewritten and wiped at the end', async () => {
    const ran = await run(shop(), ['draw', 'studio.yaml'], { terminal: 80 })
    expect(ran.err).toBe(
      [
        'working out studio.yaml',
        '',
        '1 of 5  glaze-store',
        '2 of 5  glaze-store',
        '3 of 5  glaze-store',
        '4 of 5  glaze-store',
        '5 of 5  panels.json',
        '',
      ]
        .map((line) => wipe + line)
        .join(''),
    )
    expect(ran.out).not.toContain('\u001b')
  })

  test('is cut to the width of the terminal', async () => {
    const ran = await run(shop(), ['draw', 'studio.yaml'], { terminal: 10 })
    expect(ran.err.split(wipe).filter((line) => line !== '')).toEqual([
      'working o',
      '1 of 5  g',
      '2 of 5  g',
      '3 of 5  g',
      '4 of 5  g',
      '5 of 5  p',
    ])
  })

  test('takes a terminal that gives no width for one of 80', async () => {
    const ran = await run(shop(), ['draw', 'studio.yaml'], { terminal: 0 })
    expect(ran.err).toContain('1 of 5  glaze-store')
  })

  test('is drawn once a per cent at most', async () => {
    const files = Object.fromEntries(Array.from({ length: 1000 }, (_, at) => [`svg/m/${at}.svg`, 'x']))
    const ran = await run(shop(), ['draw', 'studio.yaml'], { terminal: 80, engine: fakeEngine({ files }) })
    expect(ran.err.match(/ of 1000/g)?.length).toBe(101)
  })

  test('is wiped before trouble is told', async () => {
    const engine = fakeEngine({
      before(path) {
        if (path === 'panels.json') throw new Error('broken')
      },
    })
    const ran = await run(shop(), ['draw', 'studio.yaml'], { terminal: 80, engine })
    expect(ran.err).toContain(`4 of 5  glaze-store${wipe}storyrod: a fault in Storyrod itself`)
  })

  test.each([
    ['a pipe', {}],
    ['CI', { terminal: 80, env: { CI: 'true' } }],
    ['a terminal that cannot rewrite a line', { terminal: 80, env: { TERM: 'dumb' } }],
  ])('is silent in %s', async (_, options) => {
    const ran = await run(shop(), ['draw', 'studio.yaml'], options)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(ran.out).toMatch(/^Drew 5 files/)
  })
})
