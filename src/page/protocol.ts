import type { PanelId } from '../assembly/index.ts'
import type { Severity } from '../checks/index.ts'
import type { Vec3 } from '../geometry/index.ts'
import type { Units } from '../length/index.ts'
import type { FilesOutline } from '../outputs/index.ts'
import type { DefinitionPath, Edit, PrintOptions, Problem } from '../project/index.ts'
import type { FormModel } from './form/model.ts'
import type { SceneParcel } from './scene/parcel.ts'
import type { Face, HoleFacts, Look } from './scene/types.ts'

/** The name of a worker that begins with the sample, without being asked. */
export const SAMPLE_AT_ONCE = 'the sample at once'

/** A definition as a person has it: its text, its file's name, and the files that it names. */
export interface DefinitionSource {
  readonly text: string
  readonly file: string
  readonly files: readonly (readonly [name: string, text: string])[]
  readonly print?: PrintOptions
}

/** What the page asks of the worker that lays out and draws. `number` comes back with the answer. */
export type DrawerAsk =
  | {
      readonly kind: 'text'
      readonly number: number
      readonly source: DefinitionSource
      readonly look: Look | undefined
      /** In which the drawing's words are; those of the project where it does not say. */
      readonly units: Units | undefined
    }
  | { readonly kind: 'look'; readonly number: number; readonly look: Look; readonly units: Units | undefined }
  | { readonly kind: 'hole'; readonly number: number; readonly hole: string }

export type DrawerAnswer =
  | {
      readonly kind: 'drawn'
      readonly number: number
      /** Answers a text; else a look, which has no problems of its own. */
      readonly ofText: boolean
      /** Empty where the definition could be laid out; else it is not, and the last outline and scene stay. */
      readonly problems: readonly Problem[]
      /** Left out where it is the same as the last one. */
      readonly outline?: Outline
      readonly form?: FormModel
      /** Of the look that was asked for, or of the nearest one that there is; packed against the last one. */
      readonly scene?: SceneParcel
    }
  | { readonly kind: 'hole'; readonly number: number; readonly facts: HoleFacts | undefined }

/** What there is to look at. */
export interface Outline {
  readonly title: string
  readonly units: Units
  readonly modules: readonly OutlineModule[]
}

export interface OutlineModule {
  readonly key: string
  readonly name: string
  readonly at: DefinitionPath
  /** A worktop over several modules: no cabinet, so it has no front view. */
  readonly isTop: boolean
  readonly panels: readonly OutlinePanel[]
}

export interface OutlinePanel {
  readonly id: PanelId
  readonly name: string
  /** Faces with a drawing of their own; A always. */
  readonly faces: readonly Face[]
  /** Panels that share hardware with it, the nearest kin first: those that a pair can be made with. */
  readonly mates: readonly PanelId[]
}

/** What the page asks of the worker that checks. */
export interface CheckerAsk {
  readonly kind: 'check'
  readonly number: number
  readonly source: DefinitionSource
}

export interface CheckerAnswer {
  readonly kind: 'checked'
  readonly number: number
  /** Nothing where the definition cannot be laid out: it has problems then. */
  readonly findings: readonly PageFinding[] | undefined
  /** What to mind at the work itself, as the cover of the full-size pages says it. */
  readonly cautions?: readonly string[]
  /** The files that drawing yields; nothing where the definition cannot be laid out. */
  readonly files?: FilesOutline
  /** The files that the definition names. */
  readonly named?: readonly string[]
}

/** A finding as the page shows it. */
export interface PageFinding {
  /** The same for the same finding of the next text. */
  readonly key: string
  readonly rule: string
  readonly severity: Severity
  /** The limits of its rule that the definition changes, by name, in the limit's unit. */
  readonly limits?: Readonly<Record<string, number>>
  /** Its note in Judge, from 1. Equal findings (a row of holes, equal shelves) share one; silenced ones have none. */
  readonly number?: number
  /** The module and the panel that it stands under, where it stands under any. */
  readonly module?: string
  readonly panelName?: string
  /** The whole sentence. */
  readonly message: string
  /** The sentence without the module and panel that it stands under. */
  readonly short: string
  readonly fix?: string
  readonly change?: readonly Edit[]
  readonly silenced?: string
  readonly panels: readonly PanelId[]
  readonly places: readonly FindingPlace[]
  readonly path: DefinitionPath
  readonly line: number
  readonly column: number
}

export interface FindingPlace {
  readonly panel: PanelId
  readonly face: Face
  /** Panel frame, mm. */
  readonly at: Vec3
  /** `363 from front and 640 from bottom`, mm. */
  readonly words: string
}
