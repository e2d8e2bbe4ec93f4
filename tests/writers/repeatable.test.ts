import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { dxfOf, svgOf } from '../../src/writers/index.ts'
import { EVERYTHING } from './drawings.ts'

const here = createHash('sha256')
  .update(svgOf(EVERYTHING))
  .update(dxfOf(EVERYTHING, { units: 'mm', version: '2007', contours: 'bulges', notes: true, name: 'a.dxf' }))
  .update(dxfOf(EVERYTHING, { units: 'in', version: '2000', contours: 'lines and arcs', notes: true, name: 'a.dxf' }))
  .digest('hex')

test.each([
  ['de_DE.UTF-8', 'America/New_York'],
  ['ar_EG.UTF-8', 'Asia/Tokyo'],
])('the same bytes under LANG=%s and TZ=%s', (LANG, TZ) => {
  const script = fileURLToPath(new URL('./digest.ts', import.meta.url))
  const env = { ...process.env, LANG, LC_ALL: LANG, TZ }
  const done = spawnSync(process.execPath, ['--import', 'tsx', script], { env, encoding: 'utf8', timeout: 30_000 })
  expect(done.stderr).toBe('')
  expect(done.stdout).toBe(here)
})
