"""Working a whole pattern file: its vocabulary, its pieces in order, every size."""

import re
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from typing import Final, NamedTuple

from .. import notation, trade
from ..notation.problem import Problem
from ..notation.tree import FastenOff, Join, Line, Span, Stitch, Tally, Turn
from ..pattern import KEY, Path, Pattern, Piece, PlanProblem, RoundPlan, Source, is_yarn, set_out
from . import survey
from .begun_again import begins_well, without_the_chain
from .borne_out import ReadRound, work_piece
from .laid_out import laid_out_steps
from .last_count import borne_out_at_the_end, counted_at_the_end
from .otherway import from_other_end
from .own_count import own_count
from .picots import as_defined
from .piece import Ways
from .stitches import picot_chains
from .tally import compare
from .uneven import uneven, with_n
from .worked import PieceWork, Place, RoundWork, Trouble

CHAINS_OVER_YARN_OVERS = 2
"""A turning chain has two chains more than the stitch has yarn overs: three for one, four for two.

Source: Handbook of Wool Knitting and Crochet, 1918 (three for the UK treble, one more for each draw)."""

_NO_SPECIALS: Final[dict[str, Line]] = {}
"""One object for all patterns without stitches of their own, so that what is known of a line is shared."""


class LineProblem(NamedTuple):
    """A parser's problem, with the value that it stands in and the round it belongs to."""

    path: Path
    problem: Problem
    piece: str = ""
    round: str = ""


@dataclass(slots=True)
class PatternWork:
    """A pattern worked. plans: problems of setting out the rounds, with the piece each belongs to."""

    source: Source
    pattern: Pattern
    vocabulary: notation.Vocabulary
    pieces: list[PieceWork] = field(default_factory=list)
    problems: list[LineProblem] = field(default_factory=list)
    plans: list[tuple[str, PlanProblem]] = field(default_factory=list)

    def piece(self, name: str) -> PieceWork | None:
        """The piece of that name, None where there is none."""
        return next((piece for piece in self.pieces if piece.name == name), None)


def work_pattern(source: Source) -> PatternWork:
    """Work every round of every piece in every size. The source must hold a pattern."""
    pattern = source.pattern
    if pattern is None:
        raise ValueError(f"{source.file} holds no pattern")
    work = PatternWork(source, pattern, vocabulary_of(pattern))
    specials = _specials(work)
    conventions = _conventions(work)
    _gauge_words(work)
    edges: list[dict[str, list[Place]]] = [{} for _ in range(pattern.size_count)]
    for name, piece in pattern.pieces.items():
        # A piece that names no yarn is worked in the first one listed.
        own = piece.model_copy(update={"yarn": piece.yarn or next(iter(pattern.materials.yarns), "")})
        worked = _work_piece(work, name, own, specials, conventions, edges)
        work.pieces.append(worked)
    return work


def vocabulary_of(pattern: Pattern) -> notation.Vocabulary:
    """The words that this pattern's lines may use: its terms, its own stitches, yarns and pieces."""
    specials = {
        name: notation.SpecialStitch(
            name, special.short, _work_of(pattern, name), special.text, special.yarn_overs
        )
        for name, special in pattern.special_stitches.items()
    }
    yarns = frozenset(pattern.materials.yarns) if pattern.materials is not None else frozenset()
    lines = [entry.work or "" for piece in pattern.pieces.values() for entry in piece.entries]
    pieces, picot = frozenset(pattern.pieces), notation.picot_of(lines)
    groups = notation.groups_of(lines, pattern.terms)
    return notation.Vocabulary(pattern.terms, specials, yarns, pieces, pattern.size_count, picot, groups)


def _work_of(pattern: Pattern, name: str) -> str | None:
    """What a stitch of the author's own is told by: its `work`; of a picot its text, where that is one."""
    special = pattern.special_stitches[name]
    if special.work or "picot" not in name.lower() or not special.text:
        return special.work
    line = notation.parse(special.text, notation.Vocabulary(pattern.terms)).line
    return special.text if line is not None and picot_chains(as_defined(line, name)) else None


@cache
def heights() -> dict[str, int]:
    """Turning chain of each stitch, by kind (trade/stitches.yml)."""
    return {row.key: row.turning_chain for row in trade.stitches() if row.turning_chain}


def _heights(pattern: Pattern) -> dict[str, int]:
    """The same with the author's own tall stitches, by their names."""
    own = {
        name: special.yarn_overs + CHAINS_OVER_YARN_OVERS
        for name, special in pattern.special_stitches.items()
        if special.yarn_overs is not None and special.work is None
    }
    return {**heights(), **own} if own else heights()


def _specials(work: PatternWork) -> dict[str, Line]:
    found: dict[str, Line] = {}
    for name, special in work.vocabulary.specials.items():
        if not special.work:
            continue
        path: Path = ("special stitches", name, "work")
        parsed = _told(name, special.work, work.vocabulary)
        work.problems += [LineProblem(path, problem) for problem in parsed.problems]
        line = as_defined(parsed.line, name) if parsed.line is not None else None
        ends = _ends(line)
        work.problems += [LineProblem(path, problem) for problem in ends]
        if line is not None and not ends:
            found[name] = line
    return found or _NO_SPECIALS


def _told(name: str, said: str, vocabulary: notation.Vocabulary) -> notation.Parsed:
    """A stitch of the author's own, read; its own name in it is the trade's: `picot: ch-3 picot`."""
    parsed = notation.parse(said, vocabulary)
    if parsed.line is None or name not in survey.specials(parsed.line):
        return parsed
    others = {other: special for other, special in vocabulary.specials.items() if other != name}
    plain = notation.parse(said, replace(vocabulary, specials=others))
    return parsed if plain.line is None else plain


_BEGINS = re.compile(r"(?:beg|beginning|first|starting|initial)[ -]?(.+)", re.IGNORECASE)


def _leads(pattern: Pattern) -> dict[str, str]:
    """The author's stitches that rounds begin with, `beginning cluster`, `beg-cl`: each with the one that it
    is counted among."""
    names = {name: {name, one.short} - {""} for name, one in pattern.special_stitches.items()}
    rests = {
        name: {found[1] for said in own if (found := _BEGINS.fullmatch(said))} for name, own in names.items()
    }
    return {name: other for name, rest in rests.items() for other, own in names.items() if rest & own}


def _ends(line: Line | None) -> list[Problem]:
    """What ends or turns a whole round, where a stitch of one's own is told."""
    steps = line.steps if line is not None else ()
    return [
        Problem(
            "turn-not-expected" if isinstance(step, Turn) else "unknown-instruction",
            "error",
            step.span or Span(0, 0),
            "A stitch of one's own ends or turns the work.",
            "It is worked in the middle of a round, as often as the round names it.",
            ("Move it to the end of the round that it belongs to.", None, "fill-in"),
        )
        for step in steps
        if isinstance(step, Turn | FastenOff | Join)
    ][:1]


def _conventions(work: PatternWork) -> dict[str, bool]:
    """`turning chains: {hdc: does not count}` by kind."""
    found: dict[str, bool] = {}
    for name, counts in work.pattern.turning_chains.items():
        if not name:
            found.update(dict.fromkeys(heights(), counts))
            continue
        tally, problems = notation.parse_count(f"1 {name}", work.vocabulary)
        entry = tally.entries[0][1] if tally is not None and tally.entries else None
        if isinstance(entry, Stitch):
            found[entry.name or entry.kind] = counts
        path: Path = ("turning chains", name, KEY)
        work.problems += [LineProblem(path, _of_name(one)) for one in problems]
    return found


def _of_name(problem: Problem) -> Problem:
    """A problem of `1 hdc` as one of the name alone; a field's name is for its author to change."""
    words = problem.suggestion[0] if problem.suggestion is not None else ""
    suggestion = (words, None, "fill-in") if words else None
    span = Span(max(problem.span.start - 2, 0), max(problem.span.end - 2, 0))
    return replace(problem, span=span, suggestion=suggestion)


def _gauge_words(work: PatternWork) -> None:
    """Stitches of the gauge told in the other side's terms; what else may stand there is free."""
    for at, gauge in enumerate(work.pattern.gauge):
        _, problems = (
            notation.parse_count(f"1 {gauge.stitch}", work.vocabulary) if gauge.stitch else (None, ())
        )
        path: Path = ("gauge", at, "stitch")
        foreign = (one for one in problems if one.rule == "term-of-the-other-system")
        work.problems += [LineProblem(path, _of_name(one)) for one in foreign]


def _work_piece(
    work: PatternWork, name: str, piece: Piece, specials: dict[str, Line], conventions: dict[str, bool],
    edges: list[dict[str, list[Place]]],
) -> PieceWork:  # fmt: skip
    pattern = work.pattern
    plans, plan_problems = set_out(pattern, name)
    work.plans += [(name, problem) for problem in plan_problems]
    said: set[tuple[Path, int, str]] = set()
    astray = _astray(plan_problems)
    unread_squares = _squares_unread(work, name, piece)
    lost = {name for name, special in pattern.special_stitches.items() if special.work} - set(specials)
    lines: list[ReadRound] = []
    twice: dict[str, Tally] = {}
    for before, plan in zip((plans[0], *plans) if plans else (), plans, strict=False):
        line, stated = _read(work, name, plan, said, conventions, unread_squares)
        line, own = own_count(line)
        if plan.by_rule == "repeat":  # the count that stands in the row worked again is that row's
            own = None
        if stated is None and own is not None and own.span is not None:
            at = (own.span.start, own.span.end)
            plan = replace(plan, stated=plan.work[slice(*at)], in_line=at)
            stated = own
        elif own is not None:
            twice[plan.label] = own
        if line is not None and unread_squares and plan.by_rule == "grid":
            line = None
        if line is not None and lost & set(survey.specials(line)):
            line = None
        troubles = _uneven(plan, line, stated, pattern.size_count)
        read = (plan, None, None, troubles) if troubles else (plan, line, stated, troubles)
        lines.append(ReadRound(*read, plan.number in astray or plan.number > before.number + 1))
    ways = Ways(
        piece.worked,
        piece.yarn,
        pattern.chain_spaces,
        {**survey.said_throughout([one.line for one in lines], specials), **conventions},
        _heights(pattern),
        specials,
        pattern.size_count,
        (piece.start.edge or "") if piece.start is not None else "",
        name,
        leads=_leads(pattern),
        laid_out=laid_out_steps(pattern),
    )
    others = {one.name: one for one in work.pieces}
    begun = without_the_chain(lines, piece.start, pattern.size_count)
    result = work_piece(name, piece, ways, begun or lines, others, edges)
    if begun and not begins_well(result):
        other = work_piece(name, piece, ways, lines, others, edges)
        result, begun = (other, None) if begins_well(other) else (result, begun)
    lines = begun or lines
    at_the_end, counts = counted_at_the_end(lines, result.rounds)
    if counts:
        other = work_piece(name, piece, ways, at_the_end, others, edges)
        result = other if borne_out_at_the_end(other.rounds, counts) else result
    for one in result.rounds:
        if one.plan.label in twice:
            _told_twice(one, twice[one.plan.label], pattern.chain_spaces)
    for size in range(pattern.size_count):
        edges[size][name] = _last_edge(result.rounds, size) or list(result.starts[size])
    return result


def _squares_unread(work: PatternWork, name: str, piece: Piece) -> bool:
    """Whether the key of a piece's grid says of a square what can't be read; each such is told, there."""
    unread = False
    for sign, meaning in piece.grid.key.items() if piece.grid is not None else ():
        if not is_yarn(work.pattern, meaning):
            path: Path = ("pieces", name, "grid", "key", sign)
            problems = notation.parse(meaning, work.vocabulary).problems
            work.problems += [LineProblem(path, problem, name) for problem in problems]
            unread = unread or any(problem.severity == "error" for problem in problems)
    return unread


def _astray(problems: list[PlanProblem]) -> set[int]:
    """Numbers of the rounds that come after ones that are missing or told twice."""
    missing = {max(problem.facts["gap"]) + 1 for problem in problems if "gap" in problem.facts}
    twice = {number for problem in problems for number in problem.facts.get("overlap", ())}
    return missing | twice | {number + 1 for number in twice}


def _read(
    work: PatternWork, piece: str, plan: RoundPlan, said: set[tuple[Path, int, str]],
    conventions: Mapping[str, bool], unread_squares: bool = False,
) -> tuple[Line | None, Tally | None]:  # fmt: skip
    """The round's tree and its stated count; what there is to say about the words is said once an entry."""
    parsed = notation.parse(plan.work, work.vocabulary, plan.n)
    line, problems = parsed.line, parsed.problems
    unnumbered = with_n(line) if line is not None else None
    if unnumbered is not None:
        line, problems = None, (*problems, _no_number(plan.work, unnumbered))
    if plan.reversed and line is not None:
        line, unturned = from_other_end(line, plan, conventions)
        problems = (*problems, *unturned)
    for problem in () if unread_squares and plan.by_rule == "grid" else problems:
        mark = (plan.work_path, problem.span.start, problem.rule)
        if mark not in said:
            said.add(mark)
            work.problems.append(LineProblem(plan.work_path, problem, piece, plan.label))
    stated: Tally | None = None
    if plan.stated is not None:
        stated, problems = notation.parse_count(plan.stated, work.vocabulary)
        for problem in problems:
            mark = (plan.stated_path, problem.span.start, problem.rule)
            if mark not in said:
                said.add(mark)
                work.problems.append(LineProblem(plan.stated_path, problem, piece, plan.label))
    return line, stated


def _no_number(work: str, span: Span) -> Problem:
    n = re.search(r"\bn\b", work[span.start : span.end])
    at = span.start + n.start() if n is not None else span.start
    return Problem(
        "field-missing",
        "error",
        Span(at, at + 1),
        "“n” stands for a number that isn't given.",
        "",
        ("Say what it is, and by how many it changes: `n: {from: 2, step: 1}`.", None, "fill-in"),
    )


def _told_twice(round: RoundWork, own: Tally, chains: str | None) -> None:
    """A line that ends with a count of its own, although its entry has one too: both must hold."""
    for size, worked in enumerate(round.sizes):
        differs = compare(own, worked, size, chains) if worked is not None and not round.troubles else None
        if differs is not None:
            round.troubles.append(replace(differs, span=own.span))
            return


def _uneven(plan: RoundPlan, line: Line | None, stated: Tally | None, size_count: int) -> list[Trouble]:
    """Numbers in the line or the count that aren't one a size; such a round can't be worked."""
    found: list[Trouble] = []
    for node, path in ((line, plan.work_path), (stated, plan.stated_path)):
        for span, numbers in uneven(node, size_count):
            by_n = isinstance(plan.n, tuple) and numbers == len(plan.n)
            facts = {"sizes": size_count, "numbers": numbers, "path": path, "by_n": by_n}
            found.append(Trouble("size-count-differs", span, facts))
    return found


def _last_edge(rounds: list[RoundWork], size: int) -> list[Place]:
    for one in reversed(rounds):
        worked = one.sizes[size]
        if worked is not None:
            return list(worked.edge)
    return []
