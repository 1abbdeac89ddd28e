"""What a round is worked in, and what print leaves open about it."""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from loopleaf.notation.tree import Amount

from .cells import Cell, Edge

Choices = dict[str, int]

BEHIND = "what is skipped next to a stitch worked further down is what lies behind it"
ALONG = "stitches worked further down go along that round"
BESIDE = "each gap across, and the first of them is the one beside the first stitch"
KEPT = "each stitch across, but for those at the end that the next step names"
LEG = "the beginning chain is the first leg of the stitch behind it"
TALLER = "the beginning chain is a stitch of the line's taller kind"
HALVES = "half a group at either end of a row, with its turning chain, is one too"
ONWARD = "the stitch that the last round was joined to is this round's last place"
RARER = (BEHIND, ALONG, BESIDE, KEPT, LEG, TALLER, HALVES, ONWARD)
"""Readings that print means only where the plain one doesn't fit."""


class Undecided(Exception):
    """Print leaves this open; whoever works the round tries each reading."""

    def __init__(self, key: str, options: tuple[int, ...]) -> None:
        super().__init__(key)
        self.key = key
        self.options = options


@dataclass(frozen=True)
class Setting:
    """What a round is worked in: things that don't change while the hook moves.

    turned: rows that turn, wherever their lines say so. own_chains: chains that usually stand for a stitch.
    counts: whether a turning chain counts, by kind ("" for every stitch). specials: the steps of the author's
    own stitches. pieces: edges of others. named_later: lengths of the spaces that the next row names.
    blocks: rows from corner to corner, where slip stitches only fasten. said: what earlier lines say in an
    aside of turning chains, under the keys of `choices`: it settles what a later line leaves open.
    earlier: what the rounds before this one made, by their labels. skipped: what of those the next round
    passed over. loops: the edge of loops left free in a round. begun_on: the name under which the line speaks
    of the piece that the round's own edge belongs to.
    """

    size: int
    rows: bool
    turned: bool
    spiral: bool
    chains_counted: bool
    own_chains: Mapping[str, int]
    counts: Mapping[str, bool]
    specials: Mapping[str, tuple[Any, ...]]
    pieces: Mapping[str, Sequence[Cell]]
    choices: Choices
    named_later: frozenset[int] = frozenset()
    blocks: bool = False
    said: Mapping[str, int] = field(default_factory=dict)
    earlier: Mapping[str, Sequence[Cell]] = field(default_factory=dict)
    skipped: Mapping[str, Sequence[Cell]] = field(default_factory=dict)
    begun_on: str = ""
    loops: Callable[[str, int], Edge] | None = None

    def choose(self, key: str, options: tuple[int, ...]) -> int:
        if key not in self.choices:
            raise Undecided(key, options)
        return self.choices[key]

    def number(self, amount: Amount) -> int | None:
        return amount.of(self.size)
