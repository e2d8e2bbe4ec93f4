"""Check bars of a page: where they are is read with poppler, how long they are is measured in pixels."""

from pages import Page

MM_BAR, INCH_BAR, LONG_BAR = 100.0, 101.6, 180.0
# A tick this near to where it belongs is recognised, mm, and then measured.
NEAR = 0.4


def bars_on(page: Page, raster, axis, wanted):
    """
    How long the bars along an axis are, by what they should be; nothing where the page has no line along it with ticks at
    all of these lengths from one tick.
    """
    for start, end in page.lines:
        if start[1 - axis] != end[1 - axis] and abs(start[1 - axis] - end[1 - axis]) > 0.001:
            continue
        if abs(end[axis] - start[axis]) < max(wanted) - NEAR:
            continue
        ticks = ticks_on(page, axis, start, end)
        for zero in ticks:
            ends = [nearest(ticks, zero[0] + length) for length in wanted]
            if None in ends:
                continue
            from_here = measured(raster, axis, zero)
            return {length: measured(raster, axis, tick) - from_here for length, tick in zip(wanted, ends)}
    return None


def ticks_on(page, axis, start, end):
    """Short lines that stand on a ruler: where each is along it, and a place half way up, clear of the ruler and of words."""
    low, high = sorted((start[axis], end[axis]))
    level = start[1 - axis]
    ticks = []
    for a, b in page.lines:
        if abs(a[axis] - b[axis]) > 0.001 or not low - NEAR < a[axis] < high + NEAR:
            continue
        foot, top = sorted((a[1 - axis], b[1 - axis]), key=lambda at: abs(at - level))
        if abs(foot - level) < 0.15 and 0.8 < abs(top - level) < 20:
            ticks.append((a[axis], (foot + top) / 2))
    return sorted(ticks)


def nearest(ticks, place):
    close = [tick for tick in ticks if abs(tick[0] - place) < NEAR]
    return min(close, key=lambda tick: abs(tick[0] - place), default=None)


def measured(raster, axis, tick):
    """Where a tick is in pixels, mm."""
    point = [tick[1], tick[1]]
    point[axis] = tick[0]
    at = raster.line_at(point, axis, 0.5)
    if at is None:
        raise ValueError(f"the tick at {tick[0]:.2f} mm is not in the picture")
    return at
