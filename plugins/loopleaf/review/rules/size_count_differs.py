"""A list of numbers has more or fewer entries than the pattern has sizes.

What: `40 (48, 56)` gives one number a size; with three sizes there must be three, or a single one that
serves all. Where all lists agree with one another and only `sizes` doesn't, it is told once, there.

Why it matters: From that place on a maker reads the numbers of another size.

Wrong:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 8 (10) sc in ring, join"}

Right:

    sizes: [S, M, L]
    rounds:
      - {round: 1, work: "ch 1, 8 (10, 12) sc in ring, join"}

When to ignore: Never; write `-` where a size has none.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ...fabric import RoundWork
from ...fabric.uneven import uneven
from ...notation import parse, parse_count
from ...notation.tree import Line, Tally
from ...pattern import Finding, FinishedSize, Lengths, Location, Numbers, Path, Pattern, Related, Suggestion
from ..names import number_of
from ..rule import Words, finding, rule, told
from ..subject import Met, Subject, quote

_ENOUGH = 2
"""So many lists that agree among themselves bear each other out against the list of sizes."""

_NAMED = 3
"""So many of these lists are named beside the finding."""


def find(subject: Subject) -> Iterator[Finding]:
    lists = list(_lists(subject))
    numbers = {one.numbers for one in lists}
    if len(lists) >= _ENOUGH and len(numbers) == 1 and not _any_agrees(subject, *numbers):
        yield _all_against_the_sizes(subject, lists)
        return
    for one in lists:
        words = _words(subject, one.quoted, one.numbers)
        if one.met is not None:
            yield finding("size-count-differs", "error", one.met, words, by_size=False)
        else:
            yield told(__name__, "error", subject, one.at, words, one.piece)


@dataclass(frozen=True, slots=True)
class _List:
    """A list of numbers that isn't one a size. met: where a round's line or count holds it."""

    at: Location
    quoted: str
    numbers: int
    piece: str
    met: Met | None = None


def _lists(subject: Subject) -> Iterator[_List]:
    """Every list of numbers with more or fewer of them than there are sizes."""
    for met in subject.met("size-count-differs"):
        if met.facts["by_n"]:
            continue  # told where the numbers stand
        path: Path = met.facts["path"]
        span = met.troubles[0].span
        text = met.round.plan.work if met.round and path == met.round.plan.work_path else None
        if text is None and met.round:
            text = met.round.plan.stated or ""
        quoted = quote(text[span.start : span.end] if span and text else text or "")
        yield _List(met.location, quoted, met.facts["numbers"], met.piece_name, met)
    locate = subject.source.locate
    for path, value, piece in _values(subject.pattern):
        if len(value.sizes) not in (1, subject.pattern.size_count):
            yield _List(locate(path), quote(str(value)), len(value.sizes), piece)
    for letter, yarn in subject.pattern.materials.yarns.items():
        if len(yarn.weighed) not in (0, 1, subject.pattern.size_count):
            at = locate(("materials", "yarns", letter, "weighed"))
            yield _List(at, quote(subject.text_at(at).strip("\"'")), len(yarn.weighed), "")


def _any_agrees(subject: Subject, numbers: int) -> bool:
    """Whether a list has as many numbers as there are sizes, among those that don't have `numbers`."""
    values = [len(value.sizes) for _, value, _ in _values(subject.pattern)]
    values += [len(yarn.weighed) for yarn in subject.pattern.materials.yarns.values()]
    if any(one not in (0, 1, numbers) for one in values):
        return True
    return any(uneven(one, numbers) for _, round in subject.rounds() for one in _read(subject, round))


def _read(subject: Subject, round: RoundWork) -> tuple[Line | None, Tally | None]:
    """A round's line and count, read anew where lists in them keep the round from being worked."""
    plan, words = round.plan, subject.work.vocabulary
    if round.line is not None or all(one.rule != "size-count-differs" for one in round.troubles):
        return round.line, round.stated
    stated = parse_count(plan.stated, words)[0] if plan.stated else None
    return parse(plan.work, words, plan.n).line, stated


def _all_against_the_sizes(subject: Subject, lists: list[_List]) -> Finding:
    """All lists agree with one another: it is the list of sizes that is wrong, and it is told once, there."""
    first = lists[0]
    sizes, numbers = subject.sizes, number_of(first.numbers, "number")
    if sizes:
        at = subject.source.locate(("sizes",))
        message = f"{number_of(len(sizes), 'size')} {_are(sizes)} listed, and every list has {numbers}."
        working = (
            f"The sizes are {', '.join(sizes)}; {len(lists)} lists have {numbers}, none has {len(sizes)}."
        )
        mending = "List in `sizes` each size that the numbers are given for, or give one number a size."
    else:
        at = min(one.at for one in lists)
        message = f"The pattern lists no sizes, and {len(lists)} lists give {numbers} each."
        working = ""
        mending = "Add “sizes” to the file, or give single numbers."
    others = sorted(one.at for one in lists if one.at != at)[:_NAMED]
    words = Words(
        message=message,
        working=working,
        suggestion=Suggestion(mending, None, "fill-in"),
        related=tuple(Related(one, f"this gives {numbers}") for one in others),
    )
    return told(__name__, "error", subject, at, words)


def _are(several: Sequence[str]) -> str:
    return "is" if len(several) == 1 else "are"


def _words(subject: Subject, quoted: str, numbers: int) -> Words:
    count = subject.pattern.size_count
    sizes = subject.sizes
    return Words(
        message=f"{quoted} gives {number_of(numbers, 'number')} for {number_of(count, 'size')}.",
        working=f"The sizes are {', '.join(sizes)}." if sizes else "The pattern lists no sizes.",
        suggestion=Suggestion(
            "Give one number a size, with “-” where a size has none."
            if sizes
            else "Add “sizes” to the file, or give a single number.",
            None,
            "fill-in",
        ),
    )


def _values(pattern: Pattern) -> Iterator[tuple[Path, Numbers | Lengths, str]]:
    """The numbers and lengths outside the rounds that may be given one a size."""
    finished: list[tuple[Path, FinishedSize | None, str]] = [((), pattern.finished_size, "")]
    for name, piece in pattern.pieces.items():
        at: Path = ("pieces", name)
        finished.append((at, piece.finished_size, name))
        if piece.start and piece.start.chain:
            yield ((*at, "start") if piece.start.text else (*at, "start", "chain")), piece.start.chain, name
        for field, length in (("length", piece.length), ("tail", piece.tail)):
            if isinstance(length, Lengths):
                yield (*at, field), length, name
        for number, entry in enumerate(piece.entries):
            if entry.until:
                yield (*at, piece.entries_field, number, "until"), entry.until, name
            if entry.n:
                yield (*at, piece.entries_field, number, "n"), entry.n.from_, name
                yield (*at, piece.entries_field, number, "n", "step"), entry.n.step, name
    for at, size, name in finished:
        for field in ("around", "across", "width", "length", "height"):
            lengths = getattr(size, field, None)
            if lengths is not None:
                yield (*at, "finished size", field), lengths, name


RULE = rule(__name__, __doc__, "error", find)
