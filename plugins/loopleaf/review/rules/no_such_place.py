"""The instruction names a place that isn't there.

What: A chain space, ring, loop, post, side of the foundation, marker, piece or round is named, and nothing of
that kind is to be found where the hook stands.

Why it matters: The maker looks for it, doubts their own work, and may use a place that only looks alike.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, sc in next ch-2 sp, sc in next 7 sts, join"}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, sc in next 8 sts, join", count: 8}

When to ignore: Never.
"""

from collections.abc import Iterator
from difflib import get_close_matches

from ...notation.tree import Corresponding, Next, Ring
from ...pattern import Finding, Path, Related, Suggestion
from ..lines import within
from ..names import arch_name, kind_name, listed, number_of, ordinal
from ..placing import Placing, placings
from ..rule import Words, finding, rule, told
from ..subject import Met, Subject, quote


def words(met: Met) -> Words:
    if met.facts["what"] in _WHOLE:
        return _whole(met)
    there = [_there(key, met) for key in met.facts["there"] if not key.startswith("chain ")][:4]
    at = met.below_at
    whole = f"“{met.facts['piece']}”" if "piece" in met.facts else met.below.capitalize()
    has = "The pieces made before it are" if met.facts["what"] == "piece" else f"{whole} has"
    found = f"{has} {listed(there)}." if there else _top_of_the_chain(met)
    quoted = met.quoted if met.round else quote(met.subject.text_at(met.location))
    if "made" in met.facts:
        made, named = (kind_name(str(met.facts[key]), met.subject) for key in ("made", "what"))
        message = f"{quoted} in {met.where} isn't there: the stitch before the picot is {made}, not {named}."
        mend = f"Name the {made}, or write “{named}” for the stitch before it."
        return Words(message=message, suggestion=Suggestion(mend, None, "likely"))
    if met.facts["what"] == "left":
        number = number_of(met.facts["worked"], "stitch")
        return Words(
            message=f"{quoted} in {met.where} can't be done: no stitch of {met.below} is left.",
            working=f"The steps before it take all there is, {number}.",
            suggestion=Suggestion("Leave these words out, or work into fewer before them.", None, "fill-in"),
            related=(Related(at, f"{met.where} is worked into this"),) if at else (),
        )
    if "meant" in met.facts:
        return _beside_the_centre(met, quoted)
    return Words(
        message=f"{quoted} in {met.where} can't be worked: there is no {_missing(met.facts['what'], met)}.",
        working=found,
        related=(Related(at, f"{met.where} is worked into this"),) if at and "piece" not in met.facts else (),
    )


def _beside_the_centre(met: Met, quoted: str) -> Words:
    come_to, meant = met.facts["at"], met.facts["meant"]
    more = f"{number_of(abs(meant - come_to), 'stitch')} {'more' if meant > come_to else 'fewer'}"
    at = met.below_at
    where, which = (
        ("the corner", "corner") if met.facts["what"] == "corner" else ("in the middle", "one there")
    )
    return Words(
        message=f"{quoted} in {met.where} isn't {where}: the hook is at stitch {come_to} of {met.below}.",
        working=f"The {which} is stitch {meant}.",
        suggestion=Suggestion(f"Work into {more} before it.", None, "fill-in"),
        related=(Related(at, f"{met.where} is worked into this"),) if at else (),
    )


_WHOLE = {
    "laid out": (
        "“{piece}” begins around “{edge}” laid out and joined, and no step of the finishing lays it out.",
        "",
        "Say under “finishing” how, as in `lay out: {{piece: {edge}, across: 3, down: 4}}`.",
    ),
    "four corners": (
        "“{piece}” begins around “{edge}” laid out and joined, and “{edge}” hasn't just four corners.",
        "Pieces laid out in rows lie side by side by their four sides, each between two corners.",
        "Say in words how its edge is worked, or mend the last round of “{edge}”.",
    ),
}
"""What keeps a piece from going around others laid out: the finding, its working and the cure."""


def _whole(met: Met) -> Words:
    start = met.subject.pattern.pieces[met.piece_name].start
    names = {"piece": met.piece_name, "edge": start.edge if start is not None else ""}
    message, working, cure = (text.format(**names) for text in _WHOLE[met.facts["what"]])
    return Words(message=message, working=working, suggestion=Suggestion(cure, None, "fill-in"))


def _top_of_the_chain(met: Met) -> str:
    """Which chain is the right one, where a wrong number was named; "" for anything else."""
    asked, _, whole = str(met.facts["what"]).removeprefix("chain ").rpartition(" of ")
    there = [one.removeprefix("chain ") for one in met.facts["there"] if one.startswith("chain ")]
    if not asked.isdigit() or len(there) != 1:
        return ""
    if int(asked) > int(whole):
        return f"It has {number_of(int(whole), 'chain')}."
    return f"Its {ordinal(int(there[0]))} chain is the top of the stitch that it stands for."


_MISSING = {
    "marker": "marked stitch",
    "number made": "stitch of that number made so far",
    "rounds below": "round so far below",
    "piece": "piece of that name before it",
    "same": "place just worked into",
    "ring": "ring",
    "chain from hook": "chain to count from the hook",
    "turning chain": "turning chain",
    "centre": "one stitch in the middle",
    "other side": "other side of a foundation chain",
    "skipped stitch": "stitch passed over before",
    "unworked": "unworked stitch left from a row before",
    "even number": "number of stitches told for its spaces and row ends",
    "free loop": "loop left free there",
    "first": "first stitch left to work into",
}


def _missing(what: str, met: Met) -> str:
    """What was looked for, in words: `ch-2 sp`, `marked stitch`, `round 9`."""
    if what in _MISSING:
        return _MISSING[what]
    word, _, rest = what.partition(" ")
    if " of " in rest:
        number, _, whole = rest.partition(" of ")
        name = arch_name(int(whole), met.subject)
        if int(number) <= int(whole):
            return f"stitch whose top is the {ordinal(int(number))} chain of the {name}"
        return f"{ordinal(int(number))} chain in a {name}"
    if word in ("round", "row", "chain", "stitch") and rest:
        return what
    if word == "row-end" and rest:
        return f"row of {kind_name(rest, met.subject)}"
    return kind_name(what, met.subject)


def _there(key: str, met: Met) -> str:
    """What is there, in words; the names of pieces and numbers stand as they are."""
    if key in met.subject.pattern.pieces or key.isdigit() or key.startswith("stitch "):
        return f"{key} stitches" if key.isdigit() else key
    word, _, kind = key.partition(" ")
    if word == "row-end" and kind:
        return f"rows of {kind_name(kind, met.subject)}"
    return kind_name(key, met.subject, 2)


def find(subject: Subject) -> Iterator[Finding]:
    for met in subject.met("no-such-place"):
        if met.facts["what"] == "laid out" and _lays_out_no_piece(subject):
            continue  # that step's name is what is wrong
        yield finding("no-such-place", "error", met, words(met))
    yield from _pieces_named(subject)
    yield from _rounds_named(subject)
    yield from _around_no_round(subject)
    yield from _left_out(subject)
    yield from _magic_rings(subject)


def _lays_out_no_piece(subject: Subject) -> bool:
    steps = [step.lay_out for step in subject.pattern.finishing if step.lay_out is not None]
    return any(step.piece not in subject.pattern.pieces for step in steps)


def _pieces_named(subject: Subject) -> Iterator[Finding]:
    """Pieces that a finishing step, a length, a gauge or a variation names, and that aren't there."""
    pieces = subject.pattern.pieces
    named: list[tuple[Path, str, str]] = []
    for placing in placings(subject):
        named.append(((*placing.path, placing.onto_field), placing.onto, placing.belongs))
    for number, step in enumerate(subject.pattern.finishing):
        for field, part in (("thread", step.thread), ("sew", step.sew), ("lay out", step.lay_out)):
            if part is not None:
                named.append((("finishing", number, field, "piece"), part.piece, ""))
        if step.knot is not None and step.knot.piece:
            named.append((("finishing", number, "knot", "piece"), step.knot.piece, ""))
    for number, gauge in enumerate(subject.pattern.gauge):
        if gauge.piece:
            named.append((("gauge", number, "piece"), gauge.piece, ""))
    for name, variation in subject.pattern.variations.items():
        for number, left_out in enumerate(variation.leave_out):
            named.append((("variations", name, "leave out", number), left_out, ""))
    for path, piece, belongs in named:
        if piece not in pieces:
            near = get_close_matches(piece, pieces, n=1)
            told_words = Words(
                message=f"There is no piece “{piece}”.",
                working=f"The pieces are {listed([f'“{name}”' for name in pieces])}.",
                suggestion=Suggestion(f"Write “{near[0]}”.", near[0], "likely") if near else None,
            )
            yield told(__name__, "error", subject, subject.source.locate(path), told_words, belongs)


def _rounds_named(subject: Subject) -> Iterator[Finding]:
    """Rounds that a finishing step, a length or a tail names, and that aren't there."""
    for placing in placings(subject):
        if placing.number is None or placing.onto not in subject.pattern.pieces:
            continue
        if placing.round_of(subject) is not None or not subject.known(placing.onto, None):
            continue
        work = subject.work.piece(placing.onto)
        rounds = [round.plan.label for round in work.rounds] if work and work.rounds else [""]
        word = placing.word
        own = placing.onto == placing.piece and placing.onto_field == "around"
        purpose = (
            f"to measure its {placing.path[-1]} by" if own else _PURPOSE[_does(placing)].format(placing.piece)
        )
        there = f"{word}s {rounds[0]} to {rounds[-1]}" if len(rounds) > 1 else f"{word} {rounds[0]} alone"
        told_words = Words(
            message=f"“{placing.onto}” has no {word} {placing.number} {purpose}.",
            working=f"It has {there}." if rounds[0] else f"It has no {word}s.",
        )
        at = subject.source.locate((*placing.path, placing.field))
        yield told(__name__, "error", subject, at, told_words, placing.belongs)


def _around_no_round(subject: Subject) -> Iterator[Finding]:
    """A length or tail measured by the way around a chain, which has none."""
    for placing in placings(subject):
        piece = subject.pattern.pieces.get(placing.onto)
        if placing.onto_field != "around" or placing.number is not None or piece is None:
            continue
        if piece.worked == "chain":
            own = placing.onto == placing.piece
            whose = f"its {placing.path[-1]}" if own else f"the {placing.path[-1]} of “{placing.piece}”"
            told_words = Words(
                message=f"“{placing.onto}” is a chain and has no round to measure {whose} by.",
                suggestion=Suggestion("Name a piece that has rounds, or give a length.", None, "fill-in"),
            )
            at = subject.source.locate((*placing.path, "around"))
            yield told(__name__, "error", subject, at, told_words, placing.belongs)


def _does(placing: Placing) -> str:
    """What a step does, by its name; `around` for a length."""
    return "around" if placing.onto_field == "around" else str(placing.path[-1])


_PURPOSE = {
    "around": "to measure “{}” by",
    "sew": "to sew “{}” to",
    "place": "to put the {} on",
    "embroider": "to embroider the {} on",
    "thread": "to thread “{}” through",
}


def _left_out(subject: Subject) -> Iterator[Finding]:
    """Pieces that a variation leaves out, though another that it keeps needs them."""
    for name, variation in subject.pattern.variations.items():
        gone = set(variation.leave_out)
        for keeps, needs, how in sorted(set(_needs(subject))):
            if needs in gone and keeps not in gone:
                told_words = Words(
                    message=f"The variation “{name}” leaves out “{needs}”, and “{keeps}” {how} it.",
                    suggestion=Suggestion(f"Leave out “{keeps}” too, or keep “{needs}”.", None, "fill-in"),
                )
                at = subject.source.locate(("variations", name, "leave out"))
                yield told(__name__, "error", subject, at, told_words, keeps)


def _magic_rings(subject: Subject) -> Iterator[Finding]:
    """A line that speaks of a magic ring, in a piece begun on a ring of another kind."""
    for work in subject.work.pieces:
        start = subject.pattern.pieces[work.name].start
        if start is None or start.kind not in _OTHER_RINGS:
            continue
        rounds = ((round, ring) for round in work.rounds for ring in within(round.line, Ring) if ring.magic)
        round, ring = next(rounds, (None, None))
        if round is None or ring is None:
            continue
        at = subject.stretch(round, ring.span)
        said = subject.text_at(at)
        told_words = Words(
            message=f"{quote(said)} in {round.plan.word} {round.plan.label} isn't there: the piece begins on "
            f"{_OTHER_RINGS[start.kind]}.",
            suggestion=Suggestion(
                "Write “ring” for it, or `start: magic ring` where that is meant.", "ring", "likely"
            ),
            related=(Related(subject.source.locate((*work.path, "start")), "begun on this"),),
        )
        yield told(__name__, "error", subject, at, told_words, work.name, round.plan.label)


_OTHER_RINGS = {"chain ring": "chains joined into a ring", "ring": "a ring of another material"}


def _needs(subject: Subject) -> Iterator[tuple[str, str, str]]:
    """Which piece needs which other, and how."""
    for name, piece in subject.pattern.pieces.items():
        if piece.start and piece.start.edge:
            yield name, piece.start.edge, "begins on"
    for work, round in subject.rounds():
        places: list[Next | Corresponding] = [*within(round.line, Next), *within(round.line, Corresponding)]
        for place in places:
            if place.piece in subject.pattern.pieces:
                yield work.name, place.piece, "is worked onto"
    for placing in placings(subject):
        if placing.onto != placing.piece and placing.belongs:
            yield placing.piece, placing.onto, _HOW[placing.onto_field]


_HOW = {"around": "is measured by", "to": "is sewn to", "through": "goes through"}


RULE = rule(__name__, __doc__, "error", find)
