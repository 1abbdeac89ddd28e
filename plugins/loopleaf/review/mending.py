"""Mending a file by its certain suggestions, and by nothing else.

Only suggestions that keep the instruction tree (`safe`) are put in. The mended text is checked again; a
mending after which anything else is different isn't kept: another finding, another tree, another value.
"""

import re
from codecs import BOM_UTF8
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from ..fabric import PieceWork
from ..pattern import Finding, Location, Source
from ..pattern.nodes import Node
from .check import Checked, check
from .once import everywhere

_MOST_PASSES = 50
"""A mending may bring to light what the next pass mends; no file needs this many."""

_QUOTED = re.compile("“[^”]*”")


@dataclass(frozen=True, slots=True)
class Mended:
    """A file after mending. data, text: as it would be written. checked: what a check says of it then.

    mended: the findings whose suggestions were put in. refused: those whose suggestions would have changed
    something else too.
    """

    data: bytes
    text: str
    checked: Checked
    mended: tuple[Finding, ...] = ()
    refused: tuple[Finding, ...] = ()


@dataclass(frozen=True, slots=True)
class _Edit:
    """Words put in place of a stretch of the text, for one finding."""

    start: int
    end: int
    words: str
    finding: Finding

    @property
    def growth(self) -> int:
        return len(self.words) - (self.end - self.start)


def mend(data: bytes, file: str) -> Mended:
    """Put in every suggestion that is certain, as far as nothing else changes by it.

    file: its path as it is to be named in findings. A file without such suggestions comes back as it was.
    """
    bom = BOM_UTF8 if data.startswith(BOM_UTF8) else b""
    now = check(data, file)
    mended: list[Finding] = []
    refused: list[Finding] = []
    for _ in range(_MOST_PASSES):
        edits = _edits(now, refused)
        if not edits:
            break
        together = _put_in(edits, now, file, bom)
        if together is not None:
            mended += dict.fromkeys(edit.finding for edit in edits)
            now = together
            continue
        for finding in dict.fromkeys(edit.finding for edit in edits):
            alone = _put_in([edit for edit in edits if edit.finding == finding], now, file, bom)
            if alone is not None:
                mended.append(finding)
                now = alone
                break
            refused.append(finding)
    text = now.source.text
    return Mended(bom + text.encode() if mended else data, text, now, tuple(mended), tuple(refused))


def _edits(checked: Checked, refused: Sequence[Finding]) -> list[_Edit]:
    """What the certain suggestions would put in, in the text's order; of those that overlap the first."""
    edits: list[_Edit] = []
    taken = {(one.rule, one.message, one.location) for one in refused}
    for finding in checked.findings:
        suggestion = finding.suggestion
        if suggestion is None or suggestion.replacement is None or suggestion.applies != "safe":
            continue
        if (finding.rule, finding.message, finding.location) in taken:
            continue
        for at in everywhere(finding):
            start, end = checked.source.lines.offsets(at)
            edits.append(_Edit(start, end, suggestion.replacement, finding))
    edits.sort(key=lambda edit: (edit.start, edit.end))
    apart: list[_Edit] = []
    for edit in edits:
        if not apart or edit.start >= apart[-1].end:
            apart.append(edit)
    return apart


def _put_in(edits: Sequence[_Edit], before: Checked, file: str, bom: bytes) -> Checked | None:
    """The file with these edits, checked; None where anything but their findings would be different."""
    text = before.source.text
    parts: list[str] = []
    at = 0
    for edit in edits:
        parts += [text[at : edit.start], edit.words]
        at = edit.end
    after = check(bom + "".join([*parts, text[at:]]).encode(), file)
    kept = (
        _values_kept(before.source, after.source, edits)
        and _work_kept(before, after)
        and _findings_kept(before, after, edits)
        and (before.source.root is not None or _errors(after) < _errors(before))
    )
    return after if kept else None


def _errors(checked: Checked) -> int:
    """How many errors it has; where it couldn't even be read, a mend must leave fewer."""
    return sum(finding.severity == "error" for finding in checked.findings)


def _values_kept(before: Source, after: Source, edits: Sequence[_Edit]) -> bool:
    """Whether every value that no edit touches is still the same, under the same name."""
    if before.root is None:
        return True
    return after.root is not None and _same(before.root, after.root, edits)


def _same(before: Node, after: Node, edits: Sequence[_Edit]) -> bool:
    touched = any(edit.start <= before.end and before.start <= edit.end for edit in edits)
    if before.kind in ("text", "nothing"):
        return touched or (before.kind, before.text) == (after.kind, after.text)
    if before.kind == "fields":
        return (
            len(before.fields) == len(after.fields)
            and all(
                was.text == now.text for (was, _), (now, _) in zip(before.fields, after.fields, strict=True)
            )
            and all(
                _same(was, now, edits) for (_, was), (_, now) in zip(before.fields, after.fields, strict=True)
            )
        )
    return len(before.items) == len(after.items) and all(
        _same(was, now, edits) for was, now in zip(before.items, after.items, strict=True)
    )


def _work_kept(before: Checked, after: Checked) -> bool:
    """Whether the hook is told the same in every round, if the rounds could be worked at all."""
    if before.work is None:
        return True
    if after.work is None:
        return False
    return [_told(piece) for piece in before.work.pieces] == [_told(piece) for piece in after.work.pieces]


def _told(piece: PieceWork) -> object:
    return piece.name, [
        (one.plan.label, one.line, one.settled, one.stated, [size and size.count for size in one.sizes])
        for one in piece.rounds
    ]


def _findings_kept(before: Checked, after: Checked, edits: Sequence[_Edit]) -> bool:
    """Whether just the mended findings are gone.

    Where the rounds can be worked only now, what a check finds in them may be added.
    """
    mended = {edit.finding for edit in edits}
    places = _moving(edits, before.source, after.source)
    expected = {_known(one, places(one.location)) for one in before.findings if one not in mended}
    found = {_known(one, one.location) for one in after.findings}
    gone = {_known(one, places(one.location)) for one in mended}
    if before.work is None:
        return expected <= found and not gone & found
    return expected == found


def _known(finding: Finding, at: Location) -> tuple[object, ...]:
    """What makes a finding the same one after a mending, whose words it may quote."""
    said = (_QUOTED.sub("“”", finding.message), _QUOTED.sub("“”", finding.working))
    return finding.rule, finding.severity, at, finding.piece, finding.round, *said


def _moving(edits: Sequence[_Edit], before: Source, after: Source) -> Callable[[Location], Location]:
    """Where a stretch of the text before lies in the text after."""

    def moved(offset: int, is_end: bool) -> int:
        shift = 0
        for edit in edits:
            if offset >= edit.end and (offset > edit.start or is_end):
                shift += edit.growth
            elif offset > edit.start:  # inside an edit: its beginning, or its end
                return edit.start + shift + (len(edit.words) if is_end else 0)
            else:
                break
        return offset + shift

    def place(at: Location) -> Location:
        start, end = before.lines.offsets(at)
        return after.lines.location(moved(start, False), moved(end, True))

    return place
