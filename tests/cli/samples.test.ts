import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fakeEngine, SOME_FILES } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree } from './helpers/temp.ts'

describe('storyrod draw without a definition', () => {
  function home(...names: string[]): string {
    const folder = tempFolder()
    fill(folder, { 'package.json': '{"version":"0.0.0"}', 'out-samples/readme.txt': 'no sample' })
    fill(folder, Object.fromEntries(names.map((name) => [`out-samples/${name}`, name])))
    return folder
  }

  test('draws each sample into a folder of its own below out-samples', async () => {
    const cwd = tempFolder()
    const engine = fakeEngine()
    const ran = await run(cwd, ['draw'], { engine, home: home('pottery.yaml', 'inches.yaml') })
    expect(ran.code).toBe(0)
    expect(ran.out).toMatch(
      /^Drew 5 files into out-samples\/inches\.\nOpen first:\n(?: {2}[^\n]*\n){3}Drew 5 files into out-samples\/pottery\.\n/,
    )
    expect(engine.opened.map(({ text }) => text)).toEqual(['inches.yaml', 'pottery.yaml'])
    expect(tree(join(cwd, 'out-samples', 'pottery'))).toMatchObject(SOME_FILES)
    expect(tree(join(cwd, 'out-samples', 'inches'))).toMatchObject(SOME_FILES)
  })

  test('or below --out; a sample inside the working folder is named shortly', async () => {
    const cwd = home('pottery.yaml')
    const engine = fakeEngine()
    await run(cwd, ['draw', '--out', 'try'], { engine, home: cwd })
    expect(engine.opened).toEqual([{ text: 'pottery.yaml', file: 'out-samples/pottery.yaml' }])
    expect(tree(join(cwd, 'try', 'pottery'))).toMatchObject(SOME_FILES)
  })

  test('a stop in each leaves all undrawn, with exit code 1', async () => {
    const cwd = tempFolder()
    const engine = fakeEngine({ severities: ['stop'] })
    const ran = await run(cwd, ['draw'], { engine, home: home('a.yaml', 'b.yaml') })
    expect(ran.code).toBe(1)
    expect(ran.err.match(/Nothing drawn from/g)).toHaveLength(2)
    expect(tree(cwd)).toEqual({})
  })

  test('says so when the program has lost its samples', async () => {
    const empty = home()
    const ran = await run(tempFolder(), ['draw'], { home: empty })
    expect(ran.code).toBe(3)
    expect(ran.err).toContain(`no sample definitions are in ${join(empty, 'out-samples')}`)
  })
})
