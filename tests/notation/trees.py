"""Hypothesis strategies for instruction trees: every kind of node, as a pattern's line can hold it."""

from dataclasses import replace
from typing import Any

from hypothesis import assume
from hypothesis import strategies as st

from loopleaf.notation import SpecialStitch, Vocabulary, parse
from loopleaf.notation.tree import (
    ONE,
    STITCH,
    Again,
    Amount,
    Between,
    Chain,
    ChainOf,
    Corresponding,
    CountsAs,
    Each,
    Evenly,
    Facing,
    FastenOff,
    First,
    FreeLoops,
    FromHook,
    Group,
    Here,
    Join,
    JoinYarn,
    JustMade,
    Last,
    Leave,
    Line,
    Marked,
    Marker,
    Next,
    OtherSide,
    Over,
    Passage,
    Repeat,
    Ring,
    RowEnds,
    Same,
    Skip,
    Skipped,
    Stitch,
    Tally,
    Target,
    Together,
    Turn,
    Until,
    Within,
    Work,
    WorkingOver,
    Yarn,
)

SPECIALS = {
    "shell": SpecialStitch("shell", "sh", "5 dc in same st"),
    "sea star": SpecialStitch("sea star", "", None, "A star over five places."),
    "tall post": SpecialStitch("tall post", "tp", None, "", 6),
}
YARNS = frozenset({"A", "B", "MC"})
PIECES = frozenset({"leg", "square", "front edge"})
US = Vocabulary("US", SPECIALS, YARNS, PIECES)
UK = Vocabulary("UK", SPECIALS, YARNS, PIECES)


def tree_of(line: str, vocabulary: Vocabulary, n: int | None = None) -> Any:
    """The tree of a line that has one, without its type, for tests that look inside."""
    read = parse(line, vocabulary, n)
    assert read.line is not None, read.problems
    return read.line


PLAIN = [
    "single", "half", "double", "treble", "double-treble", "triple-treble", "quadruple-treble", "slip",
    "extended-single", "extended-half", "extended-double", "reverse-single", "loop-single",
        "linked-double", "linked-treble", "knot",
]  # fmt: skip
FOUNDATION = ["foundation-single", "foundation-half", "foundation-double"]
TALL = ["single", "half", "double", "treble", "double-treble", "extended-double"]

small = st.integers(1, 30)
sizes = st.lists(st.one_of(st.none(), st.integers(0, 40)), min_size=2, max_size=4).map(
    lambda s: Amount(tuple(s)) if s[0] is not None or s[1:] else ONE
)
amounts = st.one_of(small.map(lambda n: Amount((n,))), sizes, st.just(Amount(variable="n")))
several = st.one_of(st.integers(2, 30).map(lambda n: Amount((n,))), sizes)
lengths = st.integers(1, 12)

specials = st.sampled_from(sorted(SPECIALS)).map(lambda key: Stitch("special", name=key))
posts = st.sampled_from(["", "front", "back", "around"])
loops = st.sampled_from(["", "front", "back", "third", "bump"])


@st.composite
def plain_stitches(draw):
    kind = draw(st.sampled_from(PLAIN))
    stitch = Stitch(kind)
    if draw(st.booleans()):
        if kind in TALL and draw(st.booleans()):
            return Stitch(kind, post=draw(posts))
        return Stitch(kind, loop=draw(loops))
    return stitch


made_of = st.one_of(st.sampled_from(TALL).map(Stitch), st.just(Stitch("special", name="tall post")))


@st.composite
def formed_stitches(draw):
    form = draw(st.sampled_from(["cluster", "bobble", "puff", "popcorn", "shell", "v-stitch"]))
    number = draw(st.integers(1, 4) if form == "v-stitch" else st.integers(2, 9))
    return replace(draw(made_of), form=form, number=number, loop=draw(loops))


gathered_stitches = st.one_of(
    st.builds(lambda loop, dull: Stitch("dec", loop=loop, invisible=dull), loops, st.booleans()),
    st.builds(
        lambda one, legs, post, dull: replace(one, form="tog", number=legs, post=post, invisible=dull),
        made_of,
        st.integers(2, 9),
        st.sampled_from(["", "front", "back"]),
        st.booleans(),
    ),
)
picots = st.integers(2, 6).map(lambda n: Stitch("chain", "picot", n))
named_places = st.one_of(
    st.sampled_from([k for k in PLAIN if k != "knot"]).map(Stitch),
    st.sampled_from(TALL).map(lambda k: Stitch(k, post="front")),
    specials,
    st.sampled_from(["cluster", "bobble", "popcorn"]).map(lambda f: Stitch("", f)),
    st.builds(lambda k, n: Stitch(k, "bobble", n), st.sampled_from(TALL), st.integers(2, 7)),
    st.builds(lambda k: Stitch(k, "v-stitch", 1), st.sampled_from(TALL)),
)
spaces = st.one_of(st.just(Target("space")), lengths.map(lambda n: Target("space", length=n)))
tops = st.one_of(st.just(STITCH), named_places.map(lambda s: Target("stitch", s)))
groups = st.one_of(
    st.just(Target("group")),
    st.builds(lambda k, n: Target("group", Stitch(k, number=n)), st.sampled_from(TALL), st.integers(2, 7)),
)
free_loops = st.builds(
    lambda loop, number, word: Target("free-loop", unworked=True, loop=loop, round=number, word=word),
    st.sampled_from(["", "front", "back"]),
    st.integers(0, 30),
    st.sampled_from(["", "row"]),
)
targets = st.one_of(
    free_loops,
    st.one_of(st.just(STITCH), spaces, named_places.map(lambda s: Target("stitch", s))).map(
        lambda t: replace(t, unworked=True)
    ),
    st.builds(lambda t, n: replace(t, round=n), tops, st.integers(1, 30)), st.just(Target("gap")),
    st.just(STITCH), tops, spaces, st.just(Target("chain")), groups, st.just(Target("loop")),
    st.just(Target("picot")), lengths.map(lambda n: Target("picot", length=n)),
    st.sampled_from([Target("corner"), Target("corner", word="sp"), Target("corner", length=2)]),
)  # fmt: skip
untils = st.one_of(
    st.sampled_from(
        [Until(word="around"), Until(word="across"), Until(word="end"), Until("marker"), Until("corner")]
    ),
    st.builds(lambda c, t: Until("to-last", count=c, target=t), amounts, targets),
)
chain_names = st.one_of(
    st.builds(ChainOf, st.integers(0, 6), st.just("ch"), lengths),
    st.builds(ChainOf, st.integers(0, 6), st.sampled_from(["tch", "beg"]), st.integers(0, 6)),
)
withins = st.builds(
    lambda part, inner, of, number, which: Within(
        part, inner, of, number if part == "nth" else 0, which == "same", which == "last"
    ),
    st.sampled_from(["centre", "nth", "first", "last", "each"]),
    st.one_of(tops, st.just(Target("chain")), lengths.map(lambda n: Target("space", length=n))),
    st.one_of(
        groups, lengths.map(lambda n: Target("space", length=n)), specials.map(lambda s: Target("stitch", s))
    ),
    st.integers(2, 12),
    st.sampled_from(["next", "same", "last"]),
)
each_targets = st.one_of(
    targets.map(lambda t: (t,)),
    st.just((STITCH, Target("space"))),
    st.just((Target("stitch", Stitch("double")), Target("space", length=2), STITCH)),
)
eaches = st.builds(
    lambda targets, until, remaining, every: Each(targets, until, remaining and every == 1, every),
    each_targets,
    st.one_of(untils, st.just(Until(word=""))),
    st.booleans(),
    st.sampled_from([1, 1, 1, 2, 3]),
)
nexts = st.one_of(
    st.builds(Next, amounts, targets),
    st.builds(lambda c, b, rows: Next(c, below=b, rows=rows), amounts, st.integers(1, 4), st.booleans()),
    st.builds(lambda c, p: Next(c, piece=p), amounts, st.sampled_from(["leg 2", "square 12", "front edge"])),
    st.builds(lambda t: Next(target=t, any=True), targets),
    st.builds(lambda c: Next(c, Target("edge")), amounts),
)
single_places = st.one_of(
    nexts,
    st.builds(First, amounts, targets),
    st.builds(Last, amounts, targets),
    st.builds(Same, targets),
    st.builds(Same, st.sampled_from([STITCH, Target("space")]), st.sampled_from(["join", "first", "chain"])),
    eaches,
    st.just(Ring()),
    st.integers(2, 20).map(FromHook),
    chain_names,
    withins,
    st.builds(Between, st.one_of(tops, groups, spaces), st.booleans()),
    st.builds(Marked, st.one_of(tops, spaces)),
    st.just(Skipped()),
    st.builds(JustMade, tops),
    st.builds(Corresponding, targets, st.sampled_from(["square 1", "leg 2", "front edge"])),
    st.builds(
        lambda s, until: RowEnds(s, None, until),
        st.one_of(st.none(), st.sampled_from(TALL).map(Stitch)),
        untils,
    ),
    st.builds(
        lambda s, until, per: RowEnds(s, None, until, per),
        st.one_of(st.none(), st.sampled_from(TALL).map(Stitch)),
        untils,
        st.integers(2, 5),
    ),
    st.builds(lambda s: RowEnds(s, ONE, side=True), st.one_of(st.none(), st.sampled_from(TALL).map(Stitch))),
    st.builds(lambda s, c: RowEnds(s, c), st.one_of(st.none(), st.sampled_from(TALL).map(Stitch)), amounts),
)
place_lists = st.one_of(
    single_places.map(lambda p: (p,)),
    single_places.map(lambda p: (p,)),
    st.builds(lambda a, b: (a, b), st.one_of(st.builds(Next), st.integers(2, 9).map(FromHook)), eaches),
    st.builds(lambda a, b: (a, b), nexts, st.builds(Last, amounts, targets)),
)
countings = st.one_of(
    st.just(CountsAs()),
    st.just(CountsAs(skipped=True)),
    st.builds(
        lambda k, chains, skipped: CountsAs(Stitch(k), chains, 0, skipped),
        st.sampled_from(TALL),
        st.integers(0, 5),
        st.booleans(),
    ),
    lengths.map(lambda n: CountsAs(space=n)),
    st.just(CountsAs(Stitch(""))),
    specials.map(lambda s: CountsAs(s)),
    st.just(CountsAs(throughout=True)),
    st.builds(lambda k, n: CountsAs(Stitch(k), n, throughout=True), st.sampled_from(TALL), st.integers(0, 3)),
)
maybe_counts = st.one_of(st.none(), st.none(), st.none(), countings)


def _of_a_chain(counts):
    """A chain just made isn't one that was skipped."""
    return counts and replace(counts, skipped=False)


def _is_long_enough(chain):
    """A chain that counts as a stitch and a space has one for the stitch."""
    counts, shortest = chain.counts, min((one for one in chain.length.sizes if one), default=1)
    return counts is None or counts.stitch is None or chain.length.variable or shortest > counts.chains


throughs = st.sampled_from(["", "", "", "both layers"])


@st.composite
def works(draw, here=False):
    """A Work as a line can say it; here: inside a group, where its place may go unsaid."""
    sort = draw(
        st.sampled_from(
            ["plain", "plain", "plain", "formed", "gathered", "inc", "special", "small", "evenly"]
        )
    )
    counts, through = draw(maybe_counts), draw(throughs)
    if sort == "small":
        if draw(st.booleans()):
            return Work(draw(picots), draw(several), ())
        return Work(Stitch(draw(st.sampled_from(FOUNDATION))), draw(amounts), ())
    if sort == "evenly":
        along = draw(st.sampled_from(["edge", "", "neck edge"]))
        return Work(
            Stitch(draw(st.sampled_from(TALL))),
            draw(amounts),
            (Evenly(along, draw(untils)),),
            counts,
            through,
        )
    if sort == "gathered":
        stitch = draw(gathered_stitches)
        legs = stitch.number or 2
        others = st.one_of(
            st.integers(1, 12).filter(lambda n: n % legs or n == legs).map(lambda n: (Over(Amount((n,))),)),
            st.just((Over(Amount((legs,)), Target("space", length=1)),)),
            st.just((Over(Amount((legs,)), which="first"),)),
            st.just((Over(Amount((legs,)), which="last"),)),
            st.builds(lambda t: (Same(t),), targets),
            st.builds(lambda c: (Next(c),), several),
        )
        return Work(stitch, ONE, (Here(),) if here and draw(st.booleans()) else draw(others), counts, through)
    stitch = draw(
        {"plain": plain_stitches(), "formed": formed_stitches(), "special": specials}.get(
            sort, st.just(Stitch("inc"))
        )
    )
    if here and draw(st.booleans()):
        return Work(stitch, draw(amounts), (Here(),), counts, through)
    if sort in ("special", "formed") and draw(st.booleans()):
        return Work(stitch, ONE, (draw(st.builds(Over, amounts, targets)),), counts, through)
    places = draw(place_lists)
    # A space has no post: `around` it is into it.
    assume(not stitch.post or "kind='space'" not in repr(places))
    return Work(stitch, draw(amounts), places, counts, through)


joinable = st.one_of(
    st.none(), st.builds(First, amounts, targets), chain_names, st.builds(Next, st.just(ONE), targets)
)
purposes = st.sampled_from(["thumb", "left armhole", "hanging loop"])
simple_steps = st.one_of(
    st.builds(Chain, amounts, maybe_counts.map(_of_a_chain)).filter(_is_long_enough),
    st.builds(
        Skip,
        amounts,
        st.one_of(targets, st.just(Target("row-end"))),
        st.sampled_from(["next", "first", "last"]),
    ),
    st.builds(Leave, st.one_of(st.none(), amounts), targets),
    st.builds(WorkingOver, st.sampled_from(["behind", "front"]), amounts, targets),
    st.builds(Join, joinable, st.sampled_from([Stitch("slip"), Stitch("slip"), Stitch("single")])),
    st.just(Join(how="not")),
    st.builds(lambda place: Join(place, how="invisibly"), joinable),
    st.builds(Turn, st.booleans()),
    st.builds(
        FastenOff,
        st.sampled_from(["", "A", "B", "MC"]),
        st.sampled_from(["", "", "long", "20 cm", "8 in"]),
        st.booleans(),
        st.booleans(),
    ),
    st.builds(Marker, st.sampled_from(["place", "move", "remove"]), joinable),
    st.builds(
        Yarn, st.sampled_from(["A", "B", "MC"]), st.sampled_from(["with", "change", "changing", "carrying"])
    ),
    st.builds(
        JoinYarn,
        st.sampled_from(["", "A", "B", "MC"]),
        st.sampled_from([Stitch("slip"), Stitch("single"), Stitch("double")]),
        st.booleans(),
        joinable,
    ),
    st.builds(Facing, st.sampled_from(["RS", "WS"])),
    st.builds(FreeLoops, st.sampled_from(["", "front", "back"]), st.integers(0, 30), st.booleans()),
    st.just(Skip(target=Target("picot"), which="all")),
    st.builds(lambda c: Skip(c, which="behind"), several),
    st.builds(lambda u, p: Skip(until=u, purpose=p), untils, purposes),
    st.builds(lambda n, p: Leave(n, purpose=p), amounts, purposes),
    st.builds(lambda n: Leave(but=n), amounts),
    st.builds(lambda n, p: Skip(n, purpose=p), amounts, purposes),
    st.builds(lambda n, p: Chain(n, purpose=p), amounts, purposes),
    st.builds(lambda s: WorkingOver(s, what="petals of round 2"), st.sampled_from(["behind", "front"])),
    st.builds(lambda u: Work(Stitch(""), places=(Each(until=u),)), untils),
)
other_sides = st.builds(OtherSide, st.sampled_from(["foundation", "chain"]))


def steps(depth=2, here=False):
    """One step: simple ones, and repeats and groups of steps as deep as `depth`."""
    leaves = st.one_of(works(here), works(here), simple_steps)
    if depth == 0:
        return leaves
    return st.one_of(leaves, leaves, groups_of(depth, here), repeats(depth, here), togethers())


@st.composite
def togethers(draw):
    """Stitches of different kinds gathered into one, in places of their own or in one place."""
    kinds = draw(st.lists(st.sampled_from(TALL), min_size=2, max_size=4, unique=True))
    place = draw(st.one_of(st.none(), st.builds(Same, targets), st.builds(Next, st.just(ONE), spaces)))
    if place is not None:
        several = st.integers(1, 3).map(lambda n: Amount((n,)))
        return Together(tuple(Work(Stitch(kind), draw(several), (Here(),)) for kind in kinds), place)
    places = st.one_of(st.just(Next()), st.just(Next()), st.builds(Next, st.just(ONE), spaces))
    legs = [Work(Stitch(kind), ONE, (draw(places),)) for kind in kinds]
    return Together((legs[0], *draw(st.sampled_from([(), (Skip(),)])), *legs[1:]))


def _lists(depth, here, least=1):
    return st.lists(steps(depth - 1, here), min_size=least, max_size=3).map(tuple)


def groups_of(depth, here):
    places = st.one_of(
        st.builds(Next, amounts, targets),
        st.builds(Same, targets),
        eaches,
        st.just(Ring()),
        st.builds(Last),
        withins,
    )
    return st.builds(
        lambda inside, p, counts: Group(inside, (p,), counts), _lists(depth, True), places, maybe_counts
    )


@st.composite
def repeats(draw, depth, here):
    inside = draw(_lists(depth, here))
    star = draw(st.booleans())
    sort = draw(st.sampled_from(["times", "until", "unclear", "stop", "ending", "omitting"]))
    if sort == "times":
        sides = draw(st.sampled_from([(), (), (2,), (2, 3), (2, 3, 4)]))
        if sides:
            return Repeat(inside, Amount((len(sides) + 1,)), star=True, sides=sides)
        return Repeat(inside, draw(amounts), star=star)
    if sort == "unclear":
        return Repeat(inside, draw(st.integers(2, 9).map(lambda n: Amount((n,)))), unclear=True, star=True)
    often = (
        {"until": draw(untils)}
        if draw(st.booleans())
        else {"times": draw(st.integers(2, 9).map(lambda n: Amount((n,))))}
    )
    if sort == "stop":
        return Repeat(inside, stop_at=draw(st.integers(0, len(inside))), star=True, **often)
    last = draw(
        st.lists(st.one_of(works(here), st.builds(Chain, amounts)), min_size=1, max_size=2).map(tuple)
    )
    if sort == "ending":
        return Repeat(inside, ending=last, star=True, **often)
    if sort == "omitting":
        return Repeat((*inside, *last), omitting=last, star=True, **often)
    return Repeat(inside, until=draw(untils), star=star)


counted = st.one_of(named_places, st.just(Stitch("chain")), spaces, st.just(Target("picot")))
tallies = st.one_of(
    amounts.map(lambda a: Tally(a)),
    st.lists(st.tuples(amounts, counted), min_size=1, max_size=3).map(lambda e: Tally(None, tuple(e))),
)


@st.composite
def lines(draw):
    """A whole line, perhaps with a passage that is called on again and a count at its end."""
    inside = draw(st.lists(steps(), min_size=1, max_size=5))
    if draw(st.integers(0, 4)) == 0:
        passage = Passage(tuple(draw(st.lists(steps(1), min_size=1, max_size=3))))
        inside = [passage, *inside, Again(draw(st.one_of(st.just(ONE), several)))]
    if draw(st.integers(0, 5)) == 0:
        inside.insert(draw(st.integers(0, len(inside))), draw(other_sides))
    if draw(st.integers(0, 3)) == 0:
        inside.append(draw(tallies))
    said = repr(inside)
    # Behind free loops a bare `next loop` is one of them, no chain's loop.
    assume("kind='loop'" not in said or not ("free-loop" in said or "FreeLoops" in said))
    return Line(tuple(inside))
