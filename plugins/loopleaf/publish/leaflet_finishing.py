"""The end of a leaflet: how the pieces come together, and what may be done otherwise."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise

from .. import notation
from ..pattern import FinishingStep, Mark, Run, Sew, Thread
from .leaflet_parts import Heading, Picture, Telling, Variation
from .leaflet_pictures import author_picture
from .leaflet_rounds import anchor_of, labelled, video_at
from .leaflet_voice import Voice, listed, over
from .plurals import plural


@dataclass(frozen=True, slots=True)
class _Place:
    """A round or row of a piece, in words."""

    voice: Voice
    round: int | None
    row: int | None

    def __str__(self) -> str:
        number = self.round or self.row
        return labelled(self.voice, "row" if self.row else "round", str(number), str(number)).lower()


def finishing(voice: Voice, folder: str, drawn: Mapping[int, Picture]) -> tuple[Heading | Telling, ...]:
    """Headings and steps, in words. folder: of the pattern's file, for pictures beside it.

    drawn: figures by step, for those that the author shows no picture of.
    """
    told: list[Heading | Telling] = []
    for at, step in enumerate(voice.pattern.finishing):
        if step.kind == "heading":
            text = voice.prose(step.heading or "")
            told.append(Heading(text, f"finishing-{anchor_of(text)}-{at}"))
            continue
        for said in _steps(voice, step):
            text = f"{said} {voice.told(step.note)}" if step.note else said
            picture = author_picture(voice, step.picture, folder) or drawn.get(at)
            told.append(Telling(text, picture, *video_at(voice, step.video)))
    return tuple(told)


def _steps(voice: Voice, step: FinishingStep) -> Iterator[str]:
    if step.thread is not None:
        yield _thread(voice, step.thread)
    elif step.sew is not None:
        yield _with(voice, _sewn(voice, step.sew), step.sew.text)
    elif step.mark is not None:
        yield _with(voice, _marked(voice, step.kind, step.mark), step.mark.text)
    elif step.lay_out is not None:
        lay = step.lay_out
        by_stitch = notation.parse(lay.join, voice.vocabulary).line is not None
        key = "lay_out" if not lay.join else "lay_out_join_with" if by_stitch else "lay_out_join"
        join = voice.prose(lay.join)
        pieces = voice.pieces(lay.piece, _made(voice, lay.piece))
        yield _with(
            voice, voice.say(key, pieces=pieces, across=lay.across, down=lay.down, join=join), lay.text
        )
    elif step.knot is not None:
        yield voice.told(step.knot.text)
    elif step.stuff is not None:
        yield voice.told(step.stuff.text)
    elif step.text is not None:
        yield voice.told(step.text)


def _made(voice: Voice, piece: str) -> int:
    model = voice.pattern.pieces.get(piece)
    return model.make if model is not None else 1


def _thread(voice: Voice, thread: Thread) -> str:
    parts = {
        "piece": voice.named(thread.piece),
        "round": _Place(voice, thread.round, thread.row),
        "through": voice.named(thread.through),
        "under": thread.under,
        "over": thread.over,
    }
    if len(thread.from_) < 2:
        return voice.say("thread", **parts, first=thread.from_[0] if thread.from_ else 1)
    sentences = [voice.say("thread_first", **parts, first=thread.from_[0])]
    key = "thread_second" if len(thread.from_) == 2 else "thread_next"
    sentences += [voice.say(key, first=first) for first in thread.from_[1:]]
    return " ".join(sentences)


# ---- sewing -------------------------------------------------------------------------------------


def _sewn(voice: Voice, sew: Sew) -> str:
    """`Sew the 2 ears to round 5 of the head, one over stitches 3–6 and one over stitches 12–15.`; "" where
    only the author's own words say it.
    """
    if not sew.to:
        return ""
    placed = sew.round is not None or sew.row is not None
    each = _copies(voice, sew) > 1
    key = "sew_stitches" if sew.stitches and placed else "sew_round" if placed else "sew"
    return voice.say(
        key,
        piece=_pieces(voice, sew),
        to=voice.named(sew.to),
        round=_Place(voice, sew.round, sew.row),
        where=_where(voice, sew.stitches, each) if sew.stitches else "",
    )


def _marked(voice: Voice, kind: str, mark: Mark) -> str:
    """`Embroider the eyes on the head between rounds 5 and 6, one over stitch 11 and one over stitch 20.`"""
    key = f"{kind}_between" if mark.between else kind
    key += "_stitches" if mark.stitches else "" if mark.between or not mark.number else "_round"
    between = mark.between[0] if mark.between else None
    return voice.say(
        key,
        what=voice.prose(mark.what),
        to=voice.named(mark.to),
        round=voice.say("two_rounds", first=between.first, second=between.last)
        if between
        else _Place(voice, mark.round, mark.row),
        where=_where(voice, mark.stitches, len(mark.stitches) > 1) if mark.stitches else "",
    )


def _copies(voice: Voice, sew: Sew) -> int:
    """How many of a piece this step sews on: one a place; all that are made where no places are named and no
    other step has its own.
    """
    made = _made(voice, sew.piece)
    others = [step.sew for step in voice.pattern.finishing if step.sew is not None]
    alone = sum(one.piece == sew.piece for one in others) == 1
    if made == 1 or (not alone and len(sew.stitches) < 2):
        return 1
    return min(made, len(sew.stitches)) if len(sew.stitches) > 1 else made


def _pieces(voice: Voice, sew: Sew) -> str:
    """`the moon`, `one ear`, `the 2 ears`, `2 of the ears`."""
    made, copies, name = _made(voice, sew.piece), _copies(voice, sew), voice.named(sew.piece)
    if made == 1:
        return voice.say("the_piece", piece=name)
    if copies == made:
        return voice.say("the_piece", piece=f"{made} {plural(name)}")
    if copies == 1:
        return voice.say("one_piece", piece=name)
    return voice.say("some_pieces", number=copies, pieces=plural(name))


_MANY = 4
"""From so many places at even steps on, the first and the last tell the rest."""


def _where(voice: Voice, runs: tuple[Run, ...], each: bool) -> str:
    """Over which stitches. each: whether every place has a piece of its own."""
    places = [over(voice, run) for run in runs]
    if not each:
        numbers = [place.split(" ", 1)[1] for place in places]
        word = "stitches" if len(runs) > 1 else places[0].split(" ", 1)[0]
        return voice.say("sew_over", places=f"{word} {listed(voice, numbers)}")
    steps = {later.first - run.first for run, later in pairwise(runs)}
    if len(runs) >= _MANY and len(steps) == 1:
        return voice.say("sew_over_every", place=places[0], step=steps.pop(), last=places[-1])
    return listed(voice, [voice.say("sew_over_each", place=place) for place in places])


def _with(voice: Voice, said: str, text: str) -> str:
    return " ".join(part for part in (said, voice.told(text)) if part)


# ---- variations ---------------------------------------------------------------------------------


def variations(voice: Voice) -> tuple[Variation, ...]:
    """The variations: what is left out, and what else is different."""
    told = []
    for name, one in voice.pattern.variations.items():
        out = listed(voice, [_all_of(voice, piece) for piece in one.leave_out])
        lines = [voice.say("leave_out", pieces=out)] if out else []
        lines += [voice.told(one.text)] if one.text else []
        told.append(Variation(voice.prose(one.title) or name, tuple(lines)))
    return tuple(told)


def _all_of(voice: Voice, piece: str) -> str:
    name = voice.named(piece)
    return voice.say("the_piece", piece=name if _made(voice, piece) == 1 else plural(name))
