"""A list of numbers has more or fewer entries than the pattern has sizes.

What: `40 (48, 56)` gives one number a size; with three sizes there must be three, or a single one that
serves all.

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

from collections.abc import Iterator

from ...pattern import Finding, FinishedSize, Lengths, Numbers, Path, Pattern, Suggestion
from ..names import number_of
from ..rule import Words, finding, rule, told
from ..subject import Subject, quote


def find(subject: Subject) -> Iterator[Finding]:
    for met in subject.met("size-count-differs"):
        if met.facts["by_n"]:
            continue  # told where the numbers stand
        path: Path = met.facts["path"]
        span = met.troubles[0].span
        text = met.round.plan.work if met.round and path == met.round.plan.work_path else None
        if text is None and met.round:
            text = met.round.plan.stated or ""
        quoted = quote(text[span.start : span.end] if span and text else text or "")
        yield finding(
            "size-count-differs", "error", met, _words(subject, quoted, met.facts["numbers"]), by_size=False
        )
    for path, value, piece in _values(subject.pattern):
        if len(value.sizes) not in (1, subject.pattern.size_count):
            words = _words(subject, quote(str(value)), len(value.sizes))
            yield told(__name__, "error", subject, subject.source.locate(path), words, piece)
    for letter, yarn in subject.pattern.materials.yarns.items():
        if len(yarn.weighed) not in (0, 1, subject.pattern.size_count):
            at = subject.source.locate(("materials", "yarns", letter, "weighed"))
            words = _words(subject, quote(subject.text_at(at).strip("\"'")), len(yarn.weighed))
            yield told(__name__, "error", subject, at, words)


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
