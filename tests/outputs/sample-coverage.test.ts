import { describe, expect, test } from 'vitest'
import { parse } from 'yaml'
import { definitionJsonSchema } from '../../src/project/index.ts'
import { sampleStems, sampleText } from '../support/samples.ts'
import { type Schema, saidBy, sayable } from '../support/schema-coverage.ts'

/*
 * What no sample says. Every part of a cabinet, a base, a top or a floor plan stands in a sample; what is left here is the
 * fine tuning of such parts, which would make a sample longer and teach no more.
 */

/** Figures of own hardware: the samples change some, and the others are said in the same way. */
const FIGURES = [
  'hardware › * › * › least',
  'hardware › * › * › most',
  'hardware › * › * › usual',
  'hardware › * › barrel length',
  'hardware › * › base figure',
  'hardware › * › board',
  'hardware › * › board › least',
  'hardware › * › board › most',
  'hardware › * › board › usual',
  'hardware › * › countersink angle',
  'hardware › * › cup depth',
  'hardware › * › cup diameter',
  'hardware › * › cup distance',
  'hardware › * › cup distance › least',
  'hardware › * › cup distance › most',
  'hardware › * › cup distance › usual',
  'hardware › * › diameter',
  'hardware › * › dowel depth',
  'hardware › * › dowel diameter',
  'hardware › * › edge wall',
  'hardware › * › face depth',
  'hardware › * › glue room',
  'hardware › * › head depth',
  'hardware › * › head diameter',
  'hardware › * › height',
  'hardware › * › hole pattern',
  'hardware › * › holes apart',
  'hardware › * › inset extra',
  'hardware › * › lay',
  'hardware › * › length',
  'hardware › * › lift',
  'hardware › * › load',
  'hardware › * › nut bore',
  'hardware › * › nut diameter',
  'hardware › * › opening angle',
  'hardware › * › overall height',
  'hardware › * › pattern',
  'hardware › * › pilot diameter',
  'hardware › * › plate',
  'hardware › * › plate heights',
  'hardware › * › plate hole depth',
  'hardware › * › plate hole diameter',
  'hardware › * › plate holes apart',
  'hardware › * › plate line',
  'hardware › * › plate system',
  'hardware › * › pocket diameter',
  'hardware › * › stands in',
  'hardware › * › swivel radius',
  'hardware › * › turning',
  'hardware › * › wheel',
  'hardware › * › widest door',
]

/** What is in the shop: no part of a cabinet either. */
const SHOP = [
  'bits',
  'bits › angle',
  'bits › depth',
  'bits › diameter',
  'bits › kind',
  'bits › kind: brad point',
  'bits › kind: countersink',
  'bits › kind: end mill',
  'bits › kind: forstner',
  'bits › kind: step',
  'bits › kind: straight',
  'bits › kind: twist',
]

/** How files are written, in other words than those of the samples; no part of a cabinet. */
const FILES = [
  'outputs › check bars',
  'outputs › dxf › contours',
  'outputs › dxf › contours: bulges',
  'outputs › dxf › contours: lines and arcs',
  'outputs › dxf › layers',
  'outputs › dxf › layers › bore',
  'outputs › dxf › layers › bore through',
  'outputs › dxf › layers › countersink',
  'outputs › dxf › layers › cutout',
  'outputs › dxf › layers › groove',
  'outputs › dxf › layers › mark',
  'outputs › dxf › layers › note',
  'outputs › dxf › layers › outline',
  'outputs › dxf › layers › pocket',
  'outputs › dxf › layers › rebate',
  'outputs › dxf › notes',
  'outputs › dxf › units',
  'outputs › dxf › units: in',
  'outputs › dxf › units: mm',
  'outputs › dxf › version: 2007',
  'outputs › margin',
  'outputs › overlap',
  'outputs › paper: A3',
  'outputs › paper: Legal',
  'outputs › paper: Tabloid',
  'outputs › paper: roll 24 in',
  'outputs › paper: roll 36 in',
  'outputs › paper: roll 914',
]

/** Whose defaults hold: that of the units, unless units are changed. */
const USUAL = ['usual sizes', 'usual sizes: in', 'usual sizes: mm']

/** Other words for parts that the samples have: another edge or face, or the word for what is the default. */
const WORDS = [
  'bay › drawers › box › bottom: grooved',
  'bay › drawers › fronts › pull: none',
  'bay › front › hinges: auto',
  'bay › front › pull › end: bottom',
  'bay › front › pull › end: left',
  'bay › front › pull › end: middle',
  'bay › front › pull › end: right',
  'bay › front › pull: none',
  'bay › front › stays: auto',
  'bay › front › stays: one',
  'bay › loose shelves › pins › both faces: share',
  'cover of all edges: auto',
  'cover of all edges: full',
  'cover of all edges: half',
  'cover of an edge: auto',
  'cover of an edge: full',
  'cover of an edge: half',
  'floor plan › join: none',
  'floor plan › stands › at its: front',
  'floor plan › stands › at its: left',
  'floor plan › stands › fronts look: forward',
  'floor plan › stands › fronts look: left',
  'floor plan › stands › line up: back',
  'floor plan › stands › line up: middle',
  'floor plan › stands › line up: right',
  'lay: overlay',
  'modules › * › base › fixed at: back',
  'modules › * › base › fixed at: right',
  'modules › * › carcase › back › sits: none',
  'modules › * › carcase › back: applied',
  'modules › * › carcase › back: grooved',
  'modules › * › carcase › back: inset',
  'modules › * › carcase › back: rebated',
  'modules › * › flip-over top › locking bolts › each side: 1',
  'modules › * › flip-over top › locking bolts › each side: 2',
  'modules › * › lipping › edges: back',
  'modules › * › lipping › edges: bottom',
  'modules › * › lipping › edges: left',
  'modules › * › lipping › edges: right',
  'modules › * › lipping › edges: top',
  'modules › * › openings › face: hidden face',
  'modules › * › openings › face: inside',
  'modules › * › openings › face: left face',
  'modules › * › openings › face: outside',
  'modules › * › openings › face: right face',
  'modules › * › openings › face: underside',
  'modules › * › openings › turn: 0',
  'modules › * › openings › turn: 90',
  'modules › * › openings › unit: in',
  'modules › * › openings › unit: px',
  'modules › * › worktop: none',
]

/** Another stock, joint or piece of hardware in the place of the one that is taken by itself. */
const CHOICES = [
  'bay › dividers › stock',
  'bay › drawers › box › joint',
  'bay › drawers › fronts › stock',
  'bay › drawers › slide',
  'bay › front › hinge',
  'bay › front › plate',
  'bay › front › stock',
  'bay › loose shelves › pins › item',
  'floor plan › worktop › fix',
  'joint › dowel',
  'modules › * › base › plinth › fix',
  'modules › * › base › plinth › stock',
  'modules › * › carcase › back › joint',
  'modules › * › carcase › rails › joint',
  'modules › * › carcase › rails › stock',
  'modules › * › carcase › stretchers › stock',
  'modules › * › flip-over top › axle',
  'modules › * › flip-over top › screws',
  'modules › * › machine top › fix',
  'modules › * › machine top › insert › levelling screws',
]

/** Distances, plays, gaps, covers and counts that have a default. */
const DISTANCES = [
  'bay › drawers › box › behind',
  'bay › drawers › box › clearance above',
  'bay › drawers › box › clearance below',
  'bay › drawers › box › groove depth',
  'bay › drawers › box › groove height',
  'bay › drawers › fronts › cover',
  'bay › drawers › fronts › gap',
  'bay › drawers › fronts › inset gap',
  'bay › drawers › fronts › reveal',
  'bay › front › cover',
  'bay › front › gap',
  'bay › front › hinge end',
  'bay › front › hinges',
  'bay › front › inset gap',
  'bay › front › pull › edge distance',
  'bay › front › pull › end distance',
  'bay › front › reveal',
  'bay › loose shelves › clearance',
  'bay › loose shelves › front setback',
  'bay › loose shelves › pins › keep clear',
  'bay › loose shelves › pins › pitch',
  'bay › loose shelves › pins › rear setback',
  'bay › loose shelves › rear gap',
  'cover › bottom',
  'cover › left',
  'cover › right',
  'cover › top',
  'floor plan › join › end inset',
  'floor plan › stands › shift',
  'joint › depth',
  'joint › play',
  'joint › stop rear',
  'modules › * › base › footprint gap',
  'modules › * › base › plinth › back recess',
  'modules › * › base › plinth › front recess',
  'modules › * › carcase › back › edge play',
  'modules › * › carcase › back › groove depth',
  'modules › * › carcase › back › groove play',
  'modules › * › carcase › back › groove setback',
  'modules › * › carcase › back › rebate width',
  'modules › * › carcase › back › recess',
  'modules › * › carcase › front gap',
  'modules › * › flip-over top › gap',
  'modules › * › flip-over top › locking bolts › each side',
  'modules › * › flip-over top › machines › upper › off centre',
  'modules › * › flip-over top › surface',
  'modules › * › flip-over top › turning clearance',
  'modules › * › flip-over top › well',
  'modules › * › lipping › take off from',
  'modules › * › machine top › insert › from left',
  'modules › * › machine top › insert › play',
  'modules › * › openings › from › right',
  'modules › * › openings › scale',
  'modules › * › openings › turn',
  'off centre › front',
  'off centre › rear',
  'off centre › right',
  'overhang › back',
  'overhang › right',
  'reveal › bottom',
  'reveal › left',
  'reveal › right',
  'reveal › top',
  'top fix › end distance',
]

/** What modules carry and what their boards are made of: the samples do with what the trade reckons with. */
const LOADS = [
  'bay › drawers › load',
  'bay › loose shelves › load',
  'modules › * › loads',
  'modules › * › loads › in a drawer',
  'modules › * › loads › on a shelf',
  'modules › * › loads › on all shelves',
  'modules › * › loads › on the top',
  'modules › * › loads › shelf at most',
  'stock › * › board',
  'stock › * › board: MDF',
  'stock › * › board: birch plywood',
  'stock › * › board: faced plywood',
  'stock › * › board: fir plywood',
  'stock › * › board: particleboard',
  'stock › * › board: poplar plywood',
]

const schema = definitionJsonSchema() as Schema

describe('what the samples show of the definition', () => {
  const all = sayable(schema)
  const shown = new Set(sampleStems.flatMap((stem) => [...saidBy(schema, parse(sampleText(stem)))]))
  const finer = [...FIGURES, ...FILES, ...WORDS, ...CHOICES, ...DISTANCES, ...LOADS, ...SHOP, ...USUAL]

  test('only what can be said is counted', () => {
    expect(all.size).toBeGreaterThan(300)
    expect([...shown].filter((line) => !all.has(line))).toEqual([])
  })

  test('all but the fine tuning that is listed here', () => {
    // Limits and reasons stand by the ids of the rules, each of which has a case of its own.
    const parts = [...all].filter((line) => !line.startsWith('findings'))
    expect(parts.filter((line) => !shown.has(line)).sort()).toEqual(finer.sort())
  })

  test('the lists are sorted', () => {
    for (const list of [FIGURES, FILES, WORDS, CHOICES, DISTANCES, LOADS, SHOP, USUAL])
      expect(list).toEqual([...list].sort())
  })
})
