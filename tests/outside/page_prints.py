"""Compares what a browser prints of the page with the PDF files of the command, as poppler reads both.

Usage: page_prints.py FOLDER

FOLDER is what tests/page/files/print-in-browser.ts made. Of every sheet all fine and heavy lines, circles and words are compared.
A sheet that a browser rounds to its pixels lies a little off as a whole, as paper does in a printer: by at most 0.2 mm. Laid on
each other, lines and circles must then lie within 0.02 mm, and words within 0.3 mm, since they are only read. The check bars of
100 and 180 mm are measured along both axes, to 0.02 mm. Exits with 1 and says what is wrong.

Needs poppler-utils and numpy.
"""

import math
import re
import sys
from pathlib import Path

import numpy

sys.path.insert(0, str(Path(__file__).parent / "lib"))
import pages  # noqa: E402

NEAR, NEAR_WORD, SHIFT = 0.02, 0.3, 0.2
STROKED = re.compile(r"fill:none")
DASHED = re.compile(r"stroke-dasharray:[\d.]")


def lines_of(page):
    """From the upper left corner, the ends of each in one order."""
    return sorted(sorted((x, page.height - y) for x, y in line) for line in page.lines + page.edges)


def dashed_of(page, drawn):
    """Those lines of a page that are drawn dashed."""
    found = []
    for path in drawn.iter(f"{pages.SVG}path"):
        if DASHED.search(path.get("style", "")):
            _, points, curves, closed = pages.shape_of(path, page.height, (1.0, 1.0))
            if curves == 0 and len(points) == 2 and not closed:
                found.append(flat(sorted((x, page.height - y) for x, y in points)))
    return found


def circles_of(page, drawn):
    """Centre and diameter of every stroked curve that is as wide as high."""
    found = []
    for path in drawn.iter(f"{pages.SVG}path"):
        if not STROKED.search(path.get("style", "")):
            continue
        _, points, curves, _ = pages.shape_of(path, page.height, (1.0, 1.0))
        if curves < 4 or not points:
            continue
        # Ends of the curves alone: their handles may lie outside.
        xs, ys = zip(*points[::3])
        size = (max(xs) - min(xs), max(ys) - min(ys))
        if abs(size[0] - size[1]) < 0.1:
            found.append(((max(xs) + min(xs)) / 2, page.height - (max(ys) + min(ys)) / 2, sum(size) / 2))
    return found


def nearest(one, others):
    return min(others, key=lambda other: math.dist(one, other), default=None)


def flat(line):
    return [*line[0], *line[1]]


def compare(name, printed, file, result):
    """Faults of one sheet; counts and worst errors go into the result."""
    (page, drawn), (wanted, wanted_drawn) = printed, file
    where = f"{name}, page {page.number}"
    if abs(page.width - wanted.width) > 0.3 or abs(page.height - wanted.height) > 0.3:
        return [f"{where} is {page.width:.2f} × {page.height:.2f} mm, not {wanted.width:.2f} × {wanted.height:.2f}"]
    lines, circles = [flat(line) for line in lines_of(page)], circles_of(page, drawn)
    wanted_lines, wanted_circles = [flat(line) for line in lines_of(wanted)], circles_of(wanted, wanted_drawn)
    if not lines or len(circles) != len(wanted_circles):
        return [f"{where}: {len(lines)} lines and {len(circles)} circles, not {len(wanted_lines)} and {len(wanted_circles)}"]
    pairs = [(line, nearest(line, wanted_lines)) for line in lines]
    shift = [float(numpy.median([one[k] - other[k] for one, other in pairs])) for k in (0, 1)]
    faults = [f"{where} lies {max(map(abs, shift)):.3f} mm off"] if max(map(abs, shift)) > SHIFT else []
    laid = lambda values: [value - shift[k % 2] for k, value in enumerate(values)]
    lines, circles = [laid(line) for line in lines], [[*laid(one[:2]), one[2]] for one in circles]
    for kind, ours, theirs in (("line", lines, wanted_lines), ("circle", circles, wanted_circles)):
        for one in ours:
            error = max(abs(a - b) for a, b in zip(one, nearest(one, theirs)))
            result[kind] = max(result.get(kind, 0.0), error)
            result[f"{kind}s"] = result.get(f"{kind}s", 0) + 1
            if error > NEAR:
                faults.append(f"{where}: a {kind} at {one[0]:.2f}, {one[1]:.2f} is {error:.3f} mm off")
    # Every line of the file is there too; dashes a browser draws one by one.
    whole = [line for line in wanted_lines if line not in dashed_of(wanted, wanted_drawn)]
    result["dashed lines"] = result.get("dashed lines", 0) + len(wanted_lines) - len(whole)
    for line in whole:
        if math.dist(nearest(line, lines), line) > 2 * NEAR:
            faults.append(f"{where}: the line at {line[0]:.2f}, {line[1]:.2f} is lacking")
    for word in wanted.words:
        alike = [other for other in page.words if other.text == word.text]
        place = lambda one, of: (one.box[0], of.height - one.box[1])
        error = min((math.dist(laid(place(other, page)), place(word, wanted)) for other in alike), default=math.inf)
        result["word"] = max(result.get("word", 0.0), error)
        if error > NEAR_WORD:
            faults.append(f"{where}: the word {word.text} is {error:.3f} mm off")
    return faults


def bars(name, page, result):
    """Along each axis there are two ticks so far apart."""
    faults = []
    for axis in (0, 1):
        places = [a[axis] for a, b in page.lines if abs(a[axis] - b[axis]) < 0.01 and abs(a[1 - axis] - b[1 - axis]) < 20]
        for length in (100, 180):
            best = min((abs(b - a - length) for a in places for b in places), default=math.inf)
            result["bar"] = max(result.get("bar", 0.0), best)
            if best > NEAR:
                faults.append(f"{name}: the bar of {length} mm along {'xy'[axis]} is {best:.3f} mm off")
    return faults


def with_drawings(pdf):
    read = pages.pages_of(pdf)
    return [(page, pages.drawings_of(pdf, page.number, page.number)[0]) for page in read]


def main(folder):
    faults, result, sheets = [], {}, 0
    for file in sorted(folder.glob("*-file.pdf")):
        name = file.name.removesuffix("-file.pdf")
        printed, wanted = with_drawings(folder / f"{name}-printed.pdf"), with_drawings(file)
        if len(printed) != len(wanted):
            faults.append(f"{name}: {len(printed)} sheets were printed, not {len(wanted)}")
            continue
        sheets += len(printed)
        for one, other in zip(printed, wanted):
            faults += compare(name, one, other, result)
        if name == "measure-first":
            faults += bars(name, printed[0][0], result)
    for lacking in ("line", "circle", "word", "bar"):
        if lacking not in result:
            faults.append(f"no {lacking} was compared, so nothing is proved")
    for fault in faults[:40]:
        print(fault)
    print(f"{sheets} sheets printed from a browser; " + ", ".join(f"{kind} {value:.4g}" for kind, value in sorted(result.items())))
    return 1 if faults else 0


if __name__ == "__main__":
    if len(sys.argv) != 2:
        sys.exit(__doc__)
    sys.exit(main(Path(sys.argv[1])))
