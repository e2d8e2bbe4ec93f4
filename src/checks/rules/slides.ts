import type { PlacedHardware } from '../../assembly/index.ts'
import { NOISE_MM, place, placeBack, type Vec3 } from '../../geometry/index.ts'
import { type DrawerSlide, type Item, lyingReach } from '../../hardware/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'
import { distanceToArea, moveClear } from '../clear-of.ts'
import type { Finding, Rule, Subject } from '../types.ts'
import { boreWords, mm, panelWords } from '../words.ts'

/** Drawer slides that cannot lie flat, since a bolt or a hinge plate stands on the panel where they go. */
export const slides: Rule = {
  ids: ['slide-on-fastener'],
  check: (subject) => {
    const items = new Map(subject.assembly.hardware.map((piece) => [piece.id, piece.item]))
    return subject.assembly.hardware.flatMap((piece) =>
      piece.item.kind === 'drawer slide' ? checkSlide(subject, piece, piece.item, items) : [],
    )
  },
}

function checkSlide(
  subject: Subject,
  piece: PlacedHardware,
  slide: DrawerSlide,
  items: ReadonlyMap<string, Item>,
): Finding[] {
  const station = piece.stations.find(({ part }) => part === 'cabinet')
  if (station === undefined) return []
  const panel = subject.panelOf(station.panel)
  // The body of the slide on the panel's face, panel frame.
  const corner = (x: number, y: number): Vec3 => placeBack(panel.moduleFromPanel, place(station.pose, [x, y, 0]))
  const a = corner(0, -slide.height / 2)
  const b = corner(slide.length, slide.height / 2)
  const body = {
    min: [Math.min(a[0], b[0]), Math.min(a[1], b[1])] as const,
    max: [Math.max(a[0], b[0]), Math.max(a[1], b[1])] as const,
  }
  const face = Math.abs(a[2]) <= NOISE_MM ? 'A' : 'B'
  return panel.bores
    .filter((bore) => bore.through || bore.surface === face)
    .flatMap((bore): Finding[] => {
      const reach = reachOf(bore, items)
      if (reach - distanceToArea(body, bore.at) <= NOISE_MM) return []
      return [findingOf(panel, piece, bore, moveClear(body, bore.at, reach))]
    })
}

function findingOf(panel: Panel, piece: PlacedHardware, bore: Bore, short: number): Finding {
  return {
    rule: 'slide-on-fastener',
    severity: 'stop',
    panels: [panel.id],
    places: [{ panel: panel.id, surface: bore.surface, at: bore.at }],
    message: `${panelWords(panel)}: a drawer slide lies on what is fixed in the ${boreWords(panel, bore)}`,
    fix: `move one of them ${mm(short)} mm or more: the bolts by their insets, the slide by the heights of the drawers`,
    at: piece.at,
  }
}

/** How far around a hole something stands up from the face, mm; nothing does at screws with sunk heads and at pins. */
function reachOf(bore: Bore, items: ReadonlyMap<string, Item>): number {
  const reaches = bore.uses.map((use) => {
    const item = items.get(use.hardware)
    return item === undefined ? 0 : lyingReach(item, use.part)
  })
  return Math.max(0, ...reaches)
}
