import { NOISE_MM, turnBack, type Vec2 } from '../../geometry/index.ts'
import { limitOf, type Project } from '../../project/index.ts'
import {
  type Body,
  distanceFor,
  fromEdge,
  type LoadedModule,
  loadsAreSaid,
  type StandingBody,
  standingBodies,
  type TippingEdge,
  tipAngle,
  tippingEdges,
  tippingPush,
} from '../loads/index.ts'
import type { Finding, Rule } from '../types.ts'
import { GUIDE, kg, mm } from '../words.ts'

/** What tips over too easily, and what is so tall that the wall must hold it. */
export const tipping: Rule = {
  ids: ['tipping', 'tall-module'],
  check: ({ project, assembly, loaded }) => [
    ...standingBodies(loaded(), assembly).flatMap((body) => checkBody(project, body)),
    ...loaded().flatMap((module) => checkHeight(project, module)),
  ],
}

/** The edge over which a body tips first, and how. */
interface Worst {
  readonly mass: number
  readonly edge: TippingEdge
  readonly distance: number
  readonly height: number
  readonly angle: number
}

function worstOf(edges: readonly TippingEdge[], { at, mass }: Body): Worst | undefined {
  return edges
    .map((edge): Worst => {
      const distance = fromEdge(edge, [at[0], at[1]])
      return { edge, mass, distance, height: at[2], angle: tipAngle(distance, at[2]) }
    })
    .reduce<Worst | undefined>(
      (worst, one) => (worst === undefined || one.distance < worst.distance - NOISE_MM ? one : worst),
      undefined,
    )
}

const degreeWords = (angle: number): string => `${Math.round(angle * 10) / 10}°`

/** The first thing that is wrong: standing open, rolling, pushed. */
function checkBody(project: Project, body: StandingBody): Finding[] {
  const limit = (
    name: 'warn' | 'stop' | 'rolling warn' | 'from' | 'push warn' | 'push from' | 'push from kg',
  ): number => limitOf(project, 'tipping', name)
  if (body.height < limit('from') - NOISE_MM) return []
  const edges = tippingEdges(body.contacts)
  const open = worstOf(edges, body.open)
  const shut = worstOf(edges, body.shut)
  const rolling = worstOf(edges, body.rolling)
  if (open === undefined || shut === undefined || rolling === undefined) return []
  if (open.angle < limit('warn') - NOISE_MM) {
    // What the loads are is a guess where nobody said them; a guess stops nothing.
    const sure = body.modules.some(({ spec }) => loadsAreSaid(spec))
    const severity = sure && open.angle < limit('stop') - NOISE_MM ? 'stop' : 'warn'
    return [findingOf(body, severity, open, `with ${openWords(body)}, it tips`, limit('warn'))]
  }
  if (body.rolls && rolling.angle < limit('rolling warn') - NOISE_MM) {
    return [findingOf(body, 'warn', rolling, 'as it rolls, all shut, it tips', limit('rolling warn'))]
  }
  const push = tippingPush(body.shut.mass, shut.distance, body.height)
  const light = body.shut.mass < limit('push from kg')
  if (body.height < limit('push from') - NOISE_MM || light || push >= limit('push warn') - NOISE_MM) return []
  const wanted = (limit('push warn') * body.height) / body.shut.mass
  return [pushFinding(body, shut, push, wanted)]
}

function openWords({ drawer, doors, modules }: StandingBody): string {
  const out =
    drawer === undefined
      ? undefined
      : `${drawer.name}${modules.length > 1 ? ` of ${drawer.module.module.name}` : ''} (${kg(drawer.mass)}) fully out`
  const words = [...(out === undefined ? [] : [out]), ...(doors ? ['its doors open'] : [])]
  return words.length === 0 ? 'all of its load' : words.join(' and ')
}

const nameOf = ({ modules }: StandingBody): string => {
  const [first, ...others] = modules
  const name = first?.module.name ?? ''
  if (others.length === 0) return name
  return others.length === 1
    ? `${name} and ${others[0]?.module.name ?? ''}, bolted together`
    : `${name} and ${others.length} more, bolted together`
}

/** `front`, `left` …: the side of the first module that the edge lies at. */
function sideOf({ modules }: StandingBody, { from, to }: TippingEdge): string {
  const pose = modules[0]?.module.floorFromModule
  const out: Vec2 = [to[1] - from[1], from[0] - to[0]]
  const [x, y] = pose === undefined ? out : turnBack(pose, [out[0], out[1], 0])
  if (Math.abs(x) > Math.abs(y)) return x > 0 ? 'right' : 'left'
  return y > 0 ? 'back' : 'front'
}

const figures = ({ mass, distance, height }: Worst, side: string): string =>
  `the middle of its ${kg(mass)} lies ${mm(height)} mm high and ${mm(Math.abs(distance))} mm ${distance < 0 ? 'beyond' : 'inside'} the ${side} edge of what it stands on`

/** Rounded up to whole mm, so that it holds. */
function wider(body: StandingBody, side: string, by: number): string {
  const about = body.modules.length > 1 ? ` of ${body.modules[0]?.module.name ?? ''}` : ''
  return `let its base reach ${Math.ceil(by - NOISE_MM)} mm further out at the ${side}${about}, keep the heavy things low (\`loads\`), or bolt it to a neighbour or to the wall`
}

function findingOf(body: StandingBody, severity: 'stop' | 'warn', worst: Worst, how: string, wanted: number): Finding {
  const side = sideOf(body, worst.edge)
  return {
    ...shared(body),
    severity,
    message: `${nameOf(body)}: ${how} at ${degreeWords(worst.angle)}, less than ${wanted}°: ${figures(worst, side)}${wheels(worst)} ${GUIDE}`,
    fix: wider(body, side, distanceFor(wanted, worst.height) - worst.distance),
  }
}

function pushFinding(body: StandingBody, worst: Worst, push: number, wanted: number): Finding {
  const side = sideOf(body, worst.edge)
  return {
    ...shared(body),
    severity: 'warn',
    message: `${nameOf(body)}: a push of ${kg(push)} at its upper edge, ${mm(body.height)} mm high, tips it: ${figures(worst, side)}${wheels(worst)} ${GUIDE}`,
    fix: wider(body, side, wanted - worst.distance),
  }
}

const wheels = ({ edge }: Worst): string =>
  edge.inward > NOISE_MM ? `, its casters swivelled ${mm(edge.inward)} mm inward` : ''

const shared = ({ modules }: StandingBody) => ({
  rule: 'tipping' as const,
  panels: [],
  places: [],
  at: modules[0]?.spec.at ?? [],
})

/** The usual caution for what is tall, whatever the figures say. */
function checkHeight(project: Project, { module, spec, topHeight }: LoadedModule): Finding[] {
  const [height, slender] = [limitOf(project, 'tall-module', 'height'), limitOf(project, 'tall-module', 'slender')]
  const foot = Math.min(module.size.width, module.size.depth)
  const ratio = topHeight / foot
  const tall = topHeight > height + NOISE_MM
  if (!tall && ratio <= slender + NOISE_MM) return []
  const why = tall ? `more than ${mm(height)} mm` : `more than ${slender} times the ${mm(foot)} mm of its foot`
  return [
    {
      rule: 'tall-module',
      severity: 'note',
      panels: [],
      places: [],
      message: `${module.name}: its upper side stands ${mm(topHeight)} mm above the floor, ${why} ${GUIDE}`,
      fix: 'fix it to the wall, or bolt it to a module that is',
      at: spec.at,
    },
  ]
}
