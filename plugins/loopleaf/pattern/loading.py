"""Reading one file: bytes in, a `Source` out, and never an exception for anything that the file holds."""

from .composing import compose
from .content import content_flaws
from .finding import Finding, Related, Suggestion
from .limits import LARGEST_FILE, MOST_FINDINGS
from .misfits import misfits
from .nodes import Flaw, Lines, Node
from .source import Source

_TOO_MUCH = ("too-deep", "too-many-aliases", "too-large")


def load(data: bytes, file: str) -> Source:
    """A file's bytes as a pattern, with every flaw of the file itself as a finding.

    A YAML file without `pieces:` isn't a pattern and has no findings; one that can't be read at all might be.
    """
    if len(data) > LARGEST_FILE:
        return _unreadable(
            file,
            "",
            Flaw(
                "too-large",
                0,
                0,
                f"This file is larger than {LARGEST_FILE / 1e6:.0f} MB.",
                "That is the limit; a blanket of 2,000 rows takes about 0.2 MB.",
                Suggestion("Write rounds that are alike once, as `rounds: 4-6`.", None, "fill-in"),
            ),
        )
    try:
        text = data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        return _unreadable(file, *_not_utf8(data, error))
    root, flaws = compose(text)
    lines = Lines(text)
    meant = _is_pattern(root, text)
    stopped = any(flaw.stops or flaw.rule in _TOO_MUCH for flaw in flaws)
    if not meant and not stopped:
        return Source(file, text, None, [], False, root, lines)
    pattern = None
    if root is not None and meant:
        flaws = [*flaws, *_twice(root)]
        if root.kind == "fields" and not any(flaw.rule in _TOO_MUCH for flaw in flaws):
            doubt = any(not flaw.harmless for flaw in flaws)
            typed, unfit = misfits(root, text)
            flaws += [flaw for flaw in unfit if not _covered(flaw, flaws)]
            flaws += content_flaws(root, text)
            pattern = None if doubt else typed
    findings = [_finding(flaw, file, lines) for flaw in flaws]
    findings.sort(key=lambda one: (one.location, one.rule))
    return Source(file, text, pattern, findings[:MOST_FINDINGS], True, root, lines)


def _is_pattern(root: Node | None, text: str) -> bool:
    if root is None:
        return any(line.startswith("pieces:") for line in text.splitlines())
    return root.pair("pieces") is not None


def _covered(flaw: Flaw, others: list[Flaw]) -> bool:
    """Whether another flaw's stretch already holds this one: the same mistake, said again."""
    return any(
        other.start <= flaw.start and flaw.end <= other.end and other.end > other.start for other in others
    )


def _twice(root: Node) -> list[Flaw]:
    """Fields written twice, and field names that aren't text."""
    flaws: list[Flaw] = []
    waiting, seen = [root], set()
    while waiting:
        node = waiting.pop()
        if id(node) in seen:
            continue
        seen.add(id(node))
        waiting += node.items
        first: dict[str, Node] = {}
        for key, value in node.fields:
            waiting.append(value)
            if key.kind in ("fields", "list"):
                flaws.append(
                    Flaw(
                        "wrong-type",
                        key.start,
                        key.end,
                        "The name of this field is a list or fields of its own.",
                        "A field's name is a word or a few.",
                        Suggestion("Put it in quotes if it is meant as text.", None, "fill-in"),
                    )
                )
            elif key.text in first and len(flaws) <= MOST_FINDINGS:
                flaws.append(
                    Flaw(
                        "key-twice",
                        key.start,
                        key.end,
                        f"`{key.text}` is written twice here.",
                        "A field can hold one value, so one of the two would be lost.",
                        Suggestion("Keep one, or give the other its right name.", None, "fill-in"),
                        also=(first[key.text].start, first[key.text].end, "It is written here first."),
                    )
                )
            else:
                first[key.text] = key
    return flaws


def _not_utf8(data: bytes, error: UnicodeDecodeError) -> tuple[str, Flaw]:
    text = data.decode("utf-8", errors="replace")
    at = len(data[: error.start].decode("utf-8"))
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        kind = "It looks like UTF-16, which some editors call Unicode."
    else:
        kind = (
            f"The byte {data[error.start]:#04x} belongs to another way of storing letters, such as Latin 1."
        )
    return text, Flaw(
        "not-utf8",
        at,
        at + 1,
        "This file isn't written in UTF-8.",
        kind,
        Suggestion("In your editor, choose to save the file as UTF-8.", None, "fill-in"),
    )


def _unreadable(file: str, text: str, flaw: Flaw) -> Source:
    lines = Lines(text)
    return Source(file, text, None, [_finding(flaw, file, lines)], True, None, lines)


def _finding(flaw: Flaw, file: str, lines: Lines) -> Finding:
    related: tuple[Related, ...] = ()
    if flaw.also:
        start, end, words = flaw.also
        related = (Related(lines.location(start, end), words),)
    return Finding(
        flaw.rule,
        "error",
        file,
        lines.location(flaw.start, flaw.end),
        flaw.message,
        flaw.working,
        flaw.suggestion,
        related,
    )
