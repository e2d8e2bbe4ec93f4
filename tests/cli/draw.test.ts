import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { watchedDisk } from './helpers/failing-disk.ts'
import { fakeEngine, SOME_FILES } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree } from './helpers/temp.ts'

function shop(): string {
  const folder = tempFolder()
  fill(folder, { 'studio.yaml': 'title: studio\n' })
  return folder
}

describe('storyrod draw', () => {
  test('draws beside the definition, under its name', async () => {
    const cwd = shop()
    const engine = fakeEngine()
    expect(await run(cwd, ['draw', 'studio.yaml'], { engine })).toEqual({
      code: 0,
      out:
        'Drew 5 files into studio-drawings.\n' +
        'Open first:\n' +
        '  studio-drawings/svg/glaze-store/left-side-a.svg  to look at\n' +
        '  studio-drawings/templates/glaze-store/left-side.pdf  to print full size, one panel\n' +
        '  studio-drawings/dxf/glaze-store/left-side-a.dxf  for the machine\n',
      err: '',
    })
    expect(engine.opened).toEqual([{ text: 'title: studio\n', file: 'studio.yaml' }])
    expect(tree(join(cwd, 'studio-drawings'))).toMatchObject(SOME_FILES)
  })

  test('beside the definition, not where the command is given', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'shop/studio.v2.yml': '' })
    const ran = await run(cwd, ['draw', 'shop/studio.v2.yml'])
    expect(ran.out).toContain('Drew 5 files into shop/studio.v2-drawings.\n')
    expect(tree(join(cwd, 'shop', 'studio.v2-drawings'))).toMatchObject(SOME_FILES)
  })

  test('into --out, relative or absolute', async () => {
    const cwd = shop()
    expect((await run(cwd, ['draw', 'studio.yaml', '--out', 'here'])).code).toBe(0)
    expect(tree(join(cwd, 'here'))).toMatchObject(SOME_FILES)
    const elsewhere = join(tempFolder(), 'there')
    expect((await run(cwd, ['draw', 'studio.yaml', `--out=${elsewhere}`])).code).toBe(0)
    expect(tree(elsewhere)).toMatchObject(SOME_FILES)
  })

  test('hands the two fonts on, which are TrueType', async () => {
    const cwd = shop()
    const engine = fakeEngine()
    await run(cwd, ['draw', 'studio.yaml'], { engine })
    const [given] = engine.drawn
    // OpenType 1.9, "Organization of an OpenType font": TrueType outlines begin with 00 01 00 00.
    expect([...(given?.fonts.regular.subarray(0, 4) ?? [])]).toEqual([0, 1, 0, 0])
    expect([...(given?.fonts.bold.subarray(0, 4) ?? [])]).toEqual([0, 1, 0, 0])
    expect(given?.fonts.regular).not.toEqual(given?.fonts.bold)
    expect(given).not.toHaveProperty('stamp')
  })

  test('says how many files were the same', async () => {
    const cwd = shop()
    await run(cwd, ['draw', 'studio.yaml'])
    const files = { ...SOME_FILES, 'svg/glaze-store/door-a.svg': 'changed' }
    const ran = await run(cwd, ['draw', 'studio.yaml'], { engine: fakeEngine({ files }) })
    expect(ran.out).toContain('Drew 5 files into studio-drawings (1 new or changed, 4 the same as before).\n')
  })

  test('names the page to measure and the pages of all first, and says how many sheets there are', async () => {
    const files = {
      'svg/box/side-a.svg': 's',
      'templates/box/side.pdf': 'p',
      'templates/measure-first.pdf': 'm',
      'templates/all-pages.pdf': 'a',
      'panels.json': '{}',
    }
    const pages = '212 sheets of A3 to print (a plain grid would take 540)'
    const ran = await run(shop(), ['draw', 'studio.yaml', '--out', 'out'], { engine: fakeEngine({ files, pages }) })
    expect(ran.out).toBe(
      'Drew 5 files into out.\n' +
        `${pages}.\n` +
        'Open first:\n' +
        '  out/svg/box/side-a.svg  to look at\n' +
        '  out/templates/measure-first.pdf  to print first, and to measure\n' +
        '  out/templates/all-pages.pdf  to print full size, all panels\n' +
        '  out/templates/box/side.pdf  to print full size, one panel\n',
    )
  })

  test('hands on what is asked for in place of the definition', async () => {
    const engine = fakeEngine()
    const options = ['--paper', 'roll 24 in', '--check-bars', '179.1,180', '--page-budget=4']
    expect((await run(shop(), ['draw', 'studio.yaml', ...options], { engine })).code).toBe(0)
    expect((await run(shop(), ['draw', 'studio.yaml', '--paper', 'A3'], { engine })).code).toBe(0)
    expect((await run(shop(), ['draw', 'studio.yaml'], { engine })).code).toBe(0)
    expect(engine.print).toEqual([
      { paper: 'roll 24 in', checkBars: '179.1,180', pageBudget: '4' },
      { paper: 'A3' },
      {},
    ])
  })

  test('options that are wrong end with 2, and nothing is drawn', async () => {
    const cwd = shop()
    const ran = await run(cwd, ['draw', 'studio.yaml', '--paper', 'A2'], {
      engine: fakeEngine({ wrongOptions: '--paper: "A2" is not a paper\n  expected: A4' }),
    })
    expect(ran).toEqual({ code: 2, out: '', err: 'storyrod: --paper: "A2" is not a paper\n  expected: A4\n' })
    expect(tree(cwd)).toEqual({ 'studio.yaml': 'title: studio\n' })
  })

  test('prints the findings before', async () => {
    const ran = await run(shop(), ['draw', 'studio.yaml'], {
      engine: fakeEngine({ severities: ['warn'], findings: 'a warning' }),
    })
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(/^a warning\nDrew 5 files/)
  })

  test('draws nothing while a stop stands', async () => {
    const cwd = shop()
    const engine = fakeEngine({ severities: ['warn', 'stop'], findings: 'two findings\n' })
    expect(await run(cwd, ['draw', 'studio.yaml'], { engine })).toEqual({
      code: 1,
      out: 'two findings\n',
      err:
        'Nothing drawn from studio.yaml: 1 finding of severity stop stands.\n' +
        '  Change the definition, or add --anyway: every drawing then says so.\n',
    })
    expect(tree(cwd)).toEqual({ 'studio.yaml': 'title: studio\n' })
    expect(engine.drawn).toEqual([])
  })

  test('draws with a stamp when told to draw anyway', async () => {
    const cwd = shop()
    const engine = fakeEngine({ severities: ['stop', 'stop'], findings: 'two findings\n' })
    const ran = await run(cwd, ['draw', 'studio.yaml', '--anyway'], { engine })
    expect(ran.code).toBe(0)
    expect(engine.drawn.map((given) => given.stamp)).toEqual(['DO NOT CUT: 2 STOPS STAND'])
    expect(tree(join(cwd, 'studio-drawings'))).toMatchObject(SOME_FILES)
  })

  test('stamps nothing when --anyway is not needed', async () => {
    const engine = fakeEngine({ severities: ['warn'] })
    expect((await run(shop(), ['draw', 'studio.yaml', '--anyway'], { engine })).code).toBe(0)
    expect(engine.drawn[0]).not.toHaveProperty('stamp')
  })

  test('prints the problems of a bad definition and writes nothing', async () => {
    const cwd = shop()
    const engine = fakeEngine({ problems: 'studio.yaml:1:1 no' })
    expect(await run(cwd, ['draw', 'studio.yaml'], { engine })).toEqual({
      code: 2,
      out: '',
      err: 'studio.yaml:1:1 no\n',
    })
    expect(tree(cwd)).toEqual({ 'studio.yaml': 'title: studio\n' })
  })

  test('does not put a drawing in place of the definition', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'panels.json': '{}' })
    const ran = await run(cwd, ['draw', 'panels.json', '--out', '.'])
    expect(ran).toEqual({
      code: 2,
      out: '',
      err:
        'storyrod: a drawing would take the place of the definition panels.json itself.\n' +
        '  Choose another folder with --out.\n',
    })
    expect(tree(cwd)).toEqual({ 'panels.json': '{}' })
  })

  test('a fault of ours leaves the earlier output, shows one sentence and no stack', async () => {
    const cwd = shop()
    await run(cwd, ['draw', 'studio.yaml'])
    const before = tree(cwd)
    const engine = fakeEngine({
      files: { ...SOME_FILES, 'svg/glaze-store/left-side-a.svg': 'changed' },
      before(path) {
        if (path === 'panels.json') throw new Error('bore 7 has no panel\nsecond line')
      },
    })
    const ran = await run(cwd, ['draw', 'studio.yaml'], { engine })
    expect(ran).toEqual({
      code: 70,
      out: '',
      err:
        'storyrod: a fault in Storyrod itself, not in your work: bore 7 has no panel\n' +
        '  Please report it, with the definition that was read. STORYROD_DEBUG=1 shows where it happened.\n',
    })
    expect(tree(cwd)).toEqual(before)
    const debug = await run(cwd, ['draw', 'studio.yaml'], { engine, env: { STORYROD_DEBUG: '1' } })
    expect(debug.err).toMatch(/^ {4}at .*draw\.test\.ts/m)
  })

  test('a disk that fails ends with 3, words and no stack', async () => {
    const cwd = shop()
    fill(cwd, { 'studio-drawings': 'a file' })
    expect(await run(cwd, ['draw', 'studio.yaml'])).toEqual({
      code: 3,
      out: '',
      err:
        `storyrod: could not make the folder ${join(cwd, 'studio-drawings')}: a file of that name is in the way.\n` +
        '  Move it away, or choose another folder with --out.\n',
    })
  })

  test('Ctrl-C while drawing ends with 130, SIGTERM with 143; the earlier output stays', async () => {
    for (const [signal, code] of [
      ['SIGINT', 130],
      ['SIGTERM', 143],
      ['SIGHUP', 129],
    ] as const) {
      const cwd = shop()
      await run(cwd, ['draw', 'studio.yaml'])
      const before = tree(cwd)
      let send: (asked: typeof signal) => void = () => undefined
      const engine = fakeEngine({
        files: { 'svg/a.svg': 'new', 'svg/b.svg': 'new' },
        before(path) {
          if (path === 'svg/b.svg') send(signal)
        },
      })
      const ran = await run(cwd, ['draw', 'studio.yaml'], {
        engine,
        signals(given) {
          send = given
        },
      })
      expect(ran).toEqual({ code, out: '', err: 'storyrod: stopped; the earlier output is as it was.\n' })
      expect(tree(cwd)).toEqual(before)
    }
  })

  test('Ctrl-C while the files are moved into place changes nothing', async () => {
    const cwd = shop()
    let send: (asked: 'SIGINT') => void = () => undefined
    const disk = watchedDisk((step) => {
      if (step === 'rename') send('SIGINT')
    })
    const ran = await run(cwd, ['draw', 'studio.yaml'], {
      disk,
      signals(given) {
        send = given
      },
    })
    expect(ran.code).toBe(0)
    expect(tree(join(cwd, 'studio-drawings'))).toMatchObject(SOME_FILES)
  })
})

test('a folder that is there and empty is drawn into', async () => {
  const cwd = shop()
  mkdirSync(join(cwd, 'out'))
  expect((await run(cwd, ['draw', 'studio.yaml', '--out', 'out'])).code).toBe(0)
})
