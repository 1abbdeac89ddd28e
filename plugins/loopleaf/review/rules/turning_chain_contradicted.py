"""The count works out only if the chain at the start is read the other way than the pattern says.

What: The round is one stitch out, and reading its first chain the other way (as a stitch, or as none) would
mend just that. Or an aside tells another number of skipped chains than the line skips: `dc in 5th ch from
hook (3 skipped chs count as dc)` skips four.

Why it matters: The maker follows the convention as stated and ends one stitch out, round after round.

Wrong:

    turning chains: {dc: does not count}
    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join", count: 12}

Right:

    turning chains: {dc: counts}
    rounds:
      - {round: 1, work: "ch 3, 11 dc in ring, join", count: 12}

When to ignore: Never.
"""

from collections.abc import Iterator
from dataclasses import replace

from ...notation.tree import FromHook, Group, Work
from ...pattern import Finding, Path, Related, Suggestion
from ..lines import within
from ..names import chain_name, kind_name, listed, number_of, ordinal
from ..rule import Words, finding, rule
from ..rule import told as told_of
from ..subject import Met, Subject, quote


def words(met: Met) -> Words:
    facts = met.facts
    stitch = kind_name(facts["stitch"], met.subject)
    chain = chain_name(facts["chains"], met.subject)
    said = "counts as a stitch" if facts["said"] else "doesn't count"
    other = f"{chain} (does not count)" if facts["said"] else f"{chain} (counts as {stitch})"
    at = met.stated_at
    return Words(
        message=f"The {chain} at the start of {met.where} {said} by this pattern, and the count works out "
        "only the other way.",
        working=_working(met),
        suggestion=Suggestion(
            f"If the count is right, write “{other}”.",
            other if met.quoted == f"“{chain}”" else None,
            "likely",
        ),
        related=(Related(at, "the count is stated here"),) if at else (),
    )


def _working(met: Met) -> str:
    """What comes of it as said, and the other way."""
    facts = met.facts
    word = met.round.plan.word if met.round else "round"
    other = f"the other way it makes {facts['count_other']}"
    if facts["needed"] is not None and facts["available"] is not None:
        there = facts["available"]
        needed = number_of(facts["needed"], "place")
        needs, stands = ("is" if one == 1 else "are" for one in (facts["needed"], there))
        return f"Read as said, {needed} {needs} needed and {there} {stands} there; {other}."
    if facts["left"] is not None:
        left = facts["left"]
        return f"Read as said, {left} of the places below {'is' if left == 1 else 'are'} left over; {other}."
    return f"Read as said the {word} makes {facts['count_said']}, the other way {facts['count_other']}."


def find(subject: Subject) -> Iterator[Finding]:
    """One finding a stitch where it is the file's own convention that every such round contradicts."""
    met_by_stitch: dict[tuple[str, str], list[Met]] = {}
    for number, met in enumerate(subject.met("turning-chain-contradicted")):
        own = met.facts["by"] != "convention"
        key = (met.facts["stitch"], str(number) if own else "")
        met_by_stitch.setdefault(key, []).append(met)
    for first, *others in met_by_stitch.values():
        told = words(first)
        if others:
            rounds = listed(f"{other.where} of “{other.piece_name}”" for other in others)
            told = replace(told, working=f"{told.working} So it is in {rounds}.")
        yield finding("turning-chain-contradicted", "error", first, told)
    yield from _skipped_otherwise(subject)


def _skipped_otherwise(subject: Subject) -> Iterator[Finding]:
    """Asides that tell another number of skipped chains than the one from the hook leaves behind it."""
    said_of: set[Path] = set()
    for piece, round in subject.rounds():
        steps: list[Work | Group] = [*within(round.line, Work), *within(round.line, Group)]
        for step in steps:
            if step.counts is None or not step.counts.said or round.plan.work_path in said_of:
                continue
            place = next((one for one in step.places if isinstance(one, FromHook)), None)
            if place is None:
                continue
            passed, said = place.number - 1, step.counts.said
            # `4 skipped chs count as dc, ch 1` may leave out the chain below the space
            if said == passed or (said < passed and step.counts.chains):
                continue
            said_of.add(round.plan.work_path)
            at = subject.stretch(round, step.counts.span)
            told = Words(
                message=f"{quote(subject.text_at(at))} in {round.plan.word} {round.plan.label} tells of "
                f"{number_of(said, 'chain')}, and {number_of(passed, 'chain')} "
                f"{'is' if passed == 1 else 'are'} skipped.",
                working=f"The {ordinal(place.number)} chain from the hook has {number_of(passed, 'chain')} "
                "before it.",
                suggestion=Suggestion(
                    f"Write {passed} in the aside, or “{ordinal(said + 1)} ch from hook”.", None, "fill-in"
                ),
            )
            yield told_of(__name__, "error", subject, at, told, piece.name, round.plan.label)


RULE = rule(__name__, __doc__, "error", find)
