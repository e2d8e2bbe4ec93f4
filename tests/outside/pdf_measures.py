"""Measures full-size pages: their check bars as a printer would put them on paper, and the panel that they make together.

Usage: pdf_measures.py FOLDER

FOLDER is what `storyrod draw` wrote: panels.json and the PDF files that it lists. The first page of one file for each
module and sheet size is turned into pixels by poppler's pdftoppm at 600 to the inch, black or white, and the bars are
measured along both axes: 180 mm, 100 mm and 4 in, each between the middles of its end ticks. Exits with 1 and says what
is wrong when a bar is missing or off by more than 0.1 mm.

All pages of all files are then read with pdftocairo, laid on each other by their registration marks, and compared with
panels.json, to 0.05 mm: marks of neighbours with each other, the panel's edges with its size, and the circle of every
hole and sink with its place and diameter from those edges. Slanted bores and bores in edges, which have no circle, are
not compared, nor are grooves.

The last line tells how much was measured and the worst errors. Needs poppler-utils; nothing but the standard library
beside it.
"""

import json
import re
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import pages  # noqa: E402

DPI = 600
MM = DPI / 25.4  # pixels to the millimetre
ALLOWED = 0.1
DARK = 128
# Where the rulers lie: their lines run 15 mm from the left and the lower edge of the sheet, their long ticks reach 5 mm
# to both sides, and at 4.7 mm from the line there is nothing but long ticks on the side of the millimetres.
RULER_LINE = 15.0
AT_TICKS = 4.7
NEAR = 2.5  # a tick this far from where it belongs is still recognised, and then measured


class Wrong(Exception):
    """Something about a page that a person with a rule would refuse."""


class Page:
    """A page in pixels, measured in mm from its lower left corner."""

    def __init__(self, pdf):
        with tempfile.TemporaryDirectory() as folder:
            target = Path(folder) / "page"
            command = ["pdftoppm", "-r", str(DPI), "-gray", "-aa", "no", "-aaVector", "no", "-f", "1", "-l", "1", "-singlefile"]
            subprocess.run([*command, str(pdf), str(target)], check=True)
            data = target.with_suffix(".pgm").read_bytes()
        header = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
        if header is None:
            raise Wrong(f"{pdf}: pdftoppm wrote no grey picture")
        self.width, self.height = int(header[1]), int(header[2])
        self.pixels = data[header.end():]

    def line(self, axis, across):
        """Pixels along x at a height, or along y (from below) at a distance from the left edge; `across` in mm."""
        if axis == "x":
            row = self.height - 1 - round(across * MM)
            return self.pixels[row * self.width:(row + 1) * self.width]
        return self.pixels[round(across * MM)::self.width][::-1]

    def ticks(self, axis, across):
        """Middles of the dark stretches along a line, mm."""
        line = self.line(axis, across)
        middles, start = [], None
        for index, value in enumerate(line + b"\xff"):
            if value < DARK and start is None:
                start = index
            elif value >= DARK and start is not None:
                middles.append((start + index) / 2 / MM)
                start = None
        return middles


def nearest(ticks, place):
    """The tick that stands nearest to a place, or None when none is near."""
    close = [tick for tick in ticks if abs(tick - place) < NEAR]
    return min(close, key=lambda tick: abs(tick - place), default=None)


def ruler(page, axis):
    """Readings of a ruler: what each bar should be, and what it measures, mm."""
    millimetres = page.ticks(axis, RULER_LINE + AT_TICKS if axis == "x" else RULER_LINE - AT_TICKS)
    inches = page.ticks(axis, RULER_LINE - AT_TICKS if axis == "x" else RULER_LINE + AT_TICKS)
    for zero in millimetres:
        ends = [nearest(millimetres, zero + 180), nearest(millimetres, zero + 100)]
        inch_zero = nearest(inches, zero)
        inch_end = None if inch_zero is None else nearest(inches, inch_zero + 101.6)
        if None not in ends and inch_end is not None:
            return [(180.0, ends[0] - zero), (100.0, ends[1] - zero), (101.6, inch_end - inch_zero)]
    raise Wrong(f"no check bar of 180 mm, 100 mm and 4 in along {axis}")


def first_page_size(pdf):
    """Width and height of page 1 in points, as poppler reads them."""
    text = subprocess.run(["pdfinfo", str(pdf)], check=True, capture_output=True, text=True).stdout
    found = re.search(r"Page size:\s+([\d.]+) x ([\d.]+) pts", text)
    if found is None:
        raise Wrong(f"{pdf}: pdfinfo names no page size")
    return found[1], found[2]


def chosen(folder):
    """One file for each module and sheet size, in the order of panels.json."""
    listed = json.loads((folder / "panels.json").read_text(encoding="utf-8"))["panels"]
    picked = {}
    for panel in listed:
        for name in panel["files"]["pdf"]:
            picked.setdefault((panel["module"], first_page_size(folder / name)), name)
    if not picked:
        raise Wrong("panels.json lists no PDF file")
    return list(picked.values())


def taped(folder):
    """Faults, circles, seams and worst error over all files."""
    faults, circles, seams, worst = [], 0, 0, 0.0
    for panel in json.loads((folder / "panels.json").read_text(encoding="utf-8"))["panels"]:
        for name in panel["files"]["pdf"]:
            face = re.search(r"-([ab])\.pdf$", name)[1].upper()
            try:
                wrong, of_file, seams_of_file, error = pages.measure(folder / name, panel, face)
            except ValueError as trouble:
                faults.append(f"{name}: {trouble}")
                continue
            faults += [f"{name}: {words}" for words in wrong]
            circles, seams, worst = circles + of_file, seams + seams_of_file, max(worst, error)
    if circles == 0 or seams == 0:
        faults.append("no circle or no seam was measured, so nothing is proved")
    return faults, circles, seams, worst


def main(folder):
    worst, faults = 0.0, []
    names = chosen(folder)
    for name in names:
        page = Page(folder / name)
        for axis in ("x", "y"):
            try:
                readings = ruler(page, axis)
            except Wrong as wrong:
                faults.append(f"{name}: {wrong}")
                continue
            for true, measured in readings:
                worst = max(worst, abs(measured - true))
                if abs(measured - true) > ALLOWED:
                    faults.append(f"{name}: the bar of {true} mm along {axis} measures {measured:.3f} mm")
    more, circles, seams, apart = taped(folder)
    faults += more
    for fault in faults[:50]:
        print(fault)
    if len(faults) > 50:
        print(f"... and {len(faults) - 50} more")
    print(
        f"bars of {len(names)} pages measured, worst error {worst:.3f} mm; "
        f"{circles} circles and {seams} seams, worst error {apart:.3f} mm"
    )
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    try:
        sys.exit(main(Path(sys.argv[1])))
    except Wrong as wrong:
        print(wrong)
        sys.exit(1)
