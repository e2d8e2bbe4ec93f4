"""Measures full-size pages: their check bars as a printer would put them on paper, and the panel that they make together.

Usage: pdf_measures.py FOLDER

FOLDER is what `storyrod draw` wrote: panels.json and the PDF files that it lists. The first page of one file for each
module and sheet size is turned into pixels by poppler's pdftoppm at 600 to the inch, black or white, and the bars of 100 mm
and 4 in are measured along both axes, those of 180 mm on the page that is only to be measured, each between the middles of its
end ticks. Exits with 1 and says what is wrong when a bar is missing or off by more than 0.1 mm.

All pages of all panels are then read with pdftocairo, laid on each other by the letters of their registration marks, and
compared with panels.json, to 0.05 mm: marks with each other, the panel's edges with its size, and the circle of every
square hole and sink with its place and diameter from those edges, holes in edges on the paper that wraps over them. Slanted
bores, bores at the shoulder of a rebate and grooves are not compared. The names of module and panel must be found on the
pages of each as text.

The last line tells how much was measured and the worst errors. Needs poppler-utils and numpy.
"""

import json
import os
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import pages  # noqa: E402
import panel_pages  # noqa: E402
from raster import Raster  # noqa: E402
from rulers import INCH_BAR, LONG_BAR, MM_BAR, bars_on  # noqa: E402

ALLOWED = 0.1
MEASURING = Path("templates/measure-first.pdf")


def bars_of(folder, name, page, wanted):
    """Faults of the check bars of a page, and the worst error, mm."""
    raster = Raster(folder / name, page.number, page.height)
    faults, worst = [], 0.0
    for axis in (0, 1):
        along = f"along {'xy'[axis]}"
        bars = bars_on(page, raster, axis, wanted)
        if bars is None:
            faults.append(f"{name}, {page.label}: no check bar of {', '.join(f'{one:g}' for one in wanted)} mm {along}")
            continue
        for true, measured in bars.items():
            worst = max(worst, abs(measured - true))
            if abs(measured - true) > ALLOWED:
                faults.append(f"{name}, {page.label}: the bar of {true} mm {along} measures {measured:.3f} mm")
    return faults, worst


def unnamed(panel, texts):
    """What should be written on the pages of a panel and is not."""
    text = " ".join(texts)
    return [f"{panel['id']}: {what} is on no page" for what in (panel["module"], panel["panel"]) if what not in text]


def main(folder):
    panels = json.loads((folder / "panels.json").read_text(encoding="utf-8"))["panels"]
    faults, worst, bars = [], 0.0, 0
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        measured = list(pool.map(lambda panel: panel_pages.measure(folder, panel), panels))
    to_measure = {}
    for panel, of_panel in zip(panels, measured):
        faults += of_panel.faults
        for name, read in of_panel.files.items():
            faults += unnamed(panel, [word.text for page in read for word in page.words])
            for page in read:
                to_measure.setdefault((panel["module"], page.width, page.height), (name, page))
    for name, page in to_measure.values():
        wrong, error = bars_of(folder, name, page, (MM_BAR, INCH_BAR))
        faults, worst, bars = faults + wrong, max(worst, error), bars + 1
    if (folder / MEASURING).exists():
        wrong, error = bars_of(folder, MEASURING, pages.pages_of(folder / MEASURING)[0], (LONG_BAR, MM_BAR, INCH_BAR))
        faults, worst, bars = faults + wrong, max(worst, error), bars + 1
    circles, seams, flaps = (sum(getattr(one, what) for one in measured) for what in ("circles", "seams", "flaps"))
    apart = max((one.worst for one in measured), default=0.0)
    if circles == 0 or bars == 0:
        faults.append("no circle or no bar was measured, so nothing is proved")
    for fault in faults[:50]:
        print(fault)
    if len(faults) > 50:
        print(f"... and {len(faults) - 50} more")
    print(
        f"bars of {bars} pages measured, worst error {worst:.3f} mm; {sum(one.pages for one in measured)} pages with "
        f"{circles} circles, {flaps} of them on folded paper, {sum(one.pieces for one in measured)} loose pieces and {seams} seams, worst error {apart:.3f} mm"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1])))
