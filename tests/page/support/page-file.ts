import { createHash } from 'node:crypto'
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { build } from 'vite'

const HOME = fileURLToPath(new URL('../../../', import.meta.url))

/** How long another test file is waited for that builds the page, ms, and how often it is asked after. */
const PATIENCE_MS = 60_000
const ASK_EVERY_MS = 100

/**
 * The page as `npm run build` makes it, as one file, built once for each state of the sources. Test files run side by
 * side, so the first one builds and the others wait for it.
 */
export async function pageFile(): Promise<string> {
  const folder = join(tmpdir(), `storyrod-page-${fingerprint()}`)
  const file = join(folder, 'storyrod.html')
  if (existsSync(file)) return file
  const lock = `${folder}-being-built`
  if (!claim(lock)) {
    const end = Date.now() + PATIENCE_MS
    while (existsSync(lock) && Date.now() < end) await new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS))
    if (existsSync(file)) return file
    throw new Error(`the page was not built; if nothing builds it now, remove ${lock}`)
  }
  try {
    // Built beside its place and moved there whole, so that nobody opens half of it.
    const outDir = `${folder}-new`
    await build({
      configFile: join(HOME, 'src/page/vite.config.ts'),
      logLevel: 'error',
      build: { outDir, emptyOutDir: true },
    })
    rmSync(folder, { recursive: true, force: true })
    renameSync(outDir, folder)
  } finally {
    rmSync(lock, { recursive: true, force: true })
  }
  return file
}

function claim(lock: string): boolean {
  try {
    mkdirSync(lock)
    return true
  } catch {
    // One that was left by a run that was cut off is nobody's any more.
    if (existsSync(lock) && Date.now() - statSync(lock).mtimeMs > PATIENCE_MS) {
      rmSync(lock, { recursive: true, force: true })
      return claim(lock)
    }
    return false
  }
}

/** Of all that goes into the page. */
function fingerprint(): string {
  const hash = createHash('sha256')
  const add = (path: string): void => {
    hash.update(path).update(readFileSync(join(HOME, path)))
  }
  const walk = (folder: string): void => {
    for (const entry of readdirSync(join(HOME, folder), { withFileTypes: true })) {
      const path = `${folder}/${entry.name}`
      if (entry.isDirectory()) walk(path)
      else add(path)
    }
  }
  walk('src')
  for (const path of ['package-lock.json', 'out-samples/pottery-studio.yaml', 'out-samples/studio-mark.svg']) add(path)
  return hash.digest('hex').slice(0, 16)
}
