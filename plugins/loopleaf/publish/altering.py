"""A pattern altered as its maker asks, and what that did: in a sentence, in numbers, and line by line."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from ..alter import (
    Altered,
    Fitted,
    Setting,
    adjust,
    fit_around,
    fit_gauge,
    fit_sized,
    fit_yarn,
    in_size,
    length_mm,
    settings,
    swatch,
    way_around,
    wish,
)
from ..alter.height import adjustables, rise_of, rounds_more
from ..measure import YarnNeed, amounts
from ..pattern import Pattern
from ..review import Checked
from .altering_told import told

_SHOWN = 4


def adjusted(checked: Checked, height: str) -> tuple[str, str]:
    """The file of the pattern with another height (`+3 rounds`), and what changed.

    Raises NotUnderstood for a height that can't be read, CannotAlter where the pattern doesn't allow it.
    """
    altered = adjust(checked, wish(height))
    more = rounds_more(checked, altered.checked)
    return altered.text, _altered(altered, _taller(checked, more))


@dataclass(frozen=True, slots=True)
class Wanted:
    """What a maker wants of a pattern: one of the first three, or one of its sizes alone.

    piece: that is to be so far around, the first one without a name.
    """

    around: str | None = None
    gauge: str | None = None
    yarn: int | None = None
    size: str | None = None
    piece: str = ""


def resized(checked: Checked, wanted: Wanted) -> tuple[str, str]:
    """The file of the nearest pattern of the same design, and what changed.

    Raises NotUnderstood for a wish that can't be read, CannotAlter where the design doesn't allow it.
    """
    base = checked if wanted.size is None else in_size(checked, wanted.size)
    if wanted.yarn is not None:
        fitted = fit_yarn(base, wanted.yarn)
    elif wanted.gauge is not None:
        fitted = fit_gauge(base, swatch(wanted.gauge))
    elif wanted.around is None:
        return base.source.text, f"{_title(base)}: this size alone, the others are left out.\n"
    elif base.source.pattern is not None and base.source.pattern.sizes:
        base, fitted = fit_sized(base, length_mm(wanted.around), wanted.piece)
    else:
        fitted = fit_around(base, base, length_mm(wanted.around), wanted.piece)
    text = fitted.altered.text if fitted.altered is not None else base.source.text
    first = next(iter(base.source.pattern.pieces)) if base.source.pattern is not None else ""
    wanted_mm = length_mm(wanted.around) if wanted.around is not None else way_around(base, first)
    alone = checked.source.pattern is not None and bool(checked.source.pattern.sizes)
    return text, _fitted(fitted, base, wanted.piece, wanted_mm, alone=alone)


def _title(checked: Checked) -> str:
    return checked.measured.pattern.title if checked.measured is not None else checked.source.file


def _altered(altered: Altered, sentence: str) -> str:
    """The sentence, sizes, yarn and time as they are now, the lines that differ, what needs a look."""
    lines = [f"{altered.measured.pattern.title}: {sentence}", *_numbers(altered), "What changed:"]
    lines += [f"  {told(change)}" for change in altered.changes]
    if altered.remarks:
        lines += ["Please look:", *(f"  {remark}" for remark in altered.remarks)]
    return "\n".join(lines) + "\n"


def _numbers(altered: Altered) -> Iterator[str]:
    measured = altered.measured
    for size in range(measured.pattern.size_count):
        name = f" ({measured.pattern.sizes[size]})" if measured.pattern.sizes else ""
        for need in altered.yarn[size]:
            told = [amounts.about_grams(need.grams)] if need.grams else []
            told += [amounts.about_metres(need.metres)] if need.metres else []
            if told:
                yield f"  Yarn {need.yarn}{name}: {', '.join(told)}"
        yield f"  Time{name}: {amounts.about_hours(measured.hours[size].practised)}"


def _taller(checked: Checked, more: int) -> str:
    """`3 rounds more, about 3 cm (1¼ in) taller.`"""
    parts = adjustables(checked)
    word = (
        checked.measured.pattern.pieces[parts[0].piece].entries[parts[0].entry].word
        if (checked.measured is not None and parts)
        else "round"
    )
    said = f"{abs(more)} {word}{'s' if abs(more) != 1 else ''} {'more' if more > 0 else 'fewer'}"
    rise_mm = rise_of(checked, more)
    if rise_mm is None:
        return f"{said}."
    return f"{said}, about {amounts.length(abs(rise_mm))} {'taller' if more > 0 else 'shorter'}."


def _fitted(fitted: Fitted, checked: Checked, piece: str, wanted_mm: float | None, *, alone: bool) -> str:
    """The same for a pattern resized; where it was the nearest itself, that, and why none is nearer.

    wanted_mm: what was asked for, or was to stay; told where it isn't what came out. alone: it was one of
    several sizes.
    """
    around = amounts.length(fitted.around_mm)
    which = f"“{piece}” is " if piece else ""
    asked = amounts.length(wanted_mm) if wanted_mm is not None else around
    if wanted_mm is not None and amounts.centimetres(wanted_mm) == amounts.centimetres(fitted.around_mm):
        asked = around
    others = "; the other sizes are left out" if alone else ""
    if fitted.altered is not None:
        nearest = "" if asked == around else f", the nearest to {asked} that this design allows"
        altered = fitted.altered
        altered = replace(altered, remarks=(*_kept(checked, altered, piece), *altered.remarks))
        text = _altered(altered, f"{which}now {around} {_way(checked, piece)}{nearest}{others}.")
    else:
        nearest = "nearest" if asked == around else f"nearest to {asked}"
        text = (
            f"{_title(checked)}: the {nearest} of this design is the pattern as it is, {which}{around} "
            f"{_way(checked, piece)}{others}.\n"
        )
    if fitted.passed:
        text += "\n".join(["Nearer, but not possible:", *_passed(fitted.passed)]) + "\n"
    return text


def _kept(checked: Checked, altered: Altered, piece: str) -> Iterator[str]:
    """A word on the other pieces that are made apart and have as many stitches as before."""
    if checked.measured is None or checked.work is None or altered.checked.work is None:
        return
    pattern = checked.measured.pattern
    own = piece or next(iter(pattern.pieces))
    names = [
        f"“{one.name}”"
        for one in checked.measured.pieces
        if one.name != own and one.rounds and _apart(pattern, one.name)
        if _counts(checked, one.name) == _counts(altered.checked, one.name)
    ]
    if names:
        said = " and ".join([*([", ".join(names[:-1])] if names[1:] else []), names[-1]])
        keep = "keep their" if names[1:] else "keeps its"
        yield f"{said} {keep} stitches: look whether that still goes with “{own}”"


def _apart(pattern: Pattern, piece: str) -> bool:
    model = pattern.pieces[piece]
    return model.worked != "chain" and (model.start is None or not model.start.edge)


def _counts(checked: Checked, piece: str) -> list[int]:
    work = checked.work.piece(piece) if checked.work is not None else None
    return [size.count for one in (work.rounds if work else ()) for size in one.sizes if size is not None]


def _way(checked: Checked, piece: str) -> str:
    """`around` in the round, and where its author says how far around rows are; `wide` for others."""
    if checked.measured is None:
        return "around"
    pieces = checked.measured.pieces
    found = next((one for one in pieces if one.name == (piece or pieces[0].name)), None)
    stated = {
        one.what
        for one in checked.measured.stated
        if found is not None and (one.piece or pieces[0].name) == found.name
    }
    return "around" if found is None or found.in_rounds or "around" in stated else "wide"


def _passed(reasons: Sequence[str]) -> Iterator[str]:
    yield from (f"  {reason}" for reason in reasons[:_SHOWN])
    if len(reasons) > _SHOWN:
        yield f"  and {len(reasons) - _SHOWN} more."


def heights(checked: Checked) -> str:
    """The heights on offer."""
    offered = settings(checked)
    title = _title(checked)
    if not offered:
        return f"{title}: no rounds are marked `adjustable: height`, so its height stays as it is.\n"
    return "\n".join([f"{title} can be made with", *_heights(checked, offered)]) + "\n"


def heights_offered(checked: Checked) -> str:
    """The same for the table of measures; "" where none is on offer."""
    offered = settings(checked)
    return "\n".join(["Other heights, each worked:", *_heights(checked, offered), ""]) if offered else ""


def _amount(need: YarnNeed) -> str:
    """In grams, else in metres; "" where neither is known."""
    if need.grams:
        return amounts.about_grams(need.grams)
    return amounts.about_metres(need.metres) if need.metres else ""


def _heights(checked: Checked, offered: Sequence[Setting]) -> Iterator[str]:
    """A line a height: what it adds, the yarn that it takes and the time; of sizes those of the largest."""
    for one in offered:
        measured = one.altered.measured
        of_yarns = [f"{need.yarn} {amount}" for need in one.altered.yarn[-1] if (amount := _amount(need))]
        size = f"Size {measured.pattern.sizes[-1]}: " if measured.pattern.sizes else ""
        time = amounts.about_hours(measured.hours[-1].practised)
        rest = size + ", ".join([*of_yarns, time])
        yield f"  {_taller(checked, one.more)} {rest[0].upper()}{rest[1:]}"
