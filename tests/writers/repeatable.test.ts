import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { digest } from './digest.ts'

test.each([
  ['de_DE.UTF-8', 'America/New_York'],
  ['ar_EG.UTF-8', 'Asia/Tokyo'],
])('the same bytes of SVG, DXF and PDF under LANG=%s and TZ=%s', async (LANG, TZ) => {
  const script = fileURLToPath(new URL('./print-digest.ts', import.meta.url))
  const env = { ...process.env, LANG, LC_ALL: LANG, TZ }
  const done = spawnSync(process.execPath, ['--import', 'tsx', script], { env, encoding: 'utf8', timeout: 60_000 })
  expect(done.stderr).toBe('')
  expect(done.stdout).toBe(await digest())
})
