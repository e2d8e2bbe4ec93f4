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
      else expect(['panels.json', 'findings.json', 'findings.txt', 'templates/pages.json']).toContain(path)
    }
    const again = await run(cwd, ['draw', 'my.yaml'], options)
    expect(again.out).toContain(`(0 new or changed, ${files.length} the same as before)`)
  })

  test('paper and readings of one run: wrong ones are answered in the words of the keys, right ones are taken', async () => {
    const cwd = await started()
    expect(await run(cwd, ['draw', 'my.yaml', '--paper', 'A5'], options)).toEqual({
      code: 2,
      out: '',
      err:
        'storyrod: --paper: "A5" is not a paper\n' +
        '  expected: A4, A3, Letter, Legal, Tabloid, roll 610, roll 914, roll 24 in or roll 36 in; did you mean "A4"?\n',
    })
    const asked = ['draw', 'my.yaml', '--paper', 'roll 914', '--check-bars', '179.1,180']
    const ran = await run(cwd, asked, options)
    expect(ran).toMatchObject({ code: 0, err: '' })
    const pages: unknown = JSON.parse(tree(join(cwd, 'my-drawings'))['templates/pages.json'] ?? '')
    expect(pages).toMatchObject({
      paper: { name: 'roll 914', width: 914, roll: true },
      bars: { across: 179.1, down: 180 },
    })
    expect(ran.out).toMatch(
      /\n\d+ sheets from a roll 914 mm wide to print \(a plain grid would take \d+\)\.\nOpen first:\n/,
    )
  })

  test('a reading that cannot be one was said by the option, not by a line of the definition', async () => {
    const cwd = await started()
    const ran = await run(cwd, ['draw', 'my.yaml', '--check-bars', '150,180'], options)
    expect(ran.code).toBe(1)
    expect(ran.out).toMatch(/ stop {2}printer-correction\n(.*\n){2} {6}asked for by --check-bars\n/)
    expect(ran.out).not.toContain('asked for at')
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

  test('an SVG file beside the definition is read; one that is not there is an error with its place', async () => {
    const cwd = tempFolder()
    const text = `storyrod: 1
stock:
  ply 18: { thickness: 18 }
modules:
  bench:
    stock: ply 18
    width: 600
    depth: 500
    carcase height: 720
    openings:
      - { panel: back, shape: path, file: shapes/badge.svg, from: centred, for: badge }
`
    fill(cwd, { 'sub/my.yaml': text })
    const missing = await run(cwd, ['check', 'sub/my.yaml'], options)
    expect(missing.code).toBe(2)
    expect(missing.err).toContain('sub/my.yaml:11:43  error  ')
    expect(missing.err).toContain('there is no file "shapes/badge.svg"')
    fill(cwd, {
      'sub/shapes/badge.svg': '<svg width="80mm" viewBox="0 0 40 40"><circle cx="20" cy="20" r="20"/></svg>',
    })
    expect((await run(cwd, ['draw', 'sub/my.yaml', '--out', 'out'], options)).code).toBe(0)
    // 80 mm for 40 units: a circle of 80 in the middle of the back, 720 × 600.
    const drawn = tree(join(cwd, 'out'))['svg/bench/back-a.svg']
    expect(drawn).toContain('badge, 80 round, through, middle 300 from left, middle 360 from bottom')
    fill(cwd, { 'sub/shapes/badge.svg': Uint8Array.of(0xff, 0x3c) })
    const bad = await run(cwd, ['check', 'sub/my.yaml'], options)
    expect(bad).toMatchObject({ code: 2 })
    expect(bad.err).toContain('the file shapes/badge.svg is not UTF-8 text')
  })

  test('while a stop stands nothing is drawn; drawn anyway, every file says so', async () => {
    const cwd = tempFolder()
    fill(cwd, { 'wide.yaml': TOO_WIDE })
    const refused = await run(cwd, ['draw', 'wide.yaml'], options)
    expect(refused.code).toBe(1)
    expect(refused.out).toMatch(/^ {4}stop {2}sheet-too-small$/m)
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
