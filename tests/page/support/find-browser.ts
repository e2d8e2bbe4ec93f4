import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { delimiter, join } from 'node:path'

/** Names under which a browser of this family is started from a shell. */
const NAMES = [
  'chromium',
  'chromium-browser',
  'google-chrome',
  'google-chrome-stable',
  'microsoft-edge',
  'msedge',
  'chrome',
]

/** Where installers of desktop systems put one. */
const PLACES = [
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  ...['PROGRAMFILES', 'PROGRAMFILES(X86)', 'LOCALAPPDATA'].flatMap((root) => {
    const folder = process.env[root]
    if (folder === undefined) return []
    return [join(folder, 'Google/Chrome/Application/chrome.exe'), join(folder, 'Microsoft/Edge/Application/msedge.exe')]
  }),
]

/**
 * The path of a browser that can run the page: what STORYROD_BROWSER names, else one that is installed. On a Debian-like
 * system whose administrator runs the tests, Chromium is installed when there is none. Throws with what to do where all fails.
 */
export function findBrowser(): string {
  const named = process.env.STORYROD_BROWSER
  if (named !== undefined) {
    if (existsSync(named)) return named
    throw new Error(`STORYROD_BROWSER names ${named}, which is not there`)
  }
  const found = installed() ?? (canInstall() && install() ? installed() : undefined)
  if (found !== undefined) return found
  throw new Error(
    'no Chrome, Edge or Chromium found for the tests of the page: install one, or set STORYROD_BROWSER to its path',
  )
}

function installed(): string | undefined {
  const onPath = (process.env.PATH ?? '').split(delimiter).flatMap((folder) => NAMES.map((name) => join(folder, name)))
  return [...onPath, ...PLACES].find((path) => existsSync(path))
}

const canInstall = (): boolean => process.getuid?.() === 0 && existsSync('/usr/bin/apt-get')

function install(): boolean {
  const options = { stdio: 'ignore', env: { ...process.env, DEBIAN_FRONTEND: 'noninteractive' } } as const
  try {
    execFileSync('apt-get', ['update', '-qq'], options)
    execFileSync('apt-get', ['install', '-y', '-qq', '--no-install-recommends', 'chromium'], options)
    return true
  } catch {
    return false
  }
}
