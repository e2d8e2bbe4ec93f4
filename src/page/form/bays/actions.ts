import {
  type Data,
  type DefinitionPath,
  dataAt,
  type Edit,
  type EditValue,
  idleFrontKeys,
} from '../../../project/index.ts'
import { isGroup, itemsOf } from '../copied.ts'
import { type Direction, type FrontKind, splitOf } from './bays.ts'

/** What belongs to the place of a bay in its split, and not to what is in it. */
const PLACE_KEYS: readonly string[] = ['size', 'share']

const set = (path: DefinitionPath, value: EditValue): Edit => ({ path, value })
const takeOut = (path: DefinitionPath): Edit => ({ path, value: undefined })

/** Takes a key out where it stands. */
const dropped = (data: Data | undefined, path: DefinitionPath): Edit[] =>
  dataAt(data, path) === undefined ? [] : [takeOut(path)]

/** A bay split into so many; the shelves or drawers that it has go into the first, a front stays over all. */
export function splitBay(data: Data | undefined, path: DefinitionPath, direction: Direction, count: number): Edit[] {
  const contents = ['loose shelves', 'drawers']
  const items = Math.max(2, Math.trunc(count))
  if (contents.some((key) => dataAt(data, [...path, key]) !== undefined))
    return [{ path, lower: contents, into: direction, items }]
  return [
    set(
      [...path, direction],
      Array.from({ length: items }, () => ({})),
    ),
  ]
}

/** The split of a bay taken away, with all that is in its bays. */
export function joinBays(data: Data | undefined, path: DefinitionPath): Edit[] {
  return ['side by side', 'stacked', 'dividers'].flatMap((key) => dropped(data, [...path, key]))
}

/** One more bay in a split, so that it has that place among the others. */
export function addBay(path: DefinitionPath, direction: Direction, place: number): Edit[] {
  return [{ path: [...path, direction, place], insert: {} }]
}

/** A bay taken out of its split; of the last two, what is in the other fills the whole. */
export function removeBay(data: Data | undefined, path: DefinitionPath): Edit[] {
  const list = path.slice(0, -1)
  const place = Number(path.at(-1))
  if (itemsOf(dataAt(data, list)).length > 2) return [takeOut(path)]
  const dividers = dropped(data, [...path.slice(0, -2), 'dividers'])
  return [...dividers, { path: [...list, place === 0 ? 1 : 0], lift: PLACE_KEYS }]
}

/** The clear size of a bay, or its share of what the sized ones leave; each in place of the other. */
export function placeBay(
  data: Data | undefined,
  path: DefinitionPath,
  key: 'size' | 'share',
  value: EditValue | undefined,
): Edit[] {
  if (value === undefined) return dropped(data, [...path, key])
  return [...dropped(data, [...path, key === 'size' ? 'share' : 'size']), set([...path, key], value)]
}

/** So many loose shelves in a bay, in place of drawers; 0: none. */
export function shelve(data: Data | undefined, path: DefinitionPath, count: number): Edit[] {
  const shelves = [...path, 'loose shelves']
  if (count < 1) return dropped(data, shelves)
  const drawers = dropped(data, [...path, 'drawers'])
  return [...drawers, set(isGroup(dataAt(data, shelves)) ? [...shelves, 'count'] : shelves, Math.trunc(count))]
}

/** So many drawers of one height in a bay, in place of loose shelves; `behind` a front they have none of their own. */
export function fillWithDrawers(
  data: Data | undefined,
  path: DefinitionPath,
  { count, behind }: { readonly count: number; readonly behind: boolean },
): Edit[] {
  const drawers = [...path, 'drawers']
  if (count < 1) return dropped(data, drawers)
  const shelves = dropped(data, [...path, 'loose shelves'])
  const stack = Math.trunc(count)
  if (isGroup(dataAt(data, drawers))) return [...shelves, set([...drawers, 'stack'], stack)]
  return [...shelves, set(drawers, behind ? { stack, fronts: 'none' } : stack)]
}

/**
 * A front over an opening, or none. Fronts of the bays in it give way, and drawers in it lose their own; of a front
 * that is there already, what has no meaning for the other kind goes.
 */
export function frontBay(data: Data | undefined, path: DefinitionPath, kind: FrontKind | undefined): Edit[] {
  const front = [...path, 'front']
  const bay = dataAt(data, path)
  if (kind === undefined) return [...dropped(data, front), ...packings(bay, path)]
  const inner = [...coveredFronts(bay, path), ...coveredDrawers(bay, path)]
  const before = dataAt(data, front)
  if (!isGroup(before)) return [...inner, set(front, { kind })]
  if (dataAt(before, ['kind']) === kind) return inner
  const lay = dataAt(before, ['lay']) === 'inset' ? 'inset' : 'overlay'
  const idle = [...idleFrontKeys(kind, lay), 'hang', 'hinges'].flatMap((key) => dropped(data, [...front, key]))
  const pull = ['end', 'end distance'].flatMap((key) => dropped(data, [...front, 'pull', key]))
  const unique = new Map([...idle, ...(idle.some(isPull) ? [] : pull)].map((edit) => [JSON.stringify(edit.path), edit]))
  return [...inner, set([...front, 'kind'], kind), ...unique.values()]
}

const isPull = ({ path }: Edit): boolean => path.at(-1) === 'pull'

/** Bays of a split as written, with their paths. */
function innerBays(
  bay: Data | undefined,
  path: DefinitionPath,
): { readonly bay: Data; readonly path: DefinitionPath }[] {
  const split = splitOf(bay)
  if (split === undefined) return []
  return itemsOf(dataAt(bay, [split])).map((one, k) => ({ bay: one, path: [...path, split, k] }))
}

function coveredFronts(bay: Data | undefined, path: DefinitionPath): Edit[] {
  return innerBays(bay, path).flatMap((inner) => [
    ...(dataAt(inner.bay, ['front']) === undefined ? [] : [takeOut([...inner.path, 'front'])]),
    ...coveredFronts(inner.bay, inner.path),
  ])
}

function coveredDrawers(bay: Data | undefined, path: DefinitionPath): Edit[] {
  const drawers = dataAt(bay, ['drawers'])
  const own =
    drawers === undefined || dataAt(drawers, ['fronts']) === 'none' ? [] : [set([...path, 'drawers', 'fronts'], 'none')]
  return [...own, ...innerBays(bay, path).flatMap((inner) => coveredDrawers(inner.bay, inner.path))]
}

/** Strips that keep drawers clear of hinges have no use where no door lies before them. */
function packings(bay: Data | undefined, path: DefinitionPath): Edit[] {
  const packing = dataAt(bay, ['drawers', 'packing']) === undefined ? [] : [takeOut([...path, 'drawers', 'packing'])]
  return [...packing, ...innerBays(bay, path).flatMap((inner) => packings(inner.bay, inner.path))]
}
