import type { PanelId, PlacedHardware, PlacedModule } from '../../assembly/index.ts'
import type { LaidOut } from '../../outputs/index.ts'
import type { Bore, Panel } from '../../panel/index.ts'

/** What is laid out, by its names. */
export interface LaidIndex {
  readonly panels: ReadonlyMap<PanelId, Panel>
  /** The panels of each module, by its key. */
  readonly ofModule: ReadonlyMap<string, readonly Panel[]>
  readonly modules: ReadonlyMap<string, PlacedModule>
  readonly hardware: ReadonlyMap<string, PlacedHardware>
  /** That of each frame: the key of a module, or FLOOR. */
  readonly hardwareOf: ReadonlyMap<string, readonly PlacedHardware[]>
}

/** A bore and its panel. */
export interface BoreOf {
  readonly panel: Panel
  readonly bore: Bore
}

const indexes = new WeakMap<LaidOut, LaidIndex>()
const uses = new WeakMap<LaidOut, ReadonlyMap<string, readonly BoreOf[]>>()

/** The index of what is laid out; each part of it worked out once, when it is first asked for. */
export function indexOf(laid: LaidOut): LaidIndex {
  const known = indexes.get(laid)
  if (known !== undefined) return known
  const { assembly, panels } = laid
  const index: LaidIndex = new LazyIndex({
    panels: () => new Map(panels.map((panel) => [panel.id, panel])),
    ofModule: () => {
      const ofModule = new Map<string, Panel[]>(assembly.modules.map(({ key }) => [key, []]))
      for (const panel of panels) ofModule.get(panel.module)?.push(panel)
      return ofModule
    },
    modules: () => new Map(assembly.modules.map((module) => [module.key, module])),
    hardware: () => new Map(assembly.hardware.map((piece) => [piece.id, piece])),
    hardwareOf: () => {
      const hardwareOf = new Map<string, PlacedHardware[]>()
      for (const piece of assembly.hardware) {
        const list = hardwareOf.get(piece.frame)
        if (list === undefined) hardwareOf.set(piece.frame, [piece])
        else list.push(piece)
      }
      return hardwareOf
    },
  })
  indexes.set(laid, index)
  return index
}

class LazyIndex implements LaidIndex {
  readonly #make: { readonly [K in keyof LaidIndex]: () => LaidIndex[K] }
  readonly #made: { -readonly [K in keyof LaidIndex]?: LaidIndex[K] } = {}

  constructor(make: { readonly [K in keyof LaidIndex]: () => LaidIndex[K] }) {
    this.#make = make
  }

  get panels(): LaidIndex['panels'] {
    this.#made.panels ??= this.#make.panels()
    return this.#made.panels
  }

  get ofModule(): LaidIndex['ofModule'] {
    this.#made.ofModule ??= this.#make.ofModule()
    return this.#made.ofModule
  }

  get modules(): LaidIndex['modules'] {
    this.#made.modules ??= this.#make.modules()
    return this.#made.modules
  }

  get hardware(): LaidIndex['hardware'] {
    this.#made.hardware ??= this.#make.hardware()
    return this.#made.hardware
  }

  get hardwareOf(): LaidIndex['hardwareOf'] {
    this.#made.hardwareOf ??= this.#make.hardwareOf()
    return this.#made.hardwareOf
  }
}

/** The bores that each piece of hardware uses, by its id; worked out once. */
export function boresOfHardware(laid: LaidOut): ReadonlyMap<string, readonly BoreOf[]> {
  const known = uses.get(laid)
  if (known !== undefined) return known
  const found = new Map<string, BoreOf[]>()
  for (const panel of laid.panels) {
    for (const bore of panel.bores) {
      for (const hardware of new Set(bore.uses.map((use) => use.hardware))) {
        const list = found.get(hardware)
        if (list === undefined) found.set(hardware, [{ panel, bore }])
        else list.push({ panel, bore })
      }
    }
  }
  uses.set(laid, found)
  return found
}

/** `tool-locker/left-side#bore-3`, unique in a project. */
export const holeId = (panel: Panel, bore: Bore): string => `${panel.id}#${bore.id}`
