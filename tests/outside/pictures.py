"""Keeps the README's pictures of full-size pages true to the pages that the samples have now.

Usage: pictures.py FOLDER [--write]

FOLDER holds the drawn samples, as out-samples does. Each picture is a page of a PDF, made into pixels by poppler's
pdftoppm. Without --write they are made anew and compared with those in out-samples/pictures: exits with 1 where one is
missing, of another size, or more than a quarter of black darker or lighter in any 2 mm by 2 mm (readers smooth lines
each in their own way; words that moved or changed differ by more). With --write they are written there.

The last line tells how many agree. Needs poppler-utils, numpy and PIL.
"""

import subprocess
import sys
import tempfile
from pathlib import Path

import numpy
from PIL import Image

PICTURES = Path(__file__).resolve().parents[2] / "out-samples" / "pictures"
DPI = 64
BLOCK = round(2 * DPI / 25.4)
ALLOWED = 0.25 * 255  # of a block of 2 mm: a moved word fills or empties a third of one or more

# Name of the picture: file of pages in the drawn samples, and which of its pages.
PAGES = {
    "measure-first": ("pottery-studio/templates/measure-first.pdf", 1),
    "corner-with-flaps": ("pottery-studio/templates/glaze-store/left-side.pdf", 1),
    "taped-page": ("pottery-studio/templates/glaze-store/left-side.pdf", 7),
    "door": ("pottery-studio/templates/glaze-store/door-left.pdf", 3),
    "moved-strip": ("clay-cart/templates/clay-cart/left-side.pdf", 1),
    "strips": ("clay-cart/templates/clay-cart/fixed-shelf-1.pdf", 1),
}


def picture(pdf, page):
    """Pixels of a page, 0 black to 255 white."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "page"
        only = ["-f", str(page), "-l", str(page), "-singlefile"]
        subprocess.run(["pdftoppm", "-gray", "-png", "-r", str(DPI), *only, str(pdf), str(target)], check=True)
        with Image.open(target.with_suffix(".png")) as image:
            return numpy.asarray(image.convert("L"))


def blocks(pixels):
    """Mean brightness of blocks of 2 mm."""
    high, wide = (size - size % BLOCK for size in pixels.shape)
    parts = pixels[:high, :wide].reshape(high // BLOCK, BLOCK, wide // BLOCK, BLOCK)
    return parts.mean(axis=(1, 3))


def fault(name, now):
    """What is wrong with a picture, or nothing."""
    kept = PICTURES / f"{name}.png"
    if not kept.exists():
        return "there is no such picture"
    with Image.open(kept) as image:
        old = numpy.asarray(image.convert("L"))
    if old.shape != now.shape:
        return f"is {old.shape[1]} × {old.shape[0]} pixels, its page {now.shape[1]} × {now.shape[0]}"
    apart = abs(blocks(old.astype(float)) - blocks(now.astype(float)))
    worst = apart.max()
    return f"differs from its page by {worst / 255:.0%} of black" if worst > ALLOWED else None


def main(folder, write):
    faults = []
    for name, (pdf, page) in PAGES.items():
        now = picture(folder / pdf, page)
        if write:
            PICTURES.mkdir(exist_ok=True)
            Image.fromarray(now).quantize(16).save(PICTURES / f"{name}.png", optimize=True)
        wrong = fault(name, now)
        if wrong is not None:
            faults.append(f"{name}.png {wrong}; write the pictures anew, and look at them")
    print("\n".join(faults + [f"{len(PAGES) - len(faults)} of {len(PAGES)} pictures are as their pages are"]))
    return 1 if faults else 0


if __name__ == "__main__":
    arguments = [word for word in sys.argv[1:] if word != "--write"]
    if len(arguments) != 1:
        sys.exit(__doc__)
    sys.exit(main(Path(arguments[0]), "--write" in sys.argv))
