/** A commented definition to begin with: a small two-module workshop cabinet. Reads without a problem. */
export function starterDefinition(): string {
  return STARTER
}

const STARTER = `# A Storyrod definition: two small cabinets that stand side by side on casters in a workshop.
# Change what you like, then draw it. A key that you leave out takes its default.
#
# Lengths: a bare number is in the units below; any length may carry its own unit:
#   600    600 mm    1.8 cm    23 7/16 in    1' 6 1/2"

storyrod: 1                # version of this format; leave it as it is
title: Workshop cabinet    # stands on every drawing
units: mm                  # mm or in

# Sheet goods, each under a name of your choice.
stock:
  ply 18:
    thickness: [17.8, 18.1]   # what your callipers read, at one or more points; never the nominal name
    sheet: [2440, 1220]       # length and width of the whole sheet
    grain: along length       # or none
  ply 6:
    thickness: 6.3

# What all modules have in common. A module that says otherwise goes its own way.
common:
  stock: ply 18
  depth: 500               # the whole footprint, doors and back included
  working height: 850      # from the floor; or carcase height: for the box alone
  carcase:
    top: over              # over the ends of the sides, between them, rails, or none
    bottom: between
    joint: one-piece screw # or through screw, dowel, pocket screw
    back:
      sits: grooved        # or applied, between sides, inset, rebated, none
      stock: ply 6
  base:
    casters: caster 75     # or plinth, feet; or base: none

# The cabinets, each under its name. Upright partitions stand between bays that lie side by side, fixed shelves
# between stacked ones.
modules:
  tool cupboard:
    width: 600
    inside:
      loose shelves: 2     # on pins, in rows of holes
      front:
        kind: pair         # two doors that meet in the middle; or door, flap, fixed
        pull:
          item: pull 128

  open shelves:
    width: 450
    inside:
      stacked:                 # from the top down
        - size: 250            # clear height of this bay
        - side by side:        # from the left; bays without a size share what is left
            - share: 1
            - share: 2
              loose shelves: 1

# Which cabinets stand beside each other, from the left, and whether bolts join them.
floor plan:
  - row: [tool cupboard, open shelves]
    join: bolted             # or none

outputs:
  paper: A4                # of the full-size pages: A4, A3, Letter, Legal, Tabloid, or a roll such as roll 610
`
