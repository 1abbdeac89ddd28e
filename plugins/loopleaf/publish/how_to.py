"""The step drawings as plain values: what the pages on techniques and a booklet's last pages print."""

import json
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from pathlib import Path

from pydantic import TypeAdapter

from . import kept
from .addresses import step_file
from .drawing import drawn_size
from .leaflet_parts import Terms


@dataclass(frozen=True, slots=True)
class HowStep:
    """One drawing and its sentence. svg, left: for a right hand and a left one; file, left_file: their paths
    in the site.
    """

    words: str
    alt: str
    svg: str
    left: str
    file: str
    left_file: str

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of the drawing, in its own units."""
        return drawn_size(self.svg)

    @property
    def shape(self) -> float:
        """How high the drawing is, of its width."""
        wide, high = self.size
        return high / wide


@dataclass(frozen=True, slots=True)
class HowTo:
    """A technique in steps. entries: anchors of the glossary's entries that it explains."""

    key: str
    title: str
    entries: tuple[str, ...]
    steps: tuple[HowStep, ...]

    @property
    def anchor(self) -> str:
        """Its place on the page of all of them."""
        return f"step-{self.key}"


def how_to(terms: Terms, keep: Path) -> tuple[HowTo, ...]:
    """All techniques that are drawn. keep: a folder of the collection's, where they stay between builds."""
    text = kept.text(keep, f"steps-{terms.lower()}", lambda: _made(terms))
    return TypeAdapter(tuple[HowTo, ...]).validate_python(json.loads(text))


def used(techniques: Sequence[HowTo], keys: Collection[str]) -> tuple[HowTo, ...]:
    """Those of these keys, in the order in which one learns them."""
    return tuple(one for one in techniques if one.key in keys)


def step_files(techniques: Sequence[HowTo]) -> dict[str, str]:
    """SVG text by its path in the site."""
    return {
        path: svg
        for one in techniques
        for step in one.steps
        for path, svg in ((step.file, step.svg), (step.left_file, step.left))
    }


def _made(terms: Terms) -> str:
    # Imported where they must be drawn: it brings the whole engine with it.
    from ..draw.step_drawings import techniques

    found = [
        HowTo(
            one.key,
            one.title,
            one.entries,
            tuple(
                HowStep(
                    step.words,
                    step.right.alt,
                    step.right.svg,
                    step.left.svg,
                    step_file(one.key, at),
                    step_file(one.key, at, left_handed=True),
                )
                for at, step in enumerate(one.steps, 1)
            ),
        )
        for one in techniques(terms)
    ]
    return TypeAdapter(list[HowTo]).dump_json(found).decode()
