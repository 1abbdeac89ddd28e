"""The measures of a pattern as a table for the terminal, each with its working."""

import re
from collections.abc import Iterator, Mapping, Sequence

from .. import trade
from ..measure import (
    OTHER_OFF,
    Band,
    Earned,
    Measured,
    PieceMeasure,
    RoundSize,
    Scale,
    YarnNeed,
    amounts,
    because,
    to_learn,
)
from ..measure.cords import ENDS_AND_KNOT_MM, TIMES_AROUND
from ..measure.finished import What
from ..measure.yarn import ESTIMATE_OFF, RESERVE
from .measure_finishing import cords_told, tails_told, threadings_told, unsaid_tails_told
from .measure_working import working


def measure_text(measured: Measured) -> str:
    """Size, rounds, cords, tails, yarn, time, level and cautions; with sizes, a block for each."""
    pattern = measured.pattern
    lines = [pattern.title, ""]
    for piece in measured.pieces:
        for size in range(pattern.size_count):
            lines += _piece(measured, piece, size)
    for size in range(pattern.size_count):
        lines += _whole(measured, size)
    lines.append(f"Level: {because(measured.level, pattern, pattern.terms)}")
    lines += [f"  to learn first: {sentence}" for sentence in to_learn(measured.level, pattern.terms)]
    if measured.cautions:
        lines.append("Please mind:")
        lines += [_caution(one) for one in measured.cautions]
    lines += _other_yarns(measured)
    return "\n".join(lines) + "\n"


def _caution(one: Earned) -> str:
    named = ", ".join(row.name for row in one.caution.standards)
    return f"  {one.caution.title}: {', '.join(one.because)}" + (f"; {named}" if named else "")


def _named(measured: Measured, size: int) -> str:
    return f" (size {measured.pattern.sizes[size]})" if measured.pattern.sizes else ""


def _piece(measured: Measured, piece: PieceMeasure, size: int) -> Iterator[str]:
    yield f"{piece.name}{_named(measured, size)}"
    if piece.scale is None or not piece.rounds or not piece.rounds[size]:
        yield f"  {_unmeasured(measured, piece)}"
        yield ""
        return
    yield f"  a stitch is {_scale(piece.scale)}"
    for what, band in _told(measured, piece, size):
        how = _how(piece, size, what)
        yield f"  {what:<8} {amounts.length(band.middle):<22} {_between(band)}{how and f', {how}'}"
    for stretch in piece.shape[size]:
        run = stretch.first if stretch.first == stretch.last else f"{stretch.first}-{stretch.last}"
        yield f"  {_FORMS[stretch.form]}: {run}"
    yield from _ball(piece, size)
    way = "around" if piece.in_rounds else "along the row" if piece.from_a_point else "wide"
    across = dict(zip(*_across(piece, size), strict=True))
    wide = f"{'across':<18}  " if any(across.values()) else ""
    up = "along the cloth" if piece.in_rounds or piece.from_a_point else "height"
    yield f"  {'':>7}  {'stitches':>8}  {way:<18}  {wide}{up:<18}  working"
    made = {
        one.label: held for one, held in zip(piece.rounds[size], piece.contents[size], strict=True) if one
    }
    marks = {
        one.label: one
        for one in measured.checkpoints
        if one.piece == piece.name and one.length_mm[size] is not None
    }
    for alike in _runs(piece.known_rounds(size), frozenset(marks)):
        last = alike[-1]
        label = last.label if len(alike) == 1 else f"{alike[0].label}-{last.label}"
        yield (
            f"  {label:>7}  {last.stitches:>8}  {amounts.length(last.length_mm):<18}"
            f"  {_wide(across, last.label)}{amounts.length(last.height_mm):<18}"
            f"  {working(alike, made[last.label], piece.scale)}"
        )
        mark = marks.get(last.label)
        if mark is not None:
            yield f"  {'':>7}  here: {_MARKS[mark.what].format(*_marked(mark.length_mm, mark.wide_mm, size))}"
    yield ""


def _how(piece: PieceMeasure, size: int, what: What) -> str:
    """How a measure is taken, where its name alone doesn't tell."""
    fan = piece.fans[size] if piece.fans else None
    if fan is not None and fan.diagonal is None:
        return _OF_A_FAN.get(what, "")
    return "along the cloth" if what == "height" and piece.along_cloth else ""


_OF_A_FAN: Mapping[What, str] = {
    "around": "along the last row",
    "width": "from tip to tip",
    "across": "from tip to tip",
    "length": "from the middle of the top edge to the lowest point",
    "height": "from the middle of the top edge to the lowest point",
}


def _across(piece: PieceMeasure, size: int) -> tuple[list[str], list[float | None]]:
    """Labels of the rounds that a size has, and how far across the work is at each."""
    found = piece.across_mm[size] if piece.across_mm else (None,) * len(piece.rounds[size])
    known = [(one.label, mm) for one, mm in zip(piece.rounds[size], found, strict=True) if one is not None]
    return [label for label, _ in known], [mm for _, mm in known]


def _wide(across: Mapping[str, float | None], label: str) -> str:
    """The column of how far across a round is; "" where the piece has none."""
    mm = across[label]
    told = "" if mm is None else amounts.length(mm)
    return f"{told:<18}  " if any(across.values()) else ""


def _unmeasured(measured: Measured, piece: PieceMeasure) -> str:
    """Why a piece has no table of rounds."""
    if measured.pattern.pieces[piece.name].worked == "chain":
        return "a chain, not measured in rounds: its length stands under Cords"
    if piece.scale is None:
        return "not measured: the pattern gives no gauge for it"
    return "not measured: it has no rounds"


def _ball(piece: PieceMeasure, size: int) -> Iterator[str]:
    ball = piece.ball[size] if piece.ball else None
    if ball is not None:
        widest = f"round {ball.first}" if ball.first == ball.last else f"rounds {ball.first}-{ball.last}"
        yield f"  makes a ball: widest at {widest}, turns in at round {ball.turns}"


def _told(measured: Measured, piece: PieceMeasure, size: int) -> Iterator[tuple[What, Band]]:
    """What a piece measures, each once: rows have no way around and no height beside their length, unless the
    author states them.
    """
    first = piece.name == measured.pieces[0].name
    stated = {one.what for one in measured.stated if one.piece == piece.name or (first and not one.piece)}
    sizes = piece.size[size]
    for what, band in sizes.items():
        twice = piece.in_rounds and what in ("width", "length") and band == sizes.get("across")
        twice |= not piece.in_rounds and _OF_ROWS.get(what) in stated
        laid = not piece.in_rounds and what in ("around", "across", "height")
        if what in stated or not (twice or laid):
            yield what, band


_OF_ROWS: Mapping[What, What] = {"width": "around", "length": "height"}
"""What a row is on a body is what it is laid flat."""


def _runs(rounds: Sequence[RoundSize], marked: frozenset[str]) -> Iterator[Sequence[RoundSize]]:
    """Rounds that follow each other and are alike, in one line; one that is marked ends it."""
    run: list[RoundSize] = []
    for one in rounds:
        if run and (_figures(one) != _figures(run[-1]) or run[-1].label in marked):
            yield run
            run = []
        run.append(one)
    if run:
        yield run


def _figures(one: RoundSize) -> tuple[int, float, float, str]:
    """What two rounds that are alike have in common."""
    return one.stitches, round(one.length_mm, 1), round(one.rise_mm, 1), one.on


def _scale(scale: Scale) -> str:
    (_, _), sample = scale.reference
    return (
        f"{sample.width_mm:.1f} mm wide and {sample.height_mm:.1f} mm high by the gauge, "
        f"give or take {sample.width_off:.0%} and {sample.height_off:.0%}"
    )


def _between(band: Band) -> str:
    if amounts.centimetres(band.low) == amounts.centimetres(band.high):
        return "as near as that is printed"
    return f"between {amounts.length(band.low)} and {amounts.length(band.high)}"


def _marked(
    length_mm: tuple[float | None, ...], wide_mm: tuple[float | None, ...], size: int
) -> tuple[str, str]:
    wide = wide_mm[size] if wide_mm else None
    return amounts.length(length_mm[size] or 0.0), amounts.length(wide or 0.0)


_FORMS = {"flat": "lies flat", "cups": "cups", "ruffles": "ruffles", "tube": "stands as a tube"}
_MARKS = {
    "across": "about {0} across",
    "around": "about {0} around",
    "width": "about {0} wide",
    "oval": "about {0} long and {1} wide",
    "polygon": "about {0} across from side to side, {1} from corner to corner",
}


def _whole(measured: Measured, size: int) -> Iterator[str]:
    name = _named(measured, size)
    if measured.cords[size]:
        ends = amounts.length(ENDS_AND_KNOT_MM)
        yield f"Cords{name}, usually at least {TIMES_AROUND:g} × around, and around + {ends}"
        yield from cords_told(measured.cords[size])
        yield from threadings_told(measured.threadings[size])
    if measured.tails[size] or measured.unsaid_tails[size]:
        yield f"Tails{name}, usually 2 to 3 times the edge"
        yield from tails_told(measured.tails[size])
        yield from unsaid_tails_told(measured.unsaid_tails[size])
    yield f"Yarn{name}, by the stitches give or take {ESTIMATE_OFF:.0%}, balls with {RESERVE:.0%} in reserve"
    for need in measured.yarn[size]:
        yield f"  {need.yarn}  {_need(need)}{_in_words(measured, need)}"
        yield from _by_piece(need)
    if not measured.yarn[size]:
        yield f"  {_no_yarn(measured)}"
    hours = measured.hours[size]
    practised, learning = amounts.about_hours(hours.practised), amounts.about_hours(hours.learning)
    yield f"Time{name}: {practised} with practice, {learning} for someone new to it"


def _no_yarn(measured: Measured) -> str:
    """Why there is no amount of any yarn."""
    lacking = [] if measured.pattern.gauge else ["gives no gauge"]
    lacking += [] if measured.pattern.materials.yarns else ["lists no yarn under `materials`"]
    return f"not known: the pattern {' and '.join(lacking or ['works none of its yarns'])}"


def _need(need: YarnNeed) -> str:
    told = [amounts.about_grams(need.grams)] if need.grams else []
    told += [amounts.about_metres(need.metres)] if need.metres else []
    if need.balls:
        buy = need.balls[1]  # enough for a hand that takes much: a shop may not have the same dye lot again
        told.append(f"{buy} ball{'s' if buy > 1 else ''}")
    if not told:
        return "not known without a gauge"
    text = ", ".join(told)
    if need.weighed and need.metres is not None and need.model_metres is not None:
        off = need.model_metres.middle / need.metres.middle - 1
        share = f"{abs(off):.0%}"
        much = "as much" if share == "0%" else f"{share} {'more' if off > 0 else 'less'}"
        text += f"; as weighed: by the stitches it would be {much}"
    return text


def _in_words(measured: Measured, need: YarnNeed) -> str:
    """That steps of the finishing told in words alone, whose stitches nobody counts, take of a weighed yarn
    too.
    """
    called = re.compile(rf"\b(?:join|with|in|yarn) {re.escape(need.yarn)}\b")
    told = any(step.text and called.search(step.text) for step in measured.pattern.finishing)
    return ", which leaves out what is told in words" if need.weighed and told else ""


def _by_piece(need: YarnNeed) -> Iterator[str]:
    """A line for each piece that takes some of a yarn, where there are several."""
    grams, metres = need.grams_by_piece(), need.metres_by_piece()
    if len(need.shares) < 2:
        return
    lead = "of which"
    for piece, _ in need.shares:
        told = [amounts.about_grams(grams[piece])] if grams else []
        told += [amounts.about_metres(metres[piece])] if metres else []
        if told:
            yield f"     {lead} {piece} {', '.join(told)}"
            lead = " " * len(lead)


def _other_yarns(measured: Measured) -> Iterator[str]:
    if not measured.other_yarns or not measured.pieces:
        return
    name = f"“{measured.pieces[0].name}”" + (", laid out and joined," if measured.laid_out else "")
    off = f"give or take {OTHER_OFF:.0%}"
    yield f"The same stitches of {name} in another yarn, by the usual ranges, {off}; swatch first:"
    own = [what for what, _ in _told(measured, measured.pieces[0], 0)]
    for one in measured.other_yarns:
        us = trade.us_hook(one.hook_mm) if one.hook_mm else None
        hook = f", hook about {one.hook_mm:g} mm" if one.hook_mm else ""
        hook += f" (US {us})" if us else ""
        told = list(measured.laid_out) if measured.laid_out else own
        sizes = ", ".join(
            f"{what} about {amounts.coarse_lengths(tuple(size[what].middle for size in one.size))}"
            for what in told
        )
        yield f"  weight {one.weight}{hook}: {sizes}"
