"""What a stitch adds to the new edge, wherever it goes."""

from collections.abc import Sequence
from dataclasses import replace

from loopleaf.notation.tree import (
    Chain,
    CountsAs,
    Each,
    Evenly,
    FromHook,
    Next,
    Over,
    Repeat,
    RowEnds,
    Same,
    Shaping,
    Skip,
    Skipped,
    Step,
    Stitch,
    Within,
    Work,
)
from loopleaf.notation.tree import Group as TreeGroup

from .below import NOWHERE
from .cells import Bunch, Cell, Misfit
from .counts import PETAL
from .hand import Hand
from .places import spots


def work(hand: Hand, step: Work) -> None:
    """One instruction: so many of a stitch in each of its places."""
    number = hand.setting.number(step.each)
    if not number:
        return
    if step.stitch.kind.startswith("foundation-") and hand.edge.foundation:
        hand.lay([])  # each makes its own chain; those that the first begins on are no places
    if not step.places:
        for _ in range(number):
            put(hand, step.stitch, ())
        return
    if step.stitch.kind == "special" and _sits(hand.setting.specials.get(step.stitch.name, ())):
        for place in step.places:  # `3 p` are three on one stitch
            times = hand.setting.number(place.count) or 0 if isinstance(place, Next) else 1
            for _ in range(number * times):
                put(hand, step.stitch, ())
        return
    if step.stitch.kind == "special" and _walks(hand.setting.specials.get(step.stitch.name, ())):
        _along_the_edge(hand, step, number)
        return
    for place in step.places:
        if isinstance(place, Each) and place.every > 1 and step.stitch.kind == "inc":
            _every_so_many(hand, step.stitch, place)
            continue
        if isinstance(place, RowEnds) and place.per > 1:
            ends = sum(1 for _ in spots(hand, place))
            for _ in range(ends * number // place.per):
                put(hand, step.stitch, ())
            continue
        if step.shaping is not None and place is step.places[-1]:
            _shaped(hand, step.stitch, step.shaping, [*spots(hand, place)])
            continue
        for spot in spots(hand, Same() if _stands_there(hand, step) else place):
            before = len(hand.made)
            for _ in range(number):
                put(hand, step.stitch, spot)
            if number > 1 and not isinstance(place, Evenly):
                bunch(hand, before, Bunch(known_as(hand, step)))


def _shaped(hand: Hand, stitch: Stitch, shaping: Shaping, there: list[tuple[int, ...]]) -> None:
    """`sc around, increasing 6 sts evenly`: so many places take two, or so many stitches two places."""
    change = hand.setting.number(shaping.count) or 0
    if shaping.total:
        whole = len(there) + sum(cell.top for cell in hand.made)
        change = change - whole if shaping.how == "inc" else whole - change
    if not 0 <= change <= len(there) // (1 if shaping.how == "inc" else 2):
        raise Misfit("fit", f"{change} of {len(there)} stitches can't be shaped")
    if shaping.how == "dec":
        kind = hand.kind_of(stitch, [hand.cells[at] for at in there[0]])
        for at in range(change):
            put(hand, Stitch(kind, "tog", 2), (*there[2 * at], *there[2 * at + 1]))
        there = there[2 * change :]
    for at, spot in enumerate(there):
        for _ in range(2 if shaping.how == "inc" and at < change else 1):
            put(hand, stitch, spot)


def _every_so_many(hand: Hand, stitch: Stitch, place: Each) -> None:
    """`inc in every 3rd st`: two stitches plain, and then an increase; it must come out even."""
    there = 0
    for there, spot in enumerate(spots(hand, replace(place, every=1)), 1):
        kind = hand.kind_of(stitch, [hand.cells[at] for at in spot])
        put(hand, stitch if there % place.every == 0 else Stitch(kind), spot)
    if there % place.every:
        raise Misfit("fit", f"{there} stitches are no {place.every}s")


def put(hand: Hand, stitch: Stitch, spot: Sequence[int]) -> None:
    """One stitch of a kind, into a spot that is already used up."""
    below = [hand.cells[at] for at in spot if at != NOWHERE]
    on_leaf = hand.leaf is not None and hand.leaf.at > 0 and not hand.leaf.grows
    if stitch.loop:
        hand.one_loop += [(cell, stitch.loop) for cell in below]
    if stitch.post and any(cell.kind in ("space", "ring", "picot", "row-end") for cell in below):
        raise Misfit("place", "no post there")
    if stitch.post and any(cell.kind == "chain" for cell in below):
        raise Misfit("place", "a chain has no post to go around")
    steps = hand.setting.specials.get(stitch.name, ()) if stitch.kind == "special" else ()
    if on_leaf:
        hand.on_leaf.append(stitch.kind)
        return
    if steps:
        before, here, last = len(hand.made), hand.here, hand.last
        hand.here = spot[0] if spot else NOWHERE
        hand.last = hand.here
        hand.leading = hand.leading and isinstance(steps[0], Chain)
        from .steps import run

        run(hand, _with_first_leg(steps) if hand.leading else steps)
        hand.here, hand.last = here, last if last is not None else hand.last
        bunch(hand, before, Bunch(stitch.name))
        return
    if stitch.form == "picot":
        if not hand.made:
            raise Misfit("place", "a picot sits on a stitch, and there is none")
        hand.made.append(Cell("picot", length=stitch.number))
        return
    kind = hand.kind_of(stitch, below)
    if stitch.kind == "special":
        kind = stitch.name
    foot = below[0] if len(below) == 1 else None
    if stitch.form == "shell":
        before = len(hand.made)
        for _ in range(stitch.number):
            hand.add(Cell(kind, foot=foot))
        bunch(hand, before, Bunch("shell", kind, stitch.number))
    elif stitch.form == "v-stitch":
        before = len(hand.made)
        hand.add(Cell(kind, foot=foot))
        hand.add(Cell("space", length=stitch.number))
        hand.add(Cell(kind, foot=foot))
        bunch(hand, before, Bunch("v-stitch", kind, stitch.number))
    elif stitch.kind == "inc":
        before = len(hand.made)
        hand.add(Cell(kind, foot=foot))
        hand.add(Cell(kind, foot=foot))
        bunch(hand, before, Bunch())
    else:
        closes = kind == "slip" and bool(hand.made) and hand.made[-1].kind == "space"
        closes = closes or (kind == "slip" and _behind_a_petal(hand.made))
        form = "tog" if stitch.kind == "dec" else stitch.form
        hand.add(Cell(kind, form=PETAL if closes else form, post=stitch.post, foot=foot))


def _behind_a_petal(made: Sequence[Cell]) -> bool:
    """Whether the last stitch closes a petal: a slip stitch behind it goes on to where the next begins."""
    return len(made) > 1 and made[-1].form == PETAL and made[-2].kind == "space"


def _stands_there(hand: Hand, step: Work) -> bool:
    """An author's stitch that begins a round with its chain, and names no place, stands where the yarn is."""
    steps = hand.setting.specials.get(step.stitch.name, ()) if step.stitch.kind == "special" else ()
    unnamed = step.places == (Next(),) and step.places[0].span is None
    return hand.leading and unnamed and bool(steps) and isinstance(steps[0], Chain)


def _with_first_leg(steps: Sequence[Step]) -> Sequence[Step]:
    """`ch 2, dc2tog in same st` at a start: the chain is one leg more."""
    match steps:
        case (Chain(counts=None) as chain, Work(stitch=Stitch(form="tog") as stitch, counts=None) as legs):
            whole = CountsAs(replace(stitch, number=stitch.number + 1))
            return chain, replace(legs, counts=whole)
    return steps


def bunch(hand: Hand, before: int, together: Bunch) -> None:
    """What was made since then was made in one place."""
    cells = hand.made[before:]
    together = replace(together, tops=sum(cell.top for cell in cells))
    if cells and cells[-1].form == PETAL and cells[0].kind == "slip":
        hand.made[before] = replace(cells[0], form=PETAL)  # the petal begins with one too
    for at in range(before, len(hand.made)):
        cell = hand.made[at]
        hand.made[at] = replace(cell, bunches=(together, *cell.bunches))


def known_as(hand: Hand, step: Work | TreeGroup) -> str:
    """The author's stitch that a line writes out: its own words are how it is known. "" for none."""
    for name, steps in hand.setting.specials.items():
        match steps, step:
            case (TreeGroup() as own,), TreeGroup() if own.steps == step.steps:
                return name
            case (Work() as own,), Work() if (own.stitch, own.each) == (step.stitch, step.each):
                return name
    return ""


def _sits(steps: Sequence[Step]) -> bool:
    """Whether an author's stitch is a picot, which goes into no place of the edge."""
    if not steps:
        return False
    return all(
        isinstance(step, Chain)
        or (isinstance(step, Work) and (not step.places or isinstance(step.places[0], FromHook)))
        for step in steps
    ) and any(isinstance(step, Work) for step in steps)


def _walks(steps: Sequence[Step]) -> bool:
    """Whether an author's stitch moves along the edge by itself (crossed stitches, a cluster over three)."""
    for step in steps:
        match step:
            case Work():
                if any(isinstance(place, Next | Over | Each | Within | Skipped) for place in step.places):
                    return True
            case Skip():
                return True
            case TreeGroup() | Repeat():
                if _walks(step.steps):
                    return True
    return False


def _along_the_edge(hand: Hand, step: Work, number: int) -> None:
    from .steps import run

    steps = hand.setting.specials[step.stitch.name]
    for place in step.places:
        if isinstance(place, Each):
            bound = hand.bound(place.until)
            while hand.free(hand.pos, bound):
                _once(hand, step.stitch.name, steps)
            continue
        times = hand.setting.number(place.count) or 0 if isinstance(place, Next | Over) else 1
        if isinstance(place, Over) or (isinstance(place, Next) and place.span is not None):
            stride = _stride(hand, steps)  # `in next 10 sts` says how far, `x-st x 5` how often
            if times % stride:
                raise Misfit("fit", f"{times} places are no {stride}s")
            times //= stride
        for _ in range(times * number):
            before = len(hand.made)
            run(hand, steps)
            bunch(hand, before, Bunch(step.stitch.name))


def _stride(hand: Hand, steps: Sequence[Step]) -> int:
    """How many places one of the author's stitches moves on by."""
    moves = 0
    for step in steps:
        if isinstance(step, Skip):
            moves += hand.setting.number(step.count) or 0
        elif isinstance(step, Repeat) and step.times is not None:
            moves += _stride(hand, step.steps) * (hand.setting.number(step.times) or 0)
        elif isinstance(step, Work):
            moves += sum(hand.setting.number(p.count) or 0 for p in step.places if isinstance(p, Next | Over))
    return max(moves, 1)


def _once(hand: Hand, name: str, steps: Sequence[Step]) -> None:
    from .steps import run

    before = len(hand.made)
    run(hand, steps)
    bunch(hand, before, Bunch(name))
