import { render } from 'preact'
import { App } from '../app.tsx'
import { DeskContext, deskOf } from '../files/desk.ts'
import { SAMPLE } from '../sample.ts'
import type { SceneArea } from '../scene/types.ts'
import { pageDocument } from '../state/document.ts'
import { pageOf } from '../state/page.ts'
import { keptSettings } from '../state/settings.ts'
import { type Hand, workshop } from '../state/workshop.ts'
import { checker } from '../workers/checker.ts'
import { drawer } from '../workers/drawer.ts'

/** How often it is asked whether all stands, ms. */
const ASK_EVERY_MS = 20

/** What stays free about the drawing, as a part of its longer side. */
const MARGIN = 0.03

/** How wide a sheet is as a rule; only hatches are drawn for one size. */
const USUAL_SHEET_PX = 560

/**
 * The page with its sample as markup, all of it worked out here and now in place of the workers: a picture, in which the drawing
 * fits whatever room it is given. It is put together in `root`, which is left empty.
 */
export async function drawFirstPicture(root: HTMLElement): Promise<string> {
  const settings = keptSettings(undefined)
  const definition = pageDocument(SAMPLE)
  const page = pageOf(definition, workshop(definition, atOnce(drawer()), atOnce(checker()), settings.units), settings)
  render(
    <DeskContext.Provider value={deskOf(definition, undefined)}>
      <App page={page} />
    </DeskContext.Provider>,
    root,
  )
  const { judged, scene } = page.workshop
  while (!judged.value || root.querySelector('[data-drawn] .part') === null)
    await new Promise((resolve) => setTimeout(resolve, ASK_EVERY_MS))
  const sheet = root.querySelector('[data-drawn]')
  if (sheet === null || scene.value === undefined) throw new Error('the sample is not drawn')
  standStill(sheet, scene.value.bounds)
  keepChoices(root)
  const markup = root.innerHTML
  render(null, root)
  return markup
}

/** Of a drawing that knows the size of its sheet: one that fits any, as it is seen from far, without marks and words. */
function standStill(sheet: Element, { min, max }: SceneArea): void {
  const [left, top] = min
  const [width, height] = [max[0] - left, max[1] - top]
  const free = Math.max(width, height) * MARGIN
  const box = [left - free, top - free, width + 2 * free, height + 2 * free]
  sheet.setAttribute('viewBox', box.map(Math.round).join(' '))
  sheet.removeAttribute('data-drawn')
  sheet.querySelector('.over')?.replaceChildren()
  const world = sheet.querySelector('.world')
  world?.removeAttribute('transform')
  world?.setAttribute('data-size', 'none')
  for (const hatch of sheet.querySelectorAll('pattern'))
    hatch.setAttribute('patternTransform', `scale(${Math.max(width, height) / USUAL_SHEET_PX})`)
}

/** What fields hold and what is chosen is no part of markup unless it is written there. */
function keepChoices(root: Element): void {
  for (const input of root.querySelectorAll('input')) {
    if (input.checked) input.setAttribute('checked', '')
    else input.setAttribute('value', input.value)
  }
  for (const option of root.querySelectorAll('option')) if (option.selected) option.setAttribute('selected', '')
}

function atOnce<Ask, Answer>(work: (ask: Ask) => Answer): Hand<Ask, Answer> {
  let heard: ((answer: Answer) => void) | undefined
  return {
    ask: (ask) => heard?.(work(ask)),
    listen: (hear) => {
      heard = hear
    },
  }
}
