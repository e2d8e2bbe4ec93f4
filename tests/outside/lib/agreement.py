"""Compares what a reader found on a drawing with what panels.json says must be there."""

import math

from panels import (
    Circle,
    DERIVED_TOLERANCE,
    Edge,
    GROOVE_LAYER,
    NAME_TOLERANCE,
    TOLERANCE,
    box_of,
    named_figure,
)


def same_hole(wanted, found):
    if max(abs(wanted.x - found.x), abs(wanted.y - found.y), abs(wanted.diameter - found.diameter)) > TOLERANCE:
        return False
    if wanted.through != found.through or (wanted.depth is None) != (found.depth is None):
        return False
    return wanted.depth is None or abs(wanted.depth - found.depth) <= NAME_TOLERANCE


def shown(hole):
    depth = "through" if hole.through else "" if hole.depth is None else f"{hole.depth:g} deep"
    return f"{hole.what} at ({hole.x:.4f}, {hole.y:.4f}), diameter {hole.diameter:.4f} {depth}".rstrip()


def near(a, b, tolerance=DERIVED_TOLERANCE):
    """True for equal points or boxes."""
    return max(abs(p - q) for p, q in zip(a, b, strict=True)) <= tolerance


def pair_off(wanted_all, found_all, same, name, proof):
    """Takes every wanted thing out of those found; what is missing or left over is a fault. How many there were."""
    left = list(found_all)
    for wanted in wanted_all:
        match = next((k for k, one in enumerate(left) if same(wanted, one)), None)
        if match is None:
            proof.fault(name, f"not in the file: {shown(wanted) if isinstance(wanted, Circle) else wanted}")
        else:
            del left[match]
    for extra in left:
        proof.fault(name, f"not in panels.json: {shown(extra) if isinstance(extra, Circle) else extra}")
    return len(wanted_all)


def same_groove(wanted, found):
    layer, box = found
    kind, width, depth = GROOVE_LAYER.match(layer).groups()
    return (
        kind == wanted.kind.upper()
        and abs(named_figure(width) - wanted.width) <= NAME_TOLERANCE
        and abs(named_figure(depth) - wanted.depth) <= NAME_TOLERANCE
        and near(wanted.box, box)
    )


def same_cutout(wanted, found):
    """Every corner and the middle of every arc is near what was found, and everything found is a corner or lies on an arc."""
    layer, points = found

    def is_near(at, by=DERIVED_TOLERANCE):
        return any(math.dist(at, point) <= by for point in points)

    def belongs(point):
        on_arc = any(abs(math.dist(point, centre) - radius) <= 2 * DERIVED_TOLERANCE for _, centre, radius in wanted.arcs)
        return on_arc or any(near(point, corner) for corner in wanted.corners)

    # Between points a degree of arc apart, the middle is at most half a degree from one of them.
    middles = all(is_near(middle, DERIVED_TOLERANCE + radius * math.radians(0.6)) for middle, _, radius in wanted.arcs)
    return layer == wanted.layer and middles and all(map(is_near, wanted.corners)) and all(map(belongs, points))


def same_mark(wanted, points):
    """The hidden hole of an edge bore is a rectangle, a slanted bore has an arrow head the way it leans."""
    if isinstance(wanted, Edge):
        return len(points) == 4 and near(wanted.box, box_of(points))
    if len(points) != 3:
        return False
    dx, dy = (sum(p[k] for p in points) / 3 - wanted.at[k] for k in (0, 1))
    size = math.hypot(*wanted.way)
    beside = abs(dx * wanted.way[1] - dy * wanted.way[0]) / size
    return beside <= 2 * DERIVED_TOLERANCE and dx * wanted.way[0] + dy * wanted.way[1] > 0


def same_line(wanted, line):
    kind, at = wanted
    start, end = line
    if kind == "ends":
        return near(at, end) and min(abs(start[0] - end[0]), abs(start[1] - end[1])) <= TOLERANCE
    if kind == "leaves":
        point, way = at
        dx, dy = end[0] - start[0], end[1] - start[1]
        ahead = dx * way[0] + dy * way[1]
        beside = (point[0] - start[0]) * dy - (point[1] - start[1]) * dx
        return ahead > 0 and abs(beside) / math.hypot(dx, dy) <= 2 * DERIVED_TOLERANCE and not near(middle(line), point)
    level = 1 if kind == "flat" else 0
    return abs(start[level] - end[level]) <= TOLERANCE and near(at, middle(line))


def middle(line):
    return tuple((a + b) / 2 for a, b in zip(*line))


def wanted_lines(sheet):
    """A centre line for each edge bore, a cross for each slanted or stray one, an arrow's shaft for each slanted one."""
    crosses = {lean.at for lean in sheet.leans} | {(hole.x, hole.y) for hole in sheet.strays}
    return (
        [("ends", edge.inner) for edge in sheet.edges]
        + [(kind, at) for at in sorted(crosses) for kind in ("flat", "upright")]
        + [("leaves", (lean.at, lean.way)) for lean in sheet.leans]
    )


def compare(sheet, found, proof):
    """All that is made in the face is in the file as a cut or a mark, and nothing besides; the outline is what is cut, in the finished panel at (0, 0)."""
    proof.bores += pair_off(sheet.bores, [b for b in found.bores if b is not None], same_hole, sheet.name, proof)
    proof.bores += pair_off(sheet.sinks, found.sinks, same_hole, sheet.name, proof)
    proof.grooves += pair_off(sheet.grooves, found.grooves, same_groove, sheet.name, proof)
    proof.cutouts += pair_off(sheet.cutouts, found.cutouts, same_cutout, sheet.name, proof)
    proof.marks += pair_off(sheet.strays, found.mark_circles, same_hole, sheet.name, proof)
    proof.marks += pair_off(sheet.edges + sheet.leans, found.mark_paths, same_mark, sheet.name, proof)
    pair_off(wanted_lines(sheet), found.mark_lines, same_line, sheet.name, proof)
    for want in sheet.outline:
        if not any(near(want, point, 2 * TOLERANCE) for point in found.outline):
            proof.fault(sheet.name, f"the outline has no corner at {want}")
    for point in found.outline:
        if not any(near(want, point, 2 * TOLERANCE) for want in sheet.outline):
            proof.fault(sheet.name, f"the outline has a corner at {point}, where none is cut")
    proof.files += 1
