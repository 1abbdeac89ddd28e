"""Amounts as patterns print them: half centimetres, quarter inches, whole metres and yards, quarter ounces.

Rounding is common practice, no source: a size is given to half a centimetre and a quarter inch (an eighth
below one inch), yarn in whole metres and yards rounded up, ounces in quarters. An estimate says "about" and
is coarser: never a false decimal.
"""

import math
from fractions import Fraction

from ..pattern import Length, Lengths
from .units import Band, grams_to_ounces, metres_to_yards, mm_to_inches

_SIGNS = {
    Fraction(1, 8): "⅛",
    Fraction(1, 4): "¼",
    Fraction(3, 8): "⅜",
    Fraction(1, 2): "½",
    Fraction(5, 8): "⅝",
    Fraction(3, 4): "¾",
    Fraction(7, 8): "⅞",
}


_HAIR = 0.1

_IMPERIAL = ("in", "ft", "yd")


def nearest(value: float, step: float) -> float:
    """The multiple of `step` that is nearest; halves go up."""
    return math.floor(value / step + 0.5) * step


def number(value: float) -> str:
    """A number without needless decimals: `34.5`, `13`."""
    return f"{value:.1f}".removesuffix(".0")


def fraction(value: float, parts: int) -> str:
    """A number in whole and vulgar fraction, to the nearest of `parts` (4 or 8): `13½`, `¾`, `0`."""
    rounded = Fraction(math.floor(value * parts + 0.5), parts)
    whole = rounded.numerator // rounded.denominator
    sign = _SIGNS.get(rounded - whole, "")
    return f"{whole}{sign}" if whole or not sign else sign


def centimetres(mm: float) -> str:
    """`34.5 cm`, to half a centimetre; below 2 cm in whole millimetres (`18 mm`)."""
    if nearest(abs(mm), 1) < 20:
        return f"{nearest(mm, 1):.0f} mm"
    return f"{number(nearest(mm / 10, 0.5))} cm"


def inches(mm: float) -> str:
    """`13½ in`, to a quarter inch, below one inch to an eighth."""
    amount = mm_to_inches(mm)
    return f"{fraction(amount, 8 if abs(amount) < 1 else 4)} in"


def length(mm: float) -> str:
    """Both: `34.5 cm (13½ in)`."""
    return f"{centimetres(mm)} ({inches(mm)})"


def as_typed(one: Length) -> str:
    """A length in the author's own figures, the other family rounded: `14.3 cm (5¾ in)`, `6 in (15 cm)`."""
    imperial = one.unit in _IMPERIAL
    return f"{one} ({centimetres(one.mm) if imperial else inches(one.mm)})"


def lengths(sizes_mm: tuple[float | None, ...]) -> str:
    """One a size, smallest first: `37 (40.5, 44) cm, 14½ (16, 17¼) in`; `-` for a size that has none."""
    cm = ["-" if mm is None else number(nearest(mm / 10, 0.5)) for mm in sizes_mm]
    inch = ["-" if mm is None else fraction(mm_to_inches(mm), 4) for mm in sizes_mm]
    if len(set(cm)) == len(set(inch)) == 1 and sizes_mm[0] is not None:
        return length(sizes_mm[0])
    return f"{_row(cm)} cm, {_row(inch)} in"


def coarse_lengths(sizes_mm: tuple[float | None, ...]) -> str:
    """The same for what is good to a tenth only: from 10 cm on in whole centimetres and half inches."""
    cm = ["-" if mm is None else number(nearest(mm / 10, 0.5 if mm < 100 else 1)) for mm in sizes_mm]
    inch = ["-" if mm is None else fraction(mm_to_inches(mm), 4 if mm < 100 else 2) for mm in sizes_mm]
    if len(set(cm)) == len(set(inch)) == 1:
        return f"{cm[0]} cm ({inch[0]} in)"
    return f"{_row(cm)} cm, {_row(inch)} in"


def spans(sizes_mm: tuple[Band | None, ...]) -> str:
    """An estimate of a length, one a size: `20 to 30 cm (7 to 12 in)`, `20 to 30 (25 to 40) cm, 7 to 12 (9 to
    15) in`; `-` for a size that has none.
    """
    cm = ["-" if mm is None else _span(coarse(mm * 0.1)) for mm in sizes_mm]
    inch = ["-" if mm is None else _span(coarse(mm * mm_to_inches(1))) for mm in sizes_mm]
    if len(set(cm)) == len(set(inch)) == 1:
        return f"{cm[0]} cm ({inch[0]} in)"
    return f"{_row(cm)} cm, {_row(inch)} in"


def stated(lengths_as_typed: Lengths, count: int = 1) -> str:
    """A length as the author states it, in both families: theirs kept as typed, the other one rounded.

    `34.5 cm (13½ in)`; one a size: `37 (40.5, 44) cm, 14½ (16, 17¼) in`. count: the number of sizes.
    """
    ones = [lengths_as_typed.of(size) for size in range(count)]
    known = [one for one in ones if one is not None]
    imperial = known[0].unit in _IMPERIAL
    cm = [one and (nearest(one.mm / 10, 0.5) if imperial else one.mm / 10) for one in ones]
    cm_texts = ["-" if amount is None else f"{amount:.2f}".rstrip("0").rstrip(".") for amount in cm]
    inch_texts = ["-" if one is None else inches(one.mm).removesuffix(" in") for one in ones]
    if len(set(cm_texts)) == 1:
        return f"{cm_texts[0]} cm ({inch_texts[0]} in)"
    return f"{_row(cm_texts)} cm, {_row(inch_texts)} in"


def _row(texts: list[str]) -> str:
    return f"{texts[0]} ({', '.join(texts[1:])})"


def metres(amount_m: float) -> str:
    """`88 m (97 yd)`, rounded up: too little is worse than too much."""
    up, up_yards = _up(amount_m), _up(metres_to_yards(amount_m))
    return f"{up} m ({up_yards} yd)"


def _up(amount: float) -> int:
    """Rounded up, but for a hair that arithmetic leaves over a whole number."""
    return math.ceil(amount - 1e-6)


_LITTLE = "under ⅛"


def ounces(grams: float) -> str:
    """`1¾ oz`, to a quarter; below that to an eighth; `under ⅛ oz` for less than a kitchen scale shows."""
    return f"{_ounces(grams)} oz"


def _ounces(grams: float) -> str:
    amount = grams_to_ounces(grams)
    if amount < 0.125:
        return _LITTLE
    return fraction(amount, 8 if amount < 0.25 else 4)


def _ounces_outward(grams_band: Band) -> tuple[str, str]:
    """An estimate's ends in quarters of an ounce, below a quarter in eighths, rounded outward; a hair
    beyond a step is none.
    """
    found = []
    for grams, up in ((grams_band.low, False), (grams_band.high, True)):
        amount = grams_to_ounces(grams)
        parts = 8 if amount < 0.25 else 4
        steps = math.ceil(amount * parts - _HAIR) if up else math.floor(amount * parts + _HAIR)
        found.append(fraction(steps / parts, parts) if amount >= 0.125 else _LITTLE)
    low, high = found
    return low, high


def weight(grams: float) -> str:
    """`52 g (1¾ oz)`."""
    return f"{nearest(grams, 1):.0f} g ({ounces(grams)})"


def coarse(band: Band) -> Band:
    """A band rounded outward to steps that suit its size (1 below 20, 5 below 100, 10 below 500, else 50).

    Of small amounts a tenth beyond a whole one is rounded inward: 0.95 to 1.05 is 1.
    """
    step = next((step for limit, step in ((20, 1), (100, 5), (500, 10)) if band.high < limit), 50)
    hair = _HAIR if step == 1 else 0.0
    low, high = math.floor(band.low / step + hair), math.ceil(band.high / step - hair)
    return Band(low * step, high * step)


def about_metres(metres_band: Band) -> str:
    """An estimate of yarn: `about 65 to 115 m (70 to 130 yd)`."""
    m = coarse(metres_band)
    yd = coarse(Band(metres_to_yards(metres_band.low), metres_to_yards(metres_band.high)))
    return f"{_about(m)} m ({_about(yd).removeprefix('about ')} yd)"


def about_grams(grams_band: Band) -> str:
    """An estimate of weight, both units rounded outward: `about 35 to 70 g (1¼ to 2½ oz)`."""
    g = coarse(grams_band)
    low, high = _ounces_outward(grams_band)
    grams = f"{_about(g)} g"
    if low == high:
        return f"{grams} ({high} oz)"
    return f"{grams} ({'up' if low == _LITTLE else low} to {high} oz)"


def _about(band: Band) -> str:
    """`about 65 to 115`; `up to 2` where the low end is nothing."""
    return f"up to {band.high:.0f}" if 0 == band.low < band.high else f"about {_span(band)}"


def _span(band: Band) -> str:
    """`65 to 115`; `1` where both ends are alike."""
    low, high = f"{band.low:.0f}", f"{band.high:.0f}"
    return high if low == high else f"{low} to {high}"


def about_hours(hours_band: Band) -> str:
    """A time.

    `about 2 to 3½ hours`, in half hours; under an hour and a half in minutes: `about 30 to 50 minutes`.
    """
    if hours_band.high < 1.5:
        low, high = (max(5, round(hours * 60 / 5) * 5) for hours in (hours_band.low, hours_band.high))
        return f"about {low} to {high} minutes" if low != high else f"about {high} minutes"
    parts = 2 if hours_band.high < 10 else 1
    low_text, high_text = (fraction(max(hours, 0.5), parts) for hours in (hours_band.low, hours_band.high))
    return f"about {low_text} to {high_text} hours" if low_text != high_text else f"about {high_text} hours"
