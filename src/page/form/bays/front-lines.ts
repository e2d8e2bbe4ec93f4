import type { FrontRectangle, ModuleShell } from '../model.ts'
import type { BayView } from './bays.ts'

/** What is drawn of a module's front: paths in mm, x right, y down from the carcase's upper side. */
export interface FrontLines {
  readonly width: number
  readonly height: number
  /** The outside of the carcase, and the boards that divide it. */
  readonly wood: string
  /** Loose shelves. */
  readonly shelves: string
  /** Edges of doors, flaps, fixed fronts and drawers. */
  readonly fronts: string
  /** From the corners away from the hinges to the middle of the hinge edge: which way a front opens. */
  readonly swings: string
}

/** The simple lines of a module's front. The one place of the form where z up becomes y down. */
export function frontLines(shell: ModuleShell, inside: BayView): FrontLines {
  const box = boxOf(shell.height)
  const lines = {
    wood: [box({ x0: 0, x1: shell.width, z0: 0, z1: shell.height })],
    shelves: [],
    fronts: [],
    swings: [],
  }
  lines.wood.push(box(shell.opening))
  collect(inside, box, shell.height, lines)
  return {
    width: shell.width,
    height: shell.height,
    wood: lines.wood.join(' '),
    shelves: lines.shelves.join(' '),
    fronts: lines.fronts.join(' '),
    swings: lines.swings.join(' '),
  }
}

interface Lines {
  readonly wood: string[]
  readonly shelves: string[]
  readonly fronts: string[]
  readonly swings: string[]
}

type Box = (rectangle: FrontRectangle) => string

/** A rectangle as a closed path. */
const boxOf =
  (height: number): Box =>
  ({ x0, x1, z0, z1 }) =>
    `M${n(x0)} ${n(height - z1)}H${n(x1)}V${n(height - z0)}H${n(x0)}Z`

const n = (mm: number): string => String(Math.round(mm * 100) / 100)

/** Fronts and drawers are drawn so much within their opening, mm, so that they do not hide its edges. */
const WITHIN_MM = 6

function collect(bay: BayView, box: Box, height: number, lines: Lines): void {
  const { x0, x1, z0, z1 } = bay.rectangle
  lines.wood.push(...bay.dividers.map(box))
  for (let k = 1; k <= bay.looseShelves; k += 1) {
    const z = z1 - ((z1 - z0) * k) / (bay.looseShelves + 1)
    lines.shelves.push(`M${n(x0)} ${n(height - z)}H${n(x1)}`)
  }
  let top = z1
  for (const drawer of bay.drawers) {
    lines.fronts.push(box(inset({ x0, x1, z0: top - drawer, z1: top })))
    const middle = (x0 + x1) / 2
    const pull = Math.min(60, (x1 - x0) / 6)
    lines.fronts.push(`M${n(middle - pull)} ${n(height - top + drawer / 2)}H${n(middle + pull)}`)
    top -= drawer
  }
  if (bay.front !== undefined) front(bay.front, inset(bay.rectangle), box, height, lines)
  for (const inner of bay.bays) collect(inner, box, height, lines)
}

function inset({ x0, x1, z0, z1 }: FrontRectangle): FrontRectangle {
  const by = Math.max(0, Math.min(WITHIN_MM, (x1 - x0) / 8, (z1 - z0) / 8))
  return { x0: x0 + by, x1: x1 - by, z0: z0 + by, z1: z1 - by }
}

function front(
  { kind, hang }: NonNullable<BayView['front']>,
  rectangle: FrontRectangle,
  box: Box,
  height: number,
  lines: Lines,
): void {
  if (kind === 'pair') {
    const middle = (rectangle.x0 + rectangle.x1) / 2
    front({ kind: 'door', hang: 'left' }, { ...rectangle, x1: middle }, box, height, lines)
    front({ kind: 'door', hang: 'right' }, { ...rectangle, x0: middle }, box, height, lines)
    return
  }
  const { x0, x1, z0, z1 } = rectangle
  lines.fronts.push(box(rectangle))
  if (kind === 'fixed') return
  const [left, right, top, bottom] = [x0, x1, height - z1, height - z0]
  const [xm, ym] = [(left + right) / 2, (top + bottom) / 2]
  const corners = {
    left: [right, top, left, ym, right, bottom],
    right: [left, top, right, ym, left, bottom],
    top: [left, bottom, xm, top, right, bottom],
    bottom: [left, top, xm, bottom, right, top],
  }[hang]
  const [ax = 0, ay = 0, bx = 0, by = 0, cx = 0, cy = 0] = corners
  lines.swings.push(`M${n(ax)} ${n(ay)}L${n(bx)} ${n(by)}L${n(cx)} ${n(cy)}`)
}
