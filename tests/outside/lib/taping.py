"""Full-size pages as a person tapes them: a on a, b on b, and then laid on the panel by its edges.

Pages of one face are joined by the letters beside their registration marks. What is joined so is laid on the panel by the
heavy lines, which are the panel's edges; which edge a line is shows in the corners of the panel, in the distance of two
such lines, or else in the words beside it. All of them must agree.
"""

import math
import re
from collections import defaultdict
from dataclasses import dataclass, field

ALLOWED = 0.05
LETTER = re.compile(r"[a-z]{1,2}")
# A letter stands this near to the middle of its mark at most, the name of an edge this near to its line, mm.
LETTER_REACH, NAME_REACH = 6.0, 9.0
# Shorter heavy lines are no edges of a panel, unless it is so small: the little map has such.
SHORTEST_EDGE = 36.0


@dataclass
class Group:
    """Pages that are taped to each other: where the origin of each lies in the frame of the first."""

    pages: list
    origins: dict  # by number in `pages`
    faults: list = field(default_factory=list)
    worst: float = 0.0
    seams: int = 0


def lettered(page):
    """Place of each mark of a page, by its letter; faults where there is none, or one twice."""
    found, faults = {}, []
    for mark in page.marks:
        near = [(word.away(mark), word.text) for word in page.words if LETTER.fullmatch(word.text)]
        away, letter = min(near, default=(math.inf, ""))
        if away > LETTER_REACH:
            faults.append(f"{page.label}: no letter beside the mark at {shown(mark)}")
        elif letter in found:
            faults.append(f"{page.label}: two marks {letter}")
        else:
            found[letter] = mark
    return found, faults


def taped(pages):
    """The groups that the pages of one face make, and what is wrong with their marks."""
    faults, letters = [], []
    for page in pages:
        found, wrong = lettered(page)
        letters.append(found)
        faults += wrong
    owners = defaultdict(list)
    for number, found in enumerate(letters):
        for letter in found:
            owners[letter].append(number)
    pairs = defaultdict(list)
    for letter, numbers in owners.items():
        if len(numbers) == 2:
            pairs[tuple(numbers)].append(letter)
        else:
            faults.append(f"mark {letter} is on {', '.join(pages[number].label for number in numbers)}, not on two")
    seams = {pair: seam_of(letters[pair[0]], letters[pair[1]], shared) for pair, shared in pairs.items()}
    groups, left = [], set(range(len(pages)))
    while left:
        group = spread_from(min(left), pages, seams)
        left -= set(group.origins)
        groups.append(group)
    return groups, faults


def seam_of(first, second, shared):
    """Where the second page's origin lies on the first when their marks are laid on each other, the misfit, and how many marks there are."""
    shifts = [tuple(first[letter][k] - second[letter][k] for k in (0, 1)) for letter in shared]
    shift = tuple(sum(s[k] for s in shifts) / len(shifts) for k in (0, 1))
    return shift, max(math.dist(s, shift) for s in shifts), len(shared)


def spread_from(start, pages, seams):
    """Everything that hangs together with a page; rings of pages must close."""
    group = Group(pages, {start: (0.0, 0.0)})
    todo = [start]
    while todo:
        here = todo.pop(0)
        for (a, b), (shift, _, _) in seams.items():
            if here not in (a, b):
                continue
            there, sign = (b, 1) if here == a else (a, -1)
            origin = tuple(o + sign * s for o, s in zip(group.origins[here], shift))
            if there not in group.origins:
                group.origins[there] = origin
                todo.append(there)
            elif (apart := math.dist(origin, group.origins[there])) > 0:
                note(group, apart, f"{pages[a].label} and {pages[b].label} meet another way round")
    for (a, b), (_, misfit, marks) in seams.items():
        if a in group.origins:
            group.seams += 1
            note(group, misfit, f"{pages[a].label} and {pages[b].label}: marks")
            if marks < 2:
                group.faults.append(f"{pages[a].label} and {pages[b].label} share one mark alone")
    return group


def note(group, error, what):
    group.worst = max(group.worst, error)
    if error > ALLOWED:
        group.faults.append(f"{what} {error:.3f} mm off")


def laid_on(group, panel, face):
    """
    Where the panel's lower left corner lies in a group's frame, x and y, each nothing where no edge across that axis is
    shown; every heavy line must lie on an edge.
    """
    return tuple(edge_along(group, axis, panel, face) for axis in (0, 1))


def edge_along(group, axis, panel, face):
    size = panel["length"] if axis == 0 else panel["width"]
    along = panel["width"] if axis == 0 else panel["length"]
    names = edge_names(panel, face, axis)
    lines = []  # place across the axis, and which end of the panel its own page tells: 0 low, 1 high
    for number, origin in group.origins.items():
        page = group.pages[number]
        for line in page.edges:
            if level_of(line) != axis or not long_enough(line, 1 - axis, along):
                continue
            lines.append((origin[axis] + line[0][axis], side_of(page, line, axis, names, group)))
    if not lines:
        return None
    places = [place for place, _ in lines]
    low, high = min(places), max(places)
    sides = {side for place, side in lines if side is not None and place - low < 1}
    if high - low > 1:
        sides.add(0)
    if len(sides) != 1:
        group.faults.append(f"{group.pages[min(group.origins)].label}: cannot tell whether its edge is {' or '.join(names)}")
        return None
    start = low - size * sides.pop()
    for place, side in lines:
        error = min(abs(place - start), abs(place - start - size))
        note(group, error, f"an edge at {'xy'[axis]} = {place - start:.3f} of {size} mm")
        if side is not None and abs(place - start - side * size) > 1:
            group.faults.append(f"the edge at {'xy'[axis]} = {place - start:.3f} says that it is {names[side]}")
    return start


def edge_names(panel, face, axis):
    """The names of the low and the high edge across an axis, as the face is seen."""
    names = [panel["edges"][key] for key in (("x0", "x1") if axis == 0 else ("y0", "y1"))]
    return names[::-1] if face == "B" and axis == 0 else names


def level_of(line):
    """The axis across which a line stands: 0 for an upright one; nothing for a slanted one."""
    (x, y), (u, v) = line
    return 0 if abs(x - u) < 0.001 else 1 if abs(y - v) < 0.001 else None


def long_enough(line, axis, whole):
    length = abs(line[0][axis] - line[1][axis])
    return length >= min(SHORTEST_EDGE, whole - ALLOWED)


def side_of(page, line, axis, names, group):
    """0 for the low edge, 1 for the high one: by a corner, and by the words beside the line, which must agree with it."""
    corner, words = by_corner(page, line, axis), by_words(page, line, axis, names)
    if corner is not None and words is not None and corner != words:
        group.faults.append(f"{page.label}: the {names[corner]} edge is called {names[words]}")
    return corner if corner is not None else words


def by_corner(page, line, axis):
    """At a corner of the panel the other edge runs from here to the side where the wood is."""
    for other in page.edges:
        if level_of(other) != 1 - axis:
            continue
        for near, far in (other, other[::-1]):
            if min(math.dist(near, end) for end in line) < ALLOWED:
                return 0 if far[axis] > near[axis] else 1
    return None


def by_words(page, line, axis, names):
    """The name of an edge that stands beside its line: `this edge to the front`, `front: fold here`."""
    low, high = sorted(end[1 - axis] for end in line)
    told = set()
    words = page.words
    for k, word in enumerate(words):
        if word.plain not in names or word.plain == "":
            continue
        away = max(word.box[axis] - line[0][axis], line[0][axis] - word.box[axis + 2], 0)
        beside = low - NAME_REACH < word.box[1 - axis] and word.box[3 - axis] < high + NAME_REACH
        before = words[k - 1].plain if k > 0 else ""
        after = words[k + 1].plain if k + 1 < len(words) else ""
        if away < NAME_REACH and beside and (before == "the" or after == "fold"):
            told.add(names.index(word.plain))
    return told.pop() if len(told) == 1 else None


def shown(point):
    return f"({point[0]:.2f}, {point[1]:.2f})"
