import type { PanelId } from '../../assembly/index.ts'
import type { Pose, Vec2, Vec3 } from '../../geometry/index.ts'
import type { DefinitionPath } from '../../project/index.ts'

export type Face = 'A' | 'B'

/** What a person looks at. */
export type Look =
  /** One face of a panel. */
  | { readonly kind: 'face'; readonly panel: PanelId; readonly face: Face }
  /** Two panels that share hardware, side by side, each on the face that looks at the other. */
  | { readonly kind: 'pair'; readonly panels: readonly [PanelId, PanelId] }
  /** A module from the front. */
  | { readonly kind: 'front'; readonly module: string; readonly doors: 'on' | 'off' | 'open' }
  /** All modules from above. */
  | { readonly kind: 'floor' }
  /** A module, or all of them, in isometric projection; panels `apart` (0 to 1), turned by quarter turns about the vertical. */
  | {
      readonly kind: 'isometric'
      readonly module?: string
      readonly apart: number
      readonly turn: 0 | 1 | 2 | 3
    }

/** mm on the drawing, x right, y down: the one flip is made where a scene is made. */
export type ScenePoint = Vec2

export interface SceneArea {
  readonly min: ScenePoint
  readonly max: ScenePoint
}

/**
 * Takes a point of a panel's frame to the drawing: x = m[0] X + m[1] Y + m[2] Z + m[3], y = m[4] X + m[5] Y + m[6] Z + m[7].
 */
export type PanelToScene = readonly [number, number, number, number, number, number, number, number]

/**
 * How a part is drawn. `hidden` lines lie behind wood; `seen through` ones are of what is drawn away; `size`: a dimension line with
 * its ends; `fold`: the line between a facing pair; `opening`: of the carcase, nothing but air.
 */
export type PartKind =
  | 'panel'
  | 'edge'
  | 'front'
  | 'seen through'
  | 'groove'
  | 'rebate'
  | 'cutout'
  | 'pocket'
  | 'lipping'
  | 'hidden'
  | 'hardware'
  | 'footprint'
  | 'grain'
  | 'size'
  | 'fold'
  | 'opening'

/** Something drawn, in painting order. */
export interface ScenePart {
  /** Unique in the scene, the same from one scene to the next as long as it is the same thing. */
  readonly key: string
  readonly kind: PartKind
  /** An SVG path, mm. */
  readonly d: string
  /** Closed areas are filled with paper, so that what lies behind is covered (or shows through, for the isometric view). */
  readonly filled: boolean
  readonly panel?: PanelId
  /** Key of the module that it belongs to, where it is no panel. */
  readonly module?: string
  /** The operation that it is made by: it goes where that is switched off. */
  readonly operation?: string
  /** What a pointer resting on it reads. */
  readonly title?: string
  /** Where the definition asks for it. */
  readonly at?: DefinitionPath
}

/** One hole, seen. */
export interface SceneHole {
  /** `<panel id>#<bore id>`. */
  readonly id: string
  readonly panel: PanelId
  readonly operation: string
  /** Its middle where the bit enters, or comes out, where a through hole is drawn at its far mouth since that side is the one seen. */
  readonly at: ScenePoint
  /** The same in the frame in which distances are true, see SceneSnap: measuring snaps to it. */
  readonly place: Vec3
  /** The rim, an SVG path, mm; an ellipse where it is seen at a slant, a short stroke where it is seen from the side. */
  readonly d: string
  /** Radius of the mouth, mm, as large as it is seen anywhere. */
  readonly radius: number
  /** On the far side of its panel, or behind wood: drawn dashed. */
  readonly hidden: boolean
}

/** A line of text in the drawing. */
export interface SceneWord {
  readonly key: string
  readonly at: ScenePoint
  readonly anchor: 'start' | 'middle' | 'end'
  readonly text: string
  /** Turned counter-clockwise, degrees. */
  readonly turnDeg?: 0 | 90
  /** `size`: a dimension; `edge`: the name of an edge; `name`: of a panel or module; `tag`: beside holes. */
  readonly kind: 'size' | 'edge' | 'name' | 'tag'
}

/**
 * A point that measuring snaps to besides the holes; `place` in mm in the frame of the scene, in which distances are true: of a
 * face and each panel of a pair as seen (x right, y up), of the front view the module's, of the others the floor's, panels in
 * their places.
 */
export interface SceneSnap {
  readonly at: ScenePoint
  readonly place: Vec3
  readonly kind: 'centre' | 'corner'
  /** Only in a pair: the panel that it belongs to. Distances between two panels of a pair mean nothing. */
  readonly of?: PanelId
}

/** An edge that measuring snaps to, between two corners. */
export interface SceneEdge {
  readonly from: SceneSnap
  readonly to: SceneSnap
}

/**
 * What one set-up of a tool makes for one kind of work: a bit and a depth. In the files for a machine it is one layer, but a
 * counterbored hole two: the hole and its counterbore, which another bit makes.
 */
export interface SceneOperation {
  /** Unique, the same in every scene of a project: `bore 5 13 shelf pins`, `bore 8 through joints`, `groove 6.4 8`, `cutout`. */
  readonly id: string
  /** `5 deep 13`, in the units of the project. */
  readonly words: string
  /** What for: `shelf pin`, `hinge cup`. */
  readonly purposes: readonly string[]
  /** Of what the scene has of it. */
  readonly count: number
  /** What kind of work: colour and mark go by it. */
  readonly work: OperationWork
}

/** Kinds of work by what they are for; each has one colour and one mark, so that colour is never the only cue. */
export type OperationWork =
  | 'shelf pins'
  | 'hinges'
  | 'joints'
  | 'bolts between modules'
  | 'drawers'
  | 'base'
  | 'pulls and fittings'
  | 'grooves'
  | 'cutouts'

/** A picture for the screen. Everything lies within `bounds`. */
export interface Scene {
  readonly look: Look
  /** `tool locker: left side, face A`. */
  readonly title: string
  /** What else a title block says, each a label and its words: size, thickness, stock, scale of nothing. */
  readonly facts: readonly (readonly [label: string, words: string])[]
  readonly bounds: SceneArea
  /** Height of the words, mm, for which they are placed: so high, none lies on another or on a hole. */
  readonly textSize: number
  readonly parts: readonly ScenePart[]
  /** What is nearest the eye first. */
  readonly holes: readonly SceneHole[]
  readonly words: readonly SceneWord[]
  readonly operations: readonly SceneOperation[]
  readonly snaps: readonly SceneSnap[]
  readonly edges: readonly SceneEdge[]
  /** Every panel that is drawn: from its frame to the drawing, so that findings and partners can be marked. */
  readonly frames: Readonly<Record<PanelId, PanelToScene>>
  /** `flat`: distances on the drawing are true; else only those between snaps are. */
  readonly flat: boolean
  /** Of standing panels: what `holes`, `snaps` and `edges` follow from. Of these it need not be asked then. */
  readonly standing?: SceneStanding
}

/** How a scene of standing panels is made up. */
export interface SceneStanding {
  /** The holes of each panel that has any; what is nearest the eye first. */
  readonly groups: readonly HoleGroup[]
  /** Every panel; none where there are too many to measure. */
  readonly boards: readonly BoardPlace[]
}

/** The holes of a panel in their place. */
export interface HoleGroup {
  readonly shape: HoleShape
  /** Where the panel's origin lies on the drawing. */
  readonly at: ScenePoint
  /** The same in the frame in which distances are true. */
  readonly place: Vec3
}

/** The holes of a panel apart from where it stands; the very same thing as long as only that changes. */
export interface HoleShape {
  readonly panel: PanelId
  readonly holes: readonly GroupHole[]
}

/** A hole of a group; points from the panel's origin. */
export interface GroupHole extends Pick<SceneHole, 'id' | 'operation' | 'radius' | 'hidden'> {
  readonly drawn: ScenePoint
  readonly onFloor: Vec3
  /** Its rim, and that of its sink. */
  readonly rims: readonly [Rim, ...Rim[]]
}

/** A rim apart from where it lies. */
export interface Rim {
  /** From the middle to where its line starts. */
  readonly start: ScenePoint
  readonly rest: string
  /** How far it reaches from its middle, mm. */
  readonly reach: number
}

/** A panel as it stands: on the floor, and under the eye. */
export interface BoardPlace {
  /** Length, width, thickness, mm. */
  readonly size: Vec3
  readonly floorFromPanel: Pose
  readonly eyeFromPanel: Pose
}

/** Everything about one hole that a person with a drill asks. Lengths as words in mm and in inch fractions. */
export interface HoleFacts {
  readonly id: string
  readonly panel: PanelId
  /** `tool locker: left side`. */
  readonly panelName: string
  /** `face A, inside` or `front edge`. */
  readonly surface: string
  /** What it is for: `shelf pin`, several where they share the hole. */
  readonly purposes: readonly string[]
  readonly tool: BothUnits
  /** From the two edges that a person measures from; for bores in an edge from face A and along the edge. */
  readonly from: readonly (BothUnits & {
    readonly edge: string
    /** The point of that edge straight beside the hole, panel frame, mm: from there to the hole it is measured. */
    readonly foot?: Vec3
  })[]
  /** Names of the hardware that it is for. */
  readonly hardware: readonly string[]
  /** The holes of the same hardware in other panels, its mates first. */
  readonly partners: readonly HolePartner[]
  readonly at: DefinitionPath
}

export interface BothUnits {
  readonly mm: string
  readonly inch: string
}

export interface HolePartner {
  readonly id: string
  /**
   * `mate`: on the same axis. `same hardware`: the cup of the plate that the hole is for, another screw of the same slide.
   */
  readonly relation: 'mate' | 'same hardware'
  readonly panel: PanelId
  readonly panelName: string
  /** `5 deep 13, 37 from front, 96 from bottom`. */
  readonly words: BothUnits
  /** The look that shows both. */
  readonly look: Look
}
