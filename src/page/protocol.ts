import type { PanelId } from '../assembly/index.ts'
import type { Severity } from '../checks/index.ts'
import type { Vec3 } from '../geometry/index.ts'
import type { Units } from '../length/index.ts'
import type { FilesOutline } from '../outputs/index.ts'
import type { DefinitionPath, Edit, PrintOptions, Problem } from '../project/index.ts'
import type { FormModel } from './form/model.ts'
import type { Face, HoleFacts, Look, Scene } from './scene/types.ts'

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
      /** Of the look that was asked for, or of the nearest one that there is. */
      readonly scene?: Scene
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
  /** The files that drawing yields; nothing where the definition cannot be laid out. */
  readonly files: FilesOutline | undefined
  /** The files that the definition names. */
  readonly named: readonly string[]
}

/** A finding as the page shows it. */
export interface PageFinding {
  /** The same for the same finding of the next text. */
  readonly key: string
  readonly rule: string
  readonly severity: Severity
  readonly message: string
  readonly fix?: string
  readonly change?: readonly Edit[]
  readonly silenced?: string
  readonly panels: readonly PanelId[]
  readonly places: readonly { readonly panel: PanelId; readonly face: Face; readonly at: Vec3 }[]
  readonly path: DefinitionPath
  readonly line: number
  readonly column: number
}
