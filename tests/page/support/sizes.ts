import type { Page } from 'playwright-core'

/** The least height of what a finger hits, CSS pixels. */
const FINGER = 44

/** Controls that are seen and lower than a finger, one line each. */
export function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((finger) => {
    const pressed =
      'button, summary, select, a[href], input:not([type="radio"], [type="checkbox"]), .switch label, .tick'
    return (
      [...document.querySelectorAll<HTMLElement>(pressed)]
        .filter((node) => node.checkVisibility({ visibilityProperty: true }))
        .map((node) => ({ node, box: node.getBoundingClientRect() }))
        // What is cut to a point is for screen readers, until it has the focus.
        .filter(({ node, box }) => box.width > 1 && getComputedStyle(node).clipPath === 'none')
        .filter(({ box }) => box.height < finger - 0.5)
        .map(({ node, box }) => `${node.tagName.toLowerCase()} "${node.textContent}" is ${box.height} high`)
    )
  }, FINGER)
}

/** How much wider the page is than the screen, px. */
export const overhang = (page: Page): Promise<number> =>
  page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
