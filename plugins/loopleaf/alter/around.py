"""The nearest pattern of the same design that is so far around (or, in rows, so wide).

A base worked from its middle gets more or fewer increase rounds, and one more in which fewer increases are
spread evenly, as does a shawl from a point; a cap from its brim as many rounds that draw in; a piece on a
chain gets as many chains more or fewer as its stitches come out even with. Every candidate is worked, nearest
first, and the first one that checks is taken: a design that doesn't allow it says why in its own findings.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace

from ..fabric import PieceWork
from ..measure.amounts import centimetres
from ..measure.finished import What
from ..pattern import Path, Pattern, Piece
from ..pattern.reading import read_length
from ..review import Checked
from .ball import ball_of, write_ball
from .base import Base, base_of
from .candidates import Candidate, of_a_ball, of_a_base, of_a_chain, of_a_crown, of_an_oval
from .crown import crown_of, write_crown
from .draft import CannotAlter, Draft, NotUnderstood
from .numbers import Renumber, renumber
from .oval import chains_of, lengthen
from .placing import place_anew
from .settle import Altered, Follow, settle

_TRIES = 36
"""Candidates worked one by one before it is said that none near fits."""
_REASONS = 3
_FAR = 0.15
"""A size that misses by more than so much of what is wanted isn't near (chosen here)."""
_BEYOND, _FINE, _AGAIN = 24, 6, 3
"""Candidates farther off that are worked to find one that can be made: the first few one by one, then always
halfway between what failed and what can be made, some of them there before that counts as failed. What was
leapt over comes last.
"""
_TUBE = 1.5
"""Times the chains that it begins with: as wide as a tube gets (chosen here)."""


@dataclass(frozen=True, slots=True)
class Fitted:
    """The nearest pattern. altered: None where it is the pattern as it was. around_mm: its way around.

    passed: why candidates that would have come nearer can't be worked, the nearest first.
    """

    altered: Altered | None
    around_mm: float
    passed: tuple[str, ...] = ()


def length_mm(text: str) -> float:
    """`32cm`, `32 cm`, `12½ in` in millimetres. Raises CannotAlter for anything else."""
    try:
        found = read_length(text)
    except ValueError:
        raise NotUnderstood(f"“{text}” isn't a length; write it as “32 cm” or “12½ in”.") from None
    return found.mm


def fit_around(before: Checked, now: Checked, wanted_mm: float, piece_name: str = "") -> Fitted:
    """The nearest to so many millimetres around one piece, the first without a name.

    before: the pattern that stated sizes and yarn follow from; now: what is altered, the same pattern or one
    with another gauge; in one size. Raises CannotAlter where the design has nothing that can be made wider
    or narrower, NotUnderstood where no piece has that name.
    """
    pattern, work = now.source.pattern, now.work
    if pattern is None or work is None or now.measured is None:
        raise CannotAlter("The pattern can't be worked as it stands.")
    if len(pattern.sizes) > 1:
        raise CannotAlter(_sizes_instead(now, wanted_mm))
    name = piece_name or next(iter(pattern.pieces))
    if name not in pattern.pieces:
        raise NotUnderstood(f"No piece is called “{name}”; there are {', '.join(pattern.pieces)}.")
    model, piece = pattern.pieces[name], work.piece(name)
    around_mm = way_around(now, name)
    if piece is None or around_mm is None:
        raise CannotAlter(f"Without a gauge the way around “{name}” can't be told.")
    if any(one.piece == name and one.rounds is None and one.over is None for one in pattern.gauge):
        raise CannotAlter(
            f"The gauge says how far the whole of “{name}” measures, so it says nothing of another size; "
            "state how many stitches and rows there are over 10 cm."
        )
    if model.grid is not None:
        raise CannotAlter(
            f"“{name}” is worked from a picture in squares, so it is as wide as the picture. With other "
            "stitches it would be another picture; in another yarn the same one comes out larger or smaller."
        )
    base = base_of(work, piece, model)
    stitches = _widest(piece)
    wanted = stitches * wanted_mm / around_mm
    ball = ball_of(work, piece, base)
    crown = crown_of(work, piece, model) if base is None else None
    if ball is not None:
        candidates = of_a_ball(ball)
    elif base is not None:
        candidates = of_a_base(base, stitches)
    elif crown is not None:
        candidates = of_a_crown(crown)
    elif model.start is not None and model.start.kind == "chain ring" and _grows(model, stitches):
        raise CannotAlter(
            f"“{name}” grows from a ring in its middle, by rounds that follow no rule which more or fewer of "
            "them could keep to."
        )
    elif model.start is not None and model.start.chain is not None:
        candidates = of_a_chain(model, stitches)
    else:
        raise CannotAlter(f"“{name}” begins neither in the middle of a base nor on a chain of its own.")
    candidates += of_an_oval(model, base, stitches)
    passed: list[tuple[int, str]] = []
    best: Fitted | None = None
    known_mm, far_mm = around_mm, _FAR * wanted_mm
    beyond, reached_mm, failed_mm = 0, 0.0, list[float]()
    halving = halved = False
    at_stitches, at_mm, a_stitch_mm = stitches, around_mm, around_mm / stitches

    def misses_by(one: Candidate) -> float:
        return abs(at_mm + a_stitch_mm * (one.stitches - at_stitches) - wanted_mm)

    def towards(one: Candidate) -> bool:
        """Between what is wanted and the pattern as it is."""
        between = reached_mm < misses_by(one) < abs(known_mm - wanted_mm)
        return between and (one.stitches - wanted) * (stitches - wanted) > 0

    for tried in range(min(_TRIES + _BEYOND, len(candidates))):
        halving = best is None and (beyond > _FINE or tried >= _TRIES)
        to_mm = (reached_mm + abs(known_mm - wanted_mm)) / 2 if halving and not halved else 0.0
        candidate = min(
            (one for one in candidates if not halving or towards(one)),
            key=lambda one: (abs(misses_by(one) - to_mm), one.rest, abs(one.more) + abs(one.sides)),
            default=None,
        )
        if candidate is None and halving and not halved:  # then what was leapt over, the nearest first
            halved, reached_mm = True, 0.0
            continue
        if candidate is None:
            break
        candidates.remove(candidate)
        if not candidate.changes and misses_by(candidate) < far_mm:
            best = Fitted(None, around_mm)
            continue
        nearest_mm = best.around_mm if best is not None else known_mm
        known = best is not None or abs(known_mm - wanted_mm) >= far_mm
        if not candidate.changes or (known and misses_by(candidate) >= abs(nearest_mm - wanted_mm)):
            break
        beyond += best is None and misses_by(candidate) >= far_mm
        try:
            draft = Draft(now.source)
            if chains_of(model) is not None:
                to = _oval(draft, pattern, piece, base, candidate)
            elif ball is not None:
                slim = _slim(now, name) / _slim(before, name)
                to = write_ball(draft, pattern, ball, candidate.more, slim, candidate.rest)
            elif base is not None:
                to = _rounds(draft, pattern, model, base, candidate)
            elif crown is not None:
                _chain(draft, model, name, candidate.more * crown.step)
                to = write_crown(draft, pattern, crown, candidate.more)
            else:
                to = _chain(draft, model, name, candidate.more)
            altered = settle(before, draft, _placing(piece, to))
        except CannotAlter as no:
            passed.append((candidate.stitches, no.reasons[0]))
            failed_mm.append(misses_by(candidate))
            if not halved and (not halving or len(failed_mm) >= _AGAIN):
                reached_mm = max(reached_mm, *failed_mm)
                failed_mm.clear()
            continue
        made_mm = way_around(altered.checked, name) or 0.0
        # The widest round may grow by more than the stitches added.
        if candidate.stitches != at_stitches:
            a_stitch_mm = (made_mm - at_mm) / (candidate.stitches - at_stitches) or a_stitch_mm
        at_stitches, at_mm = candidate.stitches, made_mm
        if abs(made_mm - wanted_mm) > far_mm:
            known_mm = min(known_mm, made_mm, key=lambda mm: abs(mm - wanted_mm))
            failed_mm.clear()
        elif best is None or abs(made_mm - wanted_mm) < abs(best.around_mm - wanted_mm):
            best = Fitted(altered, made_mm)
    if best is not None:
        return replace(best, passed=tuple(_by_reason(passed)))
    reasons = _by_reason(passed)[:_REASONS]
    if centimetres(known_mm) != centimetres(around_mm):
        which = "One that" if halving else "The nearest that"
        reasons.append(f"{which} can be made is about {centimetres(known_mm)}.")
    elif not halving:
        reasons.append("No other number of stitches that can be made comes nearer.")
    raise CannotAlter(
        f"The design has no size near to {centimetres(wanted_mm)}; with the stitches that it has it is "
        f"{centimetres(around_mm)}.",
        *reasons,
    )


def _by_reason(passed: Sequence[tuple[int, str]]) -> list[str]:
    """`12, 18 and 24 stitches: why not`; a number of stitches that was tried in several ways by its first."""
    first: dict[int, str] = {}
    for stitches, reason in passed:
        first.setdefault(stitches, reason)
    alike: dict[str, list[int]] = {}
    for stitches, reason in first.items():
        alike.setdefault(reason, []).append(stitches)
    return [f"{_runs_of(numbers)} stitches: {reason}" for reason, numbers in alike.items()]


def _runs_of(numbers: Sequence[int]) -> str:
    """`12, 18 and 24 to 32`, smallest first."""
    runs: list[list[int]] = []
    for number in sorted(numbers):
        if runs and number == runs[-1][-1] + 1:
            runs[-1].append(number)
        else:
            runs.append([number])
    said = [f"{run[0]} to {run[-1]}" if run[1:] else str(run[0]) for run in runs]
    return " and ".join([", ".join(said[:-1])] * bool(said[1:]) + said[-1:])


def way_around(checked: Checked, piece: str, size: int = 0) -> float | None:
    """The way around a piece in one size, or its width in rows, in mm; None without a gauge. Rows that fan
    out from a point are as wide as from tip to tip.
    """
    found = checked.measured.piece(piece) if checked.measured is not None else None
    what: What = "width" if found is not None and found.from_a_point else "around"
    band = found.size[size].get(what) if found and found.size else None
    return band.middle if band is not None else None


def _grows(model: Piece, stitches: int) -> bool:
    """Whether a piece is wider by far than the ring of chains that it begins with: no tube."""
    chain = model.start.chain.of(0) if model.start is not None and model.start.chain is not None else None
    return chain is not None and stitches > _TUBE * chain


def _widest(piece: PieceWork) -> int:
    return max(one.sizes[0].count for one in piece.rounds if one.sizes and one.sizes[0] is not None)


def _sizes_instead(now: Checked, wanted_mm: float) -> str:
    assert now.measured is not None
    first = now.measured.pieces[0]
    sizes = []
    for name, found in zip(now.measured.pattern.sizes, first.size, strict=False):
        band = found.get("around")
        if band is not None:
            sizes.append((abs(band.middle - wanted_mm), f"{name} ({centimetres(band.middle)})"))
    told = ", ".join(text for _, text in sizes)
    nearest = f" The nearest is {min(sizes)[1]}." if sizes else ""
    return f"This pattern is written in {len(now.measured.pattern.sizes)} sizes already: {told}.{nearest}"


def _slim(checked: Checked, name: str) -> float:
    """How tall a piece's mean round is in widths of a stitch; 1 without a gauge."""
    piece = checked.measured.piece(name) if checked.measured is not None else None
    known = piece.known_rounds(0) if piece is not None and piece.rounds else []
    return known[-1].height_mm / len(known) / piece.scale.width_mm if piece and piece.scale and known else 1.0


def _placing(was: PieceWork, to: Renumber) -> Follow:
    """Moves what lies on a piece, once its counts are settled.

    was: the piece before. to: its rounds' new numbers.
    """
    back = {to(one.plan.number): one.plan.number for one in was.rounds}

    def place(before: Checked, now: Checked) -> Draft | None:
        made = now.work.piece(was.name) if now.work is not None else None
        pattern = now.source.pattern
        if made is None or pattern is None:
            return None
        draft = Draft(now.source)
        place_anew(draft, pattern, was, made, back)
        return draft if draft.changes else None

    return place


def _chain(draft: Draft, model: Piece, name: str, more: int) -> Renumber:
    at: Path = ("pieces", name, "start")
    node = draft.node(at)
    chain = model.start.chain.of(0) if model.start is not None and model.start.chain is not None else None
    if node is None or chain is None:
        raise CannotAlter(f"“{name}” has no chain to begin with that could be longer.")
    if node.kind == "fields":
        draft.value((*at, "chain"), str(chain + more))
    else:
        where = node.text.find(str(chain))
        draft.part(at, where, where + len(str(chain)), str(chain + more))
    return int


def _oval(
    draft: Draft, pattern: Pattern, piece: PieceWork, base: Base | None, candidate: Candidate
) -> Renumber:
    """An oval longer by its chain, wider by rounds of its base; what lies along its sides follows both."""
    model = pattern.pieces[piece.name]
    to: Renumber = int
    if candidate.sides:
        to = _chain(draft, model, piece.name, candidate.sides)
    around = 2 * candidate.sides
    if base is not None and (candidate.more or candidate.rest):
        to = _rounds(draft, pattern, model, base, candidate)
        around += base.grows * candidate.more + candidate.rest
    lengthen(draft, piece, candidate.sides, base.last if base is not None else None, around // 2)
    return to


def _rounds(draft: Draft, pattern: Pattern, model: Piece, base: Base, candidate: Candidate) -> Renumber:
    """Base rounds more or fewer, and behind them one with the rest of the increases."""
    at: Path = ("pieces", base.piece, model.entries_field)
    last, added = base.last, candidate.more + (1 if candidate.rest else 0)
    done = {
        index
        for index, entry in enumerate(model.entries)
        if entry.run is not None and entry.run.first <= last
    }
    counts = list(base.counts[: last + min(candidate.more, 0)])
    if candidate.more < 0:
        _fewer(draft, at, model, last + candidate.more, last)
    new = []
    if candidate.more > 0 and base.growing:
        entry = model.entries[base.entry]
        assert entry.run is not None
        name = next(one for one in ("rounds", "rows", "round", "row") if draft.node((*at, base.entry, one)))
        draft.value((*at, base.entry, name), f"{entry.run.first}-{last + candidate.more}")
        counts += [base.stitches + base.grows * turn for turn in range(1, candidate.more + 1)]
    else:
        for _ in range(candidate.more):
            new.append((base.grows, counts[-1]))
            counts.append(counts[-1] + base.grows)
    if candidate.rest:
        new.append((candidate.rest, counts[-1]))
        counts.append(counts[-1] + candidate.rest)
    first = len(counts) - len(new) + 1
    behind = max(index for index in done if (run := model.entries[index].run) and run.first < first)
    lines = []
    for turn, (increases, stitches) in enumerate(new):
        work, count = base.written(increases, stitches, flip=turn % 2 == 0), str(stitches + increases)
        if work is None and candidate.more > 0 and (gone_on := base.gone_on(turn + 1)) is not None:
            work, count = gone_on
        if work is None:
            raise CannotAlter("Its increase rounds aren't written so that another could follow them.")
        work += base.ending if turn == len(new) - 1 else ""
        count = count if count.isdigit() else f'"{count}"'
        lines.append(f'{{round: {first + turn}, work: "{work}", count: {count}}}')
    draft.after((*at, behind), lines)
    if base.ending:
        _ends_elsewhere(draft, at, model, base, behind, added_after=bool(lines))

    def to(number: int) -> int:
        """The base's last round is the last that grows in full, a kept one stays, later ones move along."""
        flat = last + candidate.more
        return number + added if number > last else flat if number == last else min(number, flat)

    renumber(draft, pattern, base.piece, to, frozenset(done))
    return to


def _ends_elsewhere(
    draft: Draft, at: Path, model: Piece, base: Base, behind: int, *, added_after: bool
) -> None:
    """The words that end the piece go from its old last round; to the last that stays, if none is added.

    behind: index of the last entry that stays.
    """
    path: Path = (*at, behind, "work")
    node, entry = draft.node(path), model.entries[behind]
    if node is None or node.kind != "text" or entry.run is None:
        return
    if added_after and behind == base.entry:
        draft.value(path, node.text.removesuffix(base.ending))
    elif not added_after and behind != base.entry and entry.run.first == entry.run.last:
        draft.value(path, node.text + base.ending)


def _fewer(draft: Draft, at: Path, model: Piece, keep: int, last: int) -> None:
    """The base up to round `keep` of `last`: later entries go, one that reaches over it is cut."""
    for index, entry in enumerate(model.entries):
        run = entry.run
        if run is None or run.last is None or run.first > last or run.last <= keep:
            continue
        if run.first > keep:
            draft.drop((*at, index))
            continue
        name = next(one for one in ("rounds", "rows", "round", "row") if draft.node((*at, index, one)))
        draft.value((*at, index, name), str(run.first) if run.first == keep else f"{run.first}-{keep}")
