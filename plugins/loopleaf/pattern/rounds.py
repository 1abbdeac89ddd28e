"""The rounds of a piece set out one by one: `rounds: 4-6` gives three plans, `repeat: 2-3` as many as it
says."""

from dataclasses import dataclass, field

from .entries import Entry, Growing
from .grids import grid_line
from .lengthwise import other_side
from .model import Pattern
from .numbering import Numbering, Sizes, Slot, common, number_entries, share
from .plans import NumberOfN, Path, PlanProblem, RoundPlan
from .print_words import before_the_last, ends_so, without_so_many
from .values import Run

__all__ = ["Path", "PlanProblem", "RoundPlan", "set_out"]


def set_out(pattern: Pattern, piece: str) -> tuple[list[RoundPlan], list[PlanProblem]]:
    """Every round or row of a piece in the order of its numbers, and what is wrong with the numbering.

    A number can have two plans, where different sizes work it differently. A round whose line can't be
    found (it
    repeats one that doesn't exist) has no plan but a problem. Raises KeyError for a piece that the pattern
    hasn't.
    """
    numbering = number_entries(pattern, piece)
    if numbering.piece.as_ is not None and not numbering.slots:
        return [], [_no_such_piece(pattern, piece, numbering.piece.as_)]
    writer = _Writer(numbering)
    plans: list[RoundPlan] = []
    for number in sorted(numbering.slots):
        for slot in numbering.slots[number]:
            plans += writer.plans(slot)
    _whole_repeats(numbering)
    return plans, numbering.problems


def _no_such_piece(pattern: Pattern, piece: str, named: str) -> PlanProblem:
    before = list(pattern.pieces)[: list(pattern.pieces).index(piece)]
    return PlanProblem(
        "no-such-place",
        ("pieces", piece, "as"),
        f"No piece before “{piece}” is called “{named}”.",
        f"Before it stand: {', '.join(before)}." if before else "It is the first piece.",
        ("Name a piece that stands before this one.", None, "fill-in"),
        facts={"what": "piece", "there": before},
    )


@dataclass(frozen=True, slots=True)
class _Line:
    """A line of shorthand and what goes with it wherever it is worked again."""

    work: str
    path: Path
    n: NumberOfN | None
    yarn: str
    reversed: bool


@dataclass(slots=True)
class _Writer:
    numbering: Numbering
    lines: dict[int, list[tuple[Sizes, _Line]]] = field(default_factory=dict)
    told: set[tuple[int, str]] = field(default_factory=set)

    def plans(self, slot: Slot) -> list[RoundPlan]:
        """The plans for one number of one entry: one, or several where the round it names differs by size.

        Called in the order of the numbers, so that the lines of all earlier rounds are known.
        """
        lines = self._lines(slot)
        self.lines.setdefault(slot.number, []).extend(lines)
        return [self._plan(slot, sizes, line) for sizes, line in lines]

    def _plan(self, slot: Slot, sizes: Sizes, line: _Line) -> RoundPlan:
        entry = self.numbering.piece.entries[slot.entry]
        named = self._named(entry, slot)
        return RoundPlan(
            number=slot.number,
            label=str(slot.number),
            word=entry.word,
            work=line.work,
            work_path=line.path,
            entry=slot.entry,
            entry_path=self.numbering.path(slot.entry),
            n=line.n,
            stated=self._stated(entry, slot),
            stated_path=self.numbering.path(slot.entry, "count") if entry.count is not None else (),
            side=self._side(entry, slot),
            yarn=line.yarn,
            note=entry.note,
            picture=entry.picture.file if entry.picture else "",
            video=entry.video or "",
            adjustable=entry.adjustable,
            sizes=sizes,
            by_rule=_rule(entry),
            again=str(named) if named else "",
            reversed=line.reversed,
        )

    def _lines(self, slot: Slot) -> list[tuple[Sizes, _Line]]:
        """What a slot works, by sizes: its own line, or that of the earlier round it names."""
        entry = self.numbering.piece.entries[slot.entry]
        n = self._n(entry, slot)
        if entry.from_ == "grid":
            line = self._from_grid(entry, slot, n)
            return [(slot.sizes, line)] if line else []
        number = self._named(entry, slot)
        if number is None:
            path = self.numbering.path(slot.entry, "work")
            rounds = 1 if entry.run is None else len(entry.run.numbers)
            work = without_so_many(entry.work or "", rounds)
            work = before_the_last(work, slot.turn + 1 == rounds)
            return [(slot.sizes, _Line(work, path, n, entry.yarn, entry.reversed))]
        there = any(share(one.sizes, slot.sizes) for one in self.numbering.slots.get(number, []))
        if not there or number >= slot.number or (entry.run and number >= entry.run.first):
            self._no_such_round(slot, number, later=there)
            return []
        found: list[tuple[Sizes, _Line]] = []
        ends = entry.run is not None and slot.turn + 1 == len(entry.run.numbers)
        end = f", {entry.work}" if entry.work and ends else ""
        for sizes, line in self.lines[number]:
            both = common(sizes, slot.sizes)
            if both != ():
                again = line.reversed != entry.reversed
                work = line.work if end and ends_so(line.work, entry.work or "") else line.work + end
                ours = _Line(work, line.path, line.n if n is None else n, entry.yarn or line.yarn, again)
                found.append((both, ours))
        return found

    def _named(self, entry: Entry, slot: Slot) -> int | None:
        """The number of the round that this one works again."""
        run: Run | None = entry.repeat or entry.as_
        return run.numbers[slot.turn % len(run.numbers)] if run else None

    def _no_such_round(self, slot: Slot, number: int, later: bool) -> None:
        entry = self.numbering.piece.entries[slot.entry]
        field_name = "repeat" if entry.repeat else "as"
        missing = not later and number < slot.number and number not in self.numbering.slots
        if missing and any(number in problem.facts.get("gap", ()) for problem in self.numbering.problems):
            return  # that it is missing is told already
        if not self._first_time(slot, f"{field_name} {number}"):
            return
        word = entry.word
        if number < slot.number and later:
            message = (
                f"{word.capitalize()} {number} is itself one of the {word}s that are to be worked again."
            )
            working = f"These {word}s are {entry.run}, and they are worked as {entry.repeat or entry.as_}."
        elif later:
            message = f"{word.capitalize()} {number} isn't worked yet when {word} {slot.number} names it."
            working = f"A {word} can only be worked again once it has been worked."
        else:
            message = f"There is no {word} {number} to work again."
            highest = max(self.numbering.slots)
            working = (
                f"This piece has {word}s 1-{highest}." if highest > 1 else f"This piece has {word} 1 only."
            )
        self.numbering.problems.append(
            PlanProblem(
                "rounds-out-of-order",
                self.numbering.path(slot.entry, field_name),
                message,
                working,
                (f"Name an earlier {word}.", None, "fill-in"),
                facts={"number": number, "later": later},
                round=str(slot.number),
            )
        )

    def _first_time(self, slot: Slot, what: str) -> bool:
        """Whether this is said of this entry for the first time."""
        if (slot.entry, what) in self.told:
            return False
        self.told.add((slot.entry, what))
        return True

    def _n(self, entry: Entry, slot: Slot) -> NumberOfN | None:
        if entry.n is None:
            return None
        values = entry.n.at(slot.turn).sizes
        lowest = min((one for one in values if one is not None), default=0)
        if lowest < 0:
            word = entry.word
            self._tell_n(
                slot,
                f"`n` falls below 0 in {word} {slot.number}.",
                {"n": lowest, "number": slot.number},
                f"It begins with {entry.n.from_} and changes by {entry.n.step}: "
                f"after {slot.turn} steps it is {lowest}.",
            )
            values = tuple(one and max(one, 0) for one in values)
        return values if len(values) > 1 else values[0]

    def _tell_n(self, slot: Slot, message: str, facts: dict[str, int], working: str = "") -> None:
        if self._first_time(slot, "n"):
            self.numbering.problems.append(
                PlanProblem(
                    "wrong-type",
                    self.numbering.path(slot.entry, "n"),
                    message,
                    working,
                    ("Begin higher, step less, or share the rounds out over two entries.", None, "fill-in"),
                    facts=dict(facts),
                    round=str(slot.number),
                )
            )

    def _stated(self, entry: Entry, slot: Slot) -> str | None:
        if isinstance(entry.count, Growing):
            return str(entry.count.at(slot.turn))
        return entry.count

    def _side(self, entry: Entry, slot: Slot) -> str:
        """The stated side; over several rows that turn it changes from row to row."""
        if entry.side is None or entry.run is None:
            return ""
        turned = self.numbering.piece.worked == "rows" and slot.turn * (entry.every or 1) % 2 == 1
        return other_side(entry.side) if turned else entry.side

    def _from_grid(self, entry: Entry, slot: Slot, n: NumberOfN | None) -> _Line | None:
        path = self.numbering.path(slot.entry, "from")
        grid = self.numbering.piece.grid
        if grid is None or slot.turn >= len(grid.rows):
            rows = len(grid.rows) if grid else 0
            if self._first_time(slot, "from"):
                message = (
                    f"The grid has no row for {entry.word} {slot.number}."
                    if grid
                    else "This piece has no `grid`."
                )
                self.numbering.problems.append(
                    PlanProblem(
                        "rounds-out-of-order",
                        path,
                        message,
                        f"It has {rows} rows." if grid else "",
                        (
                            "Number as many rows as the grid has." if grid else "Add `grid:` to the piece.",
                            None,
                            "fill-in",
                        ),
                        facts={"rows": rows},
                        round=str(slot.number),
                    )
                )
            return None
        if entry.work:
            path = self.numbering.path(slot.entry, "work")
        work = grid_line(
            self.numbering.pattern, self.numbering.piece, grid, slot.turn, slot.number, entry.work or ""
        )
        return _Line(work, path, n, entry.yarn, entry.reversed)


def _rule(entry: Entry) -> str:
    if entry.repeat:
        return "repeat"
    if entry.as_:
        return "as"
    if entry.from_:
        return "grid"
    return "every" if entry.every else ""


def _whole_repeats(numbering: Numbering) -> None:
    """`{rows: 4-50, repeat: 2-3}` ends after the first of its two rows; said unless `end` asks for just
    that."""
    for index, entry in enumerate(numbering.piece.entries):
        run = entry.run
        if entry.repeat is None or run is None or run.last is None or entry.end:
            continue
        size, rows = len(entry.repeat.numbers), len(run.numbers)
        times, over = divmod(rows, size)
        if entry.repeat.numbers[-1] >= run.first:
            continue  # what it names doesn't come before it, and that is told
        if not over or any(
            run.last + 1 in one.facts.get("gap", ())
            or run.last in one.facts.get("overlap", one.facts.get("twice", ()))
            for one in numbering.problems
        ):
            continue  # even, or its last number is wrong and that is told
        fewer, more = run.last - over, run.last - over + size
        choices = [f"{run.first}-{end}" for end in (fewer, more) if end >= run.first]
        word = entry.word
        numbering.problems.append(
            PlanProblem(
                "row-repeat-stops-midway",
                numbering.run_path(index),
                f"{word.capitalize()}s {run} end inside their repeat of {word}s {entry.repeat}.",
                f"{rows} {word}s in repeats of {size}: {times} times, and {over} more.",
                (f"Whole repeats: {' or '.join(choices)}.", choices[0], "likely"),
                "warning",
                {"rows": rows, "repeat": size, "over": over},
                str(run.last),
            )
        )
