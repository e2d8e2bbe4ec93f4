import { pathToFileURL } from 'node:url'
import { type Browser, type BrowserContextOptions, chromium, type Page } from 'playwright-core'
import { findBrowser } from './find-browser.ts'
import { pageFile } from './page-file.ts'

/** The screens that the page is tried on. */
export const DESK = { width: 1280, height: 800 } as const
export const PHONE = { width: 390, height: 844 } as const

/** How long a test waits for anything on the page, ms: on a busy machine much is slow, but nothing takes as long. */
const PATIENCE_MS = 40_000

/**
 * What the browser does for itself beside a page, and no test looks at: its address bar alone lays out two pages of its own
 * for every window, which takes a third of the work of opening one. Of such lists only the last counts, so that the driver's
 * own stands here again as far as it matters.
 */
const NOT_NEEDED = [
  'WebUIOmniboxPopup',
  'WebUIOmniboxAimPopup',
  'AimEnabled',
  'HttpsFirstBalancedModeAutoEnable',
  'HttpsUpgrades',
  'LensOverlay',
  'MediaRouter',
  'NetworkTimeServiceQuerying',
  'OptimizationHints',
  'PaintHolding',
  'PreconnectToSearch',
  'Translate',
]

let running: Promise<Browser> | undefined

/** One browser for all test files of a worker; it ends with the worker. */
export function browser(): Promise<Browser> {
  running ??= chromium.launch({
    executablePath: findBrowser(),
    args: ['--no-sandbox', '--disable-gpu', `--disable-features=${NOT_NEEDED.join()}`],
    headless: true,
  })
  return running
}

/** A page that was opened, and what went wrong in it. */
export interface OpenPage {
  readonly page: Page
  /** Errors and warnings of its console, exceptions that nobody caught, and requests other than for the page itself. */
  readonly troubles: readonly string[]
  readonly close: () => Promise<void>
}

/**
 * Opens the built page from the disk, as a double click does, in a browser that has never seen it, and waits for the
 * first drawing. `phone`: a touch screen.
 */
export async function openPage(
  screen: { readonly width: number; readonly height: number } = DESK,
  options: BrowserContextOptions = {},
): Promise<OpenPage> {
  const context = await (await browser()).newContext({
    viewport: screen,
    hasTouch: screen.width < 600,
    acceptDownloads: true,
    reducedMotion: 'reduce',
    ...options,
  })
  context.setDefaultTimeout(PATIENCE_MS)
  const page = await context.newPage()
  const address = pathToFileURL(await pageFile()).href
  const troubles: string[] = []
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) troubles.push(`${message.type()}: ${message.text()}`)
  })
  page.on('pageerror', (error) => troubles.push(`exception: ${error.message}`))
  context.on('request', (request) => {
    const url = request.url()
    if (!url.startsWith(address) && !/^(blob|data):/.test(url)) troubles.push(`request: ${url}`)
  })
  await page.goto(address)
  await page.locator('[data-drawn]').waitFor()
  return { page, troubles, close: () => context.close() }
}
