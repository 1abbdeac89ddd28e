"""The same thing in another gauge, or in another yarn: counts changed so that its size stays.

A yarn of another weight is given the gauge that the usual ranges of both weights make likely
(`trade/yarn_weights.yml`, guidelines); a swatch decides.
"""

import re
from dataclasses import dataclass, replace

from ..measure.amounts import centimetres, nearest
from ..measure.other_yarn import likely_hook, likely_stitches
from ..pattern import Gauge, Path, Pattern
from ..review import Checked, check
from .around import Fitted, fit_around, way_around
from .draft import CannotAlter, Draft, NotUnderstood
from .height import adjustables, more_rounds
from .settle import Altered, called_as_now, in_order, remarks_on, settle

_STEP = 0.5
"""Gauges are counted in half stitches."""
_FAR = 0.1
"""A length that differs by more than a tenth is worth a word (chosen here)."""


@dataclass(frozen=True, slots=True)
class Swatch:
    """A maker's own gauge: stitches and rows over so many millimetres; rows None where they don't say."""

    stitches: float
    rows: float | None
    over_mm: float


def swatch(text: str) -> Swatch:
    """`18 sts, 13 rows / 10 cm`; without a length over 10 cm. Raises CannotAlter for anything else."""
    found = re.fullmatch(
        r"\s*(\d+(?:\.\d+)?)\s*(?:sts?|stitch(?:es)?)?"
        r"(?:(?:\s*(?:,|x|×|and|by)\s*|(?<=[a-z])\s+)(\d+(?:\.\d+)?)\s*(?:rows?|rounds?|rnds?)?)?"
        r"(?:\s*(?:/|over|in|to|per|=)\s*(\d+(?:\.\d+)?)\s*(cm|in|inch(?:es)?|\"|mm))?\s*",
        text,
        re.IGNORECASE,
    )
    if found is None or float(found[1]) <= 0 or (found[2] and float(found[2]) <= 0):
        raise NotUnderstood(f"“{text}” isn't a gauge; write it as “18 sts, 13 rows / 10 cm”.")
    unit = {"cm": 10.0, "mm": 1.0}.get((found[4] or "cm").lower(), 25.4)
    over = float(found[3] or 10) * unit
    if over <= 0:
        raise NotUnderstood(f"“{text}” isn't a gauge; write it as “18 sts, 13 rows / 10 cm”.")
    return Swatch(float(found[1]), float(found[2]) if found[2] else None, over)


def fit_gauge(checked: Checked, wanted: Swatch) -> Fitted:
    """The nearest pattern of the same size in that gauge. Raises CannotAlter where there is none."""
    pattern = _one_size(checked)
    own = _over(pattern)
    over_mm = own.over.mm if own.over is not None else 100.0
    stitches = wanted.stitches * over_mm / wanted.over_mm
    by = stitches / (own.stitches or stitches)
    rows = wanted.rows * over_mm / wanted.over_mm if wanted.rows else (own.rows or 0) * by
    draft = Draft(checked.source)
    _gauges(draft, pattern, by, rows / own.rows if own.rows else 1.0)
    return _same_size(checked, draft)


def fit_yarn(checked: Checked, weight: int) -> Fitted:
    """The nearest pattern of the same size in a yarn of that weight (0 to 7).

    All yarns as thick as the first change. Raises CannotAlter where there is none.
    """
    pattern = _one_size(checked)
    yarns = pattern.materials.yarns
    main = next(iter(yarns.values()), None)
    if main is None or main.weight is None:
        raise CannotAlter("The pattern doesn't say how thick its yarn is.")
    if main.weight == weight:
        raise CannotAlter(f"The pattern is written for yarn of weight {weight}.")
    _over(pattern)
    by = likely_stitches(weight) / likely_stitches(main.weight)
    draft = Draft(checked.source)
    for letter, yarn in yarns.items():
        if yarn.weight == main.weight:
            at: Path = ("materials", "yarns", letter)
            draft.value((*at, "weight"), str(weight))
            for name in ("ball", "weighed"):
                if draft.node((*at, name)) is not None:
                    draft.drop((*at, name))
    for index, hook in enumerate(pattern.materials.hook):
        size = f"{likely_hook(hook.size.mm, main.weight, weight):g} mm"
        short = draft.node(("materials", "hook", index))
        if short is not None and short.kind == "text":
            draft.value(("materials", "hook", index), short.text.replace(str(hook.size), size))
        else:
            draft.value(("materials", "hook", index, "size"), size)
    _gauges(draft, pattern, by, by)
    return _same_size(checked, draft)


def _one_size(checked: Checked) -> Pattern:
    pattern = checked.source.pattern
    if pattern is None or checked.measured is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    if len(pattern.sizes) > 1:
        raise CannotAlter(
            f"This pattern is written in {len(pattern.sizes)} sizes side by side, and what would come out "
            "even for one would not for another. Choose one of them (`--size`)."
        )
    return pattern


def _over(pattern: Pattern) -> Gauge:
    own = next((one for one in pattern.gauge if one.over is not None and one.stitches), None)
    if own is None:
        raise CannotAlter(
            "The pattern's gauge doesn't say how many stitches there are over a length, so another one can't "
            "be compared with it."
        )
    return own


def _gauges(draft: Draft, pattern: Pattern, stitches_by: float, rows_by: float) -> None:
    for index, one in enumerate(pattern.gauge):
        if one.over is None:
            continue
        for name, number, by in (("stitches", one.stitches, stitches_by), ("rows", one.rows, rows_by)):
            if number:
                field = name if draft.node(("gauge", index, name)) is not None else "rounds"
                draft.value(("gauge", index, field), f"{nearest(number * by, _STEP):g}")


def _same_size(before: Checked, draft: Draft) -> Fitted:
    """Counts, then rounds, changed until the size is nearest to what it was."""
    name = next(iter(draft.source.pattern.pieces)) if draft.source.pattern is not None else ""
    wanted_mm = way_around(before, name)
    now = check(draft.text().encode(), before.source.file)
    if wanted_mm is None or now.measured is None:
        raise CannotAlter(f"Without a gauge the way around “{name}” can't be told.")
    fitted = fit_around(before, now, wanted_mm)
    altered = fitted.altered or settle(before, draft)
    height = _same_height(before, altered, name) or altered
    around_mm = way_around(height.checked, name) or 0.0
    return Fitted(_together(before, draft, altered, height), around_mm, fitted.passed)


def _same_height(before: Checked, altered: Altered, name: str) -> Altered | None:
    """With as many rounds more or fewer where its height may be changed; None where it can't be nearer."""
    parts = adjustables(altered.checked)
    if not parts or parts[0].rise_mm is None:
        return None
    before_mm, now_mm = _long(before, name), _long(altered.checked, name)
    steps = round(((before_mm or 0.0) - (now_mm or 0.0)) / parts[0].rise_mm)
    try:
        return more_rounds(before, altered.checked, steps * parts[0].unit) if steps else None
    except CannotAlter:
        return None


def _together(before: Checked, draft: Draft, altered: Altered, height: Altered) -> Altered:
    """The last of them, with the changes of all, and with a word on a length that couldn't be kept."""
    gathered = [*draft.changes, *altered.changes, *(height.changes if height is not altered else ())]
    changes = called_as_now(height.checked, in_order(gathered))
    remarks = list(remarks_on(before, height.checked, changes))
    name = next(iter(height.measured.pattern.pieces))
    was, now = (_long(one, name) for one in (before, height.checked))
    if was and now and abs(now - was) > _FAR * was:
        why = (
            "its rounds or rows marked `adjustable: height` don't bring it nearer"
            if any(one.piece == name for one in adjustables(height.checked))
            else "none of its rounds or rows are marked `adjustable: height`"
        )
        remarks.insert(
            0, f"it comes out {centimetres(now)} from beginning to end, and it was {centimetres(was)}: {why}"
        )
    return replace(height, changes=changes, remarks=tuple(remarks))


def _long(checked: Checked, name: str) -> float | None:
    """From a piece's beginning to its end; None without a gauge, and where its rounds lie flat around each
    other: that is part of its size across then.
    """
    piece = checked.measured.piece(name) if checked.measured is not None else None
    known = piece.known_rounds(0) if piece is not None and piece.rounds else []
    if piece is None or not known or (piece.in_rounds and "height" not in piece.size[0]):
        return None
    return known[-1].height_mm
