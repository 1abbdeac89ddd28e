"""Repeated rows end inside their repeat.

What: `{rows: 4-10, repeat: 2-3}` works rows 2 and 3 again and again; the last number falls on the first of
the two.

Why it matters: The maker wonders whether to finish the repeat; the next row may not fit on it.

Wrong:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}
      - {row: 2, work: "ch 1, sc in each st across, turn", count: 10}
      - {row: 3, work: "ch 1, sc in each st across, turn", count: 10}
      - {rows: 4-8, repeat: 2-3}

Right:

    worked: rows
    start: chain 11
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn", count: 10}
      - {row: 2, work: "ch 1, sc in each st across, turn", count: 10}
      - {row: 3, work: "ch 1, sc in each st across, turn", count: 10}
      - {rows: 4-9, repeat: 2-3}

When to ignore: When it is meant to end there.
"""

from ..rule import rule

RULE = rule(__name__, __doc__, "warning")
