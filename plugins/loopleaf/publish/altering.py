"""A pattern altered as its maker asks, and what that did: in a sentence, in numbers, and line by line."""

from collections.abc import Iterator, Sequence

from ..alter import (
    Altered,
    Fitted,
    adjust,
    fit_around,
    fit_gauge,
    fit_yarn,
    length_mm,
    settings,
    swatch,
    wish,
)
from ..alter.height import adjustables, rise_of, rounds_more
from ..measure import amounts
from ..review import Checked

_SHOWN = 4


def adjusted(checked: Checked, height: str) -> tuple[str, str]:
    """The file of the pattern with another height (`+3 rounds`), and what changed.

    Raises NotUnderstood for a height that can't be read, CannotAlter where the pattern doesn't allow it.
    """
    altered = adjust(checked, wish(height))
    more = rounds_more(checked, altered.checked)
    return altered.text, _altered(altered, _taller(checked, more))


def resized(checked: Checked, around: str | None, gauge: str | None, yarn: int | None) -> tuple[str, str]:
    """The file of the nearest pattern of the same design, and what changed; one of the three wishes is given.

    Raises NotUnderstood for a wish that can't be read, CannotAlter where the design doesn't allow it.
    """
    if yarn is not None:
        fitted = fit_yarn(checked, yarn)
    elif gauge is not None:
        fitted = fit_gauge(checked, swatch(gauge))
    else:
        fitted = fit_around(checked, checked, length_mm(around or ""))
    text = fitted.altered.text if fitted.altered is not None else checked.source.text
    return text, _fitted(fitted, checked)


def _altered(altered: Altered, sentence: str) -> str:
    """The sentence, sizes, yarn and time as they are now, the lines that differ, what needs a look."""
    lines = [f"{altered.measured.pattern.title}: {sentence}", *_numbers(altered), "What changed:"]
    lines += [f"  {change}" for change in altered.changes]
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


def _fitted(fitted: Fitted, checked: Checked) -> str:
    """The same for a pattern resized; where it was the nearest itself, that, and why none is nearer."""
    around = amounts.length(fitted.around_mm)
    if fitted.altered is not None:
        text = _altered(fitted.altered, f"now {around} {_way(checked)}.")
    else:
        title = checked.measured.pattern.title if checked.measured is not None else checked.source.file
        text = f"{title}: the nearest of this design is the pattern as it is, {around} {_way(checked)}.\n"
    if fitted.passed:
        text += "\n".join(["Nearer, but not possible:", *_passed(fitted.passed)]) + "\n"
    return text


def _way(checked: Checked) -> str:
    first = checked.measured.pieces[0] if checked.measured is not None else None
    return "around" if first is None or first.in_rounds else "wide"


def _passed(reasons: Sequence[str]) -> Iterator[str]:
    yield from (f"  {reason}" for reason in reasons[:_SHOWN])
    if len(reasons) > _SHOWN:
        yield f"  and {len(reasons) - _SHOWN} more."


def heights(checked: Checked) -> str:
    """The heights on offer."""
    offered = settings(checked)
    title = checked.measured.pattern.title if checked.measured is not None else checked.source.file
    if not offered:
        return f"{title}: no rounds are marked `adjustable: height`, so its height stays as it is.\n"
    lines = [f"{title} can be made with"]
    lines += [f"  {_taller(checked, one.more)}" for one in offered]
    return "\n".join(lines) + "\n"
