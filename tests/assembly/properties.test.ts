import { describe, expect, test } from 'vitest'
import { check, renderFindings } from '../../src/checks/index.ts'
import { built } from '../support/define.ts'
import { boresOutside, mateFaults, poseFaults, sunkHardware } from '../support/faults-bores.ts'
import { frontFaults, sharedSpaces } from '../support/faults-space.ts'
import { anyDefinition } from '../support/random.ts'
import { expectFaultless } from '../support/sought.ts'

describe('over random projects', () => {
  test('poses, bores, mates, surfaces, spaces, fronts and findings are as they must be', () => {
    const seen = { mates: 0, fronts: 0 }
    expectFaultless(
      anyDefinition,
      (text) => {
        const of = built(text)
        const mates = mateFaults(of)
        const fronts = frontFaults(of, text)
        seen.mates += mates.pairs
        seen.fronts += fronts.pairs
        const again = check(of.project, of.assembly, of.panels)
        const same = JSON.stringify(again) === JSON.stringify(of.findings)
        renderFindings({ ...of, locate: () => ({ line: 1, column: 1 }), file: 'random.yaml' })
        return [
          ...poseFaults(of),
          ...boresOutside(of),
          ...sunkHardware(of),
          ...mates.faults,
          ...sharedSpaces(of),
          ...fronts.faults,
          ...(same ? [] : ['the checks find something else the second time']),
        ]
      },
      { numRuns: 100 },
    )
    expect(seen.mates).toBeGreaterThan(2000)
    expect(seen.fronts).toBeGreaterThan(20)
  })
})
