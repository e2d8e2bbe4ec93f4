import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { storyrod } from '../../src/cli/default-engine.ts'
import { run } from './helpers/run.ts'
import { fill, tempFolder, tree } from './helpers/temp.ts'

const options = { engine: storyrod }

// The bottom between the sides is 3000 - 2 × 18 = 2964 mm long, more than any way of laying it on 2440 × 1220 gives.
const TOO_WIDE = `storyrod: 1
title: Too wide
units: mm
stock:
  ply 18:
    thickness: 18
    sheet: [2440, 1220]
modules:
  counter:
    stock: ply 18
    width: 3000
    depth: 500
    carcase height: 720
`

/** A folder with the starter in it. */
async function started(): Promise<string> {
  const cwd = tempFolder()
  expect((await run(cwd, ['new', 'my.yaml'], options)).code).toBe(0)
  return cwd
}

describe('the commands over Storyrod itself', () => {
  test('new, check, draw, and draw again with nothing changed', async () => {
    const cwd = await started()
    expect(await run(cwd, ['check', 'my.yaml'], options)).toMatchObject({ code: 0, err: '' })
    const first = await run(cwd, ['draw', 'my.yaml'], options)
    expect(first).toMatchObject({ code: 0, err: '' })
    const files = Object.entries(tree(join(cwd, 'my-drawings'))).filter(([, what]) => what !== 'folder')
    expect(first.out).toContain(`Drew ${files.length} files into my-drawings.\n`)
    for (const [path, text] of files) {
      if (path.endsWith('.svg')) expect(text, path).toMatch(/^<\?xml /)
      else if (path.endsWith('.pdf')) expect(text, path).toMatch(/^%PDF-1\.7/)
      else if (path.endsWith('.dxf')) expect(text, path).toMatch(/EOF\r\n$/)
      else expect(path).toBe('panels.json')
    }
    const again = await run(cwd, ['draw', 'my.yaml'], options)
    expect(again.out).toContain(`(0 new or changed, ${files.length} the same as before)`)
  })

  test('the index lists the files that were drawn, so that the next run finds what is out of date', async () => {
    const cwd = await started()
    await run(cwd, ['draw', 'my.yaml', '--out', 'out'], options)
    const files = Object.entries(tree(join(cwd, 'out'))).flatMap(([path, what]) => (what === 'folder' ? [] : [path]))
    const index: unknown = JSON.parse(tree(join(cwd, 'out'))['panels.json'] ?? '')
    expect(index).toHaveProperty('files')
    const { files: listed } = index as { files: string[] }
    expect([...listed].sort()).toEqual(files.sort())
  })

  test('while a stop stands nothing is drawn; drawn anyway, every file says so', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'wide.yaml': TOO_WIDE })
    const refused = await run(cwd, ['draw', 'wide.yaml'], options)
    expect(refused.code).toBe(1)
    expect(refused.out).toMatch(/^stop {2}sheet-too-small$/m)
    expect(Object.keys(tree(cwd))).toEqual(['wide.yaml'])

    expect((await run(cwd, ['draw', 'wide.yaml', '--anyway'], options)).code).toBe(0)
    const folder = join(cwd, 'wide-drawings')
    const files = Object.entries(tree(folder)).filter(([, what]) => what !== 'folder')
    expect(files.length).toBeGreaterThan(12)
    for (const [path, text] of files) {
      // In a PDF, the words on the pages are glyph numbers; its title is plain text.
      expect(text, path).toMatch(/DO NOT CUT:\s\d STOPS?\s*STANDS?/)
    }
  })

  test('schema is a JSON Schema that knows the modules', async () => {
    const ran = await run(tempFolder(), ['schema'], options)
    expect(ran).toMatchObject({ code: 0, err: '' })
    expect(JSON.parse(ran.out)).toMatchObject({ type: 'object', properties: { modules: expect.anything() } })
  })

  test('a bad definition ends with 2, places and words, and writes nothing', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'bad.yaml': 'modules: 3\nstok: {}\n' })
    for (const command of ['check', 'draw']) {
      const ran = await run(cwd, [command, 'bad.yaml'], options)
      expect(ran).toMatchObject({ code: 2, out: '' })
      expect(ran.err).toMatch(/^bad\.yaml:1:/m)
      expect(ran.err).toMatch(/^bad\.yaml:2:1/m)
      expect(ran.err).toContain('stock')
      expect(ran.err).not.toMatch(/^\s+at /m)
    }
    expect(tree(cwd)).toEqual({ 'bad.yaml': 'modules: 3\nstok: {}\n' })
  })
})
