import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'
import type { Theme } from '../state/settings.ts'
import { Popover } from './popover.tsx'

/** Units, light, and the first look; for this page only, the definition stays as it is. */
export function SettingsMenu(): JSX.Element {
  return (
    <Popover label="Settings">
      <div class="settings-fields">
        <UnitsChoice />
        <ThemeChoice />
        <FirstLookTick />
      </div>
    </Popover>
  )
}

function UnitsChoice(): JSX.Element {
  const { units } = usePage().settings
  return (
    <div class="field">
      <label for="settings-units">Lengths in the drawing</label>
      <select
        id="settings-units"
        value={units.value ?? 'defined'}
        onChange={({ currentTarget: { value } }) => {
          units.value = value === 'mm' || value === 'in' ? value : undefined
        }}
      >
        <option value="defined">units of the definition</option>
        <option value="mm">mm</option>
        <option value="in">inches</option>
      </select>
    </div>
  )
}

function ThemeChoice(): JSX.Element {
  const { theme } = usePage().settings
  return (
    <div class="field">
      <label for="settings-theme">Light or dark</label>
      <select
        id="settings-theme"
        value={theme.value}
        onChange={({ currentTarget: { value } }) => {
          theme.value = value as Theme
        }}
      >
        <option value="as the system">as the system</option>
        <option value="light">light</option>
        <option value="dark">dark</option>
      </select>
    </div>
  )
}

function FirstLookTick(): JSX.Element {
  const { firstLook } = usePage().settings
  return (
    <label class="tick">
      <input
        type="checkbox"
        checked={firstLook.value === 'shown'}
        onChange={({ currentTarget: { checked } }) => {
          firstLook.value = checked ? 'shown' : 'put away'
        }}
      />
      <span>First look: three steps</span>
    </label>
  )
}
