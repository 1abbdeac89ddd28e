"""Numbers and stitches in words: `1 stitch`, `24 ch-1 sps`, `8 (10, 12)`, each in the file's own terms."""

from collections.abc import Iterable, Mapping, Sequence

from ..notation.style import Style
from ..notation.tree import Stitch
from .subject import Subject

Key = str | tuple[str, int]
"""A neutral name in a count: `double`, `front post double`, `("space", 2)` or `space 2`, `shell`."""

_PLACES = {
    "corner": ("corner sp", "corner sps"),
    "block": ("block", "blocks"),
    "picot": ("picot", "picots"),
    "stitch": ("st", "sts"),
    "chain": ("ch", "chs"),
    "loop": ("loop", "loops"),
    "group": ("group", "groups"),
    "post": ("post st", "post sts"),
    "ring": ("ring", "rings"),
    "row-end": ("row end", "row ends"),
    "edge": ("st of the edge", "sts of the edge"),
    "gap": ("gap between stitches", "gaps between stitches"),
}


def number_of(number: int, one: str, many: str | None = None) -> str:
    """`1 stitch`, `20 stitches`, `3 places`."""
    if many is None:
        many = one + ("es" if one.endswith(("ch", "sh", "s")) else "s")
    return f"{number} {one if number == 1 else many}"


def kind_name(key: Key, subject: Subject, number: int = 1) -> str:
    """A stitch or place by its short name in the file's terms: `dc`, `ch-2 sps`, `FPdc`, `3-dc cl`."""
    many = number != 1
    if isinstance(key, tuple):
        key = f"{key[0]} {key[1]}"
    name = key.removeprefix("special ")
    if name in subject.pattern.special_stitches:
        return _style(subject).stitch(Stitch("special", name=name), many)
    word, _, length = key.partition(" ")
    if word == "space":
        return _style(subject).word("chain-n-space" if length else "chain-space", many, length)
    if word in _PLACES:
        return _PLACES[word][many]
    return _style(subject).stitch(_stitch(key), many)


def _stitch(key: str) -> Stitch:
    """The stitch of a neutral key: `double`, `front post double`, `double cluster 3`."""
    words = key.split(" ")
    post = words[0] if words[1:2] == ["post"] else ""
    kind, *form = words[2:] if post else words
    legs = int(form[1]) if len(form) > 1 and form[1].isdigit() else 0
    return Stitch(kind, form[0] if form else "", legs, post=post)


def chain_name(length: int, subject: Subject) -> str:
    """Chains to make: `ch 3`, in UK print `3ch`."""
    return _style(subject).word("chains", n=length)


def arch_name(length: int, subject: Subject) -> str:
    """Chains that are there: `ch-3`, in UK print `3ch`."""
    return _style(subject).word("arch", n=length)


def _style(subject: Subject) -> Style:
    return Style(subject.pattern.terms, vocabulary=subject.work.vocabulary)


def kind_of(key: Key, subject: Subject, number: int) -> str:
    """`24 dc`, `1 ch-2 sp`."""
    return f"{number} {kind_name(key, subject, number)}"


def tally(counts: int | Mapping[Key, int], subject: Subject) -> str:
    """A count as an author writes it: `48`, or `24 dc, 24 ch-1 sps`."""
    if isinstance(counts, int):
        return str(counts)
    return ", ".join(kind_of(key, subject, number) for key, number in counts.items())


def in_sizes(values: Sequence[object]) -> str:
    """One value a size, as patterns print them: `8 (10, 12)`; a single value alone."""
    first, *rest = [str(value) for value in values]
    return f"{first} ({', '.join(rest)})" if rest else first


def listed(names: Iterable[str], joint: str = "and") -> str:
    """`A`, `A and B`, `A, B and C`."""
    names = list(names)
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {joint} {names[-1]}"


def ordinal(number: int) -> str:
    """`3rd`, `12th`."""
    ending = "th" if 10 < number % 100 < 14 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"


def signed(number: int) -> str:
    """`2 too high`, `1 too low`."""
    return f"{abs(number)} too {'high' if number > 0 else 'low'}"
