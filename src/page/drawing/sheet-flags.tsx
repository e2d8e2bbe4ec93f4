import { useComputed } from '@preact/signals'
import type { JSX } from 'preact'
import { SeverityMark } from '../look/severity-mark.tsx'
import { toScreen } from './camera.ts'
import { type FlagGroup, findingsIn, flagsOf, grouped } from './flags.ts'
import type { SheetState } from './sheet-state.ts'

/** Findings where they are on the drawing, each by its number. Pressed, it is shown where they are judged. */
export function Flags({ state }: { readonly state: SheetState }): JSX.Element {
  const { workshop } = state.page
  const scale = useComputed(() => state.camera.value.scale)
  const groups = useComputed(() => {
    const scene = workshop.scene.value
    return scene === undefined ? [] : grouped(flagsOf(scene, workshop.findings.value), scale.value)
  })
  const { width, height } = state.size.value
  return (
    <div class="flags">
      {groups.value.map((group) => {
        const [x, y] = toScreen(state.camera.value, group[0].at)
        const isOn = x > 0 && y > 0 && x < width && y < height
        return isOn && <FlagPress key={group[0].key} state={state} group={group} x={x} y={y} />
      })}
    </div>
  )
}

interface FlagPressProps {
  readonly state: SheetState
  readonly group: FlagGroup
  readonly x: number
  readonly y: number
}

function FlagPress({ state, group, x, y }: FlagPressProps): JSX.Element {
  const [first] = group
  const { finding, severity, number } = first
  const others = findingsIn(group) - 1
  const press = (): void => {
    const { area, goTo, findingShown } = state.page
    area.value = 'Judge'
    findingShown.value = { key: finding.key }
    goTo.value = { path: finding.path, line: finding.line, column: finding.column }
  }
  // Out of the way of Tab: where the findings are listed, they are all reached in order. F goes from flag to flag.
  return (
    <button
      type="button"
      class={`flag ${severity}`}
      tabIndex={-1}
      title={finding.message}
      aria-label={`${severity} ${number}: ${finding.message}${others > 0 ? `, and ${others} more here` : ''}`}
      style={{ transform: `translate(${x}px, ${y}px)` }}
      onClick={press}
    >
      <SeverityMark severity={severity} number={number} />
      {others > 0 && <span class="more">+{others}</span>}
    </button>
  )
}
