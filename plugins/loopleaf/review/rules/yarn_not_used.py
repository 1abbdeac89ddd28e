"""A yarn stands among the materials and is never worked with.

What: Each yarn under `materials: yarns` is taken up by a piece, a round, a line or a grid.

Why it matters: The maker buys a ball that nothing needs, or a colour change has been forgotten.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen}, B: {weight: 4, name: oat}}
      hook: 5.5 mm

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm

When to ignore: When a finishing step in words uses it, for embroidery or a tassel, and doesn't name its
letter.
"""

import re
from collections.abc import Iterator

from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject
from ..texts import free_texts
from ..yarns import yarns_used


def find(subject: Subject) -> Iterator[Finding]:
    used = {use.yarn for use in yarns_used(subject)}
    if used - set(subject.pattern.materials.yarns):
        return  # a yarn that isn't listed may well be this one under another name
    joins = [step.lay_out.join for step in subject.pattern.finishing if step.lay_out]
    prose = " ".join([*(text for _, text, _ in free_texts(subject.pattern)), *joins])
    for letter, yarn in subject.pattern.materials.yarns.items():
        named = re.search(rf"\b{re.escape(letter)}\b", prose) or (
            yarn.name and re.search(rf"\b{re.escape(yarn.name)}\b", prose)
        )
        if letter not in used and not named:
            called = f" ({yarn.name})" if yarn.name else ""
            words = Words(
                message=f"Yarn {letter}{called} is listed, and nothing is worked with it.",
                suggestion=Suggestion(
                    "Take it out, or look for the round that should use it.", None, "fill-in"
                ),
            )
            yield told(
                __name__, "warning", subject, subject.source.locate_key(("materials", "yarns", letter)), words
            )


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
