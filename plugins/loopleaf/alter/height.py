"""A pattern made taller or shorter: its rounds marked `adjustable: height`, more or fewer of them.

How far a reader may go is set here (chosen, no source): down to half of the rounds, up to twice as many, and
never more than six steps either way.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from ..measure import Measured
from ..measure.amounts import centimetres, inches
from ..measure.finished import What
from ..pattern import Entry, Path, Pattern
from ..pattern.reading import read_length
from ..review import Checked
from .draft import CannotAlter, Draft, NotUnderstood
from .numbers import moved, renumber
from .settle import Altered, settle
from .spread import gaps

MARK = "height"
_MOST_STEPS = 6
_HEIGHTS: tuple[What, ...] = ("height", "length")


@dataclass(frozen=True, slots=True)
class Adjustable:
    """One entry of a piece whose rounds can be more or fewer.

    entry: its index. first, last: its rounds. unit: rounds that are taken together (a row repeat). rise_mm:
    what one unit adds along the fabric, None without a gauge.
    """

    piece: str
    entry: int
    first: int
    last: int
    unit: int
    rise_mm: float | None

    @property
    def units(self) -> int:
        """How often the unit is worked."""
        return (self.last - self.first + 1) // self.unit


@dataclass(frozen=True, slots=True)
class Setting:
    """One height that a reader is offered. more: rounds added, below 0 left out. rise_mm: what they add."""

    more: int
    rise_mm: float | None
    altered: Altered


@dataclass(frozen=True, slots=True)
class Wish:
    """What a reader asks for: so many rounds, or so many millimetres, more or (below 0) fewer.

    unsigned: the words, where they say neither `+` nor `-`; they may mean the whole height then.
    """

    rounds: int | None = None
    mm: float | None = None
    unsigned: str = ""


def wish(text: str) -> Wish:
    """`+3 rounds`, `-2 rows`, `+3 cm`, `-1½ in`. Raises NotUnderstood for anything else."""
    asked = " ".join(text.split())
    by = -1 if asked.startswith(("-", "−")) else 1
    signed = asked.startswith(("+", "-", "−"))
    amount, unsigned = (asked[1:].lstrip(), "") if signed else (asked, asked)
    rounds = re.fullmatch(r"(\d+)\s*(?:rounds?|rnds?|rows?)", amount, re.I)
    if rounds is not None:
        return Wish(rounds=by * int(rounds[1]), unsigned=unsigned)
    try:
        return Wish(mm=by * read_length(amount).mm, unsigned=unsigned)
    except ValueError:
        raise NotUnderstood(
            f"“{text}” isn't a change of height; write “+3 rounds”, “-2 rounds” or “+3 cm”."
        ) from None


def adjustables(checked: Checked) -> tuple[Adjustable, ...]:
    """The entries marked `adjustable: height`, in the file's order."""
    pattern, measured = checked.source.pattern, checked.measured
    if pattern is None or measured is None:
        return ()
    return tuple(
        _adjustable(pattern, measured, name, index, entry)
        for name, piece in pattern.pieces.items()
        for index, entry in enumerate(piece.entries)
        if entry.adjustable.lower() == MARK and entry.run is not None and entry.run.last is not None
    )


def _adjustable(pattern: Pattern, measured: Measured, piece: str, index: int, entry: Entry) -> Adjustable:
    run = entry.run
    assert run is not None
    assert run.last is not None
    unit = len(entry.repeat.numbers) if entry.repeat else 1
    sizes = measured.piece(piece)
    rises = [
        one.rise_mm
        for one in (sizes.known_rounds(0) if sizes and sizes.rounds else ())
        if int(one.label) in run
    ]
    rise = sum(rises) / len(rises) * unit or None if rises else None
    return Adjustable(piece, index, run.first, run.last, unit, rise)


def adjust(checked: Checked, wished: Wish) -> Altered:
    """The pattern with its height changed.

    Raises CannotAlter where that can't be, NotUnderstood where it isn't said whether it is to be more.
    """
    parts = _parts(checked)
    if wished.unsigned:
        raise NotUnderstood(_both_readings(checked, parts, wished))
    more = wished.rounds
    if more is None:
        unit = _step(parts)
        rise_mm = _rise_a_round(parts) * unit
        more = unit * round((wished.mm or 0.0) / rise_mm)
        if not more:
            said = "A round is" if unit == 1 else f"{unit} rounds, worked in turn, are"
            raise CannotAlter(
                f"{said} about {rise_mm:.0f} mm high, so no whole number of them comes nearer to that "
                "than the pattern as it is."
            )
    if not more:
        raise CannotAlter("That is the pattern as it is.")
    return _by(checked, parts, more)


def _both_readings(checked: Checked, parts: Sequence[Adjustable], wished: Wish) -> str:
    """So much more, or so much in all: how each is asked for."""
    asked = wished.unsigned
    more = f"Is “{asked}” more, or in all? For so much more write “+{asked}”."
    one = parts[0]
    if wished.rounds is not None:
        assert checked.source.pattern is not None
        word = checked.source.pattern.pieces[one.piece].entries[one.entry].word
        run = f"{word}s {one.first}-{one.last}" if one.last > one.first else f"{word} {one.first}"
        number = one.last - one.first + 1
        is_now = f"{run} {'are' if number > 1 else 'is'} {number} now"
        by = wished.rounds - number
        change = f"{by:+d} {word}{'s' if abs(by) != 1 else ''}" if by else ""
    else:
        now_mm = _high_now(checked, one.piece)
        if now_mm is None or wished.mm is None:
            return more
        said = inches if re.search(r"in|\"|″", asked) else centimetres
        is_now = f"it is about {said(now_mm)} high now"
        sign = "+" if wished.mm > now_mm else "-"
        change = "" if said(wished.mm) == said(now_mm) else f"{sign}{said(abs(wished.mm - now_mm))}"
    if not change:
        return f"{more} In all it is as it is now: {is_now}."
    return f"{more} In all: {is_now}, so write “{change}”."


def _high_now(checked: Checked, piece: str) -> float | None:
    """How high a piece is, in mm: as its author says, else as it is worked out.

    None in several sizes, and without a gauge.
    """
    measured = checked.measured
    found = measured.piece(piece) if measured is not None else None
    if measured is None or found is None or len(found.size) != 1:
        return None
    first = measured.pieces[0].name == piece
    for what in _HEIGHTS:
        for one in measured.stated:
            if one.what == what and (one.piece == piece or (first and not one.piece)):
                return one.mm(0)
    return next((found.size[0][what].middle for what in _HEIGHTS if what in found.size[0]), None)


def rise_of(checked: Checked, more: int) -> float | None:
    """How many millimetres so many more rounds add along the fabric; None without a gauge."""
    parts = adjustables(checked)
    return None if not parts or parts[0].rise_mm is None else parts[0].rise_mm / parts[0].unit * more


def rounds_more(before: Checked, now: Checked) -> int:
    """How many rounds the adjusted pattern has more, in the pieces that are adjustable; below 0, fewer."""
    pieces = {one.piece for one in adjustables(before)}
    numbers = [
        sum(len(piece.rounds) for piece in checked.work.pieces if piece.name in pieces) if checked.work else 0
        for checked in (before, now)
    ]
    return (numbers[1] - numbers[0]) // max(len(pieces), 1)


def settings(checked: Checked) -> tuple[Setting, ...]:
    """Every height that a reader is offered, lowest first, without the pattern as it is; each one worked.

    One that wouldn't check isn't offered. () where nothing is marked adjustable.
    """
    parts = adjustables(checked)
    if not parts or checked.has_errors:
        return ()
    found = []
    for steps in _offered(parts):
        more = steps * _step(parts)
        try:
            altered = _by(checked, parts, more)
        except CannotAlter:
            continue
        found.append(Setting(more, rise_of(checked, more), altered))
    return tuple(found)


def _offered(parts: Sequence[Adjustable]) -> list[int]:
    """Steps up and down, without 0."""
    units = min(sum(one.units for one in parts if one.piece == piece) for piece in {p.piece for p in parts})
    fewer, more = min(units // 2, _MOST_STEPS), min(max(units, 2), _MOST_STEPS)
    return [step for step in range(-fewer, more + 1) if step]


def _step(parts: Sequence[Adjustable]) -> int:
    return max(one.unit for one in parts)


def _parts(checked: Checked) -> tuple[Adjustable, ...]:
    parts = adjustables(checked)
    if not parts:
        raise CannotAlter(
            "No rounds of this pattern are marked `adjustable: height`. "
            "Its author marks those that a maker may work more or less often."
        )
    return parts


def _rise_a_round(parts: Sequence[Adjustable]) -> float:
    one = parts[0]
    if one.rise_mm is None:
        raise CannotAlter("Without a gauge a height can't be told in rounds; ask for rounds (“+3 rounds”).")
    return one.rise_mm / one.unit


def more_rounds(before: Checked, checked: Checked, more: int) -> Altered:
    """The pattern with so many rounds more. before: the pattern that sizes and yarn follow from.

    Raises CannotAlter where that can't be.
    """
    return _by(checked, _parts(checked), more, before)


def _by(checked: Checked, parts: Sequence[Adjustable], more: int, before: Checked | None = None) -> Altered:
    """Every piece that has such rounds gets so many more; over several of its entries they are shared out."""
    pattern = checked.source.pattern
    assert pattern is not None
    draft = Draft(checked.source)
    for piece in dict.fromkeys(one.piece for one in parts):
        own = [one for one in parts if one.piece == piece]
        for one, number in _shared(own, more).items():
            _refuse_odd(pattern, one, number)
        _write(draft, pattern, piece, _shared(own, more))
    return settle(before or checked, draft)


def _shared(own: Sequence[Adjustable], more: int) -> dict[Adjustable, int]:
    sign = -1 if more < 0 else 1
    return {one: sign * number for one, number in zip(own, gaps(len(own), abs(more)), strict=True)}


def _refuse_odd(pattern: Pattern, one: Adjustable, more: int) -> None:
    entry = pattern.pieces[one.piece].entries[one.entry]
    word = entry.word
    run = f"{word}s {one.first}-{one.last}" if one.last > one.first else f"{word} {one.first}"
    if more % one.unit:
        raise CannotAlter(
            f"{run.capitalize()} repeat {one.unit} {word}s in turn, so they can be changed by "
            f"{one.unit}, {2 * one.unit}, {3 * one.unit} … {word}s only."
        )
    if one.last - one.first + 1 + more < one.unit:
        raise CannotAlter(f"{run.capitalize()} are all that can be left out, and one of them must stay.")
    if entry.every or entry.from_:
        raise CannotAlter(f"{run.capitalize()} follow a rule of their own, so none can be added or left out.")
    if entry.n is not None:
        raise CannotAlter(f"{run.capitalize()} differ from one another, so none can be added or left out.")


def _write(draft: Draft, pattern: Pattern, piece: str, changes: dict[Adjustable, int]) -> None:
    model = pattern.pieces[piece]

    ways = [moved(one.first, one.last, more) for one, more in changes.items()]

    def to(number: int) -> int:
        return number + sum(way(number) - number for way in ways)

    for one, more in changes.items():
        entry: Path = ("pieces", piece, model.entries_field, one.entry)
        name = next(name for name in ("round", "rounds", "row", "rows") if draft.node((*entry, name)))
        first = to(one.first)
        last = first + one.last - one.first + more
        draft.value((*entry, name), str(first) if first == last else f"{first}-{last}")
    renumber(draft, pattern, piece, to, frozenset(one.entry for one in changes))
