import type { JSX } from 'preact'
import { usePage } from '../state/page.ts'
import type { Theme } from '../state/settings.ts'

/** Units and light, for this page only. */
export function SettingsMenu(): JSX.Element {
  const { settings } = usePage()
  const { units, theme } = settings
  return (
    <details class="settings">
      <summary>Settings</summary>
      <label>
        <span class="unseen">Lengths shown in</span>
        <select
          value={units.value ?? 'project'}
          onChange={({ currentTarget: { value } }) => {
            units.value = value === 'mm' || value === 'in' ? value : undefined
          }}
        >
          <option value="project">units as defined</option>
          <option value="mm">mm</option>
          <option value="in">inches</option>
        </select>
      </label>
      <label>
        <span class="unseen">Colours</span>
        <select
          value={theme.value}
          onChange={({ currentTarget: { value } }) => {
            theme.value = value as Theme
          }}
        >
          <option value="as the system">light as the system</option>
          <option value="light">light</option>
          <option value="dark">dark</option>
        </select>
      </label>
    </details>
  )
}
