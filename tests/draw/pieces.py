"""Patterns to draw: the demo, and small ones written down for one test."""

from collections import Counter
from functools import cache
from pathlib import Path
from xml.etree import ElementTree

from loopleaf.draw import Chart, chart_of
from loopleaf.draw.subject import Subject, subject_of
from loopleaf.fabric import PatternWork, work_pattern
from loopleaf.measure import Measured, measure
from loopleaf.pattern import load
from tests.measure.worked_patterns import worked

COLLECTION = Path(__file__).resolve().parents[2] / "patterns"
DEMO = tuple(sorted(path.stem for path in COLLECTION.glob("*.yml")))
SVG = "{http://www.w3.org/2000/svg}"

SQUARE = """
square:
  yarn: A
  worked: joined rounds
  start: magic ring
  rounds:
    - {round: 1, work: "ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) x 3, join"}
    - {round: 2, work: "sl st in next 2 dc, sl st in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *(3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * around, join"}
    - {round: 3, work: "ch 1, sc in each dc around, join"}
"""  # noqa: E501
MAT = """
mat:
  yarn: A
  worked: joined rounds
  start: magic ring
  rounds:
    - {round: 1, work: "ch 1, 6 sc in ring, join", count: 6}
    - {round: 2, work: "ch 1, 2 sc in each st around, join", count: 12}
    - {round: 3, work: "ch 1, (sc in next st, 2 sc in next st) x 6, join", count: 18}
"""


@cache
def demo(name: str) -> tuple[PatternWork, Measured]:
    """One of the demo's patterns, worked and measured."""
    path = COLLECTION / f"{name}.yml"
    work = work_pattern(load(path.read_bytes(), path.name))
    return work, measure(work)


@cache
def charted(name: str, piece: str = "") -> Chart:
    """The chart of one of the demo's pieces, or of all that a pattern has."""
    work, measured = demo(name)
    found = chart_of(work, piece, measured)
    assert found is not None
    return found


def rows(*lines: str, chain: int = 11) -> str:
    """A cloth in rows, turned after each."""
    entries = "\n".join(f'    - {{row: {at}, work: "{line}"}}' for at, line in enumerate(lines, 1))
    return f"cloth:\n  yarn: A\n  worked: rows\n  start: chain {chain}\n  rows:\n{entries}\n"


def rounds(*lines: str, worked_in: str = "joined rounds", start: str = "magic ring") -> str:
    """A piece in rounds."""
    entries = "\n".join(f'    - {{round: {at}, work: "{line}"}}' for at, line in enumerate(lines, 1))
    return f"piece:\n  yarn: A\n  worked: {worked_in}\n  start: {start}\n  rounds:\n{entries}\n"


def subject(work: PatternWork, name: str = "") -> Subject:
    """What there is to draw of a piece, of the first one without a name."""
    piece = work.piece(name) if name else work.pieces[0]
    assert piece is not None
    found = subject_of(work, piece, measure(work))
    assert found is not None
    return found


def subject_from(text: str, more: str = "") -> Subject:
    """The same of a small pattern, whose rounds must work out."""
    work = worked(text, more)
    assert not work.problems, work.problems
    assert not [t for piece in work.pieces for r in piece.rounds for t in r.troubles]
    return subject(work)


def tree(svg: str) -> ElementTree.Element:
    """The drawing read as XML."""
    return ElementTree.fromstring(svg)


def marked(svg: str, piece: str = "") -> list[ElementTree.Element]:
    """The signs of a diagram (or of one of its pieces), in the order drawn."""
    root = tree(svg)
    if piece:
        root = next(group for group in root.iter(f"{SVG}g") if group.get("data-piece") == piece)
    return signs_in(root)


def signs_in(root: ElementTree.Element) -> list[ElementTree.Element]:
    """The signs in a part of a diagram."""
    return [sign for sign in root.iter() if sign.get("data-kind")]


def stitches_by_kind(signs: list[ElementTree.Element], label: str) -> Counter[str]:
    """The counted stitches of a round, each by its kind: a chain that stands for a stitch as that stitch."""
    return Counter(
        sign.get("data-counts-as") or str(sign.get("data-kind"))
        for sign in signs
        if sign.get("data-round") == label and sign.get("data-stitch")
    )
