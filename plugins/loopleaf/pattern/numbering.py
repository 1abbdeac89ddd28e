"""Which numbers each entry of a piece stands for, and what is wrong with them: gaps, overlaps, steps back."""

from collections.abc import Iterable
from dataclasses import dataclass, field

from .lengthwise import first_row_side, last_row, row_height_mm
from .limits import MOST_ROUNDS
from .model import Pattern
from .pieces import Piece
from .plans import Path, PlanProblem
from .rows_told import rows_told_otherwise
from .slips import Slip, one_slip
from .values import Run

_MOST_PROBLEMS = 100  # in one piece; past that its numbers say nothing any more

Sizes = tuple[int, ...] | None


@dataclass(frozen=True, slots=True)
class Slot:
    """One number of one entry: turn is its place among the entry's numbers (0-based); sizes None for all."""

    number: int
    entry: int
    turn: int
    sizes: Sizes


@dataclass(slots=True)
class Numbering:
    """The slots of a piece by number (more than one where sizes differ there), and the problems met."""

    pattern: Pattern
    name: str
    slots: dict[int, list[Slot]] = field(default_factory=dict)
    problems: list[PlanProblem] = field(default_factory=list)
    highest: int = 0
    gave_up: bool = False

    @property
    def piece(self) -> Piece:
        return self.pattern.pieces[self.name]

    def path(self, entry: int, *fields: str) -> Path:
        """The path of an entry, or of a field in it; of a piece worked as another one, where that has it."""
        return ("pieces", self.piece.as_ or self.name, self.piece.entries_field, entry, *fields)

    def run_path(self, index: int) -> Path:
        """The path of the field that numbers an entry."""
        entry = self.piece.entries[index]
        return self.path(
            index, next(one for one in ("round", "rounds", "row", "rows") if getattr(entry, one))
        )


def number_entries(pattern: Pattern, name: str) -> Numbering:
    """Give every entry of a piece its numbers."""
    done = Numbering(pattern, name)
    entries = done.piece.entries
    slip = one_slip(done.piece)
    written = [i for i, entry in enumerate(entries) if entry.run and entry.every is None]
    ruled = [i for i, entry in enumerate(entries) if entry.run and entry.every is not None]
    runs = [run for run in (entries[i].run for i in written) if run]
    total = 0
    for index in [*written, *ruled]:
        if len(done.problems) > _MOST_PROBLEMS:
            done.gave_up = True
            break
        entry = entries[index]
        sizes = _sizes(done, index)
        if slip is not None and slip.entry == index:
            done.problems.append(_slipped(done, slip))
            numbers: list[tuple[int, Sizes]] = [(number, sizes) for number in slip.numbers]
        else:
            numbers = _numbers(done, index, sizes)
        told = rows_told_otherwise(entry, done.run_path(index), [number for number, _ in numbers])
        if told is not None:
            done.problems.append(told)
        total += len(numbers)
        if total > 2 * MOST_ROUNDS:
            done.problems.append(_too_many(done.run_path(index)))
            done.gave_up = True
            break
        if entry.every is None:
            numbers = _check_order(done, index, numbers, runs)
        for turn, (number, worked_by) in enumerate(numbers):
            taken = done.slots.setdefault(number, [])
            done.highest = max(done.highest, number)
            if not any(share(slot.sizes, worked_by) for slot in taken):
                taken.append(Slot(number, index, turn, worked_by))
    if not done.gave_up:
        _check_gaps(done)
    return done


def _slipped(done: Numbering, slip: Slip) -> PlanProblem:
    """One entry has another's number: said there, once, and the piece goes on as it must have been meant."""
    entry = done.piece.entries[slip.entry]
    right = str(Run(slip.numbers[0], slip.numbers[-1]))
    message = f"{_said(entry.word, slip.twice)} {'is' if len(slip.twice) == 1 else 'are'} written twice"
    if slip.lacking:
        lacking = _said(entry.word, slip.lacking).lower()
        message += f", and {lacking} {'is' if len(slip.lacking) == 1 else 'are'} missing"
    return PlanProblem(
        "rounds-out-of-order",
        done.run_path(slip.entry),
        f"{message}.",
        f"The entries before and after this one are in order if it is {right}.",
        (f"In the order in which it stands it would be {right}.", right, "likely"),
        facts={"twice": slip.twice, "lacking": slip.lacking},
        round=str(slip.twice[0]),
    )


def _too_many(path: Path) -> PlanProblem:
    return PlanProblem(
        "number-too-large",
        path,
        "These are more rounds than any piece has.",
        f"The limit for one piece is {MOST_ROUNDS:,} rounds or rows.",
        ("Look for a slip of the keyboard.", None, "fill-in"),
        facts={"limit": MOST_ROUNDS},
    )


def common(one: Sizes, other: Sizes) -> Sizes:
    """The sizes in both; None is all sizes."""
    if one is None or other is None:
        return other if one is None else one
    return tuple(size for size in one if size in other)


def share(one: Sizes, other: Sizes) -> bool:
    """Whether two sets of sizes have one in common."""
    return one is None or other is None or bool(set(one) & set(other))


def _sizes(done: Numbering, index: int) -> Sizes:
    wanted = done.piece.entries[index].sizes
    known = done.pattern.sizes
    for name in wanted:
        if name not in known:
            said = f"The sizes are {', '.join(known)}." if known else "The pattern has no `sizes`."
            done.problems.append(
                PlanProblem(
                    "wrong-type",
                    done.path(index, "sizes"),
                    f"There is no size `{name}`.",
                    said,
                    ("Write one of the pattern's sizes.", None, "fill-in"),
                    facts={"size": name},
                )
            )
    found = tuple(known.index(name) for name in wanted if name in known)
    return found or None


def _numbers(done: Numbering, index: int, sizes: Sizes) -> list[tuple[int, Sizes]]:
    """The numbers of one entry in order, each with the sizes that work it."""
    entry = done.piece.entries[index]
    run = entry.run
    assert run is not None  # only numbered entries come here
    if entry.until is not None and run.last is None:
        return _until(done, index, run.first, sizes)
    last = run.last
    if last is None:
        last = max([run.first, *(slots[-1].number for slots in done.slots.values() if slots)])
    step = entry.every or 1
    return [(number, sizes) for number in range(run.first, last + 1, step)]


def _until(done: Numbering, index: int, first: int, sizes: Sizes) -> list[tuple[int, Sizes]]:
    entry, pattern = done.piece.entries[index], done.pattern
    row_mm = row_height_mm(pattern, done.name)
    assert entry.until is not None
    if row_mm is None and pattern.gauge_not_critical:
        return _once_through(done, index, first, sizes)
    if row_mm is None:
        done.problems.append(
            PlanProblem(
                "field-missing",
                done.path(index, "until"),
                f"How many rows make {entry.until} can't be worked out here.",
                "The pattern has no gauge that counts rows over a length.",
                ("Add `rows` and `over` to the gauge, or number the rows.", None, "fill-in"),
                round=str(first),
            )
        )
        return [(first, sizes)]
    ends: dict[int, int] = {}
    for size in sizes or range(pattern.size_count):
        length = (
            entry.until.of(size) if len(entry.until.sizes) in (1, pattern.size_count) else entry.until.one
        )
        if length is None:
            continue
        if length.mm / row_mm > MOST_ROUNDS:
            done.problems.append(_too_many(done.path(index, "until")))
            return [(first, sizes)]
        turns = done.piece.worked == "rows"
        ends[size] = last_row(entry, first, length.mm, row_mm, first_row_side(done.piece), turns)
    step = entry.every or 1
    numbers: list[tuple[int, Sizes]] = []
    for number in range(first, max(ends.values(), default=first) + 1, step):
        worked_by = tuple(size for size, end in ends.items() if number <= end)
        numbers.append((number, sizes if len(worked_by) == len(ends) else worked_by))
    return numbers


def _once_through(done: Numbering, index: int, first: int, sizes: Sizes) -> list[tuple[int, Sizes]]:
    """The rows of one repeat, where the gauge isn't critical: how many make the length the maker will see."""
    entry = done.piece.entries[index]
    again = len(entry.repeat.numbers) if entry.repeat else 1
    rows = f"{entry.word}s {first}-{first + again - 1}" if again > 1 else f"{entry.word} {first}"
    done.problems.append(
        PlanProblem(
            "field-missing",
            done.path(index, "until"),
            f"How many {entry.word}s make {entry.until} can't be worked out here.",
            f"The gauge isn't critical; the check works {rows} once, and the page says how far to go on.",
            ("Add `rows` and `over` to the gauge if sizes and yarn are to be worked out.", None, "fill-in"),
            severity="note",
            round=str(first),
        )
    )
    turns = done.piece.worked == "rows"
    step = entry.every or 1
    end = last_row(entry, first, first + step * again - 1, 1, first_row_side(done.piece), turns)
    return [(number, sizes) for number in range(first, end + 1, step)]


def _check_order(
    done: Numbering, index: int, numbers: list[tuple[int, Sizes]], runs: list[Run]
) -> list[tuple[int, Sizes]]:
    """The entry's numbers, told where they overlap or step back.

    Where all of them are taken, and those that would come next are free, it goes on with these: a number
    written twice is a slip in one place, not a missing round in another.
    """
    word = done.piece.entries[index].word
    taken = [n for n, by in numbers if any(share(slot.sizes, by) for slot in done.slots.get(n, []))]
    highest = done.highest
    if taken:
        by = next(by for n, by in numbers if n == taken[0])
        other = next(slot.entry for slot in done.slots[taken[0]] if share(slot.sizes, by))
        done.problems.append(
            PlanProblem(
                "rounds-out-of-order",
                done.run_path(index),
                f"{_said(word, taken)} {'is' if len(taken) == 1 else 'are'} written twice.",
                f"The entry for {_spoken(done, other)} holds {'it' if len(taken) == 1 else 'them'} already.",
                _renumber(
                    highest, len(numbers), [run for run in runs if run is not done.piece.entries[index].run]
                ),
                facts={"overlap": taken, "entry": other},
                round=str(taken[0]),
            )
        )
        moved = range(highest + 1, highest + 1 + len(numbers))
        free = all(run.first > moved[-1] or (run.last or run.first) < moved[0] for run in runs)
        if len(taken) == len(numbers) and free:
            return [(number, by) for number, (_, by) in zip(moved, numbers, strict=True)]
    elif numbers and numbers[0][0] < highest:
        done.problems.append(
            PlanProblem(
                "rounds-out-of-order",
                done.run_path(index),
                f"{word.capitalize()} {numbers[0][0]} comes after {word} {highest}.",
                "A piece's entries stand in the order in which they are worked.",
                (f"Set it {_its_place(done, numbers[0][0], word)}.", None, "fill-in"),
                facts={"after": highest},
                round=str(numbers[0][0]),
            )
        )
    return numbers


def _spoken(done: Numbering, index: int) -> str:
    entry = done.piece.entries[index]
    one = entry.run is not None and entry.run.last == entry.run.first
    return f"{entry.word} {entry.run}" if one else f"{entry.word}s {entry.run}"


def _renumber(highest: int, many: int, others: list[Run]) -> tuple[str, str | None, str]:
    """The numbers that come next; where a later entry has them, all behind it move on too."""
    moved = range(highest + 1, highest + 1 + many)
    right = str(Run(moved[0], moved[-1]))
    if any(run.first <= moved[-1] and (run.last is None or run.last >= moved[0]) for run in others):
        return (f"Make it {right}, and number on from there, or take it out.", None, "fill-in")
    return (f"In the order in which it stands it would be {right}.", right, "likely")


def _its_place(done: Numbering, number: int, word: str) -> str:
    """`behind round 1`, `before round 3`: where an entry belongs by its number."""
    before = max((one for one in done.slots if one < number), default=None)
    return f"before {word} {min(done.slots)}" if before is None else f"behind {word} {before}"


def _check_gaps(done: Numbering) -> None:
    """Numbers that no entry stands for. A piece on another's edge may go on from that piece's numbers."""
    numbers = sorted(done.slots)
    on_an_edge = done.piece.start is not None and done.piece.start.kind == "edge"
    before = numbers[0] - 1 if numbers and on_an_edge else 0
    for number in numbers:
        if number > before + 1:
            gap = list(range(before + 1, number))
            index = done.slots[number][0].entry
            word = done.piece.entries[index].word
            what = _said(word, gap)
            came = (
                f"{word.capitalize()} {before} is followed by {word} {number}."
                if before
                else (f"The first {word} is {word} {number}.")
            )
            done.problems.append(
                PlanProblem(
                    "rounds-out-of-order",
                    done.run_path(index),
                    f"{what} {'is' if len(gap) == 1 else 'are'} missing.",
                    came,
                    (f"Write what is missing, or number on from {before + 1}.", None, "fill-in"),
                    facts={"gap": gap},
                    round=str(number),
                )
            )
        before = number


def _said(word: str, numbers: Iterable[int]) -> str:
    """`Round 5`, `Rounds 5-7`, `Rounds 5, 7`: the numbers as print says them."""
    runs: list[tuple[int, int]] = []
    for number in numbers:
        if runs and runs[-1][1] == number - 1:
            runs[-1] = (runs[-1][0], number)
        else:
            runs.append((number, number))
    said = ", ".join(str(a) if a == b else f"{a}-{b}" for a, b in runs)
    several = len(runs) > 1 or runs[0][0] != runs[0][1]
    return f"{word.capitalize()}{'s' if several else ''} {said}"
