import { NOISE_MM } from '../../geometry/index.ts'
import { limitOf, type Project } from '../../project/index.ts'
import type { Drawer, LoadedModule } from '../loads/index.ts'
import type { Finding, Rule } from '../types.ts'
import { GUIDE, kg, mm } from '../words.ts'

/** Drawers too heavy for their pair of slides. */
export const slideLoad: Rule = {
  ids: ['slide-load'],
  check: ({ project, loaded }) =>
    loaded.flatMap((module) => module.drawers.flatMap((drawer) => checkDrawer(project, module, drawer))),
}

function checkDrawer(project: Project, { module }: LoadedModule, drawer: Drawer): Finding[] {
  const { slide, own, load, box, name } = drawer
  const width = box.max[0] - box.min[0]
  const widest = limitOf(project, 'slide-load', 'width')
  // Ratings are made with narrow drawers (S18b says that they fall; in proportion: own choice).
  const wide = width > widest + NOISE_MM
  const rating = wide ? (slide.loadKg * widest) / width : slide.loadKg
  const whole = own.mass + load.mass
  if (whole <= rating + NOISE_MM) return []
  const carries = wide
    ? `a pair of ${slide.id} carries ${kg(slide.loadKg)}, at a width of ${mm(width)} mm about ${kg(rating)}`
    : `a pair of ${slide.id} carries ${kg(rating)}`
  // Whole kg, rounded down, so that it holds.
  const most = Math.floor(rating - own.mass)
  return [
    {
      rule: 'slide-load',
      severity: 'warn',
      panels: drawer.panels.map(({ id }) => id),
      places: [],
      message: `${module.name}, ${name}: ${kg(load.mass)} in it and its own ${kg(own.mass)} make ${kg(whole)}; ${carries} ${GUIDE}`,
      ...(most > 0 && {
        fix: `set \`load: ${most} kg\` for these drawers and keep to it; or make them narrower, or take slides for ${Math.ceil(whole)} kg`,
        change: [{ path: [...drawer.at, 'load'], value: `${most} kg` }],
      }),
      at: drawer.at,
    },
  ]
}
