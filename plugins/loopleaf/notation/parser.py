"""Reads an instruction line, or a round's count, into the tree."""

from functools import lru_cache

from .asides import read_tally
from .cursor import Cursor, UnreadableError
from .lexer import lex
from .mending import explain
from .problem import Parsed, Problem
from .steps import read_block, read_step
from .tree import Line, Tally
from .vocabulary import Vocabulary


@lru_cache(maxsize=40_000)
def parse(text: str, vocabulary: Vocabulary, n: int | None = None) -> Parsed:
    """The tree of a line in the vocabulary's terms, and what there is to say about it.

    n: the number for every `n` in the line. The tree is None where there is an error.
    """
    lexed = lex(text, vocabulary, n)
    if any(p.rule == "too-deep" for p in lexed.problems):
        return Parsed(None, tuple(lexed.problems))
    cursor = Cursor(text, lexed.words, vocabulary, lexed.problems, read_block, read_step)
    steps = tuple(read_block(cursor, ""))
    problems = tuple(sorted(cursor.problems, key=lambda p: (p.span.start, p.span.end)))
    if any(p.severity == "error" for p in problems):
        return Parsed(None, problems)
    return Parsed(Line(steps), problems)


@lru_cache(maxsize=4_000)
def parse_count(text: str, vocabulary: Vocabulary) -> tuple[Tally | None, tuple[Problem, ...]]:
    """A round's `count` (`48`, `24 dc, 24 ch-1 sps`, `40 (48, 56)`); None where it can't be read."""
    lexed = lex(text, vocabulary, None)
    cursor = Cursor(text, lexed.words, vocabulary, lexed.problems, read_block, read_step)
    tally: Tally | None = None
    try:
        tally = read_tally(cursor, len(cursor.words) - 4)
    except UnreadableError as error:
        cursor.problems.append(explain(cursor, error))
    problems = tuple(cursor.problems)
    return (None if any(p.severity == "error" for p in problems) else tally), problems
