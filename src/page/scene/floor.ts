import {
  FLOOR,
  floorBox,
  footprintOf,
  type PlacedHardware,
  type PlacedModule,
  type Rectangle,
} from '../../assembly/index.ts'
import { mouthRadius, placeWords, textWidth } from '../../drawing/index.ts'
import { compose, NOISE_MM, place, turn } from '../../geometry/index.ts'
import type { Units } from '../../length/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Panel } from '../../panel/index.ts'
import { rimOf, sideOf } from './bores.ts'
import { drawDimension } from './dimension.ts'
import { type BoreOf, holeId, indexOf, type LaidIndex } from './laid-index.ts'
import { Picture, textSizeFor } from './picture.ts'
import { seen, throughPose } from './plane.ts'
import { OUTWARD } from './surfaces.ts'
import type { Look, PanelToScene, Scene, ScenePoint } from './types.ts'

/** Takes the floor frame to a view from above: x to the right, the back up. */
const FLOOR_FRAME: PanelToScene = [1, 0, 0, 0, 0, -1, 0, 0]

/** All modules from above: where they stand, which way they look, what rolls under them, what holds them together. */
export function floorScene(laid: LaidOut, look: Look & { kind: 'floor' }, units: Units): Scene {
  const index = indexOf(laid)
  const picture = new Picture(index, units)
  const standing = laid.assembly.modules.filter(({ liesOver }) => liesOver === undefined)
  const prints = new Map(standing.map((module) => [module.key, footprintOf(module)]))
  for (const [key, print] of prints) drawFootprint(picture, index.modules.get(key), print)
  for (const module of laid.assembly.modules) drawTops(picture, index, module)
  const area = picture.area()
  const size = textSizeFor(area.max[0] - area.min[0], area.max[1] - area.min[1])
  for (const module of standing) drawBase(picture, index, module)
  drawBolts(picture, index)
  for (const module of standing) nameModule(picture, module, prints.get(module.key), size)
  drawRows(picture, laid, prints, units, size)
  drawGaps(picture, laid, prints, units, size)
  return picture.scene({
    look,
    title: 'floor plan',
    facts: floorFacts(standing.length, [...prints.values()], units),
    flat: true,
    textSize: size,
  })
}

function floorFacts(count: number, prints: readonly Rectangle[], units: Units): Scene['facts'] {
  const { min, max } = around(prints)
  return [
    ['modules', String(count)],
    ['from left to right', placeWords(max[0] - min[0], units)],
    ['from front to back', placeWords(max[1] - min[1], units)],
  ]
}

const flat = ([x, y]: readonly [number, number]): ScenePoint => seen(FLOOR_FRAME, [x, y, 0])

function cornersOf({ min, max }: Rectangle): readonly [ScenePoint, ScenePoint, ScenePoint, ScenePoint] {
  return [flat(min), flat([max[0], min[1]]), flat(max), flat([min[0], max[1]])]
}

/** The footprint, with a heavy line and an open triangle on the side that the fronts look to. */
function drawFootprint(picture: Picture, module: PlacedModule | undefined, print: Rectangle): void {
  if (module === undefined) return
  const { key, name, at, floorFromModule, size } = module
  picture.polygon({ key, kind: 'footprint', filled: true, module: key, title: name, at }, cornersOf(print))
  picture.corners(
    [
      [print.min[0], print.min[1], 0],
      [print.max[0], print.min[1], 0],
      [print.max[0], print.max[1], 0],
      [print.min[0], print.max[1], 0],
    ],
    (point) => seen(FLOOR_FRAME, point),
  )
  const on = (x: number, y: number): ScenePoint => seen(FLOOR_FRAME, place(floorFromModule, [x, y, 0]))
  const mark = Math.min(size.width, size.depth) * MARK
  const title = `front of ${name}`
  picture.strokes({ key: `${key} front`, kind: 'edge', filled: false, module: key, title }, [
    [on(0, 0), on(size.width, 0)],
  ])
  picture.polygon({ key: `${key} front mark`, kind: 'grain', filled: false, module: key, title }, [
    on(size.width / 2 - mark, 0),
    on(size.width / 2 + mark, 0),
    on(size.width / 2, -mark),
  ])
}

/** Half of the triangle at the front, as a share of the lesser side of the module. */
const MARK = 0.06

/** Worktops and machine tops that stand out over what is under them. */
function drawTops(picture: Picture, index: LaidIndex, module: PlacedModule): void {
  const print = footprintOf(module)
  for (const panel of index.ofModule.get(module.key) ?? []) {
    if (panel.role !== 'worktop' && panel.role !== 'machine top') continue
    const { min, max } = floorBox(module, panel)
    const box: Rectangle = { min: [min[0], min[1]], max: [max[0], max[1]] }
    if (module.liesOver === undefined && isWithin(box, print)) continue
    const title = `${panel.moduleName}: ${panel.name}`
    const key = panel.id
    picture.polygon({ key, kind: 'seen through', filled: false, panel: panel.id, title, at: panel.at }, cornersOf(box))
    keepFrame(picture, module, panel)
  }
}

const isWithin = (a: Rectangle, b: Rectangle): boolean =>
  a.min.every((low, k) => low >= (b.min[k] ?? 0) - NOISE_MM) &&
  a.max.every((high, k) => high <= (b.max[k] ?? 0) + NOISE_MM)

function keepFrame(picture: Picture, module: PlacedModule, panel: Panel): PanelToScene {
  const known = picture.frames[panel.id]
  if (known !== undefined) return known
  const frame = throughPose(FLOOR_FRAME, compose(module.floorFromModule, panel.moduleFromPanel))
  picture.frames[panel.id] = frame
  return frame
}

/** Swivel circles of casters, wheels of fixed ones, pads of feet; and their holes. */
function drawBase(picture: Picture, index: LaidIndex, module: PlacedModule): void {
  for (const piece of index.hardwareOf.get(module.key) ?? []) {
    const { item } = piece
    if (item.kind !== 'caster' && item.kind !== 'levelling foot') continue
    for (const { pose } of piece.stations) {
      const at = place(module.floorFromModule, pose.origin)
      const middle = seen(FLOOR_FRAME, at)
      const spec = { kind: 'hardware', filled: false, module: module.key, title: item.title, at: piece.at } as const
      const radius = item.kind === 'caster' ? item.swivelRadius : item.padDiameter / 2
      if (radius > NOISE_MM) picture.circle({ ...spec, key: `${piece.id} circle` }, middle, radius)
      if (item.kind === 'caster' && item.wheel !== undefined) {
        const { width, diameter } = item.wheel
        const corner = (x: number, y: number): ScenePoint =>
          seen(FLOOR_FRAME, place(module.floorFromModule, place(pose, [x * width, y * diameter, 0])))
        picture.polygon({ ...spec, key: `${piece.id} wheel` }, [
          corner(-0.5, -0.5),
          corner(0.5, -0.5),
          corner(0.5, 0.5),
          corner(-0.5, 0.5),
        ])
      }
      picture.snaps.push({ at: middle, place: [at[0], at[1], 0], kind: 'centre' })
    }
  }
}

/** The bolts between modules, from the head to the nut, and their holes. */
function drawBolts(picture: Picture, index: LaidIndex): void {
  for (const piece of index.hardwareOf.get(FLOOR) ?? []) {
    if (piece.item.kind !== 'joining bolt') continue
    for (const { panel, bore } of boresOf(index, piece)) {
      const module = index.modules.get(panel.module)
      if (module === undefined) continue
      const frame = keepFrame(picture, module, panel)
      const at = seen(frame, bore.at)
      const pose = compose(module.floorFromModule, panel.moduleFromPanel)
      const [x, y] = place(pose, bore.at)
      const fromAbove = Math.abs(turn(pose, OUTWARD[bore.surface])[2]) > 0.5
      const { d, reach } = fromAbove ? rimOf(frame, bore, at, 'in') : sideOf(frame, bore)
      picture.hole(
        {
          id: holeId(panel, bore),
          panel: panel.id,
          operation: picture.operations.bore(bore),
          at,
          place: [x, y, 0],
          d,
          radius: mouthRadius(bore),
          hidden: false,
        },
        reach,
      )
    }
  }
}

/** The bores of one piece of hardware in the panels that it grips. */
function boresOf({ panels }: LaidIndex, { id, stations }: PlacedHardware): BoreOf[] {
  const grips = new Set(stations.map(({ panel }) => panel))
  return [...grips].flatMap((one) => {
    const panel = panels.get(one)
    const bores = panel?.bores.filter(({ uses }) => uses.some(({ hardware }) => hardware === id)) ?? []
    return panel === undefined ? [] : bores.map((bore): BoreOf => ({ panel, bore }))
  })
}

/** The name in the middle of the footprint, turned where it has more room so; left out where there is none. */
function nameModule(picture: Picture, { key, name }: PlacedModule, print: Rectangle | undefined, size: number): void {
  if (print === undefined) return
  const [wide, deep] = [print.max[0] - print.min[0], print.max[1] - print.min[1]]
  const words = textWidth(name, size) * NAME_SHARE
  const [x, y] = flat([(print.min[0] + print.max[0]) / 2, (print.min[1] + print.max[1]) / 2])
  const word = { key: `${key} name`, text: name, anchor: 'middle', kind: 'name' } as const
  if (words <= wide) picture.word({ ...word, at: [x, y + 0.35 * size] }, size)
  else if (words <= deep) picture.word({ ...word, at: [x + 0.35 * size, y], turnDeg: 90 }, size)
}

/** Names are drawn bold: wider than textWidth says. */
const NAME_SHARE = 1.12

/** The length of each row on the side of its fronts, its depth at its end, and the gaps in it. */
function drawRows(
  picture: Picture,
  laid: LaidOut,
  prints: ReadonlyMap<string, Rectangle>,
  units: Units,
  size: number,
): void {
  laid.project.rows.forEach((row, k) => {
    const boxes = row.modules.flatMap((key) => prints.get(key) ?? [])
    const [first] = row.modules
    const module = first === undefined ? undefined : laid.assembly.modules.find(({ key }) => key === first)
    if (module === undefined || boxes.length === 0) return
    const all = around(boxes)
    const [fx, fy] = turn(module.floorFromModule, [0, -1, 0])
    const along = Math.abs(fy) > 0.5 ? 0 : 1
    const low = cornersOf(all)[0]
    const high = cornersOf(all)[2]
    const out = ROW_OUT * size
    const gone = along === 0 ? fy : fx
    const thing = along === 0 ? (gone < 0 ? low[1] : high[1]) : gone < 0 ? low[0] : high[0]
    const away = along === 0 ? (gone < 0 ? out : -out + size) : gone < 0 ? -out + size : out
    const [from, to] = along === 0 ? [low[0], high[0]] : [high[1], low[1]]
    drawDimension(
      picture,
      {
        key: `row ${k + 1}`,
        from,
        to,
        along: along === 0 ? 'x' : 'y',
        thing,
        line: thing + away,
        words: placeWords(to - from, units),
      },
      size,
    )
  })
}

/** The gaps that rows keep from what they stand against: between the sides that face each other, in the middle of what they share. */
function drawGaps(
  picture: Picture,
  laid: LaidOut,
  prints: ReadonlyMap<string, Rectangle>,
  units: Units,
  size: number,
): void {
  laid.project.rows.forEach((row, k) => {
    const anchor = row.stands && prints.get(row.stands.against)
    const boxes = row.modules.flatMap((key) => prints.get(key) ?? [])
    if (anchor === undefined || boxes.length === 0) return
    const own = around(boxes)
    for (const axis of [0, 1] as const) {
      const other = axis === 0 ? 1 : 0
      const [low, high] = own.min[axis] < anchor.min[axis] ? [own, anchor] : [anchor, own]
      const [from, to] = [low.max[axis], high.min[axis]]
      const [shareFrom, shareTo] = [
        Math.max(own.min[other], anchor.min[other]),
        Math.min(own.max[other], anchor.max[other]),
      ]
      if (to - from <= NOISE_MM || shareTo - shareFrom <= NOISE_MM) continue
      const middle = (shareFrom + shareTo) / 2
      const ends = axis === 0 ? [flat([from, middle]), flat([to, middle])] : [flat([middle, from]), flat([middle, to])]
      picture.strokes({ key: `gap ${k + 1}`, kind: 'size', filled: false, title: 'gap' }, [ends])
      const [x, y] = ends[0] ?? [0, 0]
      const [u, v] = ends[1] ?? [0, 0]
      const text = placeWords(to - from, units)
      const at: ScenePoint = axis === 0 ? [(x + u) / 2, y - 0.4 * size] : [x + 0.5 * size, (y + v) / 2 + 0.35 * size]
      picture.word({ key: `gap ${k + 1} words`, at, anchor: axis === 0 ? 'middle' : 'start', text, kind: 'size' }, size)
    }
  })
}

/** From the fronts to the line of a row's length, in text heights. */
const ROW_OUT = 2.6

function around(all: readonly Rectangle[]): Rectangle {
  return {
    min: [Math.min(...all.map(({ min }) => min[0])), Math.min(...all.map(({ min }) => min[1]))],
    max: [Math.max(...all.map(({ max }) => max[0])), Math.max(...all.map(({ max }) => max[1]))],
  }
}
