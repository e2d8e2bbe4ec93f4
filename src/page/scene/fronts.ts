import type { PanelRole } from '../../assembly/index.ts'
import type { Panel } from '../../panel/index.ts'

/** Panels that close an opening from the front. */
const FRONTS: readonly PanelRole[] = ['door', 'flap', 'fixed front', 'drawer front']

export const isFront = ({ role }: Panel): boolean => FRONTS.includes(role)
