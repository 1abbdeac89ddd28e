"""How one piece may be made wider or narrower: what there is to try, and each of it written and worked."""

from dataclasses import dataclass

from ..fabric import PieceWork
from ..measure.finished import What
from ..pattern import Path, Pattern, Piece
from ..review import Checked
from .ball import Ball, ball_of, write_ball
from .base import Base, base_of
from .base_rounds import write_rounds
from .candidates import Candidate, of_a_ball, of_a_base, of_a_chain, of_a_crown, of_an_oval
from .crown import Crown, crown_of, write_crown
from .draft import CannotAlter, Draft
from .numbers import Renumber
from .oval import chains_of, lengthen
from .placing import place_anew
from .settle import Altered, Follow, settle

_TUBE = 1.5
"""Times the chains that it begins with: as wide as a tube gets (chosen here)."""


@dataclass(frozen=True, slots=True)
class Design:
    """One piece of a pattern, and what of it could change.

    before: the pattern that stated sizes and yarn follow from; now: what is altered. around_mm: the way
    around as it is, of so many stitches. base, ball, crown: what it has of these.
    """

    before: Checked
    now: Checked
    pattern: Pattern
    model: Piece
    piece: PieceWork
    around_mm: float
    stitches: int
    base: Base | None
    ball: Ball | None
    crown: Crown | None

    def candidates(self) -> list[Candidate]:
        """All that could be tried, in no order. Raises CannotAlter where there is nothing."""
        start, name = self.model.start, self.piece.name
        if self.ball is not None:
            found = of_a_ball(self.ball)
        elif self.base is not None:
            found = of_a_base(self.base, self.stitches)
        elif self.crown is not None:
            found = of_a_crown(self.crown)
        elif start is not None and start.kind == "chain ring" and _grows(self.model, self.stitches):
            raise CannotAlter(
                f"“{name}” grows from a ring in its middle, by rounds that follow no rule which more or "
                "fewer of them could keep to."
            )
        elif start is not None and start.chain is not None:
            found = of_a_chain(self.model, self.stitches)
        else:
            raise CannotAlter(f"“{name}” begins neither in the middle of a base nor on a chain of its own.")
        return found + of_an_oval(self.model, self.base, self.stitches)

    def made(self, candidate: Candidate) -> Altered:
        """The pattern with that many stitches, worked. Raises CannotAlter where it doesn't check."""
        draft = Draft(self.now.source)
        return settle(self.before, draft, _placing(self.piece, self._written(draft, candidate)))

    def _written(self, draft: Draft, candidate: Candidate) -> Renumber:
        """The piece's own changes put into a draft; its rounds' new numbers."""
        model, name = self.model, self.piece.name
        if chains_of(model) is not None:
            return _oval(draft, self.pattern, self.piece, self.base, candidate)
        if self.ball is not None:
            slim = _slim(self.now, name) / _slim(self.before, name)
            return write_ball(draft, self.pattern, self.ball, candidate.more, slim, candidate.rest)
        if self.base is not None:
            return write_rounds(draft, self.pattern, model, self.base, candidate)
        if self.crown is not None:
            _chain(draft, model, name, candidate.more * self.crown.step)
            return write_crown(draft, self.pattern, self.crown, candidate.more)
        return _chain(draft, model, name, candidate.more)


def design_of(before: Checked, now: Checked, pattern: Pattern, name: str) -> Design:
    """The design of a piece in one size, by its name. Raises CannotAlter where it has no other size."""
    model, piece = pattern.pieces[name], now.work.piece(name) if now.work is not None else None
    around_mm = way_around(now, name)
    if piece is None or around_mm is None:
        raise CannotAlter(f"Without a gauge the way around “{name}” can't be told.")
    if any(one.piece == name and one.rounds is None and one.over is None for one in pattern.gauge):
        raise CannotAlter(
            f"The gauge says how far the whole of “{name}” measures, so it says nothing of another size; "
            "state how many stitches and rows there are over 10 cm."
        )
    if model.grid is not None:
        raise CannotAlter(
            f"“{name}” is worked from a picture in squares, so it is as wide as the picture. With other "
            "stitches it would be another picture; in another yarn the same one comes out larger or smaller."
        )
    base = base_of(now.work, piece, model) if now.work is not None else None
    ball = ball_of(now.work, piece, base) if now.work is not None else None
    crown = crown_of(now.work, piece, model) if now.work is not None and base is None else None
    return Design(before, now, pattern, model, piece, around_mm, _widest(piece), base, ball, crown)


def way_around(checked: Checked, piece: str, size: int = 0) -> float | None:
    """The way around a piece in one size, or its width in rows, in mm; None without a gauge. Rows that fan
    out from a point are as wide as from tip to tip.
    """
    found = checked.measured.piece(piece) if checked.measured is not None else None
    what: What = "width" if found is not None and found.from_a_point else "around"
    band = found.size[size].get(what) if found and found.size else None
    return band.middle if band is not None else None


def _grows(model: Piece, stitches: int) -> bool:
    """Whether a piece is wider by far than the ring of chains that it begins with: no tube."""
    chain = model.start.chain.of(0) if model.start is not None and model.start.chain is not None else None
    return chain is not None and stitches > _TUBE * chain


def _widest(piece: PieceWork) -> int:
    return max(one.sizes[0].count for one in piece.rounds if one.sizes and one.sizes[0] is not None)


def _slim(checked: Checked, name: str) -> float:
    """How tall a piece's mean round is in widths of a stitch; 1 without a gauge."""
    piece = checked.measured.piece(name) if checked.measured is not None else None
    known = piece.known_rounds(0) if piece is not None and piece.rounds else []
    return known[-1].height_mm / len(known) / piece.scale.width_mm if piece and piece.scale and known else 1.0


def _placing(was: PieceWork, to: Renumber) -> Follow:
    """Moves what lies on a piece, once its counts are settled.

    was: the piece before. to: its rounds' new numbers.
    """
    back = {to(one.plan.number): one.plan.number for one in was.rounds}

    def place(before: Checked, now: Checked) -> Draft | None:
        made = now.work.piece(was.name) if now.work is not None else None
        pattern = now.source.pattern
        if made is None or pattern is None:
            return None
        draft = Draft(now.source)
        place_anew(draft, pattern, was, made, back)
        return draft if draft.changes else None

    return place


def _chain(draft: Draft, model: Piece, name: str, more: int) -> Renumber:
    at: Path = ("pieces", name, "start")
    node = draft.node(at)
    chain = model.start.chain.of(0) if model.start is not None and model.start.chain is not None else None
    if node is None or chain is None:
        raise CannotAlter(f"“{name}” has no chain to begin with that could be longer.")
    if node.kind == "fields":
        draft.value((*at, "chain"), str(chain + more))
    else:
        where = node.text.find(str(chain))
        draft.part(at, where, where + len(str(chain)), str(chain + more))
    return int


def _oval(
    draft: Draft, pattern: Pattern, piece: PieceWork, base: Base | None, candidate: Candidate
) -> Renumber:
    """An oval longer by its chain, wider by rounds of its base; what lies along its sides follows both."""
    model = pattern.pieces[piece.name]
    to: Renumber = int
    if candidate.sides:
        to = _chain(draft, model, piece.name, candidate.sides)
    around = 2 * candidate.sides
    if base is not None and (candidate.more or candidate.rest):
        to = write_rounds(draft, pattern, model, base, candidate)
        around += base.grows * candidate.more + candidate.rest
    lengthen(draft, piece, candidate.sides, base.last if base is not None else None, around // 2)
    return to
