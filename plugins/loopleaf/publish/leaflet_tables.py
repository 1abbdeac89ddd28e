"""The leaflet's tables of measures: a cord's way through a round, the sizes side by side, other yarns.

Yarn by piece stands in `leaflet_yarn`.
"""

from collections.abc import Iterator, Mapping, Sequence

from .. import trade
from ..measure import OTHER_OFF, Band, Measured, OtherYarn, StatedSize, Threading, Way, YarnNeed, amounts
from ..measure.finished import What
from .leaflet_parts import Table
from .leaflet_voice import Voice, hook_size, per_size, sentence
from .leaflet_yarn import yarn_by_piece

_SHOWN = 3


def tables(voice: Voice, measured: Measured) -> tuple[Table, ...]:
    """All of them, in the order in which a page shows their places."""
    return (
        *_sizes(voice, measured),
        *yarn_by_piece(voice, measured),
        *_yarns(voice, measured),
        *_cords(voice, measured),
    )


def tables_by_part(found: Sequence[Table]) -> dict[str, Table]:
    """By the part of the page that holds each: `table-cords-2` is the second one there."""
    parts: dict[str, Table] = {}
    for one in found:
        number = sum(other.place == one.place for other in parts.values()) + 1
        parts[f"table-{one.place}-{number}"] = one
    return parts


# ---- cords --------------------------------------------------------------------------------------


def _cords(voice: Voice, measured: Measured) -> Iterator[Table]:
    for at, first in enumerate(measured.threadings[0]):
        sizes = [size[at] for size in measured.threadings if at < len(size)]
        title = voice.say(
            "cord_table", cord=sentence(voice.named(first.cord)), through=voice.named(first.through)
        )
        head = tuple(voice.words[key] for key in ("cord_number", "goes_under", "goes_over", "comes_out"))
        rows = [
            (
                str(number),
                per_size([_posts(one.ways[number - 1], "under") for one in sizes]),
                per_size([_posts(one.ways[number - 1], "over") for one in sizes]),
                voice.say("end_same" if way.same_face else "end_other", post=way.start),
            )
            for number, way in enumerate(first.ways, start=1)
        ]
        yield Table("cords", title, head, tuple(rows), " ".join(_cord_notes(voice, sizes)))


def _posts(way: Way, goes: str) -> str:
    """`1, 3, 5 … 23`; passes over several posts `1–2, 5–6 … 21–22`."""
    told = [
        str(one.first) if one.first == one.last else f"{one.first}–{one.last}"
        for one in way.passes
        if one.way == goes
    ]
    return ", ".join(told) if len(told) <= _SHOWN + 2 else f"{', '.join(told[:_SHOWN])} … {told[-1]}"


def _cord_notes(voice: Voice, sizes: Sequence[Threading]) -> Iterator[str]:
    first = sizes[0]
    if len(first.ways) > 1:
        yield voice.words["same_gaps" if first.same_gaps else "other_gaps"]
    opens = [one.opens_mm for one in sizes]
    spare = [one.spare_mm for one in sizes]
    if all(mm is not None for mm in opens):
        yield voice.say(
            "opens",
            through=voice.named(first.through),
            opens=amounts.lengths(tuple(opens)),
            spare=amounts.lengths(tuple(spare)),
        )


# ---- sizes --------------------------------------------------------------------------------------


def _sizes(voice: Voice, measured: Measured) -> Iterator[Table]:
    """One column a size: what the author states, what it fits, yarn, time."""
    pattern = voice.pattern
    if len(pattern.sizes) < 2:
        return
    rows: list[tuple[str, ...]] = []
    for part, value in pattern.to_fit.items():
        if not isinstance(value, str):
            lengths = [value.of(size) for size in range(len(pattern.sizes))]
            fits = [None if one is None else one.mm for one in lengths]
            rows.append((voice.say("fits", part=voice.prose(part)), *_lengths(fits)))
    for stated in measured.stated:
        piece = f", {voice.named(stated.piece)}" if stated.piece else ""
        mm = [stated.mm(size) for size in range(len(pattern.sizes))]
        word = voice.words[size_word(measured, stated.piece, stated.what)]
        rows.append((sentence(word) + piece, *_lengths(mm)))
    stated_whats = {one.what for one in measured.stated if not one.piece}
    first = measured.pieces[0] if measured.pieces else None
    in_rounds = first is not None and first.in_rounds
    whats: tuple[What, ...] = ("around", "height") if in_rounds else ("width", "length")
    if not in_rounds:  # a row lies around what it is worn on, and stands as high as it is long
        stated_whats |= {_OF_ROWS[what] for what in stated_whats & set(_OF_ROWS)}
    for what in whats if first is not None else ():
        bands = [size.get(what) for size in first.size] if first is not None else []
        if what not in stated_whats and all(bands):
            word = voice.words[size_word(measured, "", what)]
            rows.append((sentence(voice.say("worked_out_size", what=word)), *_about(bands)))
    for at, need in enumerate(measured.yarn[0]):
        amount = [yarn_amount(size[at]) for size in measured.yarn]
        if all(amount):
            rows.append((voice.say("yarn_of", yarn=voice.yarn(need.yarn)), *amount))
    for label in ("time", "time_learning"):
        bands_a_size = [one.practised if label == "time" else one.learning for one in measured.hours]
        rows.append((voice.words[label], *(sentence(amounts.about_hours(one)) for one in bands_a_size)))
    yield Table("sizes", voice.words["size_table"], ("", *pattern.sizes), tuple(rows))


def size_word(measured: Measured, piece: str, what: What) -> str:
    """The key of the word that says what is measured. piece: "" for the first one."""
    own = measured.piece(piece) if piece else next(iter(measured.pieces), None)
    if own is not None and own.tip_to_tip:
        return _FROM_A_POINT.get(what, what)
    return "height_along" if what == "height" and own is not None and own.along_cloth else what


_FROM_A_POINT: Mapping[What, str] = {
    "width": "tip_to_tip",
    "across": "tip_to_tip",
    "length": "deep",
    "height": "deep",
}


_OF_ROWS: Mapping[What, What] = {"around": "width", "height": "length"}


def _lengths(sizes_mm: Sequence[float | None]) -> Iterator[str]:
    yield from ("–" if mm is None else amounts.length(mm) for mm in sizes_mm)


def _about(bands: Sequence[Band | None]) -> Iterator[str]:
    yield from ("–" if band is None else f"about {amounts.length(band.middle)}" for band in bands)


def yarn_amount(need: YarnNeed) -> str:
    """As weighed (`52 g (1¾ oz)`), else as estimated (`about 50 to 70 g (…)`, or metres); "" if unknown."""
    if need.grams is not None:
        return amounts.weight(need.grams.middle) if need.weighed else amounts.about_grams(need.grams)
    return amounts.about_metres(need.metres) if need.metres is not None else ""


# ---- other yarns --------------------------------------------------------------------------------


def _yarns(voice: Voice, measured: Measured) -> Iterator[Table]:
    """The same stitches in the yarn weights on either side, as large as they are likely to come out."""
    if not measured.other_yarns:
        return
    stated = [one for one in measured.stated if not one.piece]
    if not stated:
        return
    head = (
        voice.words["yarn"],
        voice.words["hook"],
        *(sentence(voice.words[size_word(measured, one.piece, one.what)]) for one in stated),
    )
    rows = [_yarn(voice, one, stated) for one in measured.other_yarns]
    note = voice.say("other_yarns_note", off=f"{OTHER_OFF:.0%}")
    yield Table("yarns", voice.words["other_yarns"], head, tuple(rows), note)


def _yarn(voice: Voice, one: OtherYarn, stated: Sequence[StatedSize]) -> tuple[str, ...]:
    """The sizes as the author states them, so much larger or smaller."""
    row = next(row for row in trade.yarn_weights() if row.number == one.weight)
    name = sentence(f"{row.names(voice.terms)[0]} ({row.number})")
    hook = voice.say("about", amount=hook_size(voice, one.hook_mm)) if one.hook_mm else "–"
    sizes_mm = [[each.mm(size) for size in range(voice.pattern.size_count)] for each in stated]
    sizes = [amounts.coarse_lengths(tuple(mm and mm * one.by for mm in each)) for each in sizes_mm]
    return (name, hook, *(voice.say("about", amount=size) for size in sizes))
