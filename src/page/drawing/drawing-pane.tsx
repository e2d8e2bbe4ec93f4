import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'

/** The drawing of what is looked at. */
export function DrawingPane(): JSX.Element {
  const { workshop } = usePage()
  const scene = workshop.scene.value
  if (scene === undefined) return <p>Working out the drawing …</p>
  const { min, max } = scene.bounds
  return (
    <svg
      class="sheet"
      data-drawn={scene.title}
      role="img"
      aria-label={scene.title}
      viewBox={`${min[0]} ${min[1]} ${max[0] - min[0]} ${max[1] - min[1]}`}
    >
      {scene.parts.map((part) => (
        <path key={part.key} d={part.d} class={`part ${part.kind}`} />
      ))}
      {scene.holes.map((hole) => (
        <path key={hole.id} d={hole.d} class="hole" />
      ))}
    </svg>
  )
}
