"""Every drawing holds to SVG 1.1 as a validator from outside knows it, and does nothing by itself.

What is newer than SVG 1.1 is taken out before: `href` without its prefix, `role`, and `data-` attributes
(all three are SVG 2).
"""

from collections.abc import Iterator
from xml.etree import ElementTree

import pytest
from svgwrite.validator2 import get_validator

from loopleaf.draw import diagram, first_picture, piece_picture
from tests.measure.worked_patterns import worked

from .pieces import DEMO, MAT, SVG, charted, demo, tree

NEWER = ("href", "role")
ACTIVE = {"script", "foreignObject", "image", "a", "animate", "set", "iframe"}
SVG_11 = get_validator("full", debug=True)


def drawings(name: str) -> Iterator[str]:
    work, measured = demo(name)
    yield charted(name).svg()
    yield charted(name).svg("UK", left_handed=True)
    yield first_picture(work, measured)
    yield first_picture(work, measured, left_handed=True)
    for piece in work.pieces:
        yield from (drawn for drawn in (piece_picture(work, piece.name, measured),) if drawn)


def hold_to_svg(element: ElementTree.Element) -> int:
    """Checks an element with all that is in it; the number of elements looked at."""
    tag = element.tag.removeprefix(SVG)
    for name, value in element.attrib.items():
        if name not in NEWER and not name.startswith("data-"):
            # A minus sign parts two numbers as well as a space does; this validator wants the space.
            text = value.replace("-", " -") if name == "d" else value
            SVG_11.check_svg_attribute_value(tag, name, text)
    for child in element:
        SVG_11.check_valid_children(tag, child.tag.removeprefix(SVG))
    return 1 + sum(hold_to_svg(child) for child in element)


@pytest.mark.parametrize("name", DEMO)
def test_drawings_are_valid_and_idle(name: str) -> None:
    for drawn in drawings(name):
        root = tree(drawn)
        assert hold_to_svg(root) >= 5  # a cord: the whole, its title, and three shapes
        assert not {element.tag.removeprefix(SVG) for element in root.iter()} & ACTIVE
        assert not [key for element in root.iter() for key in element.attrib if key.startswith("on")]
        uses = {str(use.get("href")) for use in root.iter(f"{SVG}use")}
        assert all(use.startswith("#") for use in uses)
        ids = [element.get("id") for element in root.iter() if element.get("id")]
        assert len(ids) == len(set(ids))
        assert uses <= {f"#{one}" for one in ids}


def test_the_validator_would_tell() -> None:
    drawn = diagram(worked(MAT))
    hold_to_svg(tree(drawn))
    with pytest.raises((TypeError, ValueError)):
        hold_to_svg(tree(drawn.replace('d="M', 'd="?')))
    with pytest.raises((TypeError, ValueError)):
        hold_to_svg(tree(drawn.replace("<defs>", "<defs><blink/>")))
