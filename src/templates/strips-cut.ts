import { markLetters } from './labels.ts'
import type { LoosePiece } from './strips.ts'
import { facesHoles, type StripFace } from './strips-rows.ts'
import { cutStrip, STRIP_OVERLAP, stripMarks } from './strips-seams.ts'
import { sizeOfFace } from './strips-shape.ts'
import type { FacePoint, Join, Rect, RegistrationMark } from './types.ts'

/** Kept between a hole and a registration mark, mm: the arms of the hole's cross. */
const CROSS = 3

/**
 * A strip as one piece of at most `longest` mm, or as pieces that are joined end to end by two marks at each seam: from the left, or
 * from the top; the later one lies on top. `firstMark`: how many marks the face has already.
 */
export function cutPieces(face: StripFace, whole: LoosePiece, longest: number, firstMark: number): LoosePiece[] {
  const along = whole.use.along ?? 0
  const { min, max } = whole.window
  const down = along === 1 ? -1 : 1
  const own = new Set(whole.use.bores)
  const holes = facesHoles(face).filter(({ id }) => own.has(id))
  const ends = [min[along] * down, max[along] * down].sort((a, b) => a - b)
  const spans = cutStrip(
    [ends[0] ?? 0, ends[1] ?? 0],
    longest,
    holes.map(({ at, radius }) => ({ at: at[along] * down, radius })),
  )
  if (spans.length === 1) return [whole]
  const labels = spans.map((_, k) => `${whole.label}.${k + 1}`)
  const windows = spans.map(([from, to]) => between(whole.window, along, from * down, to * down))
  const size = sizeOfFace(face)
  const seams = spans.slice(1).map(([from], k) => {
    const seam = between(whole.window, along, from * down, (from + STRIP_OVERLAP) * down)
    // Marks lie on the wood: on the flap beyond the fold they could not be laid on each other.
    const onWood: Rect = {
      min: [Math.max(seam.min[0], 0), Math.max(seam.min[1], 0)],
      max: [Math.min(seam.max[0], size[0]), Math.min(seam.max[1], size[1])],
    }
    const busy = holes.map(({ at, radius }) => ({ at, radius: radius + CROSS }))
    const pieces: RegistrationMark['pieces'] = [labels[k] ?? '', labels[k + 1] ?? '']
    const marks = stripMarks(onWood, along, busy, whole.use.secondFold?.at).map(
      (at, n): RegistrationMark => ({ id: markLetters(firstMark + 2 * k + n), at, pieces }),
    )
    return { seam, marks, pieces }
  })
  return windows.map((window, k) => {
    const label = labels[k] ?? whole.label
    const mine = seams.filter(({ pieces }) => pieces.includes(label))
    const joins = mine.map(({ seam, pieces }): Join => {
      const over = pieces[1] === label
      return { to: over ? pieces[0] : pieces[1], seam, along: along === 0 ? 1 : 0, over }
    })
    return { ...whole, label, window, marks: mine.flatMap(({ marks }) => marks), joins }
  })
}

/** The part of a window between two places along an axis. */
function between({ min, max }: Rect, along: 0 | 1, a: number, b: number): Rect {
  const set = (point: FacePoint, value: number): FacePoint => (along === 0 ? [value, point[1]] : [point[0], value])
  return { min: set(min, Math.min(a, b)), max: set(max, Math.max(a, b)) }
}
