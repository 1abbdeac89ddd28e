"""What a chart says in words: the numbers and ways of its rounds, its yarns, what a reader must know."""

from collections.abc import Iterator, Mapping
from math import atan2, degrees

from .canvas import Point
from .chart_ground import Inward, is_closed
from .chart_key import KeyLine, said
from .chart_lines import Layout, Line
from .chart_things import NUMBER_ROOM
from .colour import ink_on_light
from .subject import Subject

DASHES = ("", "3.4 1.4", "1.2 1.5", "4 1.4 0.1 1.4", "0.1 1.7")
"""The strokes of a chart's first yarn and of each further one: yarns keep apart in black, too."""

BESIDE_A_ROW, ARROW_BEFORE, ARROW_OUTSIDE = 23.0, 8.0, 7.0


def dashes_of(subject: Subject) -> dict[str, str]:
    """The pattern of the strokes of each yarn, in the order met."""
    yarns = dict.fromkeys(made.yarn for one in subject.worked for made in one.made)
    return {letter: DASHES[at % len(DASHES)] for at, letter in enumerate(yarns)}


def numbers(subject: Subject, layout: Layout) -> Iterator[tuple[Point, str]]:
    """The number of each round or row, at its start; and where a ball goes on, the number that it goes on
    from.
    """
    for work, line in zip(subject.piece.rounds, layout.lines, strict=True):
        away = BESIDE_A_ROW if not is_closed(line.ground) else line.gap - NUMBER_ROOM / 2 + 3.0
        yield line.before(away, 0.5), work.plan.label


def arrows(subject: Subject, layout: Layout) -> Iterator[tuple[Point, int]]:
    """Where an arrow shows which way the work goes, and the degrees that it is turned by, y up: beside each
    row; outside the outermost round, and of rounds that turn each way.
    """
    lines = layout.lines
    for at, line in enumerate(lines):
        after = lines[at + 1] if at + 1 < len(lines) else None
        inward = isinstance(line.ground, Inward)
        if not is_closed(line.ground):
            away, up = BESIDE_A_ROW - ARROW_BEFORE, 0.5
        elif inward and not isinstance(lines[at - 1].ground, Inward):
            away, up = 0.0, -ARROW_OUTSIDE / max(line.high - line.low, 1.0)
        elif not inward and (after is None or _way(after) != _way(line)):
            away, up = 0.0, 1 + ARROW_OUTSIDE / max(line.high - line.low, 1.0)
        else:
            continue
        here, ahead = line.before(away, up), line.before(away - 1.0, up)
        yield here, round(degrees(atan2(ahead[1] - here[1], ahead[0] - here[0])))


def _way(line: Line) -> tuple[bool, bool]:
    return line.backward, isinstance(line.ground, Inward)


def remarks(subject: Subject, layout: Layout, again: bool, left_handed: bool) -> Iterator[KeyLine]:
    """What else must be said. again: repeats are drawn lighter."""
    yield from _yarns(subject)
    reverse = [work for work in subject.piece.rounds if work.side == "WS"]
    if any(_takes_sides(subject, at) for at, work in enumerate(subject.piece.rounds) if work in reverse):
        side = "right" if left_handed else "left"
        yield said("As the right side shows it.")
        yield said(f"On rows that begin at the {side}, front is worked as back and back as front.")
    for _, _, at in layout.rims:
        first, last = (subject.piece.rounds[n].plan.label for n in (at + 1, -1))
        yield said(f"Rounds {first} to {last} close the piece. They are drawn from its other side, inwards.")
    for _, _, at in layout.sills:
        first, last = (subject.piece.rounds[n].plan.label for n in (at + 1, -1))
        yield said(f"Rounds {first} to {last} go up. They are drawn cut open where they begin, as rows.")
    if again:
        yield said("What only repeats is drawn lighter.")
    if subject.work.pattern.size_count > 1:
        yield said(f"Drawn in size {subject.work.pattern.sizes[0]}.")


def _takes_sides(subject: Subject, at: int) -> bool:
    return any(
        getattr(made, "post", "") in ("front", "back") or getattr(made, "loop", "") in ("front", "back")
        for made in subject.worked[at].made
    )


def _yarns(subject: Subject) -> Iterator[KeyLine]:
    """Each yarn with its colour and stroke, where there are several."""
    dashes = dashes_of(subject)
    materials = subject.work.pattern.materials
    names: Mapping[str, str] = (
        {letter: yarn.name for letter, yarn in materials.yarns.items()} if materials is not None else {}
    )
    if len(dashes) < 2:
        return
    for letter, dash in dashes.items():
        words = ", ".join(part for part in (letter, names.get(letter, "")) if part)
        ink = ink_on_light(subject.colours[letter])
        yield KeyLine({"US": words, "UK": words}, "M-9 0h18", dash=dash, colour=ink)
