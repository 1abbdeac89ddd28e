"""The hook is far from what the yarn's weight is usually worked with.

What: The first hook listed is set beside the published range of the yarns' weights, one weight to either side
included. Stuffed pieces and yarn held double are left alone.

Why it matters: The gauge can't be met with a hook of quite another size: most often a figure has slipped.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 2.5 mm

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm

When to ignore: When the cloth is meant to be so open, or so firm. The published ranges are guidelines.
"""

from collections.abc import Iterator

from ... import trade
from ...pattern import Finding
from ..rule import Words, rule, told
from ..subject import Subject
from ..tricks import is_held_together, is_stuffed, weights_used


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    weights = sorted(set(weights_used(subject).values()))
    hook = next(iter(pattern.materials.hook), None)
    if hook is None or not weights or is_stuffed(pattern) or is_held_together(pattern):
        return
    table = trade.yarn_weights()
    rows = table[max(weights[0] - 1, 0) : weights[-1] + 2]
    least = min(row.hook_mm[0] or 0 for row in rows)
    open_above = any(row.hook_mm[1] is None for row in rows)
    if least <= hook.size.mm and (open_above or hook.size.mm <= max(row.hook_mm[1] or 0 for row in rows)):
        return
    low, high = table[weights[0]].hook_mm[0], table[weights[-1]].hook_mm[1]
    usual = f"{low:g} to {high:g} mm" if high else f"{low:g} mm and more"
    called = " and ".join(f"{weight} ({table[weight].name})" for weight in {weights[0], weights[-1]})
    words = Words(
        message=f"A hook of {hook.size} is unusual for yarn of weight {called}.",
        working=f"Usual for it are {usual}; one weight to either side passes too.",
    )
    yield told(__name__, "note", subject, subject.source.locate(("materials", "hook", 0, "size")), words)


RULE = rule(__name__, __doc__, "note", find)
