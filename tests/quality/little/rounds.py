"""A piece worked round by round in one size."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from loopleaf.notation.tree import (
    Chain,
    Each,
    FastenOff,
    Group,
    Line,
    Marker,
    Next,
    Passage,
    Repeat,
    Step,
    Tally,
    Turn,
    Within,
    Work,
)

from .below import FREE, PASSED, SKIPPED, USED
from .cells import Cell, Edge, Misfit, with_single_chains
from .closing import finish
from .counts import Key, compare, forms, makes, total
from .first_leg import with_first_leg
from .hand import Hand
from .looking_ahead import all_below, names_chains
from .onward import goes_on
from .places_elsewhere import along_what_was_left
from .setting import RARER, Choices, Setting, Undecided
from .steps import run
from .travelling import travels


@dataclass
class RoundDone:
    """One round in one size: places used, plain kinds made, the total, and the stitches themselves.

    unworked: of the edge below, left or passed by name. passed_under: skipped, most often under chains.
    one_loop: of the edge below, those worked into by one loop, and which.
    """

    label: str
    uses: int
    makes: Counter[Key]
    count: int
    made: list[Cell] = field(repr=False)
    unworked: list[Cell] = field(repr=False)
    passed_under: list[Cell] = field(default_factory=list, repr=False)
    one_loop: list[tuple[Cell, str]] = field(default_factory=list, repr=False)


@dataclass
class ToWork:
    """A round as it is given to the hook: its line and what is stated of it."""

    label: str
    steps: tuple[Step, ...]
    stated: Tally | None
    reversed: bool = False


@dataclass
class After:
    """What a round leaves for the next: its edge, the marks, a turning chain made before the turn."""

    done: RoundDone
    edge: Edge
    marks: list[Cell]
    carried: Chain | None
    unworked: list[Cell]


def work_round(
    given: ToWork,
    setting: Setting,
    edge: Edge,
    marks: Sequence[Cell],
    carried: Chain | None,
    opened: Mapping[str, Counter[Key]],
    unworked: Sequence[Cell] = (),
) -> After:
    """Works a round, trying each reading that print leaves open. Raises Misfit where none fits, or two do."""
    fits: list[tuple[Choices, After]] = []
    failed: list[tuple[Choices, Misfit]] = []
    open_ones: list[Choices] = [{}]
    while open_ones:
        choices = open_ones.pop(0)
        reading = replace(setting, choices=choices)
        try:
            after = _attempt(given, reading, edge, marks, carried, opened, unworked)
            fits.append((choices, after))
        except Undecided as undecided:
            open_ones += [{**choices, undecided.key: option} for option in undecided.options]
        except Misfit as misfit:
            failed.append((choices, misfit))
    if not fits:
        usual = [misfit for choices, misfit in failed if not _rarer(choices)]
        raise next((one for one in usual if one.what == "count"), usual[0])  # it fits but for its count
    as_before = [one for one in fits if all(setting.said.get(key, it) == it for key, it in one[0].items())]
    fits = as_before or fits
    plain = [one for one in fits if not _rarer(one[0])]
    likely = [after for _, after in plain or fits]
    different = {(one.done.count, len(one.edge.cells)) for one in likely}
    if len(different) > 1:
        raise Misfit("unclear", "more than one reading fits")
    return likely[0]


def _rarer(choices: Choices) -> bool:
    return any(choices.get(key) for key in RARER)


def _attempt(
    given: ToWork,
    setting: Setting,
    edge: Edge,
    marks: Sequence[Cell],
    carried: Chain | None,
    opened: Mapping[str, Counter[Key]],
    unworked: Sequence[Cell] = (),
) -> After:
    if given.steps and all(isinstance(step, FastenOff) for step in given.steps):
        return _nothing_worked(given, setting, edge, marks, unworked)
    cells = list(edge.cells)
    if given.reversed:
        cells.reverse()
    if setting.chains_counted:
        cells = with_single_chains(cells)
    elif not edge.foundation and names_chains(given.steps):
        cells = with_single_chains(cells, "arch-chain")
    if given.stated is not None and not edge.ring and any(_both_layers(given.steps)):
        folded = setting.choose("both layers of one opening", (0, 1))
        cells = cells[: (len(cells) + 1) // 2] if folded else cells
    here = replace(edge, cells=cells)
    moves = any(isinstance(step, Marker) and step.action == "move" for step in given.steps)
    hand = Hand(
        setting,
        here,
        list(marks),
        unworked=list(unworked),
        kinds=_kinds(given.steps),
        counted=given.stated is not None,
        moves_marker=moves,
        all_below=all_below(given.steps),
    )
    steps = given.steps if carried is None else (carried, *given.steps)
    onward = along_what_was_left(hand, steps)
    goes_on(hand, onward)
    run(hand, with_first_leg(hand, travels(hand, onward)))
    finish(hand, any(_names_spaces(steps)))
    made = hand.made[hand.overrun :]
    tally = makes(made)
    on_leaf: Counter[Key] = Counter(hand.on_leaf)
    for stated in (given.stated, *(step for step in given.steps if isinstance(step, Tally))):
        if stated is not None:
            compare(stated, setting.size, tally, on_leaf, setting.chains_counted, opened, forms(made))
    begun = next((at for at, how in enumerate(hand.status) if how == USED), 0) if edge.foundation else 0
    left = [at for at, how in enumerate(hand.status) if how in (FREE, PASSED) and at >= begun]
    left = [] if hand.edge.loops else [at for at in left if hand.cells[at].top]
    under = [at for at, how in enumerate(hand.status) if how == SKIPPED and at not in hand.gone_back_to]
    done = RoundDone(
        *(given.label, hand.uses, tally, total(tally, setting.chains_counted), made),
        *([hand.cells[at] for at in left], [hand.cells[at] for at in sorted({*left, *under})]),
        hand.one_loop,
    )
    return After(
        done,
        _next_edge(hand, made, given.reversed),
        hand.marks,
        hand.carried,
        [*hand.unworked, *done.unworked],
    )


def _nothing_worked(
    given: ToWork, setting: Setting, edge: Edge, marks: Sequence[Cell], unworked: Sequence[Cell]
) -> After:
    """A line that only fastens off: the edge stays as the line before left it."""
    nothing: Counter[Key] = Counter()
    if given.stated is not None:
        compare(given.stated, setting.size, nothing, nothing, setting.chains_counted, {}, {})
    done = RoundDone(given.label, 0, nothing, 0, [], [])
    return After(done, edge, list(marks), None, list(unworked))


def last_made(rounds: Sequence[RoundDone]) -> RoundDone:
    """The last round that has stitches: behind it one may only fasten off."""
    return next((one for one in reversed(rounds) if one.made), rounds[-1])


def _next_edge(hand: Hand, made: list[Cell], reversed_: bool) -> Edge:
    cells = list(made)
    if hand.setting.rows:
        if reversed_:
            cells.reverse()
        return Edge(cells[::-1] if hand.setting.turned and hand.turns is not False else cells)
    cells = cells[hand.joined_at :] + cells[: hand.joined_at]
    if hand.mid_arch:
        cells = [cells[-1], *cells[:-1]]
    if hand.turns:
        cells = [*cells[:1], *cells[:0:-1]]
    return Edge(cells, "circle", at_hook=hand.joined, mid_arch=hand.mid_arch)


def _kinds(steps: Sequence[Step]) -> frozenset[str]:
    """The stitches that a line names, without slip stitches, chains, inc and dec."""
    found: set[str] = set()
    for step in steps:
        match step:
            case Work():
                if step.stitch.kind not in ("", "slip", "chain", "inc", "dec", "special"):
                    found.add(step.stitch.kind)
            case Group() | Passage():
                found |= _kinds(step.steps)
            case Repeat():
                found |= _kinds(step.steps) | _kinds(step.ending)
    return frozenset(found)


def _both_layers(steps: Sequence[Step]) -> Iterator[bool]:
    for step in steps:
        match step:
            case Work():
                yield bool(step.through)
            case Repeat() | Passage():
                yield from _both_layers(step.steps)


def _names_spaces(steps: Sequence[Step]) -> Iterator[bool]:
    for step in steps:
        match step:
            case Work() | Group():
                for place in step.places:
                    targets = (
                        place.targets
                        if isinstance(place, Each)
                        else (place.target,)
                        if isinstance(place, Next)
                        else (place.of,)
                        if isinstance(place, Within)
                        else ()
                    )
                    yield any(target.kind in ("space", "loop", "corner") for target in targets)
            case Repeat() | Passage():
                yield from _names_spaces(step.steps)


def turns(line: Line) -> bool:
    return any(isinstance(step, Turn) and step.turns for step in line.steps)
