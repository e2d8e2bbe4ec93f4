"""Full-size pages as a person tapes them: neighbours laid mark on mark, and then everything measured from the panel's edges.

The vector content of each page is read with poppler's pdftocairo. Lines of 0.6 mm are the panel's edges, circles of 0.2 mm
the rims of holes, circles of 0.1 mm and radius 3 mm the registration marks; the longer line of the cross in such a mark
lies across the seam that it belongs to. Pages are named by the largest word on them
(A1, A2 ... B1). Nothing is taken from the program but what panels.json says of the holes.
"""

import math
import re
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree
from pathlib import Path

SVG = "{http://www.w3.org/2000/svg}"
MM = 25.4 / 72
EDGE_PEN, RIM_PEN, MARK_PEN, MARK_RADIUS = 0.6, 0.2, 0.1, 3.0
ALLOWED = 0.05
FIGURE = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")
STROKE = re.compile(r"stroke-width:([\d.]+)")
MATRIX = re.compile(r"matrix\(([^)]*)\)")
WORD = re.compile(r'<word xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">([^<]*)</word>')


class Page:
    """mm from the lower left corner of the sheet."""

    def __init__(self, label, svg):
        self.label = label
        self.edges, self.rims, self.marks, self.hairs = [], [], [], []
        height = float(svg.get("viewBox").split()[3])
        for path in svg.iter(f"{SVG}path"):
            pen = STROKE.search(path.get("style", ""))
            if pen is None or "fill:none" not in path.get("style"):
                continue
            scale, points, curves = shape_of(path, height)
            self.put(float(pen[1]) * scale * MM, points, curves)

    def put(self, pen, points, curves):
        """Only whole circles and single lines are of interest."""
        if curves == 4:
            # Ends of the four curves; the first is the start of the path.
            ends = points[3:13:3]
            centre = tuple(sum(p[k] for p in ends) / 4 for k in (0, 1))
            radius = sum(math.dist(p, centre) for p in ends) / 4
            if abs(pen - MARK_PEN) < 0.02 and abs(radius - MARK_RADIUS) < 0.02:
                self.marks.append(centre)
            elif abs(pen - RIM_PEN) < 0.02:
                self.rims.append((centre, 2 * radius))
        elif curves == 0 and len(points) == 2 and abs(pen - EDGE_PEN) < 0.02:
            self.edges.append(tuple(points))
        elif curves == 0 and len(points) == 2 and abs(pen - MARK_PEN) < 0.02:
            self.hairs.append(tuple(points))

    def marks_across(self, axis):
        """The marks of the seams to neighbours along an axis: the left and right ones, or those above and below."""
        return [mark for mark in self.marks if self.arm(mark, axis) > self.arm(mark, 1 - axis)]

    def arm(self, mark, axis):
        """Length of the longest hair line through a mark along an axis."""
        through = [
            abs(a[axis] - b[axis])
            for a, b in self.hairs
            if max(abs(p[1 - axis] - mark[1 - axis]) for p in (a, b)) < ALLOWED
            and min(a[axis], b[axis]) - ALLOWED < mark[axis] < max(a[axis], b[axis]) + ALLOWED
        ]
        return max(through, default=0.0)

    @property
    def place(self):
        """Row and column, from the upper left."""
        return ord(self.label[0]) - ord("A"), int(self.label[1:])


def shape_of(path, height):
    """Scale, points (mm, y up) and number of curves of a path; more than one piece counts as no shape."""
    words = path.get("d")
    curves = words.count("C")
    # After closing, a path is told to move to where it began.
    words = re.sub(r"Z\s*M[^MLCZ]*$", "Z", words.strip())
    figures = [float(f) for f in FIGURE.findall(words)]
    matrix = MATRIX.match(path.get("transform", "")) or MATRIX.match("matrix(1,0,0,1,0,0)")
    a, b, c, d, e, f = (float(v) for v in FIGURE.findall(matrix[1]))
    pairs = zip(figures[::2], figures[1::2])
    points = [((a * x + c * y + e) * MM, (height - (b * x + d * y + f)) * MM) for x, y in pairs]
    plain = curves or (words.count("M") == 1 and "Z" not in words)
    return math.sqrt(abs(a * d - b * c)), points if plain else [], curves


def pages_of(pdf):
    """All pages of a file, by label."""
    count = int(re.search(r"Pages:\s+(\d+)", output("pdfinfo", pdf))[1])
    pages = {}
    for number in range(1, count + 1):
        only = ("-f", str(number), "-l", str(number))
        words = WORD.findall(output("pdftotext", *only, "-bbox", pdf, "-"))
        labels = [(float(low) - float(high), word) for high, low, word in words if re.fullmatch(r"[A-Z]\d+", word)]
        _, label = max(labels, default=(0, "without a name"))
        with tempfile.TemporaryDirectory() as folder:
            target = Path(folder) / "page.svg"
            output("pdftocairo", "-svg", "-origpagesizes", "-noshrink", *only, pdf, target)
            page = Page(label, ElementTree.parse(target).getroot())
        if not labels or label in pages:
            raise ValueError(f"page {number} is {label}, as another is")
        pages[label] = page
    return pages


def output(*command):
    return subprocess.run([str(word) for word in command], check=True, capture_output=True, text=True).stdout


def row_at(marks, axis, pick):
    """Of these marks, those furthest to one side, in order along it."""
    side = pick((mark[axis] for mark in marks), default=0.0)
    return sorted(mark for mark in marks if abs(mark[axis] - side) < 1)


def joined(first, second, across):
    """Where the second page's origin lies on the first when their marks are laid on each other, and the worst misfit."""
    along = 1 - across
    # Columns go to the right, rows go down.
    far, near = (max, min) if across == 0 else (min, max)
    ours = sorted(row_at(first.marks_across(across), across, far), key=lambda mark: mark[along])
    theirs = sorted(row_at(second.marks_across(across), across, near), key=lambda mark: mark[along])
    if len(ours) != len(theirs) or len(ours) < 2:
        raise ValueError(f"{first.label} has {len(ours)} marks to meet {second.label}, which has {len(theirs)}")
    shifts = [(a[0] - b[0], a[1] - b[1]) for a, b in zip(ours, theirs)]
    shift = tuple(sum(s[k] for s in shifts) / len(shifts) for k in (0, 1))
    return shift, max(math.dist(s, shift) for s in shifts)


def taped(pages):
    """Origin of each page, in the frame of the first; and the misfit of every seam, closed rings included."""
    by_place = {page.place: page for page in pages.values()}
    start = min(by_place)
    origins, todo, misfits = {start: (0.0, 0.0)}, [start], []
    while todo:
        place = todo.pop(0)
        for step, across in (((0, 1), 0), ((1, 0), 1), ((0, -1), 0), ((-1, 0), 1)):
            other = (place[0] + step[0], place[1] + step[1])
            if other not in by_place:
                continue
            forward = sum(step) > 0
            pair = (by_place[place], by_place[other]) if forward else (by_place[other], by_place[place])
            shift, misfit = joined(*pair, across)
            sign = 1 if forward else -1
            origin = tuple(o + sign * s for o, s in zip(origins[place], shift))
            misfits.append((f"{pair[0].label}-{pair[1].label}", misfit))
            if other in origins:
                misfits.append((f"{pair[0].label}-{pair[1].label}", math.dist(origin, origins[other])))
            else:
                origins[other] = origin
                todo.append(other)
    return {by_place[place].label: origin for place, origin in origins.items()}, misfits


def wanted_holes(panel, face):
    """(x, y), diameter and id of each square hole and sink of a face, as seen on it."""
    for hole in panel["drillings"]:
        if hole["surface"] != f"face {face}" or "lean" in hole:
            continue
        at = (hole["x"] if face == "A" else panel["length"] - hole["x"], hole["y"])
        yield at, hole["diameter"], hole["id"]
        if "sink" in hole:
            yield at, hole["sink"]["diameter"], f"sink of {hole['id']}"


def measure(pdf, panel, face):
    """Faults, and how many circles and seams were measured and the worst error of all, on one file."""
    pages = pages_of(pdf)
    origins, misfits = taped(pages)
    faults = [f"{seam}: marks miss each other by {error:.3f} mm" for seam, error in misfits if error > ALLOWED]
    faults += [f"{label} cannot be taped to the others" for label in pages if label not in origins]
    lines = [spread(origins[label], *line) for label in origins for line in pages[label].edges]
    left, x_faults, x_worst = edges_along(lines, 0, panel["length"])
    low, y_faults, y_worst = edges_along(lines, 1, panel["width"])
    if left is None or low is None:
        return [*faults, "no edges of the panel"], 0, 0, math.inf
    rims = [
        (label, (at[0] - left, at[1] - low), diameter)
        for label in origins
        for centre, diameter in pages[label].rims
        for at in spread(origins[label], centre)
    ]
    rim_faults, rim_worst = compare_rims(rims, list(wanted_holes(panel, face)))
    worst = max([x_worst, y_worst, rim_worst, *(error for _, error in misfits)])
    seams = len({seam for seam, _ in misfits})
    return [*faults, *x_faults, *y_faults, *rim_faults], len(rims), seams, worst


def spread(origin, *points):
    """Points of a page as they lie on the taped whole."""
    return [(origin[0] + x, origin[1] + y) for x, y in points]


def edges_along(lines, axis, size):
    """The first of the panel's two edges that stand across an axis; every piece must lie on one of them."""
    places = [a[axis] for a, b in lines if abs(a[axis] - b[axis]) < 0.001]
    if not places:
        return None, [], 0.0
    start = min(places)
    errors = [(min(abs(place - start), abs(place - start - size)), place - start) for place in places]
    faults = [f"an edge at {'xy'[axis]} = {at:.3f} of {size} mm" for error, at in errors if error > ALLOWED]
    if max(places) - start < size - ALLOWED:
        faults.append(f"no edge at {'xy'[axis]} = {size} mm")
    return start, faults, max(error for error, _ in errors)


def compare_rims(rims, wanted):
    """Each circle is a hole of its size, and each hole is on a page."""
    faults, worst, seen = [], 0.0, set()
    for label, at, diameter in rims:
        alike = [(math.dist(at, place), name) for place, size, name in wanted if abs(size - diameter) <= ALLOWED]
        error, name = min(alike, default=(math.inf, "any hole"))
        if error > ALLOWED:
            place = f"({at[0]:.3f}, {at[1]:.3f})"
            faults.append(f"{label}: a circle of {diameter:.3f} at {place} is {error:.3f} mm from {name}")
        else:
            worst = max(worst, error)
            seen.add(name)
    faults += [f"{name} is on no page" for _, _, name in wanted if name not in seen]
    return faults, worst
