const EXIT_CODES = `
Exit codes:
  0    done
  1    a finding of severity stop stands: nothing drawn
  2    the definition is wrong, or the command line is
  3    the disk refuses: full, not permitted, something in the way
  70   a fault in Storyrod itself
  130  stopped by Ctrl-C; the earlier output is as it was`

/** Each command in a line for the list, in full above its arguments, and what follows after its options. */
export const HELP = {
  program: {
    does: "From a few outside sizes and the sheet's measured thickness to every panel and every hole of bolt-together cabinets: SVG, DXF and full-size templates on paper.",
    after: `
To begin:
  storyrod new my.yaml      a commented definition to change to your sizes
  storyrod check my.yaml    what would not fit, break or foul
  storyrod draw my.yaml     the drawings, into my-drawings/
${EXIT_CODES}`,
  },
  draw: {
    line: 'draw a definition, or the samples',
    does: 'Draws every panel of a definition as SVG, DXF and full-size PDF templates, and lists all panels and bores in panels.json. Without a definition: the samples that come with Storyrod, each into a folder of its own below out-samples/.',
    after: `
The drawings go into <name>-drawings beside the definition unless --out names a folder:
  svg/<module>/<panel>-a.svg        a panel seen on face A (-b: on face B, if bored)
  dxf/<module>/<panel>-a.dxf        the same for the machine
  templates/measure-first.pdf       the page to print first, and to measure
  templates/all-pages.pdf           every panel in full size, with a cover that says how
  templates/<module>/<panel>.pdf    one panel in full size, both its faces
  templates/pages.json              how many sheets of paper there are
  panels.json                       every panel and every bore, in mm

All files are replaced together at the end, or none: a run that is stopped or fails
leaves the earlier output as it was. Files that the run does not draw are never touched.

--paper, --check-bars and --page-budget stand in place of the keys of the same names
under outputs, for this run; readings are in the definition's units, or carry their own.

Examples:
  storyrod draw                              the samples, into out-samples/
  storyrod draw studio.yaml                  into studio-drawings/
  storyrod draw studio.yaml --out /tmp/try   into /tmp/try
  storyrod draw studio.yaml --anyway         although a stop stands; do not cut from it
  storyrod draw studio.yaml --paper A3 --check-bars 179.1,180
                                             on another paper, made true for the printer
${EXIT_CODES}`,
  },
  check: {
    line: 'print the findings on a definition',
    does: 'Prints the findings on a definition and draws nothing. A stop is a mistake that would spoil work; a warning wants a look; a note is for information.',
    after: `
Example:
  storyrod check studio.yaml
  storyrod check studio.yaml --json > findings.json
${EXIT_CODES}`,
  },
  new: {
    line: 'write a commented definition to start from',
    does: 'Writes a commented definition to start from. It never writes over a file, and the folder must be there.',
    after: `
Example:
  storyrod new studio.yaml
${EXIT_CODES}`,
  },
  schema: {
    line: 'print the JSON Schema of definitions',
    does: 'Prints the JSON Schema of definitions. An editor that knows it completes names and marks mistakes as you type.',
    after: `
Example:
  storyrod schema > storyrod.schema.json
then, as the first line of a definition:
  # yaml-language-server: $schema=./storyrod.schema.json
${EXIT_CODES}`,
  },
} as const
