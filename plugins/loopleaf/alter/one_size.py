"""One size of a pattern that is written in several: its rounds, counts and measures alone.

The numbers of the rounds stay, so that a reader of one size and a reader of all speak of the same round.
"""

import re
from collections.abc import Mapping
from dataclasses import fields, is_dataclass, replace
from typing import Any

from pydantic import BaseModel

from ..fabric import PatternWork, PieceWork, RoundWork
from ..notation.tree import Amount, Repeat
from ..pattern import Lengths, Numbers, Pattern, Yarn


class _Skipped(Exception):
    """A step that this size doesn't work."""


def one_size(work: PatternWork, size: int) -> PatternWork:
    """The pattern as worked in one of its sizes (0-based), as if it were written in that alone."""
    return replace(
        work,
        pattern=_pattern(work.pattern, size),
        pieces=[_piece(piece, size) for piece in work.pieces],
    )


def _piece(piece: PieceWork, size: int) -> PieceWork:
    rounds = [one for one in piece.rounds if size < len(one.sizes) and one.sizes[size] is not None]
    return replace(piece, starts=piece.starts[size : size + 1], rounds=[_round(one, size) for one in rounds])


def _round(one: RoundWork, size: int) -> RoundWork:
    return replace(
        one,
        plan=replace(one.plan, sizes=None),
        line=_of_tree(one.line, size),
        settled=_of_tree(one.settled, size),
        stated=_of_tree(one.stated, size),
        sizes=[one.sizes[size]],
    )


def _of_tree(tree: Any, size: int) -> Any:
    """The tree with the numbers of one size; a step that the size skips is left out."""
    if isinstance(tree, Amount):
        if len(tree.sizes) == 1:
            return tree
        number = tree.of(size)
        if number is None:
            raise _Skipped
        return replace(tree, sizes=(number,))
    if isinstance(tree, tuple):
        if tree and isinstance(tree[0], Amount):  # a count's entry: its number and its name
            return tuple(_of_tree(part, size) for part in tree)
        return tuple(_without_skipped(tree, size))
    if is_dataclass(tree) and not isinstance(tree, type):
        changed = {
            part.name: new
            for part in fields(tree)
            if part.init
            and (new := _of_tree(old := getattr(tree, part.name), size)) is not old
            and new != old
        }
        made = replace(tree, **changed) if changed else tree
        if isinstance(made, Repeat) and not made.steps:
            raise _Skipped
        return made
    return tree


def _without_skipped(parts: tuple[Any, ...], size: int) -> list[Any]:
    kept = []
    for part in parts:
        try:
            kept.append(_of_tree(part, size))
        except _Skipped:
            continue
    return kept


def _pattern(pattern: Pattern, size: int) -> Pattern:
    count = pattern.size_count
    made: Pattern = _of_value(pattern, size, count)
    notes = tuple(kept for note in made.notes if (kept := without_choice(note)))
    return made.model_copy(update={"sizes": (), "notes": notes})


def _of_value(value: Any, size: int, count: int) -> Any:
    """The pattern's own values, with those of one size where there is one a size."""
    if isinstance(value, Lengths | Numbers):
        one = value.of(size)
        return value if len(value.sizes) == 1 else None if one is None else type(value)((one,))  # type: ignore[arg-type]
    if isinstance(value, str):
        return text_of_size(value, size, count)
    if isinstance(value, BaseModel):
        changed = {
            name: new
            for name in type(value).model_fields
            if (new := _of_value(old := getattr(value, name), size, count)) is not old
        }
        if isinstance(value, Yarn) and len(value.weighed) == count:
            changed["weighed"] = value.weighed[size : size + 1]
        return value.model_copy(update=changed) if changed else value
    if isinstance(value, Mapping):
        return {key: _of_value(one, size, count) for key, one in value.items()}
    if isinstance(value, tuple):
        return tuple(_of_value(one, size, count) for one in value)
    return value


_ONE = r"(?:\d+(?:\.\d+)?[½¼¾⅓⅔⅛⅜⅝⅞]?|[½¼¾⅓⅔⅛⅜⅝⅞]|-)"


_CHOICE = re.compile(r"\b(?:your|(?:not )?(?:every|each|all)(?: the)?) sizes?\b", re.IGNORECASE)
_SENTENCE = re.compile(r"(?<=[.!?])\s+(?=[^a-z\s])")


def without_choice(note: str) -> str:
    """A note without the sentences that help a reader to find one size among several (`Where your size isn't
    named, …`, `Not every size …`); "" where nothing else is said.
    """
    return " ".join(one for one in _SENTENCE.split(note) if not _CHOICE.search(one))


def text_of_size(text: str, size: int, count: int) -> str:
    """`17 (19, 21, 22) cm deep` as `21 cm deep`; brackets that hold another number of numbers stay."""
    each = re.compile(rf"(?<![\w.])({_ONE}) \(({_ONE}(?:, {_ONE}){{{count - 2}}})\)")
    return each.sub(lambda found: [found[1], *found[2].split(", ")][size], text)
