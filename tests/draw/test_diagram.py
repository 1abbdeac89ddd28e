"""Diagrams: every stitch has its sign, and says what it is."""

import itertools
import re
from collections import Counter
from collections.abc import Callable

import pytest

from loopleaf.draw import chart_of, diagram
from loopleaf.draw.chart_print import SMALLEST, printed_scale
from loopleaf.draw.colour import luminance
from loopleaf.draw.signs import Sign, grip, lines
from loopleaf.fabric import Made, Space
from tests.measure.worked_patterns import worked

from .engraving import place_of
from .pieces import DEMO, MAT, SVG, charted, demo, marked, rounds, rows, stitches_by_kind, tree


@pytest.mark.parametrize("name", DEMO)
def test_every_chain_is_drawn(name: str) -> None:
    work, _ = demo(name)
    drawn = charted(name).svg()
    for piece in work.pieces:
        signs = marked(drawn, piece.name) if piece.rounds else []
        for one in piece.rounds:
            made = one.sizes[0]
            chains = sum(
                m.chains
                for m in (made.made if made is not None else ())
                if isinstance(m, Space) or m.role in ("turning", "chain")
            )
            ovals = [s for s in signs if s.get("data-round") == one.plan.label and s.get("data-kind") == "ch"]
            assert len(ovals) == chains


def test_a_chain_that_counts_is_drawn_as_chains_the_last_of_them_for_the_stitch() -> None:
    text = rounds("ch 3 (counts as dc), 11 dc in ring, join")
    first, second, third, *_ = marked(diagram(worked(text)))
    assert [sign.get("data-kind") for sign in (first, second, third)] == ["ch"] * 3
    assert [sign.get("data-counts-as") for sign in (first, second, third)] == [None, None, "dc"]
    assert [sign.get("data-stitch") for sign in (first, second, third)] == [None, None, "1"]


def test_chains_that_stand_for_a_stitch_and_a_space() -> None:
    text = rounds("ch 5 (counts as dc, ch 2), (dc in ring, ch 2) x 3, join to 3rd ch of ch-5")
    signs = marked(diagram(worked(text)))
    assert stitches_by_kind(signs, "1") == {"dc": 4}
    assert sum(sign.get("data-kind") == "ch" for sign in signs) == 3 + 4 * 2


@pytest.mark.parametrize("name", DEMO)
def test_terms_change_words_only(name: str) -> None:
    us, uk = (charted(name).svg(terms) for terms in ("US", "UK"))
    assert us != uk
    strip = re.compile(r"<text[^>]*>[^<]*</text>")
    signs = [[dict(sign.attrib) for sign in marked(svg)] for svg in (us, uk)]
    assert signs[0] == signs[1]
    assert len(strip.findall(us)) == len(strip.findall(uk))
    assert "half treble" in uk or name != "lantern-pouch"


@pytest.mark.parametrize("name", DEMO)
def test_it_is_a_plain_drawing_with_a_key(name: str) -> None:
    work, measured = demo(name)
    drawn = diagram(work, measured=measured)
    chart = chart_of(work, measured=measured, cords=True)
    assert chart is not None
    assert chart.svg() == drawn
    root = tree(drawn)
    assert root.findtext(f"{SVG}title") == f"{work.pattern.title}, stitch by stitch"
    tags = {element.tag.removeprefix(SVG) for element in root.iter()}
    assert tags <= {"svg", "title", "style", "defs", "path", "g", "use", "text", "circle"}
    named = {form.get("id") for form in root.iter() if form.get("id")}
    uses = [str(use.get("href")) for use in root.iter(f"{SVG}use")]
    assert {use.removeprefix("#") for use in uses} == named
    key = [use for use in root.iter(f"{SVG}use") if use.get("stroke")]
    assert key
    assert not any(use.get("data-kind") for use in key)


def mirrored_words(svg: str) -> list[tuple[str, float]]:
    return [(str(text.text), float(text.get("x") or 0)) for text in tree(svg).iter(f"{SVG}text")]


@pytest.mark.parametrize(
    "text", [MAT, rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across")]
)
def test_a_left_hander_gets_the_mirror_image_with_words_upright(text: str) -> None:
    work = worked(text)
    right, left = diagram(work), diagram(work, left_handed=True)
    assert left.count("scale(-1 1)") == 1
    assert "scale(-1 1)" not in right
    assert [dict(s.attrib) for s in marked(right)] == [dict(s.attrib) for s in marked(left)]
    mirror = next(g for g in tree(left).iter(f"{SVG}g") if g.get("transform") == "scale(-1 1)")
    assert not list(mirror.iter(f"{SVG}text"))
    numbers = [[(word, x) for word, x in mirrored_words(svg) if word.isdigit()] for svg in (right, left)]
    assert [(word, -x) for word, x in numbers[0]] == numbers[1]
    assert numbers[0]


def test_rounds_run_counter_clockwise_and_row_one_from_right_to_left() -> None:
    mat = [
        place_of(sign)
        for sign in marked(diagram(worked(MAT)))
        if sign.get("data-round") == "3" and sign.get("data-stitch")
    ]
    turns = [a[0] * b[1] - a[1] * b[0] for a, b in itertools.pairwise(mat)]
    assert all(turn < 0 for turn in turns)  # y runs down: counter-clockwise is negative
    cloth = marked(
        diagram(
            worked(rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across"))
        )
    )
    first, second = (
        [place_of(s)[0] for s in cloth if s.get("data-round") == label and s.get("data-stitch")]
        for label in "12"
    )
    assert first == sorted(first, reverse=True)
    assert second == sorted(second)


def test_stitches_in_one_place_fan_out_from_it() -> None:
    cloth = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, sc in first st, sk 2 sts, 5 dc in next st, sk 2 sts, sc in next st",
        chain=8,
    )
    fan = [sign for sign in marked(diagram(worked(cloth))) if sign.get("data-kind") == "dc"]
    feet = [place_of(sign)[0] for sign in fan]
    assert max(feet) - min(feet) < 8
    turned = [
        int(found[1]) if (found := re.search(r"rotate\((-?\d+)\)", str(sign.get("transform")))) else 0
        for sign in fan
    ]
    assert turned == sorted(turned)
    assert turned[0] < -20
    assert turned[-1] > 20
    assert turned[0] == -turned[-1]


def test_a_decrease_has_a_leg_in_each_place() -> None:
    cloth = rows(
        "dc in 4th ch from hook and in each ch across, turn",
        "ch 3 (counts as dc), (dc2tog over next 2 sts) x 4",
    )
    gathered = [sign for sign in marked(diagram(worked(cloth))) if sign.tag == f"{SVG}path"]
    assert [sign.get("data-stitch") for sign in gathered] == ["2", "3", "4", "5"]
    for sign in gathered:
        legs = re.findall(r"M(\S+) (\S+)[LQ][^M]*?0 0(?=M)", str(sign.get("d")))
        assert len(legs) == 2
        assert float(legs[0][0]) * float(legs[1][0]) < 0
    assert "dc2tog" in diagram(worked(cloth))


def test_slip_stitches_that_join_and_travel_have_no_number() -> None:
    work, measured = demo("harbour-square")
    dots = [sign for sign in marked(diagram(work, measured=measured)) if sign.get("data-kind") == "sl st"]
    assert {sign.get("data-stitch") for sign in dots} == {None}
    assert Counter(sign.get("data-round") for sign in dots)["4"] == 1 + 3


def test_picots_and_leaves_stand_on_the_round() -> None:
    text = rounds("ch 1, 6 sc in ring, join", "ch 1, (2 sc in next st, ch-3 picot) x 6, join")
    signs = marked(diagram(worked(text)))
    assert sum(sign.get("data-kind") == "picot" for sign in signs) == 6
    assert "picot: chains in a ring" in diagram(worked(text))
    leaf = rounds(
        "ch 1, 6 sc in ring, join",
        "ch 1, (sc in next st, ch 4, sc in 2nd ch from hook, sc in next 2 chs) x 6, join",
    )
    work = worked(leaf)
    backs = [m for m in work.pieces[0].rounds[1].sizes[0].made if isinstance(m, Made) and m.role == "back"]  # type: ignore[union-attr]
    assert len(backs) == 18
    signs = marked(diagram(work))
    assert sum(s.get("data-kind") == "sc" and not s.get("data-stitch") for s in signs) == 18
    assert sum(s.get("data-kind") == "ch" and s.get("data-round") == "2" for s in signs) == 1 + 6 * 4


def test_where_the_work_begins() -> None:
    assert "magic ring" in diagram(worked(MAT))
    work, measured = demo("harbour-square")
    base = [sign for sign in marked(diagram(work, measured=measured)) if sign.get("data-round") == "0"]
    assert [sign.get("data-stitch") for sign in base] == ["1", "2", "3", "4"]
    wire = MAT.replace("start: magic ring", "start: ring")
    assert "magic ring" not in diagram(worked(wire))
    assert ">ring<" in diagram(worked(wire))
    cloth = marked(diagram(worked(rows("sc in 2nd ch from hook and in each ch across"))))
    assert sum(sign.get("data-round") == "0" for sign in cloth) == 11
    passed = marked(
        diagram(worked(rows("dc in 4th ch from hook (skipped chs count as dc) and in each ch across")))
    )
    assert sum(sign.get("data-kind") == "ch" for sign in passed) == 11


def test_the_right_side_is_shown_and_the_key_says_so() -> None:
    work, measured = demo("gull-collar")
    right = diagram(work, "collar", measured=measured)
    assert "On rows that begin at the left, front is worked as back and back as front." in right
    assert "at the right" in diagram(work, "collar", left_handed=True, measured=measured)
    assert "Drawn in size S." in right
    ribs = [s for s in marked(right) if s.get("data-round") in ("2", "3") and s.get("data-kind") == "dc"]
    forms = {f"#{path.get('id')}": path.get("d") for path in tree(right).iter(f"{SVG}path") if path.get("id")}
    by_row = [
        [forms[str(s.get("href"))] for s in ribs if s.get("data-round") == label][:-1] for label in ("2", "3")
    ]
    assert by_row[0] == by_row[1][::-1]
    assert len(set(by_row[0])) == 2


def test_an_authors_own_stitch_bears_its_short_name() -> None:
    special = "special stitches:\n  loop stitch: {short: lp, text: Draw up a long loop.}\n"
    text = rounds("ch 1, 6 sc in ring, join", "ch 1, lp in each st around, join")
    drawn = diagram(worked(text, special))
    assert stitches_by_kind(marked(drawn), "2") == {"lp": 6}
    assert "lp" in "".join(word for word, _ in mirrored_words(drawn))


def test_yarns_keep_apart_in_colour() -> None:
    work, measured = demo("harbour-square")
    colours = {
        g.get("stroke") for g in tree(diagram(work, measured=measured)).iter(f"{SVG}g") if g.get("stroke")
    }
    assert len(colours) == 3
    work, measured = demo("pebble-ball")
    strokes = [
        g.get("stroke") for g in tree(diagram(work, measured=measured)).iter(f"{SVG}g") if g.get("stroke")
    ]
    slate, quartz = dict.fromkeys(str(stroke) for stroke in strokes)
    assert luminance(quartz) > 1.6 * luminance(slate)


def test_dark_paper_has_its_own_inks() -> None:
    drawn = charted("harbour-square").svg()
    light = set(re.findall(r'class="ink-([0-9a-f]{6})" stroke="#([0-9a-f]{6})"', drawn))
    assert len(light) == 4, "three yarns, and the ink of words for the key's signs"
    assert all(name == ink for name, ink in light)
    dark = dict(re.findall(r"\.ink-([0-9a-f]{6}){stroke:(#[0-9a-f]{6})", drawn))
    assert all(luminance(dark[name]) > 0.3 > 0.28 > luminance(f"#{name}") for name, _ in light)


def test_loops_are_told_in_the_key() -> None:
    work, measured = demo("reed-tray")
    assert "back loop only" in diagram(work, measured=measured)


def test_kept_diagrams(golden: Callable[[str, str], None]) -> None:
    work, measured = demo("lantern-pouch")
    golden("moon-diagram.svg", diagram(work, "moon", measured=measured) + "\n")
    cloth = rows(
        "dc in 4th ch from hook and in each ch across, turn",
        "ch 3 (counts as dc), (dc2tog over next 2 sts) x 4",
    )
    golden("rows-diagram.svg", diagram(worked(cloth)) + "\n")


def test_nothing_to_draw() -> None:
    cord = "cord:\n  yarn: A\n  worked: chain\n  length: {around: nowhere}\n"
    assert diagram(worked(cord)) == ""
    assert diagram(worked(MAT), "no such piece") == ""


@pytest.mark.parametrize("name", DEMO)
def test_a_chart_says_where_its_key_begins(name: str) -> None:
    for piece in demo(name)[0].pieces:
        if not piece.rounds:
            continue
        svg = charted(name, piece.name).svg()
        root = tree(svg)
        lowest = float(str(root.get("data-key-from")))
        moved = re.search(r'transform="translate\(\S+ (\S+)\)"', svg[svg.index("data-piece=") :])
        assert moved
        key = next(group for group in root.iter(f"{SVG}g") if group.get("class") == "chart-key")
        words = {text for group in [key] for text in group.iter(f"{SVG}text")}
        for text in root.iter(f"{SVG}text"):
            y = float(str(text.get("y"))) + float(moved[1])
            assert (y > lowest) is (text in words)


@pytest.mark.parametrize(
    ("loop", "said"), [("FLO", "front loop only"), ("BLO", "back loop only"), ("3rd loop", "in 3rd loop")]
)
def test_the_key_names_the_loop_that_a_sign_marks(loop: str, said: str) -> None:
    cloth = rows(
        "hdc in 3rd ch from hook and in each ch across, turn",
        "ch 1, hdc in each st across, turn",
        f"ch 1, hdc in {loop} of each st across, turn",
        chain=12,
    )
    drawn = diagram(worked(cloth))
    assert f"hdc, half double crochet (UK: htr, half treble), {said}" in drawn
    assert "hdc, half double crochet (UK: htr, half treble)<" in drawn


@pytest.mark.parametrize(
    ("loop", "mark"),
    [
        ("FLO", Sign("slip", loop="front")),
        ("BLO", Sign("slip", loop="back")),
        ("3rd loop", Sign("slip", loop="third")),
    ],
)
def test_a_slip_stitch_in_one_loop_has_its_mark(loop: str, mark: Sign) -> None:
    begun = "sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across, turn"
    plain = diagram(worked(rows(*begun, "ch 1, sl st in each st across")))
    drawn = diagram(worked(rows(*begun, f"ch 1, sl st in {loop} of each st across")))
    way = f'd="{grip(mark)}"'
    assert way in drawn
    assert way not in plain
    name = re.search(rf'id="(s\d+)"[^>]*{re.escape(way)}', drawn)
    assert name
    assert drawn.count(f'href="#{name[1]}"') == 10
    assert f'd="{lines(mark)}"' in drawn, "the key has the dot with its mark"


def test_a_line_down_to_an_earlier_row_is_told_without_calling_the_stitch_a_spike() -> None:
    """What closes a short row goes into the row below its turn; no stitch is lengthened over another."""
    plain = "ch 1, sc in each st across, turn"
    turned = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        plain,
        "ch 1, sc in next 6 sts, leave last 4 sts unworked, turn",
        plain,
        "ch 1, sc in next 6 sts, sc in next 4 sts of row 2, turn",
    )
    drawn = diagram(worked(turned))
    assert "A line leads down from a cross to the stitch that it goes into." in drawn
    assert "spike" not in drawn


def test_a_long_key_stands_in_columns_where_the_chart_is_printed_larger_for_it() -> None:
    svg = charted("sea-lavender-doily", "doily").svg()
    box = re.search(r'viewBox="0 0 (\S+) (\S+)" data-key-from="(\S+)"', svg)
    assert box is not None
    wide, high, signs = (float(part) for part in box.groups())
    words = re.findall(r'<text[^>]* x="(\S+)" y="(\S+)"[^>]*>(?:[^<]+)</text>', svg.partition("chart-key")[2])
    lefts = {float(x) for x, _ in words}
    assert max(lefts) - min(lefts) > 0.3 * wide, "in columns"
    assert high - signs < 0.5 * signs
    assert printed_scale(wide, high) > 1.25 * SMALLEST
    for y in {y for _, y in words}:
        assert len([1 for _, other in words if other == y]) <= 2


def test_a_short_key_stands_in_one_column() -> None:
    words = re.findall(r'<text[^>]* x="(\S+)"', diagram(worked(MAT)).partition("chart-key")[2])
    assert len(set(words)) == 1
