import { type LintFile, readFile } from './lint-file.ts'
import { geometryFaults, type Lippings, NO_LIPPINGS } from './lint-geometry.ts'
import { entityFaults, handleFaults, headerFaults, tableFaults, valueFaults } from './lint-structure.ts'

/**
 * What is wrong with a DXF file as dxfOf writes them, judged on its text alone and by pairs of code and value; empty
 * when nothing is. It is the gate of our tests and of the proofs that run with every change, and for whoever wants to
 * look a file over; `storyrod draw` does not run it. While drawing, dxfOf itself makes sure of less: that the drawing
 * keeps the promises of its types, and that the file holds as many entities of each kind on each layer as were drawn.
 * Readers of other programs accept much of what is refused here; they are the second opinion. Each fault is `rule:
 * words`. The rules, with the layer's operation told by its colour:
 *
 * - `bytes`: plain ASCII from the first 0 on, CR LF after each line, EOF last; no byte order mark.
 * - `pairs`: an even number of lines, each odd one a group code; no control characters in a value.
 * - `sections`: HEADER, CLASSES, TABLES, BLOCKS, ENTITIES, OBJECTS, each closed, in this order.
 * - `blank`: values are blank only for codes 1, 3 and 4, and never for a TEXT.
 * - `reals`: plain decimals, at most six digits before the point and nine after (six for coordinates); no -0.0.
 * - `words`: no value holds `\U+`; a TEXT holds no `%%`, `^` or backslash, so that no reader takes it for an order.
 * - `colours`: no true colours (420); each layer has a colour 1..255 of one of our operations.
 * - `extrusion`: codes 210, 220, 230 are never written.
 * - `handles`: unique, hexadecimal, not zero, under $HANDSEED; every owner and reference (330, 350) exists.
 * - `owners`: every entity belongs to the model space's block record.
 * - `header`: $ACADVER is AC1021 or AC1015 (never R12 over these tables); $INSUNITS and $MEASUREMENT are both there and
 *   agree; $DWGCODEPAGE; $EXTMIN and $EXTMAX are the box of the entities,
 *   texts with the room that they take.
 * - `linetypes`: LTYPE stands before LAYER and has every line type that is used.
 * - `layers`: names of A-Z 0-9 _ -, at most 31, unique; every entity is on a layer of the table, none on layer 0.
 * - `kinds`: cutting layers hold CIRCLE and LWPOLYLINE, or CIRCLE, LINE and ARC, nothing else; TEXT only on note layers;
 *   no other entity anywhere.
 * - `markers`: the subclass markers of each kind, in order.
 * - `contours`: LWPOLYLINE closed, its count right, no end point repeated; LINE and ARC on cutting layers meet end to
 *   end, two at each point.
 * - `sizes`: radius at least 0.05 mm, segments at least 0.001 mm, contours on cutting layers at least 1 mm².
 * - `angles`: 0 up to 360, start and end not the same.
 * - `twice`: nothing is cut twice: no segments that coincide, wholly or partly, and no equal circles.
 * - `place`: cuts lie wholly within the finished panel, whose lower left corner is (0, 0); its outline lies `lippings`
 *   behind its edges, in the units of the file.
 */
export function lintDxf(text: string, lippings: Lippings = NO_LIPPINGS): string[] {
  const faults: string[] = []
  const report = (rule: string, what: string) => {
    faults.push(`${rule}: ${what}`)
  }
  const file: LintFile | undefined = readFile(text, report)
  if (file === undefined) return faults
  valueFaults(file, report)
  handleFaults(file, report)
  headerFaults(file, report)
  tableFaults(file, report)
  entityFaults(file, report)
  geometryFaults(file, report, lippings)
  return faults
}
