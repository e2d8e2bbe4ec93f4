"""What is on the full-size pages, as poppler reads them: lines, circles and words, in mm from the lower left corner of a page.

Nothing is taken from the program but the pens that it draws with: 0.6 mm for the edges of a panel, 0.2 mm for the rims of
holes, 0.1 mm for hairlines and registration marks, which are crossed circles of 3 mm radius.
"""

import math
import re
import subprocess
import tempfile
import xml.etree.ElementTree as ElementTree
from dataclasses import dataclass, field
from pathlib import Path

SVG = "{http://www.w3.org/2000/svg}"
MM = 25.4 / 72
EDGE_PEN, RIM_PEN, HAIR_PEN, MARK_RADIUS = 0.6, 0.2, 0.1, 3.0
# A pen is recognised to this, mm: a correction for a printer makes it a little heavier or finer.
SAME_PEN = 0.03
FIGURE = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")
STROKE = re.compile(r"stroke-width:([\d.]+)")
MATRIX = re.compile(r"matrix\(([^)]*)\)")
PAGE_OF_WORDS = re.compile(r'<page width="[\d.]+" height="([\d.]+)">(.*?)</page>', re.DOTALL)
WORD = re.compile(r'<word xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)</word>')
PAGE_SIZE = re.compile(r"Page\s+\d+ size:\s+([\d.]+) x ([\d.]+) pts")


@dataclass
class Word:
    text: str
    box: tuple  # left, low, right, high

    @property
    def plain(self):
        """In small letters, without what stands before and behind."""
        return self.text.strip(".,:;()[]…").lower()

    def away(self, point):
        """Distance from a point to the nearest place of the word."""
        return math.hypot(*(max(self.box[k] - point[k], point[k] - self.box[k + 2], 0) for k in (0, 1)))


@dataclass
class Page:
    """A page, or one of the pieces that are to be cut out of it."""

    number: int
    width: float
    height: float
    words: list = field(default_factory=list)
    edges: list = field(default_factory=list)  # heavy lines, pairs of points
    rims: list = field(default_factory=list)  # (centre, diameter)
    marks: list = field(default_factory=list)  # centres
    lines: list = field(default_factory=list)  # fine lines and hairlines, pairs of points
    boxes: list = field(default_factory=list)  # closed rectangles: left, low, right, high
    piece: int = 0  # 0: the whole page
    paper: tuple = ()  # width and height as the file says them, mm

    @property
    def label(self):
        return f"page {self.number}" + (f", piece {self.piece}" if self.piece else "")

    @property
    def face(self):
        """A or B, as its words say; what is set largest counts. Nothing for a piece that does not say it."""
        said = [
            (min(word.box[2] - word.box[0], word.box[3] - word.box[1]), letter.text.strip(".,:;()"))
            for word, letter in zip(self.words, self.words[1:])
            if word.plain == "face" and letter.text.strip(".,:;()") in ("A", "B")
        ]
        largest = max((size for size, _ in said), default=0)
        faces = {letter for size, letter in said if size > largest - 0.05}
        if self.piece and not faces:
            return None
        if len(faces) != 1:
            raise ValueError(f"{self.label} says that it is face {' and '.join(sorted(faces)) or 'nothing'}")
        return faces.pop()

    def within(self, box, piece):
        """The part of the page that lies in a box, as a page of its own."""
        inside = lambda *points: all(box[k] - 0.5 < p[k] < box[k + 2] + 0.5 for p in points for k in (0, 1))
        return Page(
            self.number,
            self.width,
            self.height,
            [word for word in self.words if inside(word.box[:2], word.box[2:])],
            [line for line in self.edges if inside(*line)],
            [rim for rim in self.rims if inside(rim[0])],
            [mark for mark in self.marks if inside(mark)],
            [line for line in self.lines if inside(*line)],
            [],
            piece,
            self.paper,
        )


def pages_of(pdf, scales=None):
    """
    All pages of a file. `scales` takes the width and height of a page, mm, and gives by how much a printer that errs makes
    it larger along x and y; without it pages are as they are in the file.
    """
    sizes = [(float(w) * MM, float(h) * MM) for w, h in PAGE_SIZE.findall(output("pdfinfo", "-f", "1", "-l", "100000", pdf))]
    pages = [Page(k + 1, *size, paper=size) for k, size in enumerate(sizes)]
    texts = PAGE_OF_WORDS.findall(output("pdftotext", "-bbox", pdf, "-"))
    if not pages or len(texts) != len(pages):
        raise ValueError(f"{pdf} has {len(pages)} pages, of which {len(texts)} have words")
    for page, (height, words) in zip(pages, texts):
        scale = scales(page.width, page.height) if scales else (1.0, 1.0)
        page.words = [word_of(found, float(height), scale) for found in WORD.findall(words)]
    for first, last in even_stretches(sizes):
        for page, drawn in zip(pages[first:last], drawings_of(pdf, first + 1, last), strict=True):
            scale = scales(page.width, page.height) if scales else (1.0, 1.0)
            read_paths(page, drawn, scale)
            page.width, page.height = page.width * scale[0], page.height * scale[1]
    return pages


def even_stretches(sizes):
    """From and to, of pages that follow each other and are of one size."""
    starts = [k for k, size in enumerate(sizes) if k == 0 or size != sizes[k - 1]]
    return zip(starts, [*starts[1:], len(sizes)])


def drawings_of(pdf, first, last):
    """The pages as SVG; poppler puts several pages of one size into one file."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "pages.svg"
        output("pdftocairo", "-svg", "-origpagesizes", "-noshrink", "-f", first, "-l", last, pdf, target)
        root = ElementTree.parse(target).getroot()
    return list(root.iter(f"{SVG}page")) if last > first else [root]


def word_of(found, height, scale):
    left, top, right, bottom = (float(figure) for figure in found[:4])
    box = (left, height - bottom, right, height - top)
    return Word(unescaped(found[4]), tuple(v * MM * scale[k % 2] for k, v in enumerate(box)))


def unescaped(text):
    for sign, plain in (("&lt;", "<"), ("&gt;", ">"), ("&quot;", '"'), ("&amp;", "&")):
        text = text.replace(sign, plain)
    return text


def read_paths(page, drawn, scale):
    for path in drawn.iter(f"{SVG}path"):
        style = path.get("style", "")
        pen = STROKE.search(style)
        if pen is None or "fill:none" not in style:
            continue
        grown, points, curves, closed = shape_of(path, page.height, scale)
        put(page, float(pen[1]) * grown * MM, points, curves, closed)


def put(page, pen, points, curves, closed):
    """Whole circles, single lines and rectangles; all else is of no interest."""
    is_pen = lambda wanted: abs(pen - wanted) < SAME_PEN
    if curves == 4 and len(points) == 13:
        # Ends of the four curves; the first is the start of the path.
        ends = points[3:13:3]
        centre = tuple(sum(p[k] for p in ends) / 4 for k in (0, 1))
        radius = sum(math.dist(p, centre) for p in ends) / 4
        if is_pen(HAIR_PEN) and abs(radius - MARK_RADIUS) < 0.05:
            page.marks.append(centre)
        elif is_pen(RIM_PEN):
            page.rims.append((centre, 2 * radius))
    elif curves == 0 and len(points) == 2 and not closed:
        (page.edges if is_pen(EDGE_PEN) else page.lines).append(tuple(points))
    elif curves == 0 and closed and len(points) == 4:
        xs, ys = zip(*points)
        page.boxes.append((min(xs), min(ys), max(xs), max(ys)))


def shape_of(path, height, scale):
    """How much the path is enlarged, its points (mm, y up), the number of its curves, and whether it is closed; no points where it has several parts."""
    words = path.get("d").strip()
    curves = words.count("C")
    closed = "Z" in words
    # After closing, a path is told to move to where it began.
    words = re.sub(r"Z\s*M[^MLCZ]*$", "Z", words)
    figures = [float(f) for f in FIGURE.findall(words)]
    matrix = MATRIX.match(path.get("transform", "")) or MATRIX.match("matrix(1,0,0,1,0,0)")
    a, b, c, d, e, f = (float(v) for v in FIGURE.findall(matrix[1]))
    pairs = zip(figures[::2], figures[1::2])
    points = [((a * x + c * y + e) * MM * scale[0], (height - (b * x + d * y + f) * MM) * scale[1]) for x, y in pairs]
    return math.sqrt(abs(a * d - b * c)), points if words.count("M") == 1 else [], curves, closed


def output(*command):
    return subprocess.run([str(word) for word in command], check=True, capture_output=True, text=True).stdout
