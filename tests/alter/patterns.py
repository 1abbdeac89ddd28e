"""Patterns to alter."""

from pathlib import Path

from loopleaf.review import Checked, check

DEMO = Path(__file__).resolve().parents[2] / "patterns"

POUCH = """\
# A pouch of my own.
title: Small pouch
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
materials:
  yarns:
    A: {weight: 4, name: lichen, weighed: 40 g}   # weighed on the kitchen scale
  hook: 5.5 mm
gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}
finished size: {height: 10 cm}
turning chains: {hdc: does not count, sc: does not count}
notes: [Try it on after round 5.]
pieces:
  pouch:
    title: Pouch
    yarn: A
    worked: joined rounds
    start: magic ring
    lies flat: 1-3
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}   # eight, not six
      - round: 2
        work: ch 1, 2 hdc in each st around, join
        count: 16
      - {round: 3, work: "ch 1, (2 hdc in next st, hdc in next st) x 8, join", count: 24}
      - {rounds: 4-9, work: "ch 1, hdc in each st around, join", count: 24, adjustable: height}
      - {round: 10, work: "ch 1, sc in each st around, join", count: 24, note: Like round 9.}
      - {round: 11, as: 10, count: 24}
      - round: 12
        work: ch 1, *sc in next 2 sts, ch 2, sk 1 st; rep from * around, join, fasten off
        count: "16 sc, 8 ch-2 sps"
  flap:
    title: Flap
    yarn: A
    worked: rows
    start: {edge: pouch, round: 12}
    rows:
      - {row: 1, work: "sc in next 10 sts, leave remaining sts unworked, fasten off", count: 10}
finishing:
  - text: Fold the edge over at round 10.
"""


def checked(text: str, file: str = "pouch.yml") -> Checked:
    """A pattern's text, checked."""
    return check(text.encode(), file)


def demo(name: str) -> Checked:
    """One of the demo's patterns, checked."""
    return check((DEMO / f"{name}.yml").read_bytes(), f"{name}.yml")
