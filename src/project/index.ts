export { type Accepted, type AcceptedKey, acceptedAt, type Naming, namingAt } from './accepted.ts'
export { backTakes, grooveWidth } from './back-takes.ts'
export { baseHeight } from './base-height.ts'
export { baySizes, type SplitSizes } from './bay-sizes.ts'
export { boardFacts, UNKNOWN_BOARD } from './boards.ts'
export { dataAt, dataNames } from './data-at.ts'
export { DEFAULTS } from './defaults.ts'
export { DEFINITION_LIMIT, type DecodedText, decodeText, stemOf, tooLargeWords } from './definition-file.ts'
export * from './edit/index.ts'
export { type FlipSizes, flipSizes, sidesDepth, wellOf } from './flip-sizes.ts'
export { frontsTake, type OverlayFront, overlayFronts, overlayThickness } from './fronts.ts'
export { definitionJsonSchema } from './json-schema.ts'
export { inLatin } from './latin.ts'
export { isOutOfOrder, lettersLacking } from './letters.ts'
export { type Limits, limitOf } from './limits.ts'
export { isLippingWord, LIPPING_GROUPS, LIPPING_WORDS, type LippingGroup } from './lipping-words.ts'
export { ReadMemory } from './memory.ts'
export { slug, uniqueKeys } from './names.ts'
export { nearestName } from './nearest.ts'
export { optionAt, type PrintOptions, readPrintOptions } from './print-options.ts'
export {
  BAR_MM,
  believable,
  type Correction,
  correctionOf,
  LONGEST_CUT_MM,
  largerPaper,
  paperSize,
  paperWords,
  sheetWords,
  type UprightSize,
} from './printing.ts'
export type { Asked, Position, Problem } from './problem.ts'
export { pathInWords, renderProblems } from './problem.ts'
export type { ReadResult } from './read.ts'
export { definitionData, readDefinition } from './read.ts'
export { type OutputsRead, readOutputs } from './read-outputs.ts'
export { idleFrontKeys } from './resolve/front-keys.ts'
export { starterDefinition } from './starter.ts'
export { filesNamed } from './svg/file-names.ts'
export type { Data } from './to-data.ts'
export { startOf, topSize } from './top-sizes.ts'
export * from './types.ts'
