"""Measures printed pages of every sample, on every paper, as they are and corrected for a printer that errs.

Usage: print_runs.py FOLDER

FOLDER is what print-pages.ts drew. Pages are printed by poppler's pdftoppm at 600 dots to the inch, black or white; where
they are corrected, by a printer that errs as they expect. In these pictures both check bars are measured, registration
marks, edges and all holes, the pages laid on each other mark on mark, and compared with panels.json: distances of holes on
one page and over seams, and of every hole from the edges of its panel. Of each run one group of pages with a seam is
measured, where there is one; of one panel over a metre long all pages. Exits with 1 and says what is wrong when
anything is off by more than 0.1 mm, or when a paper has no seam, no hole or no bar to measure.

Needs poppler-utils and numpy.
"""

import json
import os
import sys
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import taped_pixels  # noqa: E402

ALLOWED = 0.1
BAR = 180.0  # what the readings of a run are readings of
LONG = 1000.0
NEEDED = ("check bars", "two holes on one page", "holes from edges", "dots in circles")


def scales_of(run):
    """How much larger the printer of a run makes a sheet of some size, along x and y."""
    bars = run.get("bars")
    across, down = (bars["across"] / BAR, bars["down"] / BAR) if bars else (1.0, 1.0)
    roll = run.get("roll")

    def scales(width, height):
        upright = abs(width - roll) < 0.1 if roll else width <= height
        return (across, down) if upright else (down, across)

    return scales


def measured(folder, run):
    """The errors of one run."""
    errors, scales = taped_pixels.Errors(), scales_of(run)
    place = folder / run["folder"]
    panels = json.loads((place / "panels.json").read_text(encoding="utf-8"))["panels"]
    alone = None
    for panel in sorted(panels, key=lambda one: max(one["length"], one["width"])):
        for group in taped_pixels.groups_of(place, panel, scales):
            if seams := group.seams():
                errors.add(taped_pixels.measure(group, list(seams[0]), scales, ALLOWED))
                return errors
            number = max(group.numbers, key=lambda one: len(group.known(one)))
            if alone is None or len(group.known(number)) > len(alone[0].known(alone[1])):
                alone = (group, number)
    if alone is None:
        errors.faults.append(f"{run['folder']}: no page lies on two edges of its panel")
    else:
        errors.add(taped_pixels.measure(alone[0], [alone[1]], scales, ALLOWED))
    return errors


def long_panel(folder, run):
    """The errors over all pages of the longest panel."""
    scales, place = scales_of(run), folder / run["folder"]
    panels = json.loads((place / "panels.json").read_text(encoding="utf-8"))["panels"]
    panel = max(panels, key=lambda one: max(one["length"], one["width"]))
    groups = taped_pixels.groups_of(place, panel, scales)
    group = max(groups, key=lambda one: len(one.numbers), default=None)
    if group is None or len(group.numbers) < 2:
        errors = taped_pixels.Errors()
        errors.faults.append(f"{run['folder']}: {panel['id']} has no pages that are taped together")
        return errors
    return taped_pixels.measure(group, group.numbers, scales, ALLOWED)


def main(folder):
    runs = [run for listed in sorted(folder.glob("*.json")) for run in json.loads(listed.read_text(encoding="utf-8"))]
    total, faults, seamed = taped_pixels.Errors(), [], set()
    with ProcessPoolExecutor(os.cpu_count()) as pool:
        # The longest work first, so that it does not run on alone.
        small = [run for run in runs if run["paper"] == "A4"]
        longest = [pool.submit(long_panel, folder, run) for run in small]
        found = [pool.submit(measured, folder, run) for run in runs]
        for run, future in zip(runs, found):
            errors = future.result()
            total.add(errors)
            faults += [f"{run['folder']}: no {kind} measured" for kind in NEEDED if not errors.count.get(kind)]
            if errors.count.get("two holes over a seam"):
                seamed.add(run["paper"])
        over = taped_pixels.Errors()
        for future in longest:
            over.add(future.result())
    papers = {run["paper"] for run in runs}
    faults += [f"{paper}: no seam measured" for paper in sorted(papers - seamed) if not paper.startswith("roll")]
    if over.span < LONG:
        faults.append(f"pages taped together reach over {over.span:.0f} mm only")
    faults += total.faults + over.faults
    for fault in faults[:50]:
        print(fault)
    if len(faults) > 50:
        print(f"... and {len(faults) - 50} more")
    print(f"{len(runs)} runs on {len(papers)} papers, {len(seamed)} of them with seams; worst errors, mm:")
    print("  " + ", ".join(f"{kind} {error:.3f} ({total.count[kind]})" for kind, error in sorted(total.worst.items())))
    print(f"over {over.span:.0f} mm of pages: " + ", ".join(f"{kind} {error:.3f} ({over.count[kind]})" for kind, error in sorted(over.worst.items())))
    return 1 if faults or not runs else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1])))
