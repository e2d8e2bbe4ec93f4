import type { Severity } from '../../checks/index.ts'
import type { PageFinding } from '../protocol.ts'
import type { Look, PanelToScene, Scene, ScenePoint } from '../scene/types.ts'

/** A finding's place on the drawing. */
export interface Flag {
  readonly key: string
  /** Of its note where the findings are listed: equal ones share it. */
  readonly number: number
  readonly finding: PageFinding
  readonly severity: Severity
  readonly at: ScenePoint
}

/** Flags that are nearer to each other than this are drawn as one, px; and those of one note, as of a row of pins. */
const TOGETHER_PX = 26
const SAME_NOTE_PX = 110

export function inScene(frame: PanelToScene, [x, y, z]: readonly [number, number, number]): ScenePoint {
  return [frame[0] * x + frame[1] * y + frame[2] * z + frame[3], frame[4] * x + frame[5] * y + frame[6] * z + frame[7]]
}

const isOnFace = (look: Look, face: string): boolean => look.kind !== 'face' || look.face === face

/** Where the findings are on this drawing, worst first as they come; those that are silenced are not marked. */
export function flagsOf(scene: Scene, findings: readonly PageFinding[]): readonly Flag[] {
  return findings.flatMap((finding): Flag[] => {
    const { number, severity, places } = finding
    if (number === undefined) return []
    const seen = new Set<string>()
    return places.flatMap(({ panel, face, at }): Flag[] => {
      const frame = scene.frames[panel]
      if (frame === undefined || !isOnFace(scene.look, face)) return []
      const place = inScene(frame, at)
      const spot = place.map(Math.round).join(' ')
      if (seen.has(spot)) return []
      seen.add(spot)
      return [{ key: `${finding.key} ${panel} ${spot}`, number, finding, severity, at: place }]
    })
  })
}

/** Flags that are drawn as one since they are close on the screen: the first is the worst. */
export type FlagGroup = readonly [Flag, ...Flag[]]

export function grouped(flags: readonly Flag[], scale: number): readonly FlagGroup[] {
  const groups: [Flag, ...Flag[]][] = []
  for (const flag of flags) {
    const near = groups.find(([first]) => {
      const limit = first.number === flag.number ? SAME_NOTE_PX : TOGETHER_PX
      return Math.hypot(first.at[0] - flag.at[0], first.at[1] - flag.at[1]) * scale < limit
    })
    if (near === undefined) groups.push([flag])
    else near.push(flag)
  }
  return groups
}

/** How many findings a group is of: one finding may have several places in it. */
export const findingsIn = (group: FlagGroup): number => new Set(group.map(({ number }) => number)).size
