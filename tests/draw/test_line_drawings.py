"""Line drawings as a whole: valid, idle, small, printable in black, kept as they are until someone looks."""

import re
from collections.abc import Callable, Iterator
from xml.etree import ElementTree

import pytest

from loopleaf.draw import Figure, placing, profile, schematic, threading
from loopleaf.draw.letters import width_of
from loopleaf.draw.sign_sheet import symbols
from loopleaf.draw.sketch import Anchor, Sketch
from loopleaf.draw.step_drawings import techniques

from .pieces import COLLECTION, DEMO, SVG, charted, demo, tree
from .test_valid_svg import ACTIVE, hold_to_svg

NAMES = sorted(path.stem for path in COLLECTION.glob("*.yml"))
HAIRLINE_MM = 0.25 * 25.4 / 72


def figures(name: str) -> Iterator[Figure]:
    """Every line drawing of a pattern."""
    work, measured = demo(name)
    for piece in work.pieces:
        for draw in (schematic, profile, placing):
            for left_handed in (False, True):
                figure = draw(work, piece.name, measured, left_handed)
                if figure is not None:
                    yield figure
    for step in work.pattern.finishing:
        figure = threading(work, step.thread) if step.thread is not None else None
        if figure is not None:
            yield figure


def steps() -> Iterator[Figure]:
    for technique in techniques("US"):
        for step in technique.steps:
            yield from (step.right, step.left)


def _without_css(root: ElementTree.Element) -> ElementTree.Element:
    """The validator knows SVG, not CSS."""
    for style in root.iter(f"{SVG}style"):
        style.text = ""
    return root


def holds(figure: Figure) -> None:
    """Valid SVG 1.1 but for what is newer, nothing that acts, names of its own, lines that print."""
    root = tree(figure.svg)
    assert hold_to_svg(_without_css(root)) > 3
    assert not {element.tag.removeprefix(SVG) for element in root.iter()} & ACTIVE
    assert not [key for element in root.iter() for key in element.attrib if key.startswith("on")]
    ids = [element.get("id") for element in root.iter() if element.get("id")]
    assert len(ids) == len(set(ids))
    assert {str(use.get("href")) for use in root.iter(f"{SVG}use")} <= {f"#{one}" for one in ids}
    for element in root.iter():
        width = element.get("stroke-width")
        assert width is None or float(width) >= HAIRLINE_MM
    assert (root.findtext(f"{SVG}desc") or "") == figure.alt
    assert figure.alt.endswith(".")
    assert len(figure.svg) < 60_000


@pytest.mark.parametrize("name", NAMES)
def test_the_drawings_of_every_pattern_hold(name: str) -> None:
    found = list(figures(name))
    assert found
    for figure in found:
        holds(figure)
        assert float(tree(figure.svg).get("viewBox", "").split()[2]) < 150, "as wide as a page's column"


def test_the_step_drawings_hold() -> None:
    for figure in steps():
        holds(figure)


def test_colour_says_nothing_alone() -> None:
    """Every tinted or inked strand has dark edges of its own: in black its way still shows."""
    for figure in steps():
        root = tree(figure.svg)
        inked = [e for e in root.iter() if "draw-ink" in (e.get("class") or "")]
        tinted = [e for e in root.iter() if {"draw-tint", "draw-second"} & {*(e.get("class") or "").split()}]
        assert len(inked) >= len(tinted) > 0


def test_every_stitch_has_a_sign_of_its_own() -> None:
    found = symbols("US")
    for one in found:
        root = _without_css(ElementTree.fromstring(one.svg))
        assert root.attrib.pop("aria-hidden") == "true"
        assert hold_to_svg(root) == 3
    assert len({one.name for one in found}) == len(found)
    assert len({one.svg for one in found}) > len(found) - 3


def test_what_the_demo_s_charts_hold_is_among_them() -> None:
    """Every kind of sign: of other heights and with more legs they are alike."""
    names = {one.name for one in symbols("US")}
    forms = {
        (line.words["US"].startswith("picot"), bool(re.match(r"\w+?\dtog", line.words["US"])))
        for name in DEMO
        for piece in charted(name).pieces
        for line in piece.key
    }
    assert forms == {(False, False), (False, True), (True, False)}
    assert {"picot: chains in a ring", "sc2tog, single crochet 2 together"} <= names
    assert {one.other for one in symbols("UK")} >= {"dc3tog, double crochet 3 together"}


def test_the_same_drawing_again() -> None:
    work, measured = demo("lantern-pouch")
    assert schematic(work, "pouch", measured) == schematic(work, "pouch", measured)
    assert techniques("UK") == techniques("UK")


def test_kept_drawings(golden: Callable[[str, str], None]) -> None:
    """`make golden` writes them anew: look at the difference as a picture before it is kept."""
    work, measured = demo("lantern-pouch")
    thread = next(step.thread for step in work.pattern.finishing if step.thread is not None)
    kept = {
        "schematic": schematic(work, "pouch", measured),
        "profile": profile(work, "pouch", measured),
        "placing": placing(work, "pouch", measured),
        "threading": threading(work, thread),
        "step-double": next(t for t in techniques("US") if t.key == "double").steps[2].right,
        "step-front-post": next(t for t in techniques("US") if t.key == "front-post").steps[2].left,
        "step-picot": next(t for t in techniques("US") if t.key == "picot").steps[1].right,
        "step-popcorn": next(t for t in techniques("US") if t.key == "popcorn").steps[1].left,
        "step-back-post": next(t for t in techniques("US") if t.key == "back-post").steps[2].right,
        "step-reverse": next(t for t in techniques("US") if t.key == "reverse").steps[0].right,
        "step-fasten-off": next(t for t in techniques("US") if t.key == "fasten-off").steps[2].left,
    }
    for name, figure in kept.items():
        assert figure is not None
        golden(f"{name}.svg", figure.svg)


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
@pytest.mark.parametrize("left_handed", [False, True])
def test_words_have_room_in_another_typeface(anchor: Anchor, left_handed: bool) -> None:
    """A drawing opened by itself is set in what the reader has. DejaVu Sans is wide: its letters' own widths,
    in units of 2048 to their height, as its file `DejaVuSans.ttf` gives them.
    """
    widths = {"a": 1255, "b": 1300, "o": 1253, "u": 1298, "t": 803, " ": 651, "3": 1303, "c": 1126, "m": 1995}
    text = "about 3 cm"
    wide = sum(widths[letter] for letter in text) / 2048 * 4.0
    assert wide > width_of(text, 4.0)
    sketch = Sketch(left_handed)
    sketch.words((10.0, 0.0), text, anchor, 4.0)
    left, _, across, _ = (float(value) for value in _box(sketch.figure("", "", 0.0).svg))
    x = -10.0 if left_handed else 10.0
    start = {"start": 0.0, "middle": -wide / 2, "end": -wide}[anchor]
    start = -wide - start if left_handed else start
    assert left <= x + start + 1e-6
    assert left + across >= x + start + wide - 1e-6
    assert across < 1.25 * wide


def _box(svg: str) -> list[str]:
    return str(tree(svg).get("viewBox")).split()
