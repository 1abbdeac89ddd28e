"""Sandbank seal, worked as lists of stitches from the words of the pattern alone."""

from .by_hand import Rounds, Tally


class _Spiral:
    """A piece of single crochet worked in a spiral, round by round."""

    def __init__(self) -> None:
        self.edge = ["sc"] * 6
        self.rounds: Rounds = {1: [self.edge]}

    def _done(self, t: Tally) -> None:
        self.edge = t.done()
        self.rounds[len(self.rounds) + 1] = [self.edge]

    def inc(self, plain: int, times: int) -> None:
        """(sc in next `plain` sts, inc) x `times`."""
        t = Tally(self.edge)
        for _ in range(times):
            t.each("sc", plain)
            t.inc("sc")
        self._done(t)

    def dec(self, plain: int, times: int) -> None:
        """(sc in next `plain` sts, dec) x `times`."""
        t = Tally(self.edge)
        for _ in range(times):
            t.each("sc", plain)
            t.dec("sc")
        self._done(t)

    def even(self, rounds: int) -> None:
        """So many rounds without shaping."""
        for _ in range(rounds):
            t = Tally(self.edge)
            t.each("sc", t.left)
            self._done(t)


def _body() -> Rounds:
    piece = _Spiral()
    for plain in range(5):
        piece.inc(plain, 6)
    piece.even(6)
    piece.dec(4, 6)
    piece.even(3)
    piece.dec(3, 6)
    piece.even(3)
    piece.dec(2, 6)
    piece.even(2)
    piece.dec(1, 6)
    piece.even(2)
    piece.dec(0, 6)
    return piece.rounds


def _head() -> Rounds:
    piece = _Spiral()
    for plain in range(4):
        piece.inc(plain, 6)
    piece.even(5)
    piece.dec(3, 6)
    piece.dec(2, 6)
    return piece.rounds


def _muzzle() -> Rounds:
    piece = _Spiral()
    piece.inc(0, 6)
    piece.even(1)
    return piece.rounds


def _fore_flipper() -> Rounds:
    piece = _Spiral()
    piece.inc(1, 3)
    piece.inc(2, 3)
    piece.even(4)
    piece.dec(4, 2)
    piece.even(1)
    piece.dec(3, 2)
    return piece.rounds


def _hind_flipper() -> Rounds:
    piece = _Spiral()
    piece.inc(1, 3)
    piece.inc(2, 3)
    piece.even(2)
    for plain in (4, 3, 2):
        piece.dec(plain, 2)
    return piece.rounds


def sandbank_seal() -> dict[str, Rounds]:
    return {
        "body": _body(),
        "head": _head(),
        "muzzle": _muzzle(),
        "fore flipper": _fore_flipper(),
        "hind flipper": _hind_flipper(),
    }
