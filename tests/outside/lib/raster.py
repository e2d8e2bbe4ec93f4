"""A page in pixels, black or white, as a printer would put it on paper, and places measured on it in mm."""

import math
import re
import subprocess

import numpy

DPI = 600
# A dark stretch that is wider than this is no single line of a drawing, mm.
WIDEST_LINE = 0.9


class Raster:
    """
    One page at 600 dots to the inch, by poppler's pdftoppm, without shades of grey. A printer that errs prints it larger
    by `scale` along x and y. Places are mm on the printed paper, from its lower left corner; `height` is that of the paper.
    """

    def __init__(self, pdf, number, height, scale=(1.0, 1.0)):
        dots = [f"{DPI * factor:.9f}" for factor in scale]
        command = ["pdftoppm", "-mono", "-rx", dots[0], "-ry", dots[1], "-f", str(number), "-l", str(number), "-singlefile", str(pdf)]
        data = subprocess.run(command, check=True, capture_output=True).stdout
        header = re.match(rb"P4\s+(\d+)\s+(\d+)\s", data)
        if header is None:
            raise ValueError(f"{pdf}: pdftoppm wrote no picture")
        self.width, self.rows = int(header[1]), int(header[2])
        self.height = height
        packed = numpy.frombuffer(data, numpy.uint8, offset=header.end())
        self.packed = packed.reshape(self.rows, (self.width + 7) // 8)

    def dark(self, points):
        """Whether the paper is black at places, an array of x and y; outside of it all is white."""
        columns = numpy.floor(points[..., 0] * DPI / 25.4).astype(int)
        rows = numpy.floor((self.height - points[..., 1]) * DPI / 25.4).astype(int)
        on_it = (columns >= 0) & (columns < self.width) & (rows >= 0) & (rows < self.rows)
        columns, rows = numpy.where(on_it, columns, 0), numpy.where(on_it, rows, 0)
        return on_it & ((self.packed[rows, columns >> 3] >> (7 - (columns & 7))) & 1).astype(bool)

    def stretches(self, start, end):
        """Dark stretches on the way from a point to another: the distances at which each begins and ends."""
        length = math.dist(start, end)
        steps = numpy.arange(0, length, 0.005)
        way = numpy.subtract(end, start) / length
        dark = self.dark(numpy.asarray(start) + steps[:, None] * way)
        turns = numpy.flatnonzero(numpy.diff(numpy.concatenate(([0], dark, [0]))))
        return [(float(a) * 0.005, float(b) * 0.005) for a, b in zip(turns[::2], turns[1::2])]

    def line_at(self, point, axis, reach):
        """Where a line that stands across an axis crosses it near a point; nothing where none does."""
        start, end = list(point), list(point)
        start[axis] -= reach
        end[axis] += reach
        middles = [start[axis] + (a + b) / 2 for a, b in self.stretches(start, end) if b - a < WIDEST_LINE]
        return min(middles, key=lambda at: abs(at - point[axis]), default=None)

    def line_along(self, line, axis, reach=0.6):
        """The same for a whole line, the middle one of many places along it, so that what crosses it does no harm."""
        shares = numpy.linspace(0.06, 0.94, 23)
        found = [self.line_at([a + (b - a) * share for a, b in zip(*line)], axis, reach) for share in shares]
        found = [at for at in found if at is not None]
        return float(numpy.median(found)) if len(found) >= 8 else None

    def circle(self, centre, radius, reach=0.7):
        """
        Centre and radius of a circle that is drawn near a place: its line is looked for on rays from there, those beside
        the arms of a cross apart, and a circle laid through what is found; what lies off it is something else.
        """
        reach = min(reach, 0.8 * radius)
        found = []
        for degrees in range(0, 360, 4):
            if min(degrees % 90, 90 - degrees % 90) < 10:
                continue
            way = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
            start = [c + w * (radius - reach) for c, w in zip(centre, way)]
            end = [c + w * (radius + reach) for c, w in zip(centre, way)]
            lines = [(a + b) / 2 for a, b in self.stretches(start, end) if b - a < WIDEST_LINE]
            if lines:
                far = min(lines, key=lambda at: abs(at - reach)) + radius - reach
                found.append([c + w * far for c, w in zip(centre, way)])
        return round_through(numpy.array(found))

    def dot(self, centre, reach=0.35):
        """The middle of what is black close round a place; nothing where all is white."""
        steps = numpy.arange(-reach, reach, 0.01)
        x, y = numpy.meshgrid(steps, steps)
        near = x * x + y * y <= reach * reach
        dark = near & self.dark(numpy.stack([centre[0] + x, centre[1] + y], axis=-1))
        return (centre[0] + float(x[dark].mean()), centre[1] + float(y[dark].mean())) if dark.any() else None


def round_through(points):
    """The circle that lies nearest to points, without those that lie off it; nothing where too few are left."""
    for _ in range(4):
        if len(points) < 16:
            return None
        x, y = points[:, 0], points[:, 1]
        sums = numpy.column_stack([x, y, numpy.ones(len(points))])
        (a, b, c), *_ = numpy.linalg.lstsq(sums, x * x + y * y, rcond=None)
        radius = math.sqrt(c + (a * a + b * b) / 4)
        off = numpy.abs(numpy.hypot(x - a / 2, y - b / 2) - radius)
        if off.max() < 0.06:
            break
        points = points[off < max(0.06, float(numpy.median(off)) * 2)]
    return (float(a) / 2, float(b) / 2), radius
