"""The measures of a pattern as JSON values: sizes in millimetres, yarn, cords, hours, level, cautions."""

from collections.abc import Mapping, Sequence
from typing import Any

from ..alter import Setting
from ..alter.height import Adjustable, adjustables
from ..measure import Band, Cord, Measured, PieceMeasure, Threading, YarnNeed, reason, to_learn
from ..measure.finished import What


def file_measures(measured: Measured) -> dict[str, Any]:
    """`size`, `yarn`, `cords`, `hours` (with practice), `learning_hours`, `level`, `learn_first`, `cautions`,
    `other_yarns`.

    An estimate is `[low, high]`, with sizes one a size.
    """
    return {
        **_follows(measured, measured.yarn),
        "learning_hours": by_size([_band(one.learning) for one in measured.hours]),
        "level": {
            "stated": measured.pattern.level,
            "worked_out": measured.level.level,
            "because": [
                reason(use, measured.pattern, measured.pattern.terms) for use in measured.level.because
            ],
        },
        "learn_first": list(to_learn(measured.level, measured.pattern.terms)),
        "cautions": [
            {
                "title": one.caution.title,
                "because": list(one.because),
                "standards": [row.name for row in one.caution.standards],
            }
            for one in measured.cautions
        ],
        "other_yarns": [
            {"weight": one.weight, "hook_mm": one.hook_mm, "size": _sizes(one.size)}
            for one in measured.other_yarns
        ],
    }


def heights(offered: Sequence[Setting]) -> dict[str, Any]:
    """`heights`: every height on offer, worked. How many rounds more (below 0, fewer) and what they add; the
    rounds that are then adjustable; size, yarn, cords and hours as they then are.
    """
    return {
        "heights": [
            {
                "more": one.more,
                "by_mm": None if one.rise_mm is None else round(one.rise_mm, 1),
                "adjustable": [
                    {"piece": part.piece, "rounds": _run(str(part.first), str(part.last))}
                    for part in adjustables(one.altered.checked)
                ],
                **_follows(one.altered.measured, one.altered.yarn),
            }
            for one in offered
        ]
    }


def _follows(measured: Measured, yarn: Sequence[Sequence[YarnNeed]]) -> dict[str, Any]:
    """What follows when a pattern is altered: `size`, `yarn`, `cords`, `hours`. yarn: one a size."""
    sizes = range(measured.pattern.size_count)
    return {
        "size": _size(measured),
        "yarn": [
            {
                "yarn": need.yarn,
                "metres": by_size([_band(yarn[size][at].metres) for size in sizes]),
                "grams": by_size([_band(yarn[size][at].grams) for size in sizes]),
                "balls": by_size([_pair(yarn[size][at].balls) for size in sizes]),
            }
            for at, need in enumerate(yarn[0])
        ],
        "cords": [
            {
                "piece": name,
                "length_mm": by_size([round(cord.length_mm, 1) if cord else None for cord in cords]),
                "chains": by_size([cord.chains if cord else None for cord in cords]),
            }
            for name, cords in _cords(measured).items()
        ],
        "hours": by_size([_band(one.practised) for one in measured.hours]),
    }


def _cords(measured: Measured) -> dict[str, list[Cord | None]]:
    """Each cord in every size; None in one that has none."""
    known = [{cord.piece: cord for cord in cords} for cords in measured.cords]
    names = dict.fromkeys(name for cords in known for name in cords)
    return {name: [cords.get(name) for cords in known] for name in names}


def piece_size(piece: PieceMeasure) -> dict[str, Any]:
    """What a piece measures, as the file's `size`; nothing without a gauge. `height_along`: how its height is
    measured, `cloth` where it lies folded, `upright` where it stands; of work in the round only.
    """
    return {"size": _sizes(piece.size), **_height_along(piece)} if any(piece.size) else {}


def _height_along(piece: PieceMeasure) -> dict[str, Any]:
    has_height = piece.in_rounds and any("height" in size for size in piece.size)
    return {"height_along": "cloth" if piece.along_cloth else "upright"} if has_height else {}


def round_measures(piece: PieceMeasure, at: int) -> dict[str, Any]:
    """`around_mm` or `width_mm`, `across_mm` of what is round or a polygon, and `height_mm` along the fabric
    from the start; nothing without a gauge.
    """
    if not any(piece.rounds):
        return {}
    sizes = [rounds[at] for rounds in piece.rounds]
    name = "around_mm" if piece.in_rounds else "width_mm"
    across = [one[at] for one in piece.across_mm]
    return {
        name: by_size([one and round(one.length_mm, 1) for one in sizes]),
        **({"across_mm": by_size([mm and round(mm, 1) for mm in across])} if any(across) else {}),
        "height_mm": by_size([one and round(one.height_mm, 1) for one in sizes]),
    }


def piece_shape(piece: PieceMeasure) -> Any:
    """Stretches of rounds with the form that they take: `[{"shape": "flat", "rounds": "1-6"}]`."""
    return by_size(
        [
            [{"shape": one.form, "rounds": _run(one.first, one.last)} for one in stretches]
            for stretches in piece.shape
        ]
    )


def piece_ball(piece: PieceMeasure) -> dict[str, Any]:
    """Of a piece that makes a ball, its widest rounds, the one where it turns in, and how far across it is;
    nothing of others.
    """
    if not any(piece.ball):
        return {}
    across_mm = [piece.ball_across_mm(size) for size in range(len(piece.ball))]
    return {
        "ball": by_size(
            [
                one
                and {
                    "widest": _run(one.first, one.last),
                    "turns": one.turns,
                    "across_mm": mm and round(mm, 1),
                }
                for one, mm in zip(piece.ball, across_mm, strict=True)
            ]
        )
    }


def piece_yarn(measured: Measured, piece: str) -> dict[str, Any]:
    """Metres and grams of each yarn that all copies of a piece take; nothing where neither is known."""
    found = []
    for at, need in enumerate(measured.yarn[0]):
        metres = [size[at].metres_by_piece().get(piece) for size in measured.yarn]
        grams = [size[at].grams_by_piece().get(piece) for size in measured.yarn]
        if any(metres) or any(grams):
            amounts = {"metres": metres, "grams": grams}
            found.append(
                {"yarn": need.yarn}
                | {unit: by_size([_band(one) for one in bands]) for unit, bands in amounts.items()}
            )
    return {"yarn": found} if found else {}


def piece_marks(measured: Measured, piece: str) -> dict[str, Any]:
    """What a maker holds the work against: `checkpoints` (what measures how much by a round), `tail_mm`, or
    `usual_tail_mm` where a seam needs one and the author states none (in rows `usual_tail_around_mm` too, for
    a seam all around the piece); of a cord `threading`, what it passes, and `opens_mm`, how far around the
    round opens that it goes through.

    Nothing where there is none.
    """
    found: dict[str, Any] = {}
    tails = [next((one for one in size if one.piece == piece), None) for size in measured.tails]
    if any(tails):
        found["tail_mm"] = by_size([one and round(one.length_mm, 1) for one in tails])
    unsaid = [next((one for one in size if one.piece == piece), None) for size in measured.unsaid_tails]
    if any(unsaid):
        found["usual_tail_mm"] = by_size([one and _band(one.usual) for one in unsaid])
        if any(one and one.outline_mm for one in unsaid):
            found["usual_tail_around_mm"] = by_size([one and _band(one.usual_around) for one in unsaid])
    ways = [_threading(one) for one in measured.threadings[0] if one.cord == piece]
    if ways:
        found["threading"] = ways
    opens = [_opens(measured, size, piece) for size in range(measured.pattern.size_count)]
    if any(opens):
        found["opens_mm"] = by_size(opens)
    marks = [one for one in measured.checkpoints if one.piece == piece]
    if marks:
        found["checkpoints"] = [
            {
                "round": one.label,
                f"{_MARKS[one.what]}_mm": by_size([mm and round(mm, 1) for mm in one.length_mm]),
            }
            | (
                {f"{_WIDE[one.what]}_mm": by_size([mm and round(mm, 1) for mm in one.wide_mm])}
                if one.wide_mm
                else {}
            )
            for one in marks
        ]
    return found


def adjustable(parts: Sequence[Adjustable]) -> dict[str, Any]:
    """Rounds that may be worked more or less often: which, how many at a time, and what so many add.

    Nothing where there are none.
    """
    found = [
        {
            "rounds": _run(str(one.first), str(one.last)),
            "step": one.unit,
            "step_mm": None if one.rise_mm is None else round(one.rise_mm, 1),
        }
        for one in parts
    ]
    return {"adjustable": found} if found else {}


def _threading(one: Threading) -> dict[str, Any]:
    """A threading step: where each cord begins and ends, and the posts that it goes under and over."""
    return {
        "through": one.through,
        "round": one.label,
        "cords": [
            {
                "before": way.start,
                "passes": [
                    {"way": each.way, "posts": _run(str(each.first), str(each.last))} for each in way.passes
                ],
                "same_face": way.same_face,
            }
            for way in one.ways
        ],
        "same_gaps": one.same_gaps,
    }


_MARKS = {"across": "across", "around": "around", "width": "width", "oval": "length", "polygon": "across"}
_WIDE = {"oval": "width", "polygon": "diagonal"}


def _opens(measured: Measured, size: int, cord: str) -> float | None:
    """How far around the round opens that a cord goes through."""
    found = next((one for one in measured.threadings[size] if one.cord == cord), None)
    return None if found is None or found.opens_mm is None else round(found.opens_mm, 1)


def by_size(values: list[Any]) -> Any:
    """A list, one value a size; the value alone where there is one size."""
    return values if len(values) > 1 else values[0] if values else None


def _size(measured: Measured) -> dict[str, Any]:
    """What the first piece, or the whole laid out, measures: `{"around_mm": [330, 360]}`."""
    if measured.laid_out is not None:
        found = [measured.laid_out]
    else:
        found = list(measured.pieces[0].size) if measured.pieces else []
    return _sizes(found)


def _sizes(found: Sequence[Mapping[What, Band]]) -> dict[str, Any]:
    """`{"around_mm": [330, 360]}`. found: one a size."""
    names = dict.fromkeys(what for size in found for what in size)
    return {f"{what}_mm": by_size([_band(size.get(what)) for size in found]) for what in names}


def _band(band: Band | None) -> list[float] | None:
    return None if band is None else [round(band.low, 1), round(band.high, 1)]


def _pair(pair: tuple[int, int] | None) -> list[int] | None:
    return None if pair is None else list(pair)


def _run(first: str, last: str) -> str:
    return first if first == last else f"{first}-{last}"
