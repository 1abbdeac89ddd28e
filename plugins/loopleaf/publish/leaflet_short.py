"""The abbreviations that a leaflet's own lines use: found in the lines as printed, so that the list can't
differ from them.
"""

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache
from itertools import pairwise

from .. import notation, trade
from ..fabric import Made, PatternWork, RoundWork
from ..notation.tree import Stitch
from .leaflet_parts import Abbreviation, Terms
from .leaflet_voice import Voice


@dataclass(frozen=True, slots=True)
class _Known:
    """An abbreviation that may occur: what finds it, and what is said of it.

    parts: one of these stands in every text that it occurs in, which is quickly seen.
    """

    found_by: re.Pattern[str]
    parts: tuple[str, ...]
    key: str
    name: str
    plural: str
    about: str


def abbreviations(voice: Voice, work: PatternWork, lines: Sequence[str]) -> tuple[Abbreviation, ...]:
    """What the lines abbreviate, alphabetically. The pattern's own special stitches have a list of their
    own.
    """
    own = {special.short.lower() for special in voice.pattern.special_stitches.values() if special.short}
    own |= {name.lower() for name in voice.pattern.special_stitches}
    text = _without(own, "\n".join(lines))
    whole = _SPACE.sub(" ", text)
    listed: dict[str, Abbreviation] = {}
    for known in _known(voice.terms):
        searched = text if known.key == CHAIN_SPACE else whole
        if not any(part in searched for part in known.parts):
            continue
        forms = list(dict.fromkeys(found[0] for found in known.found_by.finditer(searched)))
        if not forms or any(form.lower() in own for form in forms):
            continue
        said = _singular_first(forms)
        short, name = ", ".join(said), known.name
        if len(said) > 1:
            name = f"{known.name}, {known.plural}"
        if known.key == CHAIN_SPACE:
            short, name = _of_its_length(forms, known.name)
        elif "#" in known.name:
            short, name = _with_its_numbers(forms, known.name)
        means = _means(voice, work, known.key)
        listed.setdefault(known.key, Abbreviation(short, name, means, known.key, known.about))
    return tuple(sorted(listed.values(), key=lambda one: one.short.lower()))


CHAIN_SPACE = "abbr-chain-n-space"
MORE = " …"
"""Behind a list that goes on."""
_SPACE = re.compile(r"ch-\d+ sps?|\d+ch-sps?")
"""A chain space with its length is one abbreviation, not three."""


def _of_its_length(forms: Sequence[str], name: str) -> tuple[str, str]:
    """The chain spaces of the lengths that the lines have: `ch-1 sp, ch-2 sp`, `chain-1 space, chain-2
    space`, from four lengths on the first two for all.
    """
    lengths = sorted({int(number) for form in forms for number in re.findall(r"\d+", form)})
    listed, more = (lengths, "") if len(lengths) < 4 else (lengths[:2], MORE)
    shorts = [re.sub(r"\d+", str(length), forms[0].removesuffix("s")) for length in listed]
    names = [re.sub(r"\d+", str(length), name) for length in listed]
    return ", ".join(shorts) + more, ", ".join(names) + more


def _without(own: Iterable[str], text: str) -> str:
    """The lines without the author's own names of several words: the `sh` in `picot sh` isn't a shell."""
    for name in own:
        if " " in name:
            text = re.sub(rf"\b{re.escape(name)}\b", " ", text, flags=re.IGNORECASE)
    return text


def _with_its_numbers(forms: Sequence[str], name: str) -> tuple[str, str]:
    """`dc2tog, dc3tog` and `double crochet 2 together, …`: each number that the lines have, once."""
    by_number: dict[int, str] = {}
    for form in sorted(forms, key=len):
        by_number.setdefault(int(re.findall(r"\d+", form)[0]), form)
    numbers = sorted(by_number)
    names = [name.replace("#", str(number)) for number in numbers]
    return ", ".join(by_number[number] for number in numbers), ", ".join(names)


def _singular_first(forms: Sequence[str]) -> list[str]:
    """The singular, and its plural where that occurs too; the plural alone where only that does."""
    singular = [form for form in forms if not form.endswith("s")]
    plurals = [form for form in forms if form.endswith("s")]
    if not singular:
        return plurals[:1]
    return [singular[0], *(form for form in plurals if form == f"{singular[0]}s")]


@cache
def _known(terms: Terms) -> tuple[_Known, ...]:
    return (*_stitches(terms), *_formed(terms), *_others(terms))


def _finder(*forms: str) -> re.Pattern[str]:
    """Any of the forms as a word of its own; the `st` of `sl st` and the `tog` of `dc3tog` aren't.

    `#` stands for a number.
    """
    either = "|".join(
        re.escape(form).replace(r"\#", r"\d+") for form in sorted(set(forms), key=len, reverse=True)
    )
    return re.compile(rf"(?<![A-Za-z-])(?<![a-z]\d)(?<!\bsl )(?:{either})(?![A-Za-z0-9])")


def _entry(forms: Sequence[str], key: str, name: str, plural: str, about: str) -> _Known:
    parts = tuple(max(form.split("#"), key=len) for form in forms)
    return _Known(_finder(*forms), parts, key, name, plural, about)


def _stitches(terms: Terms) -> Iterator[_Known]:
    for row in trade.stitches():
        names = row.names(terms)
        forms = (names.short, names.short_plural)
        yield _entry(forms, f"stitch-{row.key}", names.name, names.plural, trade.say(row.how, terms))


def _formed(terms: Terms) -> Iterator[_Known]:
    """Posts, togethers, clusters of each stitch."""
    for form in trade.stitch_forms():
        pattern = form.names(terms)
        for row in trade.stitches():
            names = row.names(terms)
            filled = [
                text.format(short=names.short, name=names.name, plural=names.plural, number="#")
                for text in (pattern.short, pattern.short_plural)
            ]
            name = pattern.name.format(short=names.short, name=names.name, plural=names.plural, number="#")
            about = trade.say(form.how, terms)
            yield _entry(filled, f"stitch-{form.key}-{row.key}", name, name, about)
            if "{short}" not in pattern.short:
                break  # a picot is of chains alone, whatever the stitch


def _others(terms: Terms) -> Iterator[_Known]:
    for row in trade.abbreviations():
        word = row.word(terms)
        forms = [form for form in (word.short, word.short_plural) if form]
        if row.key == "chain-n-space":
            forms = [re.sub(r"\d+", "#", form) for form in forms]
        if any(form != word.name for form in forms):
            about = trade.say(row.meaning, terms)
            yield _entry(forms, f"abbr-{row.key}", word.name, word.plural or word.name, about)


def _means(voice: Voice, work: PatternWork, key: str) -> str:
    """What `inc` and `dec` mean here: the kind of stitch that they make, piece by piece where it differs."""
    sentence = {"abbr-increase": "increase_means", "abbr-decrease": "decrease_means"}.get(key)
    if sentence is None:
        return ""
    by_piece = {
        piece.name: list(dict.fromkeys(kind for one in piece.rounds for kind in _made_by(one, key)))
        for piece in work.pieces
    }
    told = {name: _told(voice, sentence, kinds) for name, kinds in by_piece.items() if kinds}
    if len(set(told.values())) == 1:
        return next(iter(told.values()))
    return ", ".join(f"{text} ({voice.title(name)})" for name, text in told.items())


def _told(voice: Voice, sentence: str, kinds: Iterable[str]) -> str:
    names = [notation.stitch_name(Stitch(kind), voice.terms, plural=True) for kind in kinds]
    return voice.say(sentence, stitch=" / ".join(names))


def _made_by(one: RoundWork, key: str) -> Iterator[str]:
    """The kinds that a round's increases or decreases make: two in one place, or one over two."""
    word = "inc" if key == "abbr-increase" else "dec"
    if one.line is None or f"kind='{word}'" not in repr(one.line):
        return
    made = next((size.made for size in one.sizes if size is not None), [])
    stitches = [
        each for each in made if isinstance(each, Made) and each.role == "stitch" and each.kind != "slip"
    ]
    if word == "dec":
        yield from (each.kind for each in stitches if len(each.into) == 2)
    else:
        pairs = pairwise(stitches)
        yield from (
            each.kind for each, next in pairs if each.into and next.into and each.into[0] is next.into[0]
        )
