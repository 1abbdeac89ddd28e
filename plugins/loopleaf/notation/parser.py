"""Reads an instruction line, or a round's count, into the tree."""

import re
from collections.abc import Callable
from functools import lru_cache

from .asides import read_tally
from .cursor import Cursor, UnreadableError
from .lexer import lex
from .limits import too_many
from .mending import explain
from .movements import movement_told
from .problem import Parsed, Problem
from .steps import read_block, read_step
from .tension import with_tension
from .tree import Line, Span, Step, Tally
from .vocabulary import NumberOfN, Vocabulary

_LABEL = re.compile(r"(?:rows?|rounds?|rnds?|r) ?\d{1,4}(?:-\d{1,4})? ?(?:\((?:RS|WS)\) ?)?:", re.IGNORECASE)
LONGEST = 5_000
"""How many characters a line may have."""
TOLD = 20
"""How many mistakes of one line are told."""
MENDED = 6
"""Up to how many unreadable places a line may have for mendings to be tried."""


@lru_cache(maxsize=40_000)
def parse(text: str, vocabulary: Vocabulary, n: NumberOfN | None = None) -> Parsed:
    """The tree of a line in the vocabulary's terms, and what there is to say about it.

    n: what stands for every `n` in the line. The tree is None where there is an error.
    """
    if len(text) > LONGEST:
        return Parsed(None, (_too_long(text),))
    label = _LABEL.match(text)
    if label is not None:  # `Row 2 (RS): …`: the entry says that itself; offsets stay
        text = " " * label.end() + text[label.end() :]
    cursor, steps = _read(text, vocabulary, n)
    problems = cursor.problems
    if any(problem.rule == "unknown-instruction" for problem in problems):
        problems = list(problems)  # a bracket without its other one: what can't be read for it only follows
    elif cursor.unread:
        problems = problems + _explained(cursor, lambda t: _mistakes(t, vocabulary, n))
    elif steps:
        large = too_many(steps, len(text))
        if large is not None:
            problems = [*problems, large]
    elif not problems:
        problems = [explain(cursor, UnreadableError(0, "step"), None)]
    if not problems:
        return Parsed(Line(steps), ())
    said = tuple(sorted(problems, key=lambda p: (p.span.start, p.span.end)))
    if any(p.severity == "error" for p in said):
        return Parsed(None, said[:TOLD])
    return Parsed(Line(steps), said)


def _explained(cursor: Cursor, mistakes_in: Callable[[str], list[int]]) -> list[Problem]:
    """What can't be read, each mistake once; a mending is looked for only where few words need one.

    What comes right behind unreadable words belongs to them, unless it has a mending of its own; so does an
    asterisk or `rep from` whose other half may stand in them.
    """
    halves = [one for one in cursor.unread if _is_half(cursor, one)]
    unread = [one for one in cursor.unread if one not in halves] or halves[:1]
    if unread == halves[:1] and unread[0].expected == "open-star" and _has_error(cursor.problems):
        return []
    told = movement_told(cursor, unread)
    if told is not None:
        unread = unread[: told[0]]
    few = len(unread) <= MENDED
    problems: list[Problem] = []
    for error in unread[:TOLD]:
        problem = explain(cursor, error, mistakes_in if few else None)
        if not problems or not _follows(cursor, error) or problem.suggestion is not None:
            problems.append(problem)
    return problems if told is None else [*problems, told[1]]


def _is_half(cursor: Cursor, error: UnreadableError) -> bool:
    """An asterisk without its `rep from`, or the other way round."""
    if error.expected == "open-star":
        return True
    return error.expected == "rep-from" and cursor.words[error.at].means == "*"


def _follows(cursor: Cursor, error: UnreadableError) -> bool:
    """Whether no whole step stands before it, and no unknown word begins a step of its own there."""
    words = cursor.words
    begins = words[error.at].means == "?" and words[error.at - 1].means == ","
    return error.follows and not begins


def _has_error(problems: list[Problem]) -> bool:
    return any(problem.severity == "error" for problem in problems)


def _too_long(text: str) -> Problem:
    return Problem(
        "too-large",
        "error",
        Span(0, len(text)),
        f"This line has {len(text):,} characters; a round's line may have {LONGEST:,}.",
    )


def _read(text: str, vocabulary: Vocabulary, n: NumberOfN | None) -> tuple[Cursor, tuple[Step, ...]]:
    lexed = lex(text, vocabulary, n)
    cursor = Cursor(text, lexed.words, vocabulary, lexed.problems, read_block, read_step)
    if lexed.too_deep:
        return cursor, ()
    steps = read_block(cursor, "")
    if cursor.held:
        cursor.unread.append(UnreadableError(cursor.at, "draw-through"))
        cursor.unread[-1].began = 0
    return cursor, with_tension(tuple(steps), text)


def _mistakes(text: str, vocabulary: Vocabulary, n: NumberOfN | None) -> list[int]:
    """Where a line has mistakes: offsets of their first words."""
    cursor, _ = _read(text, vocabulary, n)
    unread = [cursor.words[error.at].start for error in cursor.unread]
    return unread + [p.span.start for p in cursor.problems if p.severity == "error"]


@lru_cache(maxsize=4_000)
def parse_count(text: str, vocabulary: Vocabulary) -> tuple[Tally | None, tuple[Problem, ...]]:
    """A round's `count` (`48`, `24 dc, 24 ch-1 sps`, `40 (48, 56)`); None where it can't be read."""
    if len(text) > LONGEST:
        return None, (_too_long(text),)
    try:
        cursor, tally = _read_count(text, vocabulary)
        problems = tuple(cursor.problems)
    except _UnreadableCountError as wrong:
        tally = None
        mending = explain(wrong.cursor, wrong.error, lambda t: _mistakes_in_count(t, vocabulary))
        problems = (*wrong.cursor.problems, mending)
    return (None if any(p.severity == "error" for p in problems) else tally), problems


class _UnreadableCountError(Exception):
    def __init__(self, cursor: Cursor, error: UnreadableError) -> None:
        super().__init__(error.expected)
        self.cursor = cursor
        self.error = error


def _read_count(text: str, vocabulary: Vocabulary) -> tuple[Cursor, Tally]:
    lexed = lex(text, vocabulary, None)
    cursor = Cursor(text, lexed.words, vocabulary, lexed.problems, read_block, read_step)
    try:
        return cursor, read_tally(cursor, len(cursor.words) - 4)
    except UnreadableError as error:
        error.began = 0
        raise _UnreadableCountError(cursor, error) from error


def _mistakes_in_count(text: str, vocabulary: Vocabulary) -> list[int]:
    try:
        cursor, _ = _read_count(text, vocabulary)
    except _UnreadableCountError as wrong:
        return [wrong.cursor.words[wrong.error.at].start, *(p.span.start for p in wrong.cursor.problems)]
    return [p.span.start for p in cursor.problems if p.severity == "error"]
