"""What is drawn for a leaflet: of each piece its chart, its measures and its profile; of the finishing how
cords are threaded and where parts are sewn on.
"""

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from math import pi
from typing import TypeVar

from ..draw import Chart, Figure, chart_of, first_picture, placing, profile, schematic, squares, threading
from ..draw.chart_ways import Passage
from ..draw.form import form_of
from ..draw.subject import subject_of
from ..fabric import PatternWork, PieceWork
from ..measure import Measured
from ..pattern import FinishingStep, Grid
from .addresses import chart_file
from .drawing import Drawing
from .leaflet_parts import Picture
from .leaflet_rounds import anchor_of
from .leaflet_voice import Voice

Found = TypeVar("Found")

EDGING = 0.25
"""What is worked onto another piece, and is no higher than such a share of its length, or of the width of
what it goes around, is an edging.
"""


@dataclass(frozen=True, slots=True)
class Drawn:
    """Drawings that serve both terminologies. measures, sections, charts, placed: by a piece's name.

    charts: laid out once, written in either terminology and for either hand. placed: for right and for left
    hands. picture: SVG text of the whole,
    "" where the author has pictures.
    """

    measures: Mapping[str, Figure]
    sections: Mapping[str, Figure]
    charts: Mapping[str, Chart]
    placed: Mapping[str, tuple[Figure, Figure]]
    picture: str


def drawn(work: PatternWork, measured: Measured) -> Drawn:
    """All of a pattern's drawings."""
    return Drawn(
        dict(
            _each(
                work,
                lambda name: schematic(work, name, measured) if _has_outline(work, name, measured) else None,
            )
        ),
        dict(
            _each(work, lambda name: profile(work, name, measured) if _stands(work, name, measured) else None)
        ),
        {piece.name: chart for piece in work.pieces if (chart := chart_of(work, piece.name, measured))},
        dict(_each(work, lambda name: _hands(lambda left: placing(work, name, measured, left)))),
        "" if work.pattern.pictures else first_picture(work, measured),
    )


def _hands(draw: Callable[[bool], Figure | None]) -> tuple[Figure, Figure] | None:
    """A figure for right and for left hands; None where there is none."""
    right, left = draw(False), draw(True)
    return (right, left) if right is not None and left is not None else None


def _each(work: PatternWork, draw: Callable[[str], Found | None]) -> Iterator[tuple[str, Found]]:
    for piece in work.pieces:
        figure = draw(piece.name)
        if figure is not None:
            yield piece.name, figure


def _has_outline(work: PatternWork, name: str, measured: Measured) -> bool:
    """Whether a piece has an outline of its own. An edging, which goes around another piece or is low for its
    length, is measured with what it is worked onto.
    """
    start = work.pattern.pieces[name].start
    if start is None or start.kind != "edge":
        return True
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    if start.around or start.laid_out or subject is None:
        return False
    long = max(size.length_mm for size in subject.sizes) / (1.0 if subject.in_rows else pi)
    return subject.sizes[-1].height_mm > EDGING * long


def _stands(work: PatternWork, name: str, measured: Measured) -> bool:
    """What lies flat has no section worth showing."""
    piece = work.piece(name)
    subject = subject_of(work, piece, measured) if piece is not None else None
    return subject is not None and not subject.in_rows and not form_of(subject).lying


def of_a_piece(
    voice: Voice, work: PatternWork, piece: PieceWork, found: Drawn, slug: str, more: int = 0
) -> Iterator[Drawing]:
    """The drawings of one piece in the order in which they are shown. more: rounds more than written."""
    title = voice.title(piece.name)
    measures, section = found.measures.get(piece.name), found.sections.get(piece.name)
    if measures is not None:
        yield Drawing("schematic", _in_a_size(voice, "schematic"), measures.alt, measures.svg)
    if section is not None:
        yield Drawing("profile", _in_a_size(voice, "profile"), section.alt, section.svg)
    grid = voice.pattern.pieces[piece.name].grid
    signs = _said(voice, grid) if grid is not None else {}
    picture = squares(work, piece.name, signs)
    if picture is not None:
        file = partial(chart_file, slug, f"{anchor_of(piece.name)}--squares", voice.terms, more=more)
        yield Drawing(
            "squares",
            voice.words["squares"],
            picture.right.alt,
            picture.right.svg,
            file(),
            picture.left.svg,
            file(left_handed=True),
            picture.key,
            tuple(figure.svg for figure in picture.printed),
            tuple(picture.labels),
        )
    chart = found.charts.get(piece.name)
    if chart is not None:
        shown = [part for one in chart.pieces for part in one.ways]
        yield Drawing(
            "chart",
            voice.words["chart"],
            voice.say(
                f"chart_{shown[0].word}s", title=title, runs=", ".join(_runs(voice, part) for part in shown)
            ),
            chart.svg(voice.terms),
            chart_file(slug, anchor_of(piece.name), voice.terms, more=more),
            chart.svg(voice.terms, left_handed=True),
            chart_file(slug, anchor_of(piece.name), voice.terms, left_handed=True, more=more),
            chart.key(voice.terms),
        )


def _runs(voice: Voice, part: Passage) -> str:
    """Which rounds of a chart go on in one way, and which way."""
    word = voice.words[part.word].lower()
    labels = f"{word} {part.first}" if part.first == part.last else f"{word}s {part.first} to {part.last}"
    return f"{labels} {voice.words[f'chart_{part.way}']}"


def _in_a_size(voice: Voice, kind: str) -> str:
    """What a drawing is called; of a pattern in several sizes with the one that it shows."""
    sizes = voice.pattern.sizes
    title = voice.words[kind]
    return voice.say("drawn_in_size", title=title, size=sizes[0]) if len(sizes) > 1 else title


def _said(voice: Voice, grid: Grid) -> Mapping[str, str]:
    """What the signs of a grid mean: a yarn, or what is worked over a square."""
    yarns = voice.pattern.materials.yarns
    return {
        sign: voice.yarn(meaning) if meaning in yarns else voice.text(meaning)
        for sign, meaning in grid.key.items()
    }


def of_the_finishing(voice: Voice, work: PatternWork, found: Drawn) -> Mapping[int, Picture]:
    """By the finishing's steps: how a cord goes; at the first part sewn to a piece, where its parts lie."""
    shown: dict[int, Picture] = {}
    placed: set[str] = set()
    for at, step in enumerate(voice.pattern.finishing):
        figure = _figure(work, step, found, placed)
        if figure is not None:
            right, left = figure
            shown[at] = Picture(right.alt, svg=right.svg, left=left.svg)
    return shown


def _figure(
    work: PatternWork, step: FinishingStep, found: Drawn, placed: set[str]
) -> tuple[Figure, Figure] | None:
    if (thread := step.thread) is not None:
        return _hands(lambda left: threading(work, thread, left))
    lies = step.sew or step.mark
    if lies is not None and lies.to not in placed:
        placed.add(lies.to)
        return found.placed.get(lies.to)
    return None
