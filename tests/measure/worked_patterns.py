"""Patterns written down for one test, worked and measured."""

from textwrap import dedent, indent

from loopleaf.fabric import PatternWork, work_pattern
from loopleaf.measure import Measured, measure
from loopleaf.pattern import load

HEAD = """\
title: Sample
terms: US
materials:
  yarns:
    A: {weight: 4, ball: {grams: 50, metres: 85}}
    B: {weight: 4, ball: {grams: 50, metres: 85}}
    C: {weight: 4, ball: {grams: 50, metres: 85}}
  hook: 5 mm
gauge: {stitch: sc, stitches: 20, rows: 20, over: 10 cm}
turning chains: {sc: does not count, hdc: does not count, dc: counts, tr: counts, dtr: counts}
chain spaces: not counted
"""

FLOWER = (
    "ch 1, 5 sc in ring, join",
    "ch 1, (sc, hdc, dc, hdc, sc) in each st around, join",
    "ch 1, *BPsc around next sc of round 1, ch 4; rep from * around, join",
    "ch 1, (sc, hdc, 3 dc, hdc, sc) in each ch-4 sp around, join",
    "ch 1, *BPsc around next sc of round 3, ch 6; rep from * around, join",
    "ch 1, (sc, hdc, 5 dc, hdc, sc) in each ch-6 sp around, join",
)
"""Three rows of petals, each behind the one before."""


def worked(pieces: str, more: str = "", head: str = HEAD) -> PatternWork:
    """The pattern with these pieces (and further fields of the file), worked."""
    text = head + dedent(more) + "pieces:\n" + indent(dedent(pieces).strip("\n"), "  ") + "\n"
    source = load(text.encode(), "sample.yml")
    assert source.pattern is not None, source.findings
    return work_pattern(source)


def measured(pieces: str, more: str = "", head: str = HEAD) -> Measured:
    """The same, measured; the lines must have worked out."""
    work = worked(pieces, more, head)
    assert not work.problems, work.problems
    assert not [t for piece in work.pieces for r in piece.rounds for t in r.troubles]
    return measure(work)


def rows(*lines: str, chain: int = 11, name: str = "cloth", fields: str = "") -> str:
    """A piece in rows on a chain of 11 (10 single crochet)."""
    return _piece(name, "rows", f"chain {chain}", "row", lines, fields)


def rounds(*lines: str, start: str = "magic ring", name: str = "disc", fields: str = "") -> str:
    """A piece in joined rounds."""
    return _piece(name, "joined rounds", start, "round", lines, fields)


def _piece(name: str, how: str, start: str, word: str, lines: tuple[str, ...], fields: str) -> str:
    head = [f"{name}:", "  yarn: A", f"  worked: {how}", f"  start: {start}"]
    head += [f"  {line}" for line in dedent(fields).strip("\n").split("\n") if line]
    numbered = [f'    - {{{word}: {at}, work: "{line}"}}' for at, line in enumerate(lines, start=1)]
    return "\n".join([*head, f"  {word}s:", *numbered]) + "\n"
