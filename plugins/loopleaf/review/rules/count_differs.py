"""The count stated for a round isn't the count that its stitches make.

What: Every stitch of the round is worked, one by one, and the total, or the number of each kind where the
count names kinds, is set beside the author's own count.

Why it matters: A maker counts at the end of the round. When the numbers don't agree they undo good work, or
go on from a wrong one.

Wrong:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 15}

Right:

    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16}

When to ignore: Never. Where chains between stitches are part of your counts, say `chain spaces: counted`;
where the turning chain counts as a stitch, say so in the round or under `turning chains`.
"""

from collections.abc import Mapping

from ... import trade
from ...fabric import Trouble
from ...notation.tree import Again, Repeat
from ...pattern import Related, Suggestion
from ..lines import within
from ..mends import mend_told, put_right
from ..names import Key, in_sizes, kind_name, kind_of, number_of, signed, tally
from ..rule import Words, fit_rule
from ..subject import Met
from ..trials import Mend

Tallied = Mapping[Key, int]
"""How many there are of each kind."""


def words(met: Met) -> Words:
    facts, subject = met.facts, met.subject
    kind: Key | None = facts["kind"]
    stated, worked = facts["stated"], facts["worked"]
    if kind is None:
        told, said = number_of(worked, "stitch"), str(stated)
    else:
        number = worked.get(kind, 0)
        told = kind_of(kind, subject, number) if number else f"no {kind_name(kind, subject, 2)}"
        said = str(stated.get(kind, 0))
    sums = [_sum(trouble, met) for trouble in met.troubles]
    if len(subject.sizes) > 1:
        names = [subject.sizes[trouble.size] for trouble in met.troubles]
        sums = [f"size {name}: {line}" for name, line in zip(names, sums, strict=True)]
    difference = facts["difference"]
    working = "; ".join(sums) + "."
    mend = _certain_mend(met)
    if difference and kind is None and mend is None:
        working += f" The count is {signed(-difference)}."
    at = met.stated_at
    work = met.subject.source.locate(met.round.plan.work_path) if met.round else met.location
    if mend is not None and at:
        return Words(
            message=f"{met.where.capitalize()} makes {told}, and its count says {said}.",
            working=working[0].upper() + working[1:],
            suggestion=mend_told(met, mend),
            related=(Related(at, "its count stands here, and what follows bears it out"),),
            location=met.at_mend(mend),
        )
    return Words(
        message=f"{met.where.capitalize()} makes {told}, and its count says {said}.",
        working=working[0].upper() + working[1:],
        suggestion=_suggestion(met),
        related=(Related(work, f"{met.where} is worked here"),) if at else (),
        location=at if met.troubles[0].span is None else None,
    )


def _sum(trouble: Trouble, met: Met) -> str:
    stated, worked, size = trouble.facts["stated"], trouble.facts["worked"], trouble.size
    off = _off(_as_written(stated, met), worked, met)
    stated, worked = _as_written(stated, met), _as_written(_made(worked, met, size), met)
    return f"stated {tally(stated, met.subject)}, worked {tally(worked, met.subject)}{off}"


def _off(stated: int | Tallied, worked: int | Tallied, met: Met) -> str:
    """`: 1 dc too many, 2 sc too few`: each kind that differs from what was stated of it."""
    if isinstance(stated, int) or isinstance(worked, int):
        return ""
    more = {key: worked.get(key, 0) - number for key, number in stated.items()}
    told = [
        f"{kind_of(key, met.subject, abs(by))} too {'many' if by > 0 else 'few'}"
        for key, by in more.items()
        if by
    ]
    return f": {', '.join(told)}" if told else ""


def _made(worked: int | Tallied, met: Met, size: int) -> int | Tallied:
    """What was worked; all of it by kind where the author's kinds miss some, or name one that isn't there."""
    made = met.round.sizes[size] if met.round else None
    if not isinstance(worked, Mapping) or made is None:
        return worked
    return made.makes if 0 in worked.values() else {**worked, **_unsaid(worked, made.makes)}


def _unsaid(worked: Tallied, makes: Tallied) -> Tallied:
    """The kinds that were worked too and that the author's count doesn't name: plain stitches, where it names
    only such, and spaces, where it names any."""
    spaces = any(str(key).startswith("space") for key in worked)
    plain = {row.key for row in trade.stitches()}
    stitches = all(key in plain for key in worked if not str(key).startswith("space"))
    return {
        key: number
        for key, number in makes.items()
        if (spaces and isinstance(key, tuple) and f"space {key[1]}" not in worked and "space" not in worked)
        or (stitches and key in plain - {"slip"} and key not in worked)
    }


def _as_written(count: int | Tallied, met: Met) -> int | Tallied:
    """A count by kind in the order in which the author wrote the kinds."""
    if isinstance(count, int):
        return count
    text = (met.round.plan.stated or "").lower() if met.round else ""

    def place(key: Key) -> int:
        found = [text.find(kind_name(key, met.subject, number).lower()) for number in (2, 1)]
        return min((at for at in found if at >= 0), default=len(text))

    return {key: count[key] for key in sorted(count, key=place)}


def _suggestion(met: Met) -> Suggestion | None:
    """The worked count in place of the stated one, where the stated one stands alone in its field."""
    facts, round = met.facts, met.round
    if round is None or met.troubles[0].span is not None or not met.stated_at:
        return None
    worked = _made(facts["worked"], met, 0)
    if met.subject.sizes and isinstance(worked, int):
        made = [size.count if size else "-" for size in round.sizes]
        text = str(made[0]) if len(set(made)) == 1 else in_sizes(made)
    elif met.subject.sizes:
        return None
    else:
        text = tally(_as_written(worked, met), met.subject)
    stands = met.subject.text_at(met.stated_at) == round.plan.stated
    in_line = text if stands else None
    return Suggestion(
        f"If the stitches are right, the count is {text}; if the count is right, {_where_to_look(met)}.",
        in_line
        if round.plan.in_line
        else met.subject.replacement(met.stated_at, round.plan.stated or "", text),
        "likely",
    )


def _certain_mend(met: Met) -> Mend | None:
    """The slip that explains it, where later rounds bear the count out and not the stitches."""
    if met.round is None or met.troubles[0].span is not None:
        return None
    mend = met.only_mend
    return mend if mend is not None and met.subject.trials.count_is_borne_out(met.round) else None


def _where_to_look(met: Met) -> str:
    """What is wrong if the count isn't: the slip that alone explains it, else what there is to look at."""
    mend = met.only_mend
    if mend is not None:
        return put_right(met, mend)
    line = met.round.line if met.round else None
    repeats = any(True for kind in (Repeat, Again) for _ in within(line, kind))
    return "look at the repeat" if repeats else "look at the stitches"


RULE = fit_rule(__name__, __doc__, "error", words)
