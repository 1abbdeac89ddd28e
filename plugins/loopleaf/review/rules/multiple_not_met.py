"""The number of chains, or a repeat, isn't in keeping with the multiple that the pattern gives.

What: `start: {chain: 30, multiple: 14, plus: 2}` says that the chains come to so many times 14, and 2 more,
every chain counted. The repeats that go to the end of a row have to come out even with 14 chains more, too.

Why it matters: The multiple is what a maker uses to make the piece wider; it has to hold for the piece as
written.

Wrong:

    worked: rows
    start: {chain: 31, multiple: 14, plus: 2}
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}

Right:

    worked: rows
    start: {chain: 30, multiple: 14, plus: 2}
    rows:
      - {row: 1, work: "sc in 2nd ch from hook and in each ch across, turn"}

When to ignore: Never. A book's “multiple of 14 sts + 1 (add 1 for the base chain)” is `multiple: 14, plus:
2` here.
"""

from collections.abc import Iterator

from ...fabric import PieceWork
from ...pattern import Finding, Related, Start, Suggestion
from ..names import listed, number_of
from ..rule import Words, finding, rule, told
from ..subject import Met, Subject
from ..wider import Uneven, uneven_when_wider


def words(met: Met) -> Words:
    facts = met.facts
    chains, multiple, plus = facts["chains"], facts["multiple"], facts["plus"]
    nearest = [str(number) for number in facts["nearest"]]
    also = f" plus {plus}" if plus else ""
    return Words(
        message=f"{chains} chains are not a multiple of {multiple}{also}.",
        working=f"{chains} − {plus} = {chains - plus}, and {chains - plus} ÷ {multiple} leaves "
        f"{(chains - plus) % multiple}.",
        suggestion=Suggestion(f"The nearest that fit are {listed(nearest)}.", None, "fill-in")
        if nearest
        else None,
    )


def find(subject: Subject) -> Iterator[Finding]:
    met = list(subject.met("multiple-not-met"))
    for one in met:
        yield finding("multiple-not-met", "error", one, words(one))
    for piece in subject.work.pieces:
        start = subject.pattern.pieces[piece.name].start
        if start is None or start.multiple is None or any(one.piece is piece for one in met):
            continue
        if not any(round.troubles for round in piece.rounds):
            uneven = uneven_when_wider(subject, piece, start.multiple)
            if uneven is not None:
                yield _of_a_repeat(subject, piece, start, uneven)


def _of_a_repeat(subject: Subject, piece: PieceWork, start: Start, uneven: Uneven) -> Finding:
    """The chain happens to fit the multiple, and the repeat has another width."""
    facts, each, plan = uneven.trouble.facts, uneven.each, uneven.round.plan
    where, multiple = f"{plan.word} {plan.label}", start.multiple or 0
    chains = start.chain.of(0) if start.chain is not None else None
    fits = chains is not None and each > 0 and uneven_when_wider(subject, piece, each) is None
    said = Words(
        message=f"A piece {number_of(multiple, 'chain')} wider doesn't come out even in {where}.",
        working=f"The repeat then has {number_of(facts['available'], 'place')}, and each pass uses {each}, "
        f"which leaves {facts['available'] % each}."
        if each and facts["available"] % each
        else "The repeat then doesn't find its places.",
        suggestion=Suggestion(
            f"If the repeat is right, write `multiple: {each}, plus: {(chains or 0) % each}`.",
            None,
            "fill-in",
        )
        if fits
        else None,
        related=(Related(subject.stretch(uneven.round, uneven.trouble.span), "this repeat"),),
    )
    at = subject.source.locate(("pieces", piece.name, "start", "multiple"))
    return told(__name__, "error", subject, at, said, piece.name)


RULE = rule(__name__, __doc__, "error", find)
