import { type Box, commonBox, gapBetweenBoxes, NOISE_MM } from '../../geometry/index.ts'
import { limitOf } from '../../project/index.ts'
import { typedLength } from '../typed.ts'
import type { Finding } from '../types.ts'
import { mm, panelWords } from '../words.ts'
import { type Floor, FRONTS, type Still } from './floor.ts'
import { depthOf, pathKey, SHAVING_MM, type Specs } from './parts-of.ts'
import type { Scene } from './scene.ts'

/** Fronts of one module or of two that overlap, or come so near each other that they rub. */
export function frontsGap(scene: Scene, specs: Specs, floor: Floor): Finding[] {
  const { project } = scene.subject
  const least = limitOf(project, 'fronts-gap', 'warn')
  const fronts = floor.stills.filter(({ panel, pull }) => pull === undefined && FRONTS.includes(panel.role))
  return scene.finder
    .pairs(
      fronts.map(({ box }) => box),
      least,
    )
    .flatMap(([k, n]): Finding[] => {
      const [a, b] = [fronts[k], fronts[n]]
      if (a === undefined || b === undefined || !floor.together(a.module, b.module)) return []
      const gap = gapBetweenBoxes(a.box, b.box)
      if (gap >= least - NOISE_MM) return []
      const overlap = commonBox(a.box, b.box, SHAVING_MM)
      // Two fronts of one module that share space are panels that overlap.
      if (overlap !== undefined && a.module.key === b.module.key) return []
      return [findingOf(scene, specs, a, b, gap, overlap)]
    })
}

function findingOf(scene: Scene, specs: Specs, a: Still, b: Still, gap: number, overlap: Box | undefined): Finding {
  const what = overlap === undefined ? `are only ${mm(gap)} mm apart` : `overlap by ${mm(depthOf([overlap]))} mm`
  return {
    rule: 'fronts-gap',
    severity: overlap === undefined ? 'warn' : 'stop',
    panels: [a.panel.id, b.panel.id],
    places: [],
    message: `${panelWords(a.panel)} and ${panelWords(b.panel)} ${what}`,
    ...mendOf(scene, specs, a, b),
    at: b.panel.at,
  }
}

/** Fronts of one module keep the gap that they ask for; those of two modules their reveals. */
function mendOf(scene: Scene, specs: Specs, a: Still, b: Still): Pick<Finding, 'fix' | 'change'> {
  const { project } = scene.subject
  const good = limitOf(project, 'fronts-gap', 'good')
  const own = [a, b].map(({ panel }) => specs.fronts.get(pathKey(panel.at)))
  const keeps = own.every((front) => front?.lay === 'overlay')
  if (a.module.key === b.module.key && keeps) {
    const value = typedLength(good, project.units, 'up')
    const paths = [...new Map([a, b].map(({ panel }) => [pathKey(panel.at), [...panel.at, 'gap']])).values()]
    return { fix: `set \`gap: ${value}\``, change: paths.map((path) => ({ path, value })) }
  }
  if (a.module.key === b.module.key) return { fix: `leave ${mm(good)} mm between them (\`inset gap\`)` }
  return { fix: `leave ${mm(good)} mm between them: half of it as the \`reveal\` of each, or move one of the modules` }
}
