import type { Assembly, PanelId } from '../assembly/index.ts'
import type { Vec3 } from '../geometry/index.ts'
import type { BoreUse, Panel, Surface } from '../panel/index.ts'
import type { DefinitionPath, Edit, Project } from '../project/index.ts'
import type { RuleId, Severity } from '../rulebook/index.ts'
import type { Designs } from './by-design.ts'
import type { Meeting } from './clashes.ts'
import type { LoadedModule } from './loads/index.ts'

export type { Severity }

/** A point on a panel, panel frame, mm. */
export interface Place {
  readonly panel: PanelId
  readonly surface: Surface
  readonly at: Vec3
}

/** Something about the project that a person should know before there are holes in wood. */
export interface Finding {
  /** Stable id of the rule. */
  readonly rule: RuleId
  readonly severity: Severity
  readonly panels: readonly PanelId[]
  readonly places: readonly Place[]
  /** What is wrong, in one sentence with its numbers. */
  readonly message: string
  /** What would mend it, in words. */
  readonly fix?: string
  /** The same as edits of the definition: with them this finding is gone. */
  readonly change?: readonly Edit[]
  /** Why the definition says that it is all right; it stops nothing then. */
  readonly silenced?: string
  /** Where the definition asks for it. */
  readonly at: DefinitionPath
}

/** What every rule may look at. */
export interface Subject {
  readonly project: Project
  readonly assembly: Assembly
  readonly panels: readonly Panel[]
  readonly panelOf: (id: PanelId) => Panel
  /** The modules that stand on the floor, with what they weigh and carry. */
  readonly loaded: readonly LoadedModule[]
  /**
   * What to change in the definition so that the holes of one of these pieces of hardware clear all others, in words, or
   * nothing when no such shift is known.
   */
  readonly shift: (uses: readonly BoreUse[]) => string | undefined
  /**
   * The same with the edits that make the change. Holes of one run alone are shifted only where what they meet stays where
   * it is: a groove, a cutout.
   */
  readonly mend: (uses: readonly BoreUse[], beside?: 'bores' | 'what stays') => Mend | undefined
  /** The works of a panel that leave too little wood between them, worked out once. */
  readonly near: (panel: Panel) => readonly Meeting[]
  readonly designs: Designs
}

/** What clears a finding, in words and as edits of the definition. */
export interface Mend {
  readonly fix: string
  readonly change: readonly Edit[]
}

/** One family of checks; pure. */
export interface Rule {
  /** The ids that its findings may carry; the rulebook says what each is. */
  readonly ids: readonly RuleId[]
  readonly check: (subject: Subject) => Finding[]
}
