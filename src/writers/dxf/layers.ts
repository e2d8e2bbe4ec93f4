import type { Drawing, Layer, Operation } from '../../drawing/index.ts'

/**
 * Colours by the DXF colour index (1..255), one an operation. They are how a person, and our own linter, tells the
 * operation of a layer whose name the user has chosen.
 */
export const COLOURS: Readonly<Record<Operation, number>> = {
  outline: 7,
  // Never written: findings stand on pictures alone.
  finding: 11,
  cutout: 1,
  pocket: 30,
  bore: 5,
  countersink: 4,
  groove: 3,
  mark: 6,
  note: 8,
}

/** The operation of a layer colour, if it is one of ours. */
export function operationOf(colour: number): Operation | undefined {
  return (Object.keys(COLOURS) as Operation[]).find((operation) => COLOURS[operation] === colour)
}

/** Layers that every DXF file has, or that readers treat in a way of their own. */
const RESERVED = ['0', 'DEFPOINTS']

/** The layers that a file gets: those with something on them, and without the notes when they are not wanted. */
export function layersFor(drawing: Drawing, notes: boolean): Layer[] {
  const reserved = drawing.layers.find((layer) => RESERVED.includes(layer.name))
  if (reserved !== undefined) throw new Error(`${drawing.title}: a DXF layer cannot be named ${reserved.name}`)
  return drawing.layers.filter((layer) => layer.entities.length > 0 && (notes || layer.operation !== 'note'))
}
