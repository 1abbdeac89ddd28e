"""Reads a step that makes stitches: number, name, place, in either order (`2 dc in next st`, `dc 2 in next
st`, `sc 5`).
"""

from dataclasses import replace

from .along_words import read_number_behind
from .asides import is_counts_aside, read_counts, read_counts_aside
from .between import each_between
from .chains import read_chain_name, starts_chain_name
from .chains_between import spaced_out
from .cursor import Cursor, UnreadableError, read_amount
from .directions import read_side_first
from .edges import one_in_each, read_around_piece
from .gathering import read_next_together
from .leaning import begun_in_same, over_several, read_legs
from .names import read_counted_stitch
from .nth_space import pass_to_the_nth
from .places import Where, read_places, read_through, starts_place
from .purposes import pass_what_part, read_purpose, read_stands_for
from .repeats import read_times
from .shaping import pass_evenly
from .sharing import legs_of, needs_no_place, passes_over, share_out, target_of, which_of
from .spikes import need_depth, read_over_as_in
from .starting import read_begun_at
from .tree import (
    ONE,
    Amount,
    Between,
    Chain,
    CountsAs,
    Each,
    Evenly,
    FromHook,
    Join,
    Last,
    Next,
    OtherSide,
    Over,
    Place,
    Repeat,
    Same,
    Skip,
    Step,
    Stitch,
    Turn,
    Until,
    Work,
    Yarn,
)
from .untils import read_until, starts_until, to_a_space
from .whole_rounds import pass_other_name
from .yarns import other_side, read_yarn_name


def read_chain(cursor: Cursor, steps: list[Step]) -> None:
    """`ch 3`, `3ch`, `ch-3`, `ch`, with what it counts as."""
    first = cursor.at
    length: Amount | None = None
    if cursor.means != "ch":
        length = read_amount(cursor)
        cursor.take("more")
        cursor.need("ch", "step")
    else:
        cursor.at += 1
        length = read_amount(cursor)
    if cursor.means in ("sp", "sps"):
        raise UnreadableError(first, "step-not-place", cursor.at)
    if starts_place(cursor, cursor.at):
        raise UnreadableError(cursor.at, "chain-end")
    counts = read_stands_for(cursor)
    purpose = read_purpose(cursor) if counts is None else ""
    counts = counts or _counts(cursor, _own_length(length))
    if counts is not None and counts.stitch is not None and counts.chains >= _shortest(length):
        raise UnreadableError(first, "chain-too-short", cursor.at - 1)
    chain: Step = Chain(length or ONE, counts, cursor.span(first), purpose)
    times = read_times(cursor)
    steps.append(chain if times is None else Repeat((chain,), times, span=cursor.span(first)))


def _shortest(length: Amount | None) -> int:
    """How many chains there are in the size that has the fewest; more than any has for an `n`."""
    if length is not None and length.variable:
        return 100
    return min((one for one in (length or ONE).sizes if one), default=1)


def _own_length(length: Amount | None) -> int:
    """How many chains are in `ch 5 (counts as ch-sp)`, where the space's own number isn't said."""
    return (length.sizes[0] or 1) if length is not None and not length.varies else 1


def _counts(cursor: Cursor, own: int = 0, pair: bool = False) -> CountsAs | None:
    if cursor.means == "(" and is_counts_aside(cursor, cursor.at):
        return read_counts_aside(cursor, own, pair)
    if cursor.means in ("counts-as", "counts-not"):
        return read_counts(cursor, own, pair=pair)
    if cursor.means == "," and cursor.ahead() in ("counts-as", "counts-not"):
        cursor.at += 1  # `ch 3, counts as dc, ch 1`: the next comma begins the next step
        return read_counts(cursor, own, one=True, pair=pair)
    return None


def read_work(cursor: Cursor, steps: list[Step]) -> None:
    """Stitches into places."""
    first = cursor.at
    amount, stitch = read_counted_stitch(cursor)
    pass_other_name(cursor, stitch)
    doubled = False
    if cursor.means == "inc" and stitch.kind not in ("inc", "dec"):
        doubled = True
        cursor.at += 1
    if cursor.means == "form" and stitch.kind == "special":
        cursor.at += 1
    amount = _number_after(cursor, amount)
    if doubled and starts_place(cursor, cursor.at) is False:
        steps.append(Work(stitch, Amount((2,)), (Next(amount or ONE),), span=cursor.span(first)))
        return
    if cursor.means == "evenly-on" and starts_until(cursor, cursor.at + 1):
        cursor.at += 1  # `sc even around`
    pass_evenly(cursor)
    if stitch.kind == "slip":
        _travel(cursor)
    _from_the_second(cursor, steps)
    pass_to_the_nth(cursor, steps)
    read_side_first(cursor, steps)
    begun = read_begun_at(cursor, amount)
    if begun and not stitch.form:
        _finish(cursor, steps, first, Work(stitch, ONE, begun, span=cursor.span(first)))
        return
    piece = read_around_piece(cursor) if cursor.means == "around" and cursor.ahead() != "edge" else ""
    if piece:  # `9 sc around leg 1`, `sc around leg 1`
        around: Place = (
            Each(until=Until(word=""), piece=piece) if amount is None else Next(amount, piece=piece)
        )
        _finish(cursor, steps, first, Work(stitch, ONE, (around,), span=cursor.span(first)))
        return
    between = each_between(cursor)
    if between is not None:
        gap = Work(stitch, amount or ONE, (Between(between[0]),), span=cursor.span(first))
        until = read_until(cursor) or Until(word="around")
        target, pairs = between
        on = (Skip(target=target, span=cursor.span(first)),) if pairs else ()
        steps.append(Repeat((gap, *on), until=until, span=cursor.span(first)))
        return
    read_over_as_in(cursor, first)
    again = cursor.take("again")
    named = cursor.at
    where = _where(cursor, slips=stitch.kind == "slip")
    if again and where.places:  # `dc in each dc across, dc again in last dc`
        where.places = tuple(Same() if isinstance(one, Last | Same) else one for one in where.places)
    if stitch.form == "tog" and not where.places:
        where.places = read_legs(cursor) or begun_in_same(cursor, stitch)
    if doubled:
        amount = Amount((2,))
        where.each = True
    if cursor.means == "tog" and amount in (None, ONE) and not doubled:
        work = Work(
            _as_said(cursor, stitch, where), ONE, where.places, None, where.through, cursor.span(first)
        )
        _finish(cursor, steps, first, read_next_together(cursor, work))
        return
    need_depth(cursor, first, named, where)
    stitch = _as_said(cursor, stitch, where)
    through = where.through or cursor.through
    if not where.places and not cursor.here:
        _without_place(cursor, steps, first, amount, stitch, through)
        return
    whole = over_several(stitch, where.places, cursor.span(first)) if amount in (None, ONE) else None
    if whole is not None:
        _finish(cursor, steps, first, whole)
        return
    each, places = share_out(amount, stitch, where)
    passes = passes_over(stitch, places[0], amount, where) if len(places) == 1 else None
    if passes is not None:
        over = Over(Amount((legs_of(stitch),)), target_of(places[0]), which_of(places[0], passes))
        work = Work(stitch, ONE, (over,), None, through, cursor.span(first))
        step = work if passes == ONE else Repeat((work,), passes, span=cursor.span(first))
        _finish(cursor, steps, first, step)
        return
    if amount is None and any(isinstance(p, Evenly) for p in places):
        number = read_number_behind(cursor, stitch)
        if number is None:
            places = one_in_each(places)
        if not places:
            raise UnreadableError(first, "evenly-number", cursor.at - 1)
        each = number or ONE
    _finish(cursor, steps, first, Work(stitch, each, places, None, through, cursor.span(first)))


def _from_the_second(cursor: Cursor, steps: list[Step]) -> None:
    """`ch 3, dc in 2nd dc and in each dc across`: behind the turning chain those before it are passed."""
    words, at = cursor.words, cursor.at
    own = steps[1:] if steps and isinstance(steps[0], Turn) else steps  # `turn, ch 3, dc in 2nd dc`
    begins = all(isinstance(step, Chain) for step in own) and (own or words[at + 3].means == "and")
    if not begins or words[at].means != "in" or words[at + 1].means != "ord":
        return
    if words[at + 2].means not in ("st", "stitch") or words[at + 3].means in ("of", "form"):
        return
    number: int = words[at + 1].value
    if number > 1:
        steps.append(Skip(Amount((number - 1,)), which="first", span=cursor.span(at + 1)))
        words[at + 1].means = "next"


def _travel(cursor: Cursor) -> None:
    """`sl st to corner sp`, `sl st across to next ch-2 sp`: over what lies before the place, and into it."""
    to = cursor.at + (cursor.means == "across")
    words = cursor.words
    if words[to].means != "to":
        return
    corner = to + 1 + (words[to + 1].means == "next")
    middle = (
        words[to + 1].means == "centre" and words[to + 3].means == "of"
    )  # `sl st to center dc of next sh`
    if words[corner].means == "corner" or middle or to_a_space(cursor, to):
        words[to].means = "in"
        cursor.at = to


def _number_after(cursor: Cursor, amount: Amount | None) -> Amount | None:
    """`sc 5`, `dc 3 in next st`, `sc 8 (10, 12)`; not the number of `sc 3 times`."""
    if amount is not None or cursor.means not in ("num", "-"):
        return amount
    at = cursor.at
    found = read_amount(cursor)
    if found is None or cursor.means in ("times", "more", "stitch", "ch", "x", "special", "inc", "dec"):
        cursor.at = at
        return None
    return found


def _where(cursor: Cursor, slips: bool = False) -> Where:
    if cursor.means in _PLAIN_PLACES or (starts_place(cursor, cursor.at) and not _in_a_yarn(cursor)):
        return read_places(cursor)
    plainly = cursor.means == "to" and (
        not starts_until(cursor, cursor.at)
        or cursor.ahead() in ("tch", "beg")
        or (slips and cursor.ahead() == "marked")  # `sc to marked st` stops before it
        or to_a_space(cursor, cursor.at)
    )
    if cursor.means == "to" and cursor.ahead() == "num" and starts_chain_name(cursor, cursor.at + 1):
        cursor.at += 1  # `ss to 3ch`
        return Where(places=(read_chain_name(cursor, 0),))
    if plainly and cursor.ahead() in _TO_A_PLACE:
        cursor.words[cursor.at].means = "in"
        return read_places(cursor)
    if cursor.means == "along" and cursor.ahead() == "other-side" and cursor.ahead(3) in ("num", "next"):
        cursor.words[cursor.at].means = "in"  # `sc along other side of 3 chs`
        return read_places(cursor)
    of = cursor.means == "loop-of" and cursor.ahead() == "of"
    if of or (cursor.means == "loop-of" and starts_place(cursor, cursor.at + 1)):
        loop: str = cursor.words[cursor.at].value
        cursor.at += 1
        cursor.words[cursor.at].means = "in" if of else cursor.means  # `through front loops of next 3 sts`
        where = read_places(cursor)
        where.loop = loop
        return where
    where = Where(through=read_through(cursor))
    if where.through and cursor.means in ("of", "across") and cursor.ahead() in ("next", "num"):
        cursor.words[cursor.at].means = "in"  # `through both layers of next 6 sts`, `across 6 sts`
    if where.through and starts_place(cursor, cursor.at):  # `sc through both layers in next 3 sts`
        through, where = where.through, read_places(cursor)
        where.through = through
        return where
    said = cursor.means in ("in", "loop-of") and "loop-of" in (cursor.means, cursor.ahead())
    if said and not where.through:
        cursor.take("in")
        where.loop = cursor.words[cursor.at].value
        cursor.at += 1
        where.through = read_through(cursor)
    return where


_PLAIN_PLACES = frozenset({"next", "each", "first", "last", "same"})
"""`sc each st around`: print may leave the `in` out."""
_TO_A_PLACE = frozenset(
    {"next", "first", "top", "ord", "same", "beg", "tch", "st", "stitch", "sp", "ch", "corner", "marked",
     "corresponding",
     "a", "special", "each", "any", "centre"}
)  # fmt: skip


def _as_said(cursor: Cursor, stitch: Stitch, where: Where) -> Stitch:
    loop = (
        where.loop
        or stitch.loop
        or (cursor.loop if not stitch.post and _takes_the_loop(stitch, where) else "")
    )
    post = stitch.post or where.post
    if loop != stitch.loop or post != stitch.post:
        return replace(stitch, loop=loop, post=post)
    return stitch


def _takes_the_loop(stitch: Stitch, where: Where) -> bool:
    """Whether a loop said for the whole line is meant of this one too; not of the slip stitch that joins."""
    if stitch.kind == "slip":
        return all(isinstance(place, Next | Each) for place in where.places) and bool(where.places)
    return stitch.kind != "chain"


def _without_place(
    cursor: Cursor, steps: list[Step], first: int, amount: Amount | None, stitch: Stitch, through: str
) -> None:
    """`3 hdc`, `inc x 4`, `sc2tog x 6`, `inc around`, `20 fsc`, `ch-3 picot`."""
    times = read_times(cursor)
    legs = legs_of(stitch)
    step: Step
    if legs:
        number = times or amount or ONE
        work = Work(stitch, ONE, (Over(Amount((legs,))),), None, through, cursor.span(first))
        until = read_until(cursor)
        if until is not None:
            step = Repeat((work,), until=until, span=cursor.span(first))
        else:
            once = number == ONE and times is None
            step = work if once else Repeat((work,), number, span=cursor.span(first))
            if times is not None and amount is not None and amount != ONE:
                step = Repeat((Repeat((work,), amount),), times, span=cursor.span(first))
    elif needs_no_place(stitch):
        step = Work(stitch, amount or times or ONE, (), None, through, cursor.span(first))
    elif cursor.ring and stitch.kind not in ("slip", "inc", "dec") and not starts_until(cursor, cursor.at):
        step = Work(stitch, amount or times or ONE, (cursor.ring,), None, through, cursor.span(first))
    elif times is None and starts_until(cursor, cursor.at):
        place: Place = Each(until=read_until(cursor) or Each().until)
        if amount is not None and amount != ONE:  # `18 sc around`: eighteen in all, never in each
            place = Next(amount)
        through = read_through(cursor) or through
        step = Work(stitch, ONE, (place,), None, through, cursor.span(first))
    elif times is not None and amount is not None and amount != ONE:
        work = Work(stitch, ONE, (Next(amount),), None, through, cursor.span(first))
        step = Repeat((work,), times, span=cursor.span(first))
    else:
        step = Work(stitch, ONE, (Next(amount or times or ONE),), None, through, cursor.span(first))
    _finish(cursor, steps, first, step)


def _finish(cursor: Cursor, steps: list[Step], first: int, step: Step) -> None:
    """What may stand right behind a stitch: the yarn, the side of the chain, how often, what it counts as,
    `to join`.
    """
    step = spaced_out(cursor, step)
    if cursor.means == "with" or _in_a_yarn(cursor):
        at = cursor.at
        cursor.at += 1
        steps.append(Yarn(read_yarn_name(cursor), span=cursor.span(at)))
    side = other_side(cursor)
    if side is not None:
        steps.append(OtherSide(side))
    pass_what_part(cursor, step)
    if isinstance(step, Work):
        counts = _counts(cursor, pair=any(isinstance(one, FromHook) for one in step.places))
        if counts is not None:
            step = replace(step, counts=counts, span=cursor.span(first))
            step = _and_on(cursor, steps, step)
        walks = any(isinstance(one, Each) for one in step.places)
        if walks and cursor.take("to-join"):
            pass  # `sl st in each st across to join`: a seam
        elif step.stitch.kind == "slip" and cursor.take("to-join"):
            steps.append(_joining(step, cursor, first))
            return
        if step.stitch.kind != "slip" and cursor.means == "to-join" and step.places:
            cursor.at += 1  # `dc in first sc to join`: the fabric sees what it closes
        times = read_times(cursor)
        if times is not None:
            step = Repeat((step,), times, span=cursor.span(first))
    steps.append(step)


def _and_on(cursor: Cursor, steps: list[Step], work: Work) -> Work:
    """`dc in 4th ch from hook (skipped chs count as dc) and in each ch across`: behind the aside the same
    stitch goes on, as a step of its own.
    """
    if cursor.means != "and" or not starts_place(cursor, cursor.at + 1):
        return work
    steps.append(work)
    cursor.at += 1
    first = cursor.at
    where = _where(cursor)
    each, places = share_out(None, work.stitch, where)
    return Work(work.stitch, each, places, None, where.through, cursor.span(first))


def _in_a_yarn(cursor: Cursor) -> bool:
    """`in B`: the yarn's letter, or one of the pattern's yarns, stands where a place would."""
    word = cursor.words[cursor.at + 1]
    if cursor.means != "in" or word.means not in ("?", "a"):
        return False
    said = cursor.text[word.start : word.end]
    closes = cursor.ahead(2) in (",", "end", ")", "and", "then")
    return said in cursor.vocabulary.yarns or (len(said) == 1 and said.isupper() and closes)


def _joining(work: Work, cursor: Cursor, first: int) -> Join:
    place = work.places[0] if work.places and work.places[0] != Next() else None
    return Join(place, work.stitch, span=cursor.span(first))
