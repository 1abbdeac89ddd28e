"""Puts free text (notes, captions, texts of special stitches) into the other terminology.

One pass over the words, the longest phrase first, so that what has been translated is never translated
again. What can't be told apart is left as it stands and reported.
"""

from dataclasses import dataclass
from functools import cache, lru_cache

from ..trade import phrases
from .lexicon import WORD, split_words
from .problem import Problem
from .stitch_words import StitchWord, plurals, stitch_words
from .style import Style
from .tree import Span
from .vocabulary import Terms, Vocabulary

Phrases = dict[str, tuple[tuple[tuple[str, ...], str], ...]]
"""By first word: further words and what they become, longest first. "" stands for: leave it, and say so."""

_BARE = frozenset({"double", "doubles", "single", "singles", "half", "halves"})
_BEFORE = frozenset({"a", "one", "each", "every", "next", "first", "last", "same", "of"})
_AFTER = frozenset({"in", "into", "around", "over", "between", ",", ".", ";", ")"})
_SIDES = frozenset({"us", "uk", "american", "british"})


@dataclass(frozen=True, slots=True)
class _Piece:
    """A word, number or sign of the text. low: in lower case."""

    low: str
    start: int
    end: int


@lru_cache(maxsize=4_000)
def translate_prose(
    text: str, source_terms: Terms, target_terms: Terms, vocabulary: Vocabulary | None = None
) -> tuple[str, tuple[Problem, ...]]:
    """The text in the other terminology, and a `prose-term-unclear` for each stitch name that can't be told
    apart.

    The pattern's own stitches keep their names. Text that is already in the target terms comes back as it is,
    with the same problems.
    """
    pieces = [_Piece(m.group().lower().replace("’", "'"), m.start(), m.end()) for m in WORD.finditer(text)]
    known = _phrases(source_terms, target_terms)
    own = _own_names(vocabulary) if vocabulary is not None else {}
    problems: list[Problem] = []
    out: list[str] = []
    copied = at = 0
    while at < len(pieces):
        taken, new = _translated(text, pieces, at, known, own, source_terms)
        if taken == 0:
            if _is_bare(pieces, at):
                problems.append(
                    _unclear(text, pieces, at, 1, "doesn't say which stitch is meant", source_terms)
                )
            at += 1
            continue
        start, end = pieces[at].start, pieces[at + taken - 1].end
        if new is None:
            other = "UK" if source_terms == "US" else "US"
            says = f"is a stitch's name in {other} terms"
            problems.append(_unclear(text, pieces, at, taken, says, source_terms))
        elif _names_its_side(pieces, at) and new != text[start:end]:
            problems.append(_unclear(text, pieces, at, taken, "is said to be one side's name", source_terms))
        elif new != text[start:end]:
            out += [text[copied:start], _dressed(text[start:end], new)]
            copied = end
        at += taken
    out.append(text[copied:])
    translated = "".join(out)
    return (text if source_terms == target_terms else translated), tuple(problems)


def _translated(
    text: str, pieces: list[_Piece], at: int, known: Phrases, own: Phrases, source: Terms
) -> tuple[int, str | None]:
    """How many words the phrase here has (0: none), and what it becomes (None: can't be told)."""
    last = _longest(own, pieces, at)[0]
    if last is not None:
        return last - at + 1, text[pieces[at].start : pieces[last].end]
    taken, new = _chains(pieces, at, source)
    if taken:
        return taken, new
    last, becomes = _longest(known, pieces, at)
    if last is None or _is_a_title(text, pieces, at):
        return 0, None
    return last - at + 1, becomes or None


def _longest(table: Phrases, pieces: list[_Piece], at: int) -> tuple[int | None, str]:
    """The last word of the longest phrase that begins here, and what it becomes; None where there is none."""
    for more, becomes in table.get(pieces[at].low, ()):
        last = _last_of(pieces, at, more)
        if last is not None and _stands_alone(pieces, last):
            return last, becomes
    return None, ""


def _is_a_title(text: str, pieces: list[_Piece], at: int) -> bool:
    """`Miss Smith` isn't to be skipped."""
    if text[pieces[at].start : pieces[at].end] != "Miss" or at + 1 >= len(pieces):
        return False
    return text[pieces[at + 1].start].isupper()


def _last_of(pieces: list[_Piece], at: int, more: tuple[str, ...]) -> int | None:
    """The index of the phrase's last word, hyphens between its words passed over; None where it isn't
    there.
    """
    index = at
    for word in more:
        index += 1
        if index < len(pieces) and pieces[index].low == "-":
            index += 1
        if index >= len(pieces) or pieces[index].low != word:
            return None
    return index


def _stands_alone(pieces: list[_Piece], last: int) -> bool:
    """`dc2tog` holds a name; a number that touches it otherwise makes it something else (`tr7`)."""
    if (
        last + 1 >= len(pieces)
        or pieces[last + 1].start != pieces[last].end
        or not pieces[last + 1].low.isdigit()
    ):
        return True
    return last + 2 < len(pieces) and pieces[last + 2].low == "tog"


def _chains(pieces: list[_Piece], at: int, source: Terms) -> tuple[int, str | None]:
    """`ch-2 sp` and `2ch-sp`, `ch 3` and `3ch`: the number goes where the other side puts it."""
    if not pieces[at].low.isdigit() and pieces[at].low not in ("ch", "chain"):
        return 0, None
    lows = [piece.low for piece in pieces[at : at + 6]]
    plain = [(low, i) for i, low in enumerate(lows) if low != "-"]
    words = [low for low, _ in plain]
    if len(words) < 2:
        return 0, None
    chain, number = (words[0], words[1]) if source == "US" else (words[1], words[0])
    if not number.isdigit() or chain not in ("ch", "chain"):
        return 0, None
    hyphen = "-" in lows[: plain[1][1]]
    glued = hyphen or pieces[at].end == pieces[at + plain[1][1]].start
    full = chain == "chain"
    space = words[2] if len(words) > 2 and words[2] in ("sp", "sps", "space", "spaces") else ""
    if not space and (full or not (source == "US" or glued)):
        return 0, None
    taken = plain[2][1] + 1 if space else plain[1][1] + 1
    if source == "US":
        joint = " " if full else "-"
        if space:
            return taken, f"{number}-chain {space}" if full else f"{number}ch{joint}{space}"
        return taken, f"{number}ch"
    if space:
        return taken, f"{chain}-{number} {space}"
    of = at > 0 and pieces[at - 1].low in ("of", "beg", "next")
    return taken, f"ch-{number}" if of else f"ch {number}"


def _is_bare(pieces: list[_Piece], at: int) -> bool:
    """Whether a `double` or `single` is used as if it were a stitch: `a double in each`, `two doubles`."""
    low = pieces[at].low
    if low not in _BARE:
        return False
    before = pieces[at - 1].low if at else ""
    after = pieces[at + 1].low if at + 1 < len(pieces) else "."
    if low in ("doubles", "singles"):
        return True
    return (before.isdigit() or before in _BEFORE) and after in _AFTER


def _names_its_side(pieces: list[_Piece], at: int) -> bool:
    """`(UK treble)`: the text says itself whose name it is."""
    before = [piece.low for piece in pieces[max(0, at - 2) : at]]
    return bool(before) and (before[-1] in _SIDES or (before[-1] == ":" and before[0] in _SIDES))


def _unclear(text: str, pieces: list[_Piece], at: int, taken: int, says: str, source: Terms) -> Problem:
    span = Span(pieces[at].start, pieces[at + taken - 1].end)
    said = text[span.start : span.end]
    return Problem(
        "prose-term-unclear",
        "warning",
        span,
        f"“{said}” {says}, so it can't be put into other terms.",
        f"The file is in {source} terms; “{said}” is left as it stands on every page.",
        ("Write the stitch's name in the file's own terms, in full or in short.", None, "fill-in"),
    )


def _dressed(old: str, new: str) -> str:
    """The new words with the old ones' capitals, and with a hyphen where they had one."""
    if "-" in old and " " not in old and " " in new and not any(c.isdigit() for c in new):
        new = new.replace(" ", "-")
    if old.isupper() and len(old) > 1 and new.islower():
        return new.upper()
    if old[0].isupper() and old[1:].islower() and new[0].islower():
        return new[0].upper() + new[1:]
    return new


# ---- the phrases ---------------------------------------------------------------------------------------


@cache
def _phrases(source: Terms, target: Terms) -> Phrases:
    """Stitch names and the trade's other words; names that only the other side has are there as unclear."""
    found: dict[tuple[str, ...], str] = {}
    sides = (0, 1) if source == "US" else (1, 0)
    way = "to-uk" if source == "US" else "to-us"
    for row in phrases():
        for pair in row.pairs:
            if row.direction in ("both", way):
                found.setdefault(split_words(pair[sides[0]]), pair[sides[1]])
    for word in stitch_words(source):
        found.setdefault(split_words(word.name), _other_name(word, target))
    other: Terms = "UK" if source == "US" else "US"
    for word in stitch_words(other):
        found.setdefault(split_words(word.name), "")
    table: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for words, becomes in found.items():
        table.setdefault(words[0], []).append((words[1:], becomes))
    return {first: tuple(sorted(rows, key=lambda r: -len(r[0]))) for first, rows in table.items()}


def _other_name(word: StitchWord, target: Terms) -> str:
    """The stitch's name in the target terms; a name that both sides have for it (`crab stitch`) stays."""
    if any(word.name == said.name and word.stitch == said.stitch for said in stitch_words(target)):
        return word.name
    return Style(target, word.full).stitch(word.stitch, word.plural)


def _own_names(vocabulary: Vocabulary) -> Phrases:
    table: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for key, special in vocabulary.specials.items():
        for name in {key, special.name, special.short} - {""}:
            for phrase in (name, *plurals(name)):
                words = split_words(phrase)
                if words:
                    table.setdefault(words[0], []).append((words[1:], phrase))
    return {first: tuple(sorted(rows, key=lambda r: -len(r[0]))) for first, rows in table.items()}
