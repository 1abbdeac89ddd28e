"""An altered file settled: stated counts and sizes follow what the stitches now make, and it checks.

What the author weighed isn't true any more and is left out.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass

from ..measure import Band, Measured, StatedSize, YarnNeed
from ..measure.amounts import nearest
from ..measure.follow import needs_followed
from ..pattern import Finding, Length, Lengths, Path
from ..review import Checked, check
from .draft import CannotAlter, Change, Draft

_PASSES = 6
"""Counts that follow may change a round further on; no pattern needs so many passes."""
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


def settle(before: Checked, draft: Draft) -> Altered:
    """Check the draft and let counts and stated sizes follow. before: the pattern that it was made from.

    Raises CannotAlter, with what a check finds, where it comes out with an error, or a warning of its own.
    """
    changes = list(draft.changes)
    file = before.source.file
    now = check(draft.text().encode(), file)
    for follow in (_counts, _sizes):
        for _ in range(_PASSES):
            next_draft = follow(before, now)
            if next_draft is None:
                break
            changes += next_draft.changes
            now = check(next_draft.text().encode(), file)
    if now.measured is None or before.measured is None:
        _must_check(before, now)
        raise CannotAlter("The rounds can't be worked after the alteration.")
    yarn = needs_followed(before.measured, now.measured)
    weighed = _without_weighed(before.measured, now)
    if weighed is not None:
        changes += weighed.changes
        now = check(weighed.text().encode(), file)
    _must_check(before, now)
    return Altered(now.source.text, now, tuple(_in_order(changes)), tuple(_remarks(now)), yarn)


def _in_order(changes: list[Change]) -> list[Change]:
    return sorted(dict.fromkeys(changes), key=lambda one: one.line)


def _must_check(before: Checked, now: Checked) -> None:
    had = {(one.rule, one.piece) for one in before.findings}
    reasons = [
        _reason(one)
        for one in now.findings
        if one.severity == "error" or (one.severity == "warning" and (one.rule, one.piece) not in had)
    ]
    if reasons:
        raise CannotAlter(*dict.fromkeys(reasons))


def _reason(finding: Finding) -> str:
    return f"{finding.message} {finding.working}".strip()


def _counts(before: Checked, now: Checked) -> Draft | None:
    """Stated counts that differ from what is worked now, as the check would have them; None where none do."""
    draft = Draft(now.source)
    for finding in now.findings:
        suggestion = finding.suggestion
        if finding.rule != "count-differs" or suggestion is None or suggestion.replacement is None:
            continue
        path = _stated_at(now, finding)
        if path is not None:
            draft.value(path, suggestion.replacement.strip("\"'"))
    return draft if draft.changes else None


def _stated_at(now: Checked, finding: Finding) -> Path | None:
    work = now.work.piece(finding.piece) if now.work is not None else None
    plans = [one.plan for one in work.rounds if one.plan.label == finding.round] if work else []
    return plans[0].stated_path if plans and plans[0].stated_path else None


def _sizes(before: Checked, now: Checked) -> Draft | None:
    """Stated sizes moved by as much as what is worked out moves; None where they stand right."""
    if before.measured is None or now.measured is None:
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
        words = str(Lengths(sizes if len(set(sizes)) > 1 else sizes[:1]))
        if all(one is None or one == stated.lengths.of(size) for size, one in enumerate(sizes)):
            continue
        draft.value(path, words)
    return draft if draft.changes else None


def _moved(stated: StatedSize, size: int, was: Band | None, now: Band | None) -> Length | None:
    """One size's length, in the unit that it is stated in, to half a centimetre or a quarter inch."""
    length = stated.lengths.of(size)
    if length is None or was is None or now is None or abs(now.middle - was.middle) < _SAME_MM:
        return length
    mm = length.mm + now.middle - was.middle
    an_amount = length.mm / length.amount
    step = {"mm": 5.0, "cm": 0.5, "m": 0.01, "in": 0.25}.get(length.unit, 0.01)
    return Length(nearest(mm / an_amount, step), length.unit)


def _worked_out(measured: Measured, stated: StatedSize, size: int) -> Band | None:
    if not stated.piece and measured.laid_out is not None:
        return measured.laid_out.get(stated.what)
    piece = measured.piece(stated.piece) if stated.piece else next(iter(measured.pieces), None)
    return piece.size[size].get(stated.what) if piece and piece.size else None


def _without_weighed(before: Measured, now: Checked) -> Draft | None:
    """The file without what was weighed of the pattern as it was; a yarn that takes the same keeps it."""
    pattern, draft = now.source.pattern, Draft(now.source)
    assert pattern is not None
    assert now.measured is not None
    for letter, yarn in pattern.materials.yarns.items():
        if yarn.weighed and _model(before, letter) != _model(now.measured, letter):
            draft.drop(("materials", "yarns", letter, "weighed"))
    return draft if draft.changes else None


def _model(measured: Measured, yarn: str) -> list[Band | None]:
    return [one.model_metres for size in measured.yarn for one in size if one.yarn == yarn]


_A_LENGTH = re.compile(r"\b\d+(?:\.\d+)?(?: \([\d., ]+\))? ?(?:cm|mm|in)\b")


def _remarks(now: Checked) -> Iterator[str]:
    """Notes that tell a length, which can't follow."""
    pattern = now.source.pattern
    assert pattern is not None
    paths: list[Path] = [("summary",), *(("notes", index) for index in range(len(pattern.notes)))]
    for name, piece in pattern.pieces.items():
        paths += [("pieces", name, piece.entries_field, at, "note") for at in range(len(piece.entries))]
    draft = Draft(now.source)
    for path in paths:
        node = draft.node(path)
        found = _A_LENGTH.search(node.text) if node is not None and node.kind == "text" else None
        if node is not None and found is not None:
            line = now.source.lines.position(node.start)[0]
            yield f"line {line} still speaks of {found[0]}; see whether that holds"
