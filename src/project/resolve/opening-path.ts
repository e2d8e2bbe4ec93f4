import type { ClosedPath } from '../../geometry/index.ts'
import type { Context } from '../context.ts'
import { type Layer, said } from '../layers.ts'
import type { RawOpening } from '../schema/definition.ts'
import { contourOf } from '../svg/contour.ts'
import { isPlainFileName } from '../svg/file-names.ts'
import { pathKey } from '../to-data.ts'
import type { DefinitionPath } from '../types.ts'

/** The contour of an opening that is drawn in SVG; nothing, with a report, where it cannot be cut. */
export function resolvePath(context: Context, layer: Layer<RawOpening>): ClosedPath | undefined {
  const svg = said([layer], 'svg')
  const file = said([layer], 'file')
  if (svg !== undefined && file !== undefined) {
    context.report(file.path, 'a path is drawn here or in a file, not both', { expected: 'svg or file', on: 'key' })
    return undefined
  }
  if (svg === undefined && file === undefined) {
    context.reportMissing(layer.path, 'svg', 'svg with the drawing, or file with its name')
    return undefined
  }
  const drawing = svg ?? (file && fileText(context, file.value, file.path))
  if (drawing === undefined) return undefined
  const unit = said([layer], 'unit')?.value
  const scale = said([layer], 'scale')?.value ?? 1
  // To make arcs of curves takes longer than all the rest of a module.
  const contour = context.contours.take(pathKey(layer.path), [drawing.value, unit, scale], () =>
    contourOf(drawing.value, { unit, scale }),
  )
  if ('path' in contour) return contour.path
  context.report(drawing.path, contour.reason, { expected: contour.expected })
  return undefined
}

function fileText(
  context: Context,
  name: string,
  path: DefinitionPath,
): { readonly value: string; readonly path: DefinitionPath } | undefined {
  const shown = context.written(path, name)
  const expected = 'the name of an SVG file beside the definition, or in a folder there'
  if (!isPlainFileName(name)) {
    context.report(path, `${shown} is no name of a file beside the definition`, { expected })
    return undefined
  }
  const text = context.files.get(name)
  if (text === undefined) {
    context.report(path, `there is no file ${shown}`, {
      expected,
      nearest: context.nearest(name, [...context.files.keys()]),
    })
    return undefined
  }
  return { value: text, path }
}
