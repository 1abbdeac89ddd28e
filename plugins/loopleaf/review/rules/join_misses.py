"""The join is sent to a place that isn't there, or that isn't a top.

What: `join to 3rd ch of ch-4` needs four chains whose third stands for the stitch; `join to top of ch-2`
needs a chain that counts. A piece in spiral rounds or in rows isn't joined at all: where each of its rounds
is, that is told once, as a warning, at `worked`.

Why it matters: The maker joins one chain too high or too low, the next round has one stitch more or less.

Wrong:

    rounds:
      - {round: 1, work: "ch 2 (counts as hdc), 7 hdc in ring, join to 3rd ch of ch-2", count: 8}

Right:

    rounds:
      - {round: 1, work: "ch 2 (counts as hdc), 7 hdc in ring, join to top of ch-2", count: 8}

When to ignore: Never.
"""

from collections.abc import Iterator

from ...fabric import PieceWork, RoundWork
from ...pattern import Finding, Related, Suggestion
from ..joins import joined_throughout
from ..names import arch_name, chain_name, kind_name, ordinal
from ..rule import Words, finding, rule, told
from ..subject import Met, Subject


def words(met: Met) -> Words:
    why = met.facts["why"]
    chains, number, length, stands = why["chains"], why["number"], why["length"], why["stands"]
    first = kind_name(why["first"], met.subject) if why["first"] else "stitch"
    made, arch = chain_name(chains, met.subject), arch_name(chains, met.subject)
    instead = f"join with {kind_name('slip', met.subject)} to first {first}"
    if why["target"]:
        reason = (
            f"The round has no {kind_name(why['target'], met.subject)} to join to; it begins with {first}."
        )
    elif not chains:
        reason = "The round begins without a chain."
    elif not why["counts"]:
        reason = f"The {made} at its start doesn't count as a stitch, so that its top is none to join to."
    elif length and length != chains:
        reason = f"The round begins with {made}, not with {chain_name(length, met.subject)}."
    elif number > chains:
        reason = f"A chain of {chains} has no {ordinal(number)} chain."
    else:
        reason = f"The {ordinal(stands)} of its {chains} chains stands for the stitch."
    if chains and why["counts"]:
        instead = f"join to top of {arch}" if stands == chains else f"join to {ordinal(stands)} ch of {arch}"
    return Words(
        message=f"{met.quoted} in {met.where} doesn't find the place that it names.",
        working=reason,
        suggestion=Suggestion(f"Write “{instead}”, or “join” alone.", instead, "likely"),
    )


def find(subject: Subject) -> Iterator[Finding]:
    for met in subject.met("join-misses"):
        yield finding("join-misses", "error", met, words(met))
    for piece in subject.work.pieces:
        joined = joined_throughout(subject, piece)
        if joined:
            yield _joined_all_the_same(subject, piece, joined)


def _joined_all_the_same(subject: Subject, piece: PieceWork, joined: list[RoundWork]) -> Finding:
    """Of a piece whose every round is joined, though it is said to be worked in a spiral or in rows."""
    worked, plan = subject.pattern.pieces[piece.name].worked, joined[0].plan
    path = ("pieces", piece.name, "worked")
    unturned = (one for round in piece.rounds for one in round.troubles if one.rule == "turn-missing")
    labels = [f"{plan.word} {round.plan.label}" for round in joined[:2]]
    reason = "A spiral goes on without a join" if worked == "spiral rounds" else "Rows go back and forth"
    said = Words(
        message=f"“{piece.name}” is said to be worked in {worked}, and its {plan.word}s are joined.",
        working=f"{reason}; here {' and '.join(labels)} are joined.",
        suggestion=Suggestion(
            "Write `worked: joined rounds`, or leave the joins out.", "joined rounds", "likely"
        ),
        related=(Related(subject.stretch(joined[0]), "the first of them"),),
        severity="error" if any(one.facts["matters"] for one in unturned) else "warning",
    )
    return told(__name__, "error", subject, subject.source.locate(path), said, piece.name)


RULE = rule(__name__, __doc__, "error", find)
