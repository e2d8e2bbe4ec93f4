import { statSync, utimesSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { fakeEngine, SOME_FILES } from './helpers/fake-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree } from './helpers/temp.ts'

function shop(): string {
  const folder = tempFolder()
  fill(folder, { 'studio.yaml': 'title: studio\n' })
  return folder
}

describe('files that the run did not draw', () => {
  test('of an earlier run are left and named, again at the next run', async () => {
    const cwd = shop()
    await run(cwd, ['draw', 'studio.yaml'])
    utimesSync(join(cwd, 'studio-drawings/svg/glaze-store/door-a.svg'), 1000, 1000)
    const { 'svg/glaze-store/door-a.svg': door, ...fewer } = SOME_FILES
    const files = { ...fewer, 'panels.json': '{"files":[]}' }
    const warning =
      'Warning: 1 file is in studio-drawings that this run did not draw, left as found: svg/glaze-store/door-a.svg. ' +
      'Delete what is out of date, or an old template may be drilled by mistake.\n'
    for (const _ of ['the next run', 'the one after, when the index no longer lists it']) {
      const ran = await run(cwd, ['draw', 'studio.yaml'], { engine: fakeEngine({ files }) })
      expect(ran.code).toBe(0)
      expect(ran.err).toBe(warning)
    }
    expect(tree(join(cwd, 'studio-drawings'))['svg/glaze-store/door-a.svg']).toBe(door)
    expect(statSync(join(cwd, 'studio-drawings/svg/glaze-store/door-a.svg')).mtimeMs).toBe(1_000_000)
  })

  test('five names are shown and the rest counted; files of other kinds are not named', async () => {
    const cwd = shop()
    const old = ['1', '2', '3', '4', '5', '6', '7'].map((name) => [`svg/old/${name}.svg`, 'x'])
    fill(join(cwd, 'out'), { ...Object.fromEntries(old), 'photo.jpg': 'mine', 'svg/.hidden': 'x' })
    const ran = await run(cwd, ['draw', 'studio.yaml', '--out', 'out'])
    expect(ran.err).toContain(
      '7 files are in out that this run did not draw, left as found: ' +
        'svg/old/1.svg, svg/old/2.svg, svg/old/3.svg, svg/old/4.svg, svg/old/5.svg and 2 more. ',
    )
  })

  test('an index in a folder that this run does not use is followed, but never out of the output folder', async () => {
    const cwd = shop()
    fill(cwd, {
      'outside.svg': 'x',
      'out/plans/a.pdf': 'x',
      'out/panels.json': '{"files":["plans/a.pdf","plans/gone.pdf","../outside.svg","/etc/passwd",7]}',
    })
    const ran = await run(cwd, ['draw', 'studio.yaml', '--out', 'out'])
    expect(ran.err).toContain('1 file is in out that this run did not draw, left as found: plans/a.pdf. ')
  })

  test.each([['not JSON'], ['null'], ['[]'], ['{"files":3}']])('an index that says %s is no index', async (text) => {
    const cwd = shop()
    fill(cwd, { 'out/panels.json': text })
    expect(await run(cwd, ['draw', 'studio.yaml', '--out', 'out'])).toMatchObject({ code: 0, err: '' })
  })
})
