"""Rows that are worked alike lie alike."""

from math import dist

from loopleaf.draw.chart_layout import lay_out

from .pieces import demo, subject


def test_rows_worked_alike_lie_alike() -> None:
    """A long cloth's rows would else settle by a hair's breadth from one to the next."""
    lines = lay_out(subject(demo("ebb-scarf")[0], "scarf")).lines
    for before, line in zip(lines[40:], lines[42:], strict=False):
        pairs = zip(before.things, line.things, strict=True)
        steps = [
            (line.heads[id(b)][0] - before.heads[id(a)][0], line.heads[id(b)][1] - before.heads[id(a)][1])
            for a, b in pairs
        ]
        assert max(dist(step, steps[0]) for step in steps) < 1e-6
