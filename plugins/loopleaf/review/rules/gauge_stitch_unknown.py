"""The gauge is told in a stitch that nobody knows.

What: A gauge names a stitch, one of the pattern's own special stitches, or a fabric by its name (`mesh`,
`moss stitch`, `shell pattern`).

Why it matters: A maker can't work a swatch of a stitch that isn't one. How high other stitches are is worked
out beside it, so their sizes are wrong too.

Wrong:

    gauge: {stitch: hcd, stitches: 14, rows: 10, over: 10 cm}
    finished size: {across: 2 cm}

Right:

    gauge: {stitch: hdc, stitches: 14, rows: 10, over: 10 cm}

When to ignore: When it is a fabric's own name that isn't known here; say under `special stitches` how it is
worked, or add “stitch” or “pattern” to it.
"""

import re
from collections import Counter
from collections.abc import Iterator
from difflib import get_close_matches

from ... import trade
from ...fabric.worked import Made
from ...notation import parse_count
from ...pattern import Finding, Path, Suggestion
from ..names import kind_name
from ..rule import Words, rule, told
from ..subject import Subject


def find(subject: Subject) -> Iterator[Finding]:
    for number, gauge in enumerate(subject.pattern.gauge):
        name = gauge.stitch.strip()
        if not name or _is_known(name, subject):
            continue
        path: Path = ("gauge", number, "stitch")
        words = Words(
            message=f"The gauge is told in “{name}”, which is no stitch and no fabric that is known here.",
            suggestion=_suggestion(name, subject),
        )
        yield told(__name__, "warning", subject, subject.source.locate(path), words)


def _is_known(name: str, subject: Subject) -> bool:
    """By the whole name, or by one word of it that is a stitch or makes it a fabric's name."""
    _, problems = parse_count(f"1 {name}", subject.work.vocabulary)
    if all(one.rule != "unknown-instruction" for one in problems):
        return True
    words = {word.lower() for word in re.split(r"[\s/,+-]+", name)}
    return not words.isdisjoint(_words_of(subject))


def _words_of(subject: Subject) -> set[str]:
    """Single words that make a name known, in lower case."""
    known = {word for row in trade.fabrics() for word in row.words}
    known |= {name.lower() for name in _stitches(subject) if " " not in name}
    return known


def _stitches(subject: Subject) -> list[str]:
    """The pattern's own stitches, then the table's, by their names and short names in its terms."""
    own = subject.pattern.special_stitches
    names = [*own, *(one.short for one in own.values() if one.short)]
    for row in trade.stitches():
        said = row.names(subject.pattern.terms)
        names += [said.short, said.name, *said.alternatives]
    return [name for name in names if name]


def _suggestion(name: str, subject: Subject) -> Suggestion:
    known = {one.lower(): one for one in [*sorted(_words_of(subject)), *_stitches(subject)]}
    near = get_close_matches(name.lower(), known, n=1)
    if near:
        word = known[near[0]]
        return Suggestion(f"Write “{word}”.", word, "likely")
    kinds: Counter[str] = Counter()
    for _, round in subject.rounds():
        for worked in round.sizes:
            for made in worked.made if worked is not None else ():
                if isinstance(made, Made) and made.number:
                    kinds[made.kind] += 1
    most = next((kind for kind, _ in kinds.most_common(1)), None)
    used = f" Most of its stitches are {kind_name(most, subject, 2)}." if most else ""
    return Suggestion(f"Name the stitch that the swatch is worked in.{used}", None, "fill-in")


RULE = rule(__name__, __doc__, "warning", find)
