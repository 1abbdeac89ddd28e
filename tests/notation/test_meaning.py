"""What single lines mean, as trees."""

import pytest

from loopleaf.notation import parse
from loopleaf.notation.tree import (
    ONE,
    Again,
    Amount,
    Chain,
    ChainOf,
    CountsAs,
    Each,
    First,
    FromHook,
    Group,
    Here,
    Join,
    Last,
    Line,
    Next,
    Over,
    Passage,
    Repeat,
    Ring,
    Skip,
    Span,
    Stitch,
    Tally,
    Target,
    Turn,
    Until,
    Work,
    Yarn,
)

from .trees import UK, US, tree_of

SINGLE, HALF, DOUBLE, SHELL = (
    Stitch("single"),
    Stitch("half"),
    Stitch("double"),
    Stitch("special", name="shell"),
)
INC, DEC = Stitch("inc"), Stitch("dec")


def n(number):
    return Amount((number,))


@pytest.mark.parametrize(
    ("line", "steps"),
    [
        ("3 hdc", [Work(HALF, ONE, (Next(n(3)),))]),
        ("hdc in next 3 sts", [Work(HALF, ONE, (Next(n(3)),))]),
        ("2 hdc in next st", [Work(HALF, n(2))]),
        ("2 hdc in next 3 sts", [Work(HALF, n(2), (Next(n(3)),))]),
        ("8 hdc in ring", [Work(HALF, n(8), (Ring(),))]),
        ("dc in 4th ch from hook", [Work(DOUBLE, ONE, (FromHook(4),))]),
        ("inc", [Work(INC)]),
        ("dec", [Work(DEC, ONE, (Over(n(2)),))]),
        ("sc2tog x 3", [Repeat((Work(Stitch("single", "tog", 2), ONE, (Over(n(2)),)),), n(3))]),
        ("sc around", [Work(SINGLE, ONE, (Each(),))]),
        ("sc in each st, turn", [Work(SINGLE, ONE, (Each(until=Until(word="")),)), Turn()]),
        ("dc in next ch-2 sp", [Work(DOUBLE, ONE, (Next(ONE, Target("space", length=2)),))]),
        ("dc in next 2 ch-sps", [Work(DOUBLE, ONE, (Next(n(2), Target("space")),))]),
        ("sh in next st", [Work(SHELL)]),
        ("(2 dc, ch 2, 2 dc) in next sp",
         [Group((Work(DOUBLE, n(2), (Here(),)), Chain(n(2)), Work(DOUBLE, n(2), (Here(),))), (Next(ONE,
             Target("space")),))]),
        ("(sc, sc) x 2", [Repeat((Work(SINGLE), Work(SINGLE)), n(2))]),
        ("*sc, ch 1; rep from * around", [Repeat((Work(SINGLE), Chain(ONE)), until=Until())]),
        ("*sc, ch 1; rep from * 4 more times", [Repeat((Work(SINGLE), Chain(ONE)), n(5))]),
        ("*sc, ch 1; rep from * 3 times", [Repeat((Work(SINGLE), Chain(ONE)), n(3), unclear=True)]),
        ("*sc, ** ch 1; rep from * around, ending last rep at **",
         [Repeat((Work(SINGLE), Chain(ONE)), until=Until(), stop_at=1)]),
        ("*sc, ch 1; rep from * around, omitting last ch 1",
         [Repeat((Work(SINGLE), Chain(ONE)), until=Until(), omitting=(Chain(ONE),))]),
        ("*dc; rep from * across, ending with dc in last 2 sts, turn",
         [Repeat((Work(DOUBLE),), until=Until(word="across"), ending=(Work(DOUBLE, ONE, (Last(n(2)),)),)),
             Turn()]),
        ("*sc*, dc, rep from * to *", [Passage((Work(SINGLE),)), Work(DOUBLE), Again()]),
        ("ch 4 (counts as dc, ch 1)", [Chain(n(4), CountsAs(DOUBLE, 1))]),
        ("join to 3rd ch of ch-4", [Join(ChainOf(3, "ch", 4))]),
        ("join", [Join()]),
        ("sl st in first sc to join", [Join(First(ONE, Target("stitch", SINGLE)))]),
        ("ch 8 (10, -)", [Chain(Amount((8, 10, None)))]),
        ("sk 2", [Skip(n(2))]),
        ("sc in next 3 sts with B", [Yarn("B"), Work(SINGLE, ONE, (Next(n(3)),))]),
        ("sc around (24 sts)", [Work(SINGLE, ONE, (Each(),)), Tally(n(24))]),
        ("FPdc around next st", [Work(Stitch("double", post="front"))]),
        ("in BLO, sc, ch 1, dc",
         [Work(Stitch("single", loop="back")), Chain(ONE), Work(Stitch("double", loop="back"))]),
        ("20 fsc", [Work(Stitch("foundation-single"), n(20), ())]),
        ("ch-3 picot", [Work(Stitch("chain", "picot", 3), ONE, ())]),
    ],
)  # fmt: skip
def test_a_line_means(line, steps):
    read = parse(line, US)
    assert read.problems == ()
    assert read.line == Line(tuple(steps))


@pytest.mark.parametrize(
    ("line", "kind"),
    [("dc", "single"), ("htr", "half"), ("tr", "double"), ("dtr", "treble"), ("trtr", "double-treble"),
        ("fdc", "foundation-single"), ("edc", "extended-single"), ("ss", "slip")],
)  # fmt: skip
def test_a_uk_name_is_its_own_stitch(line, kind):
    assert tree_of(line, UK).steps[0].stitch.kind == kind


def test_n_becomes_the_rounds_own_number():
    assert parse("(sc in next n sts, inc) x 6", US, 4).line == parse("(sc in next 4 sts, inc) x 6", US).line
    assert tree_of("sc in next n sts", US).steps[0].places[0].count == Amount(variable="n")


def test_a_step_knows_where_it_stands():
    line = "ch 1, (hdc in next st, inc) x 8, join"
    steps = tree_of(line, US).steps
    assert [line[s.span.start : s.span.end] for s in steps] == ["ch 1", "(hdc in next st, inc) x 8", "join"]
    assert steps[1].steps[1].span == Span(23, 26)
    assert line[slice(*_ends(steps[1].steps[0].places[0].span))] == "next st"


def _ends(span):
    return span.start, span.end


def test_the_authors_own_stitch_comes_before_the_trades_word():
    assert tree_of("shell in next st", US).steps[0].stitch == SHELL
    assert tree_of("5-dc shell in next st", US).steps[0].stitch == Stitch("double", "shell", 5)
    assert tree_of("sea star over next 5 sts", US).steps[0].places == (Over(n(5)),)


def test_the_same_line_is_read_once():
    before = parse.cache_info().hits
    parse("sc in next 77 sts", US)
    assert parse("sc in next 77 sts", US) is parse("sc in next 77 sts", US)
    assert parse.cache_info().hits >= before + 2
