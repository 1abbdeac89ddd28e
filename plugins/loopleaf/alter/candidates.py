"""Sizes that a design may come in: more or fewer rounds, chains, stitches along its sides."""

from dataclasses import dataclass

from ..pattern import Piece
from .ball import Ball
from .base import Base
from .crown import Crown
from .oval import chains_of


@dataclass(frozen=True, slots=True)
class Candidate:
    """stitches: around the widest of the piece. more: rounds in the base; for a chain, chains. rest: stitches
    that one further round adds. sides: stitches more along either side of an oval.
    """

    stitches: int
    more: int
    rest: int = 0
    sides: int = 0

    @property
    def changes(self) -> bool:
        return bool(self.more or self.rest or self.sides)


def of_a_base(base: Base, stitches: int) -> list[Candidate]:
    """Whole increase rounds more or fewer, and one with fewer increases."""
    found = []
    for more in range(2 - base.last, max(2 * base.last, 12)):
        kept = base.counts[base.last - 1 + more] if more <= 0 else base.stitches + more * base.grows
        found += [
            Candidate(stitches - base.stitches + kept + rest, more, rest)
            for rest in range(base.grows if base.words is not None else 1)
            if kept + rest > 0
        ]
    return found


def of_a_chain(model: Piece, stitches: int) -> list[Candidate]:
    """Chains more or fewer, by whole multiples."""
    assert model.start is not None
    chain = model.start.chain.of(0) if model.start.chain is not None else None
    step = model.start.multiple or 1
    least = -((chain or 0) // step) + 1
    found = [Candidate(stitches + more * step, more * step) for more in range(least, 400 // step + 2)]
    return [one for one in found if (chain or 0) + one.more >= model.start.plus + step]


def of_a_ball(ball: Ball) -> list[Candidate]:
    """Growing rounds more or fewer, as many drawing in, and one that grows less."""
    return [
        Candidate(ball.base.stitches + more * ball.step + rest, more, rest)
        for more in range(2 - ball.base.last, 2 * ball.base.last)
        for rest in range(ball.step)
    ]


def of_a_crown(crown: Crown) -> list[Candidate]:
    """Rounds that draw in more or fewer."""
    return [
        Candidate(crown.stitches + more * crown.step, more)
        for more in range(-crown.spare, max(2 * crown.spare, 12))
    ]


def of_an_oval(model: Piece, base: Base | None, stitches: int) -> list[Candidate]:
    """Longer or shorter by its chain, down to half of it and up to twice; with rounds of the base besides."""
    chains = chains_of(model) or 0
    grows = base.grows if base is not None and base.growing else 0
    least = 2 - base.last if base is not None and grows else 0
    return [
        Candidate(stitches + 2 * sides + grows * more, more, sides=sides)
        for sides in range(-(chains // 2), chains + 1)
        for more in range(least, -least + 1)
        if sides
    ]
