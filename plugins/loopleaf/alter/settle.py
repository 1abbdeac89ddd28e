"""An altered file settled: stated counts and sizes follow what the stitches now make, and it checks.

What the author weighed isn't true any more and is left out.
"""

import re
from collections import Counter
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, replace

from ..measure import Band, Measured, StatedSize, YarnNeed
from ..measure.amounts import nearest
from ..measure.follow import needs_followed
from ..pattern import Finding, Length, Lengths, Path
from ..review import Checked, check
from .draft import CannotAlter, Change, Draft
from .prose import telling
from .whereabouts import labels

_PASSES = 60
"""A round whose stated count still fits the old one hides those after it; no pattern needs so many."""
_SAME_MM = 0.5
"""A size that comes out so near to what it was is the same (half the step of what can be measured)."""


@dataclass(frozen=True, slots=True)
class Altered:
    """A pattern altered. text: its new file. checked: what a check says of it: no error, and no warning
    that the pattern hadn't before.

    changes: what is different, in the file's order. remarks: what a reader must look at. yarn: what it takes
    of each yarn, one tuple a size; where the author had weighed it, from that, by what the stitches take now
    and took then.
    """

    text: str
    checked: Checked
    changes: tuple[Change, ...]
    remarks: tuple[str, ...]
    yarn: tuple[tuple[YarnNeed, ...], ...]

    @property
    def measured(self) -> Measured:
        """The altered pattern, measured."""
        assert self.checked.measured is not None
        return self.checked.measured


Follow = Callable[[Checked, Checked], Draft | None]
"""(the pattern before, the pattern now) -> what has to follow, None where nothing has."""


def settle(before: Checked, draft: Draft, place: Follow | None = None) -> Altered:
    """Check the draft and let counts and stated sizes follow. before: the pattern that it was made from.

    place: moves placements to where they belong once the counts are settled.

    Raises CannotAlter, with what a check finds, where it comes out with an error, or a warning of its own.
    """
    changes = list(draft.changes)
    file = before.source.file
    now = check(draft.text().encode(), file)
    for follow, passes in ((_counts, _PASSES), (place, 1), (_sizes, 1)):
        for _ in range(passes if follow is not None else 0):
            assert follow is not None
            if follow is _counts:
                _must_fit(before, now)
            next_draft = follow(before, now)
            if next_draft is None:
                break
            changes = next_draft.moved(changes) + next_draft.changes
            now = check(next_draft.text().encode(), file)
    if now.measured is None or before.measured is None:
        _must_check(before, now)
        raise CannotAlter("The rounds can't be worked after the alteration.")
    yarn = needs_followed(before.measured, now.measured)
    weighed = _without_weighed(before.measured, now)
    if weighed is not None:
        changes = weighed.moved(changes) + weighed.changes
        now = check(weighed.text().encode(), file)
    _must_check(before, now)
    told = called_as_now(now, in_order(changes))
    return Altered(now.source.text, now, told, remarks_on(before, now, told), yarn)


def remarks_on(before: Checked, now: Checked, changes: Sequence[Change]) -> tuple[str, ...]:
    """What a reader must look at: notes that the pattern hadn't before, and texts that tell numbers."""
    had = Counter(one.rule for one in before.findings)
    notes = []
    for one in now.findings:
        had[one.rule] -= 1
        if had[one.rule] < 0:
            notes.append(f"line {one.location.line}: {one.message}")
    return (*notes, *telling(now.source, changes))


def called_as_now(now: Checked, changes: Sequence[Change]) -> tuple[Change, ...]:
    """Rounds by the numbers that they have now, but for those left out."""
    called = labels(now.source)
    return tuple(replace(one, where=called.get(one.line, one.where)) if one.after else one for one in changes)


def in_order(changes: Iterable[Change]) -> tuple[Change, ...]:
    """Changes by line; a value that changed several times once, from its first words to its last."""
    told: dict[tuple[int, str, str], Change] = {}
    for change in changes:
        earlier = next(
            (key for key, one in told.items() if key[:2] == change.place and one.after == change.before), None
        )
        if earlier is not None and change.before:
            told[earlier] = replace(told[earlier], after=change.after)
        else:
            told.setdefault((*change.place, change.before or change.after), change)
    kept = [one for one in told.values() if one.before != one.after]
    return tuple(sorted(kept, key=lambda one: one.line))


_UNFIT = ("stitches-left-over", "works-past-the-end", "repeat-does-not-fit", "no-such-place")
"""What no count that follows can mend, where every count before it holds."""


def _must_fit(before: Checked, now: Checked) -> None:
    """Refuse at once where the first mistake of a piece is stitches that don't fit: dozens of widths may be
    tried, and counts are followed through all the rounds of each.
    """
    first: dict[str, Finding] = {}
    for finding in now.findings:
        if finding.severity == "error" and finding.round:
            first.setdefault(finding.piece, finding)
    if any(one.rule in _UNFIT for one in first.values()):
        _must_check(before, now)


def _must_check(before: Checked, now: Checked) -> None:
    had = {(one.rule, one.piece) for one in before.findings}
    reasons = [
        _reason(one)
        for one in sorted(now.findings, key=lambda one: one.severity != "error")
        if one.severity == "error" or (one.severity == "warning" and (one.rule, one.piece) not in had)
    ]
    if reasons:
        raise CannotAlter(*dict.fromkeys(reasons))


def _reason(finding: Finding) -> str:
    return f"{finding.message} {finding.working}".strip()


def _counts(before: Checked, now: Checked) -> Draft | None:
    """Stated counts that differ from what is worked now; None where none do.

    Plain numbers are read off the stitches; numbers by kind are those that the check would have, in the
    author's words.
    """
    draft = Draft(now.source)
    ruled: set[Path] = set()
    for piece in now.work.pieces if now.work is not None else ():
        for round in piece.rounds:
            text, path = round.plan.stated or "", round.plan.stated_path
            made = [size.count for size in round.sizes if size is not None]
            if text.isdigit() and path and len(made) == 1 and int(text) != made[0]:
                by_rule = draft.node((*path, "from")) is not None
                if not by_rule:
                    draft.value(path, str(made[0]))
                elif path not in ruled:
                    draft.value((*path, "from"), str(made[0]))
            ruled.add(path)
    for finding in now.findings:
        suggestion = finding.suggestion
        if finding.rule != "count-differs" or suggestion is None or suggestion.replacement is None:
            continue
        path = _stated_at(now, finding)
        node = draft.node(path) if path else None
        if node is not None and not node.text.isdigit():
            draft.value(path, _in_their_words(node.text, suggestion.replacement.strip("\"'")))
    return draft if draft.changes else None


def _in_their_words(stated: str, worked: str) -> str:
    """`8 tr, 7 fans` with the numbers of `12 tr, 11 fan`."""
    was, made = stated.split(","), worked.split(",")
    if len(was) != len(made):
        return worked
    numbers = [found[0] if (found := _FIRST.search(one)) else "" for one in made]
    return ",".join(_FIRST.sub(number, one, count=1) for one, number in zip(was, numbers, strict=True))


_FIRST = re.compile(r"\d+")


def _stated_at(now: Checked, finding: Finding) -> Path:
    work = now.work.piece(finding.piece) if now.work is not None else None
    plans = [one.plan for one in work.rounds if one.plan.label == finding.round] if work else []
    return plans[0].stated_path if plans else ()


def _sizes(before: Checked, now: Checked) -> Draft | None:
    """Stated sizes moved by as much as what is worked out moves; None where they stand right, or where rounds
    are wrong. A size that nothing works out (how long a toy of several parts is) goes where they change.
    """
    if before.measured is None or now.measured is None or now.has_errors:
        return None
    draft = Draft(now.source)
    stated_before = {(one.piece, one.what): one for one in before.measured.stated}
    for stated in now.measured.stated:
        was = stated_before.get((stated.piece, stated.what))
        if was is None:
            continue
        sizes = tuple(
            _moved(
                was, size, _worked_out(before.measured, was, size), _worked_out(now.measured, stated, size)
            )
            for size in range(now.measured.pattern.size_count)
        )
        path: Path = ("finished size", stated.what)
        path = ("pieces", stated.piece, *path) if stated.piece else path
        if _is_open(now.measured, stated) and _change(before.measured, now.measured):
            draft.drop(path if len(_stated_with(now.measured, stated)) > 1 else path[:-1])
            continue
        words = str(Lengths(sizes if len(set(sizes)) > 1 else sizes[:1]))
        if all(one is None or one == stated.lengths.of(size) for size, one in enumerate(sizes)):
            continue
        draft.value(path, words)
    return draft if draft.changes else None


def _is_open(measured: Measured, stated: StatedSize) -> bool:
    """Whether nothing works out that size."""
    return not any(_worked_out(measured, stated, size) for size in range(measured.pattern.size_count))


def _stated_with(measured: Measured, stated: StatedSize) -> list[StatedSize]:
    """What is stated in the same place."""
    return [one for one in measured.stated if one.piece == stated.piece]


def _change(before: Measured, now: Measured) -> bool:
    """Whether a piece measures something else now."""
    return any(
        what not in after or abs(band.middle - after[what].middle) >= _SAME_MM
        for was, made in zip(before.pieces, now.pieces, strict=True)
        for known, after in zip(was.size, made.size, strict=True)
        for what, band in known.items()
    )


def _moved(stated: StatedSize, size: int, was: Band | None, now: Band | None) -> Length | None:
    """One size's length, in the unit that it is stated in, to half a centimetre or a quarter inch.

    One stated just as it was worked out is stated so again; a maker's own measure keeps its difference.
    """
    length = stated.lengths.of(size)
    if length is None or was is None or now is None or abs(now.middle - was.middle) < _SAME_MM:
        return length
    an_amount = length.mm / length.amount
    step = {"mm": 5.0, "cm": 0.5, "m": 0.01, "in": 0.25}.get(length.unit, 0.01)
    own_mm = 0.0 if nearest(was.middle / an_amount, step) == length.amount else length.mm - was.middle
    mm = now.middle + own_mm
    return Length(nearest(mm / an_amount, step), length.unit)


def _worked_out(measured: Measured, stated: StatedSize, size: int) -> Band | None:
    if not stated.piece and measured.laid_out is not None:
        return measured.laid_out.get(stated.what)
    piece = measured.piece(stated.piece) if stated.piece else next(iter(measured.pieces), None)
    return piece.size[size].get(stated.what) if piece and piece.size else None


def _without_weighed(before: Measured, now: Checked) -> Draft | None:
    """The file without what was weighed of the pattern as it was; a yarn that takes the same keeps it.

    Without a gauge nobody can tell, and it goes.
    """
    pattern, draft = now.source.pattern, Draft(now.source)
    assert pattern is not None
    assert now.measured is not None
    for letter, yarn in pattern.materials.yarns.items():
        was, made = _model(before, letter), _model(now.measured, letter)
        if yarn.weighed and (was != made or None in made):
            draft.drop(("materials", "yarns", letter, "weighed"))
    return draft if draft.changes else None


def _model(measured: Measured, yarn: str) -> list[Band | None]:
    return [one.model_metres for size in measured.yarn for one in size if one.yarn == yarn]
