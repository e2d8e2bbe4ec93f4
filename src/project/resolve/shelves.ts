import type { ShelfPin } from '../../hardware/index.ts'
import { MM_PER_INCH } from '../../length/index.ts'
import type { Context, Said } from '../context.ts'
import { DEFAULTS } from '../defaults.ts'
import { asLayers, layersOf, said } from '../layers.ts'
import type { RawLooseShelves, RawPins } from '../schema/definition.ts'
import type { LooseShelvesSpec, PinRowSpec, Stock } from '../types.ts'
import { itemNamed, largestBore, usualItem } from './hardware.ts'
import { readLoad } from './loads.ts'
import { stockNamed } from './stock.ts'

/** Loose shelves of an opening, which may lie behind a front; `undefined` when none are said or their stock cannot be told. */
export function resolveLooseShelves(
  context: Context,
  shelves: Said<unknown> | undefined,
  moduleStock: Stock | undefined,
  behindFront: boolean,
): LooseShelvesSpec | undefined {
  if (shelves === undefined) return undefined
  const layers = asLayers<RawLooseShelves>([shelves], 'count')
  const name = said(layers, 'stock')
  const stock = name === undefined ? moduleStock : stockNamed(context, name)
  const pins = resolvePins(context, said(layers, 'pins'), behindFront)
  const spec = {
    count: said(layers, 'count')?.value ?? 1,
    clearance: context.lengthOr(said(layers, 'clearance'), DEFAULTS.shelfClearance),
    frontSetback: context.lengthOr(
      said(layers, 'front setback'),
      behindFront ? DEFAULTS.shelfFrontBehindDoor : DEFAULTS.shelfFront,
    ),
    rearGap: context.lengthOr(said(layers, 'rear gap'), DEFAULTS.rearGap),
    load: readLoad(context, said(layers, 'load'), 'load'),
  }
  return stock === undefined ? undefined : { ...spec, stock, pins, at: shelves.path }
}

function resolvePins(context: Context, pins: Said<unknown> | undefined, behindFront: boolean): PinRowSpec {
  const layers = layersOf<RawPins>([pins])
  const name = said(layers, 'item')
  const item = (name && itemNamed(context, name, ['shelf pin'])) ?? usualPin(context)
  const hole = largestBore(item)
  const pitch = said(layers, 'pitch')
  const usualPitch = hole === 5 ? DEFAULTS.pitchOf5mm : DEFAULTS.pitch
  const pitchMm = context.lengthOr(pitch, usualPitch, { aboveZero: true })
  if (pitch !== undefined && pitchMm <= hole && !context.troubled(pitch.path)) {
    const what = `holes ${context.show(pitchMm)} apart run into each other; they are ${context.show(hole)} wide`
    context.report(pitch.path, what, { expected: `more than ${context.show(hole)}, usually 32 mm` })
  }
  const quarterInch = hole === MM_PER_INCH / 4
  const rearUsual = quarterInch ? DEFAULTS.pinSetbackQuarterInch : DEFAULTS.pinSetback
  const frontUsual = quarterInch && behindFront ? DEFAULTS.pinSetbackQuarterInchBehindDoor : rearUsual
  const frontSaid = said(layers, 'front setback')
  const frontSetback = context.lengthOr(frontSaid, frontUsual)
  return {
    item,
    pitch: pitchMm,
    datum: context.lengthOr(said(layers, 'datum'), 0),
    frontSetback,
    rearSetback: context.lengthOr(said(layers, 'rear setback'), frontSaid === undefined ? rearUsual : frontSetback),
    keepClear: context.lengthOr(said(layers, 'keep clear'), DEFAULTS.keepClear),
    bothFaces: said(layers, 'both faces')?.value ?? 'share',
  }
}

function usualPin(context: Context): ShelfPin {
  return usualItem(context, 'shelf pin', context.usual === 'in' ? 'pin 1/4 in' : 'pin 5')
}
