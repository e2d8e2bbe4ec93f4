import { batch, computed, effect, type ReadonlySignal, type Signal, signal } from '@preact/signals'
import type { PanelId } from '../../assembly/index.ts'
import type { Units } from '../../length/index.ts'
import type { DefinitionPath } from '../../project/index.ts'
import type { HoleFacts, Look, OperationWork, Scene, SceneHole, SceneOperation } from '../scene/types.ts'
import type { Page, PlaceShown } from '../state/page.ts'
import { type Camera, centredOn, fitted, keptFitted, LEFT_PX, type SheetSize, toScreen } from './camera.ts'
import { outFromUnder } from './card-place.ts'
import { type CardState, cardState } from './card-state.ts'
import { inScene } from './flags.ts'
import { definitionName, sameThing } from './looks.ts'
import { agreed, type Held } from './one-module.ts'
import type { MeasurePoint } from './snap.ts'

/** A panel, a module as a whole, or an opening of it that was pressed once: it is lit and named, and can be gone to. */
export interface Picked {
  readonly panel?: PanelId
  readonly module?: string
  readonly opening?: PickedOpening
  readonly name: string
}

/** An opening of the carcase by the key of its part, and its bay in the definition. */
export interface PickedOpening {
  readonly key: string
  readonly path: DefinitionPath
}

/** Measuring goes on: the point that is aimed at, the first that was set, and the second. */
export interface Measuring {
  readonly aim?: MeasurePoint
  readonly from?: MeasurePoint
  readonly to?: MeasurePoint
}

/** What the sheet itself remembers; nothing of it belongs to the definition. */
export interface SheetState {
  readonly page: Page
  readonly size: Signal<SheetSize>
  readonly camera: Signal<Camera>
  /** Counts the drawings that are on the sheet. */
  readonly drawn: Signal<number>
  readonly off: Signal<ReadonlySet<string>>
  /** Holes of the operations that are on. */
  readonly holes: ReadonlySignal<readonly SceneHole[]>
  /** How many these are; asking for them takes longer. */
  readonly holeCount: ReadonlySignal<number>
  /** What is known of the hole that is pointed at. */
  readonly facts: Signal<HoleFacts | undefined>
  /** Its card stays when the pointer goes. */
  readonly pinned: Signal<boolean>
  readonly picked: Signal<Picked | undefined>
  readonly measuring: Signal<Measuring | undefined>
  /** The place that a finding asked to be shown, as long as it is ringed. */
  readonly ringed: Signal<PlaceShown | undefined>
  /** The same, while a card is shown: not while one measures. */
  readonly cardFacts: ReadonlySignal<HoleFacts | undefined>
  /** Its place, and the sizes of its hole. */
  readonly card: CardState
  readonly operations: ReadonlySignal<readonly SceneOperation[]>
  readonly heading: ReadonlySignal<Pick<Scene, 'title' | 'facts'>>
  readonly legendOpen: Signal<boolean>
  readonly canGoBack: ReadonlySignal<boolean>
  readonly units: ReadonlySignal<Units>
  /** Looks at something else, and remembers what was seen before. */
  readonly look: (look: Look) => void
  readonly back: () => void
  readonly fit: () => void
  /** A person moved the drawing: it is no longer fitted by itself. */
  readonly move: (camera: Camera) => void
  readonly pointAt: (hole: SceneHole | undefined) => void
  readonly pick: (picked: Picked | undefined) => void
  /** Follows what the rest of the page does; returns what ends that. */
  readonly follow: () => () => void
}

/** How many looks one can go back. */
const STEPS_BACK = 50
const BLANK: Camera = { scale: 1, x: 0, y: 0 }

/** A value that changes only where its words do, so that what is beside the drawing is not drawn anew with each key press. */
function unlessSame<T>(work: () => T): ReadonlySignal<T> {
  let last: { readonly value: T; readonly words: string } | undefined
  return computed(() => {
    const value = work()
    const words = JSON.stringify(value)
    if (last?.words !== words) last = { value, words }
    return last.value
  })
}

/** Work that makes no holes. */
const CUTS: ReadonlySet<OperationWork> = new Set(['grooves', 'cutouts'])

export function sheetState(page: Page): SheetState {
  const { workshop } = page
  const size = signal<SheetSize>({ width: 0, height: 0 })
  const camera = signal<Camera>(BLANK)
  const drawn = signal(0)
  const off = signal<ReadonlySet<string>>(new Set())
  const facts = signal<HoleFacts | undefined>(undefined)
  const pinned = signal(false)
  const picked = signal<Picked | undefined>(undefined)
  const measuring = signal<Measuring | undefined>(undefined)
  const ringed = signal<PlaceShown | undefined>(undefined)
  const past = signal<readonly Look[]>([])
  const holes = computed(() => {
    const hidden = off.value
    const all = workshop.scene.value?.holes ?? []
    return hidden.size === 0 ? all : all.filter(({ operation }) => !hidden.has(operation))
  })
  const holeCount = computed(() => {
    const operations = workshop.scene.value?.operations ?? []
    const shown = operations.filter(({ id, work }) => !CUTS.has(work) && !off.value.has(id))
    return shown.reduce((sum, { count }) => sum + count, 0)
  })
  const scene = workshop.scene
  const cardFacts = computed(() => {
    const known = measuring.value === undefined ? facts.value : undefined
    return known !== undefined && scene.value?.holes.some(({ id }) => id === known.id) ? known : undefined
  })
  const units = computed(() => page.settings.units.value ?? workshop.outline.value?.units ?? 'mm')
  const card = cardState(signal<SheetSize | undefined>(undefined), {
    scene,
    holes,
    facts: cardFacts,
    camera,
    size,
    units,
    hasStrip: computed(() => picked.value !== undefined),
  })
  let isFitted = true
  let before: Scene | undefined

  const fit = (): void => {
    isFitted = true
    const scene = workshop.scene.peek()
    if (scene !== undefined) camera.value = fitted(scene.bounds, size.peek())
  }
  const look = (wanted: Look): void => {
    const now = workshop.look.peek()
    if (now !== undefined && !sameThing(now, wanted)) past.value = [...past.peek(), now].slice(-STEPS_BACK)
    workshop.lookAt(wanted)
  }
  const pointAt = (hole: SceneHole | undefined): void => {
    if (page.hole.peek()?.id === hole?.id) return
    batch(() => {
      page.hole.value = hole && { id: hole.id, panel: hole.panel }
      if (hole === undefined) pinned.value = false
    })
  }

  /** Where the drawing lies when another one comes: as before, as long as it is of the same thing. */
  const followScene = (): void => {
    const scene = workshop.scene.value
    const { width, height } = size.value
    if (scene === undefined || width === 0 || height === 0) return
    const isSame = sameThing(before?.look, scene.look)
    const pointed = page.hole.peek()
    if (pointed !== undefined && !scene.holes.some(({ id }) => id === pointed.id)) pointAt(undefined)
    if (before !== scene && !isSame) {
      isFitted = true
      picked.value = undefined
      measuring.value = measuring.peek() && {}
    }
    if (isFitted)
      camera.value =
        isSame && before !== scene
          ? keptFitted(camera.peek(), scene.bounds, size.peek())
          : fitted(scene.bounds, size.peek())
    before = scene
  }

  const followHole = (): void => {
    const hole = page.hole.value
    // Asked anew with every drawing: the figures may be others.
    const scene = workshop.scene.value
    if (hole === undefined || scene === undefined) {
      facts.value = undefined
      return
    }
    workshop.factsOf(hole.id).then((known) => {
      if (page.hole.peek()?.id === hole.id && workshop.scene.peek() === scene) facts.value = known
    })
  }

  /** Where the card lies across the sheet and there is no way round it, the hole is brought out from under it. */
  const followCard = (): void => {
    const known = cardFacts.value
    const side = card.side.value
    const left = card.left.value
    const hole = known && scene.peek()?.holes.find(({ id }) => id === known.id)
    if (hole === undefined || side === undefined || card.size.value === undefined) return
    const now = camera.peek()
    const [, y] = toScreen(now, hole.at)
    const down = outFromUnder(side, y, left)
    if (down !== 0) state.move({ ...now, y: now.y + down })
  }

  const followPlace = (): void => {
    const place = page.showPlace.value
    if (place === undefined) return
    batch(() => {
      ringed.value = place
      page.area.value = 'See'
      look({ kind: 'face', panel: place.panel, face: place.face })
    })
  }

  let held: Held = { name: undefined, looked: undefined }
  const followModule = (): void => {
    const outline = workshop.outline.value
    const shown = { name: page.moduleShown.value, look: workshop.look.value }
    if (outline === undefined) return
    const now = agreed(outline, shown, held)
    held = now.held
    if (now.name !== undefined) page.moduleShown.value = now.name
    if (now.look !== undefined) look(now.look)
  }

  /** What was asked to be shown is on the sheet, also where one had gone near to something else. */
  let broughtIn: PlaceShown | undefined
  const followRing = (): void => {
    const place = ringed.value
    const frame = place && scene.value?.frames[place.panel]
    const { width, height } = size.value
    if (place?.at === undefined || frame === undefined || place === broughtIn || width === 0) return
    broughtIn = place
    const at = inScene(frame, place.at)
    const [x, y] = toScreen(camera.peek(), at)
    const isOn = x > LEFT_PX && y > LEFT_PX && x < width - LEFT_PX && y < height - LEFT_PX
    if (!isOn) state.move(centredOn(at, camera.peek().scale, { width, height }))
  }

  const state: SheetState = {
    page,
    size,
    camera,
    drawn,
    off,
    holes,
    holeCount,
    facts,
    pinned,
    picked,
    measuring,
    ringed,
    cardFacts,
    card,
    operations: unlessSame(() => scene.value?.operations ?? []),
    heading: unlessSame(() => ({ title: scene.value?.title ?? '', facts: scene.value?.facts ?? [] })),
    legendOpen: signal(false),
    canGoBack: computed(() => past.value.length > 0),
    units,
    look,
    back: () => {
      const last = past.peek().at(-1)
      if (last === undefined) return
      past.value = past.peek().slice(0, -1)
      workshop.lookAt(last)
    },
    fit,
    move: (moved) => {
      isFitted = false
      camera.value = moved
    },
    pointAt,
    pick: (wanted) => {
      batch(() => {
        picked.value = wanted
        if (wanted === undefined) return
        const module = workshop.outline
          .peek()
          ?.modules.find(({ key, panels }) => key === wanted.module || panels.some(({ id }) => id === wanted.panel))
        const name = module && definitionName(module)
        if (name === undefined) return
        page.moduleShown.value = name
        page.modulePressed.value = { module: name }
      })
    },
    follow: () => {
      const ends = [followScene, followHole, followCard, followPlace, followRing, followModule].map((one) =>
        effect(one),
      )
      return () => {
        for (const end of ends) end()
      }
    },
  }
  return state
}
