"""A page's chart put into a document of one's own prints as the page shows it."""

import re
import subprocess
from math import cos, radians, sin
from pathlib import Path

import weasyprint
from PIL import Image

from loopleaf.draw.signs import height_of
from tests.draw.engraving import place_of
from tests.draw.pieces import SVG, charted, signs_in, tree

PAPER = 230
"""Light ink on a hair's breadth is still darker than this."""

DOTS = 144
"""Dots an inch: two a unit, where a unit is a point."""


def test_every_stem_is_printed(tmp_path: Path) -> None:
    """Those of repeats too, which are lighter: once they were cut off below their bars."""
    svg = charted("lantern-pouch", "pouch").svg()
    found = re.search(r'viewBox="0 0 (\S+) ([^"]+)"', svg)
    assert found is not None
    wide, high = float(found[1]), float(found[2])
    sheet = f"<style>@page{{size:{wide}pt {high}pt;margin:0}}body{{margin:0}}svg{{display:block}}</style>"
    weasyprint.HTML(string=sheet + svg).write_pdf(tmp_path / "chart.pdf")
    paths = str(tmp_path / "chart.pdf"), str(tmp_path / "chart")
    made = ["pdftoppm", "-r", str(DOTS), "-png", "-singlefile", *paths]
    subprocess.run(made, check=True)
    image = Image.open(tmp_path / "chart.png").convert("L")
    piece = next(group for group in tree(svg).iter(f"{SVG}g") if group.get("data-piece"))
    across, down = (float(part) for part in re.findall(r"[-\d.]+", str(piece.get("transform"))))
    looked_at = 0
    for sign in signs_in(piece):
        if sign.get("data-kind") != "hdc":
            continue
        x, y = place_of(sign)
        turned = re.search(r"rotate\((\S+)\)", sign.get("transform") or "")
        angle, half = radians(float(turned[1]) if turned else 0.0), height_of("half") / 2
        at = ((across + x + half * sin(angle)) * DOTS / 72, (down + y - half * cos(angle)) * DOTS / 72)
        left, top = (round(part) - 2 for part in at)
        darkest, _ = image.crop((left, top, left + 5, top + 5)).getextrema()
        assert isinstance(darkest, int), "of one shade"
        assert darkest < PAPER, sign.attrib
        looked_at += 1
    assert looked_at > 400
