import type { OperationWork, Scene, SceneOperation, ScenePart } from '../scene/types.ts'
import type { Camera } from './camera.ts'
import { type HoleBin, holeBins } from './hole-bins.ts'
import type { PlacedPart } from './keys.ts'
import { BEHIND, markSize, WORK_MARKS, workClass } from './marks.ts'
import { Row, svgElement } from './svg.ts'

/** Distance of the lines of a hatch, px. */
const HATCH_PX = 7

/**
 * What is drawn in mm: parts, holes and their marks. A camera moves all of it by one transform. All holes of an operation
 * are one path, for its rims, and one for each layer of its mark.
 */
export class World {
  readonly group = svgElement('g', { class: 'world' })
  readonly defs = svgElement('defs')
  readonly #parts: Row<'path'>
  readonly #rims: Row<'path'>
  readonly #marks: Row<'path'>
  readonly #lit = svgElement('path', { class: 'lit' })
  readonly #hatches: readonly SVGPatternElement[]
  #shown: readonly ScenePart[] = []
  #hasMarks = true
  /** Holes whose marks are still to be written. */
  #unmarked: readonly DrawnBin[] | undefined
  readonly #partOf = new WeakMap<Element, ScenePart>()

  constructor() {
    const layer = (name: string): SVGGElement => {
      const group = svgElement('g', { class: name })
      this.group.append(group)
      return group
    }
    this.#parts = new Row(layer('parts'), 'path')
    this.group.append(this.#lit)
    this.#rims = new Row(layer('rims'), 'path')
    this.#marks = new Row(layer('marks'), 'path')
    this.#hatches = [
      hatch('hatch-one-way', `M0 ${HATCH_PX}L${HATCH_PX} 0`),
      hatch('hatch-both-ways', `M0 ${HATCH_PX}L${HATCH_PX} 0M0 0L${HATCH_PX} ${HATCH_PX}`),
    ]
    this.defs.append(...this.#hatches)
  }

  /** Draws a scene without the operations that are off. */
  draw(scene: Scene, off: ReadonlySet<string>): void {
    const works = new Map(scene.operations.map((operation) => [operation.id, operation]))
    this.#shown = off.size === 0 ? scene.parts : scene.parts.filter(({ operation }) => !isOff(operation, off))
    this.#parts.begin()
    for (const part of this.#shown) {
      const work = part.operation === undefined ? undefined : works.get(part.operation)
      const element = this.#parts.next({
        class: `part ${part.kind.replace(' ', '-')}${part.filled ? ' filled' : ''}${work ? ` ${workClass(work.work)}` : ''}`,
        d: part.d,
      })
      this.#partOf.set(element, part)
    }
    this.#parts.end()
    this.#drawHoles(holeBins(scene, off), works)
  }

  #drawHoles(holes: readonly HoleBin[], works: ReadonlyMap<string, SceneOperation>): void {
    const bins = holes.map((bin): DrawnBin => {
      const work = works.get(bin.operation)?.work ?? 'pulls and fittings'
      return {
        ...bin,
        work,
        classes: `${workClass(work)}${bin.hidden ? ' behind' : ''}`,
      }
    })
    this.#rims.begin()
    for (const { rims, operation, classes } of bins)
      this.#rims.next({ class: `rim ${classes}`, d: rims, 'data-operation': operation })
    this.#rims.end()
    // Seen from far there are no marks: they are written when one comes near.
    this.#unmarked = bins
    if (this.#hasMarks) this.#drawMarks()
  }

  #drawMarks(): void {
    if (this.#unmarked === undefined) return
    this.#marks.begin()
    for (const { dots, hidden, work, classes } of this.#unmarked) {
      const d = dots()
      // What lies behind has no colour: it is there, but not on this side.
      const layers = hidden ? BEHIND : WORK_MARKS[work].layers
      for (const { width, form, of } of layers)
        this.#marks.next({ class: `mark ${classes} ${form} ${of}`, style: `--width: ${width}px`, d })
    }
    this.#marks.end()
    this.#unmarked = undefined
  }

  /** Lights up all of a panel, or of a module, or nothing. */
  light(isLit: ((part: ScenePart) => boolean) | undefined): void {
    const d = isLit === undefined ? '' : this.#shown.filter(isLit).map((part) => part.d)
    this.#lit.setAttribute('d', typeof d === 'string' ? d : d.join(''))
  }

  move({ scale, x, y }: Camera): void {
    this.group.setAttribute('transform', `matrix(${scale} 0 0 ${scale} ${x} ${y})`)
    for (const pattern of this.#hatches) pattern.setAttribute('patternTransform', `scale(${1 / scale})`)
    const size = markSize(scale)
    if (this.group.dataset.size !== size) this.group.dataset.size = size
    this.#hasMarks = size !== 'none'
    if (this.#hasMarks) this.#drawMarks()
  }

  /** Panels and modules with the middle of where they are drawn, each once. */
  placedParts(): readonly PlacedPart[] {
    const boxes = new Map<string, { readonly part: ScenePart; min: readonly number[]; max: readonly number[] }>()
    for (const [index, element] of this.#parts.elements.entries()) {
      const part = this.#shown[index]
      const key = part?.panel ?? part?.module
      if (part === undefined || key === undefined) continue
      const { x, y, width, height } = element.getBBox()
      const box = boxes.get(key) ?? { part, min: [x, y], max: [x + width, y + height] }
      boxes.set(key, {
        part: box.part,
        min: [Math.min(box.min[0] ?? x, x), Math.min(box.min[1] ?? y, y)],
        max: [Math.max(box.max[0] ?? x, x + width), Math.max(box.max[1] ?? y, y + height)],
      })
    }
    return [...boxes.values()].map(({ part, min, max }) => ({
      part,
      at: [((min[0] ?? 0) + (max[0] ?? 0)) / 2, ((min[1] ?? 0) + (max[1] ?? 0)) / 2],
    }))
  }

  /** The part that an element of the drawing is. */
  partAt(element: Element | null): ScenePart | undefined {
    return element === null ? undefined : this.#partOf.get(element)
  }
}

interface DrawnBin extends HoleBin {
  readonly work: OperationWork
  readonly classes: string
}

const isOff = (operation: string | undefined, off: ReadonlySet<string>): boolean =>
  operation !== undefined && off.has(operation)

function hatch(id: string, d: string): SVGPatternElement {
  const pattern = svgElement('pattern', { id, width: HATCH_PX, height: HATCH_PX, patternUnits: 'userSpaceOnUse' })
  pattern.append(svgElement('path', { class: 'hatch', d }))
  return pattern
}
