"""All full-size pages of a panel, taped and laid on it, compared with what panels.json says of its holes.

A hole in a face lies where it is bored. One in an edge lies on the paper that wraps over that edge: as far beyond the fold
as its axis is from the face. Pieces that are cut out and laid on a pencil mark, or in several places, are compared as they
are: some place of the panel must have all of their holes.
"""

import math
from collections import defaultdict
from dataclasses import dataclass, field

import pages as reading
from taping import ALLOWED, laid_on, taped

# Pieces that are cut out are at least so large, mm.
SMALLEST_PIECE = 15.0


@dataclass
class Hole:
    at: tuple  # on the face as it is seen, mm
    diameter: float
    name: str
    flap: bool = False


@dataclass
class Measured:
    """What was found on the pages of a panel."""

    faults: list = field(default_factory=list)
    files: dict = field(default_factory=dict)  # pages by the name of their file
    circles: int = 0
    flaps: int = 0
    seams: int = 0
    pieces: int = 0
    pages: int = 0
    worst: float = 0.0


def measure(folder, panel):
    """Tapes all pages of a panel and compares every circle with its holes."""
    result = Measured()
    faces = defaultdict(list)
    for name in panel["files"]["pdf"]:
        result.files[name] = reading.pages_of(folder / name)
        for page in result.files[name]:
            result.pages += 1
            for part in pieces_of(page):
                try:
                    faces[part.face or page.face].append(part)
                except ValueError as trouble:
                    result.faults.append(f"{name}: {trouble}")
    seen = set()
    for face, parts in sorted(faces.items()):
        wanted = list(holes_of(panel, face))
        groups, faults = taped(parts)
        result.faults += [f"{panel['id']}, face {face}: {fault}" for fault in faults]
        for group in groups:
            seen |= compare(group, panel, face, wanted, result)
    needed = {hole.name for face in "AB" for hole in holes_of(panel, face)}
    result.faults += [f"{panel['id']}: {name} is on no page" for name in sorted(needed - seen)]
    return result


def pieces_of(page):
    """The page itself, or the pieces with holes that are cut out of it."""
    boxes = [
        box
        for box in page.boxes
        if min(box[2] - box[0], box[3] - box[1]) >= SMALLEST_PIECE and any(holds(box, centre) for centre, _ in page.rims)
    ]
    outer = [box for box in boxes if not any(box != other and holds(other, box[:2]) and holds(other, box[2:]) for other in boxes)]
    if not outer:
        return [page]
    return [page.within(box, k + 1) for k, box in enumerate(sorted(outer))]


def holds(box, point):
    return all(box[k] - 0.01 <= point[k] <= box[k + 2] + 0.01 for k in (0, 1))


def holes_of(panel, face):
    """Every circle that pages of a face may show: square holes and sinks in it, and square holes in the edges round it."""
    length, width, thickness = panel["length"], panel["width"], panel["thickness"]
    side_named = {name: key for key, name in panel["edges"].items()}
    for hole in panel["drillings"]:
        if "lean" in hole:
            continue
        at, surface = (hole["x"], hole["y"]), hole["surface"]
        if surface.startswith("edge "):
            side = side_named[surface.removeprefix("edge ")]
            if not starts_at(hole, side, length, width):
                continue
            deep = -hole["z"] if face == "A" else thickness + hole["z"]
            beyond = {"x0": (-deep, 0), "x1": (deep, 0), "y0": (0, -deep), "y1": (0, deep)}[side]
            at = (at[0] + beyond[0], at[1] + beyond[1])
        elif surface != f"face {face}":
            continue
        at = at if face == "A" else (length - at[0], at[1])
        yield Hole(at, hole["diameter"], hole["id"], surface.startswith("edge "))
        if "sink" in hole:
            yield Hole(at, hole["sink"]["diameter"], f"sink of {hole['id']}", surface.startswith("edge "))


def starts_at(hole, side, length, width):
    """Whether a hole in an edge begins at the edge itself and not at the shoulder of a rebate, where no paper is folded to."""
    return abs({"x0": hole["x"], "x1": hole["x"] - length, "y0": hole["y"], "y1": hole["y"] - width}[side]) < 0.01


def compare(group, panel, face, wanted, result):
    """The names of the holes that a group of pages shows where they are."""
    origin = laid_on(group, panel, face)
    result.faults += [f"{panel['id']}, face {face}: {fault}" for fault in group.faults]
    result.worst = max(result.worst, group.worst)
    result.seams += group.seams
    rims = [
        (tuple(o + c for o, c in zip(group.origins[number], centre)), diameter, group.pages[number])
        for number in group.origins
        for centre, diameter in group.pages[number].rims
    ]
    if None in origin and any(group.pages[number].piece for number in group.origins):
        return compare_piece(rims, origin, panel, wanted, result)
    if None in origin:
        label = group.pages[min(group.origins)].label
        result.faults.append(f"{panel['id']}, face {face}: {label} is not tied to two edges of the panel")
        return set()
    seen = set()
    for centre, diameter, page in rims:
        at = tuple(c - o for c, o in zip(centre, origin))
        alike = [(math.dist(at, hole.at), k) for k, hole in enumerate(wanted) if abs(hole.diameter - diameter) <= ALLOWED]
        error, k = min(alike, default=(math.inf, None))
        if error > ALLOWED:
            place = f"({at[0]:.3f}, {at[1]:.3f})"
            result.faults.append(f"{panel['id']}, face {face}, {page.label}: a circle of {diameter:.3f} at {place} is {error:.3f} mm from any such hole")
            continue
        result.worst = max(result.worst, error)
        result.circles += 1
        result.flaps += wanted[k].flap
        seen.add(wanted[k].name)
    return seen


def compare_piece(rims, origin, panel, wanted, result):
    """A piece that is laid on a mark: the names of all holes where it fits, as it is or turned half round."""
    result.pieces += 1
    seen = set()
    for turn in (1, -1):
        turned = [((turn * c[0], turn * c[1]), diameter) for c, diameter, _ in rims]
        for hole in wanted:
            if not turned or abs(hole.diameter - turned[0][1]) > ALLOWED:
                continue
            shift = tuple(h - c for h, c in zip(hole.at, turned[0][0]))
            if turn == 1 and any(o is not None and abs(o + s) > ALLOWED for o, s in zip(origin, shift)):
                continue
            found = [match(tuple(c + s for c, s in zip(centre, shift)), diameter, wanted) for centre, diameter in turned]
            if all(found):
                seen |= {name for name, _ in found}
                result.worst = max(result.worst, max(error for _, error in found))
    if not seen:
        result.faults.append(f"{panel['id']}: {rims[0][2].label if rims else 'a piece'} has holes that fit nowhere on the panel")
    result.circles += len(rims)
    return seen


def match(at, diameter, wanted):
    """The hole of that size at a place, and how far it is off."""
    alike = [(math.dist(at, hole.at), hole.name) for hole in wanted if abs(hole.diameter - diameter) <= ALLOWED]
    error, name = min(alike, default=(math.inf, ""))
    return (name, error) if error <= ALLOWED else None
