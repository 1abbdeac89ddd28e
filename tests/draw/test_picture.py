"""The pictures: of the demo, and of small pieces stitch by stitch."""

import re
from collections.abc import Callable
from xml.etree import ElementTree

import pytest

from loopleaf.draw import first_picture, piece_picture
from loopleaf.draw.subject import NO_GAUGE
from loopleaf.fabric import Made
from tests.measure.worked_patterns import HEAD, worked

from .pieces import DEMO, MAT, SQUARE, SVG, demo, rounds, rows, subject, tree


def strokes(svg: str) -> int:
    """Lines drawn, without the outline beneath."""
    paths = [path for path in tree(svg).iter(f"{SVG}path") if path.get("stroke")]
    return sum(str(path.get("d")).count("M") for path in paths[1:])


@pytest.mark.parametrize("name", DEMO)
def test_the_demo(name: str) -> None:
    work, measured = demo(name)
    picture = first_picture(work, measured)
    root = tree(picture)
    assert root.tag == f"{SVG}svg"
    assert root.findtext(f"{SVG}title") == f"{work.pattern.title}, drawn from its stitches"
    assert {element.tag.removeprefix(SVG) for element in root.iter()} <= {
        "svg",
        "title",
        "path",
        "g",
        "defs",
        "use",
    }
    assert len(picture) < 150_000
    assert first_picture(work) == picture


@pytest.mark.parametrize("name", DEMO)
def test_a_size_on_paper(name: str) -> None:
    """The picture is to scale: as wide as the author says the piece is, with what hangs from it."""
    across = {
        "harbour-square": 530,
        "lantern-pouch": 110,
        "pebble-ball": 57,
        "reed-tray": 270,
        "tide-cloth": 255,
    }
    work, measured = demo(name)
    box = [float(figure) for figure in str(tree(first_picture(work, measured)).get("viewBox")).split()]
    if name in across:
        assert across[name] * 0.9 < box[2] < across[name] * 1.35


def test_a_flat_piece_in_rounds_has_a_stroke_for_every_stitch() -> None:
    picture = piece_picture(worked(MAT), "mat")
    assert strokes(picture) == 6 + 12 + 18


def test_a_flat_piece_of_tall_stitches_has_two() -> None:
    text = rounds(
        "ch 3 (counts as dc), 11 dc in ring, join",
        "ch 3 (counts as dc), dc in same st, 2 dc in each st around, join",
    )
    assert strokes(piece_picture(worked(text), "piece")) == 2 * (12 + 24)


def test_rows_have_two_strokes_on_their_wrong_side() -> None:
    text = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, sc in each st across, turn",
        "ch 1, sc in each st across",
    )
    assert strokes(piece_picture(worked(text), "cloth")) == 10 + 2 * 10 + 10


def test_a_space_is_two_lines_and_a_hole() -> None:
    _, measured = demo("harbour-square")
    work = worked(SQUARE)
    picture = piece_picture(work, "square")
    stitches = sum(isinstance(m, Made) and m.number > 0 for one in subject(work).worked for m in one.made)
    assert stitches == 12 + 24 + 24
    assert strokes(picture) == 2 * 36 + 24 + 2 * (4 + 4)
    assert measured.pieces


def test_kept_pictures(golden: Callable[[str, str], None]) -> None:
    work, measured = demo("lantern-pouch")
    golden("moon.svg", piece_picture(work, "moon", measured) + "\n")
    golden("square.svg", piece_picture(worked(SQUARE), "square") + "\n")
    golden(
        "rows.svg",
        first_picture(
            worked(rows("sc in 2nd ch from hook and in each ch across, turn", "ch 1, sc in each st across"))
        )
        + "\n",
    )


def test_a_left_hander_gets_the_mirror_image() -> None:
    work, measured = demo("lantern-pouch")
    right, left = first_picture(work, measured), first_picture(work, measured, left_handed=True)
    assert left.count('<g transform="scale(-1 1)">') == 1
    assert (
        left.replace('<g transform="scale(-1 1)">', "").replace("</g></svg>", "</svg>").split("</title>")[1]
        == right.split("</title>")[1]
    )
    boxes = [[float(f) for f in str(tree(svg).get("viewBox")).split()] for svg in (right, left)]
    assert boxes[1][0] == pytest.approx(-boxes[0][0] - boxes[0][2])


def test_a_blanket_is_laid_out_once_and_used_twelve_times() -> None:
    work, measured = demo("harbour-square")
    root = tree(first_picture(work, measured))
    uses = list(root.iter(f"{SVG}use"))
    assert len(uses) == 12
    assert len({(use.get("x"), use.get("y")) for use in uses}) == 12
    (group,) = [g for g in root.iter(f"{SVG}g") if g.get("id")]
    assert {use.get("href") for use in uses} == {f"#{group.get('id')}"}


def test_a_title_may_hold_anything() -> None:
    head = HEAD.replace("title: Sample", 'title: "Sea \\" & sea"')
    layout = 'finishing: [{lay out: {piece: mat, across: 2, down: 1, join: "sew"}}]\n'
    root = tree(first_picture(worked(MAT, layout, head)))
    assert root.findtext(f"{SVG}title") == 'Sea " & sea, drawn from its stitches'
    assert len(list(root.iter(f"{SVG}use"))) == 2


def test_yarns_have_their_colours_and_one_without_has_that_of_undyed_wool() -> None:
    assert "#9a948a" in piece_picture(worked(MAT), "mat")
    work, measured = demo("harbour-square")
    picture = first_picture(work, measured)
    for yarn in ("#c8553d", "#efe9dc", "#1f4e63"):
        assert yarn in picture


def test_without_a_gauge_the_form_is_drawn_all_the_same() -> None:
    head = re.sub(r"gauge: .*\n", "", HEAD)
    work = worked(MAT, head=head)
    assert subject(work).scale is NO_GAUGE
    assert strokes(piece_picture(work, "mat")) == 36


def test_nothing_to_draw() -> None:
    cord = "cord:\n  yarn: A\n  worked: chain\n  length: {around: nowhere}\n"
    work = worked(cord)
    assert first_picture(work) == ""
    assert piece_picture(work, "cord") == ""
    assert piece_picture(work, "no such piece") == ""


def test_bands_lie_on_both_fronts_of_the_collar() -> None:
    work, measured = demo("gull-collar")
    alone, whole = piece_picture(work, "collar", measured), first_picture(work, measured)
    assert strokes(whole) > strokes(alone) + 40
    boxes = [[float(f) for f in str(tree(svg).get("viewBox")).split()] for svg in (alone, whole)]
    assert boxes[1][3] > boxes[0][3]
    assert piece_picture(work, "loop band", measured)


def test_posts_stand_out_or_back_as_the_right_side_shows_them() -> None:
    pair = "({}dc around next st, {}dc around next st)"
    ribs = rows(
        "dc in 4th ch from hook and in each ch across, turn",
        f"ch 3 (counts as dc), {pair.format('BP', 'FP')} x 3, BPdc around next st, dc in last st, turn",
        f"ch 3 (counts as dc), {pair.format('FP', 'BP')} x 3, FPdc around next st, dc in last st",
    )
    picture = piece_picture(worked(ribs), "cloth")
    widths = [
        float(path.get("stroke-width") or 0)
        for path in tree(picture).iter(f"{SVG}path")
        if path.get("stroke")
    ]
    widest = max(widths)
    stems = [p for p in tree(picture).iter(f"{SVG}path") if float(p.get("stroke-width") or 0) > 0.7 * widest]
    assert sum(str(stem.get("d")).count("M") for stem in stems) == 4 + 4, "the shadow of each rib"


def test_gathered_and_looped_stitches_show() -> None:
    plain = strokes(
        piece_picture(
            worked(rounds("ch 1, 6 sc in ring, join", "ch 1, 2 sc in each st around, join")), "piece"
        )
    )
    looped = strokes(
        piece_picture(
            worked(rounds("ch 1, 6 sc in ring, join", "ch 1, 2 sc in BLO of each st around, join")), "piece"
        )
    )
    assert looped == plain + 2 * 12, "each ridge with its shadow"
    bobbles = rows(
        "sc in 2nd ch from hook and in each ch across, turn",
        "ch 1, (5-dc bobble in next st, sc in next st) x 5",
    )
    assert strokes(piece_picture(worked(bobbles), "cloth")) == 10 + 2 * 5 + 2 * 5, "each bobble has a rim"
    gathered = rows(
        "dc in 4th ch from hook and in each ch across, turn",
        "ch 3 (counts as dc), (dc2tog over next 2 sts) x 4",
        chain=11,
    )
    assert strokes(piece_picture(worked(gathered), "cloth")) == 2 * 9 + 2 * 5


def test_an_open_tube_shows_its_inside_and_its_holes() -> None:
    net = rounds(
        "ch 1, 12 hdc in ring, join",
        *["ch 1, hdc in each st around, join"] * 3,
        "ch 4 (counts as dc, ch 1), sk next st, (dc in next st, ch 1, sk next st) x 5, join",
    )
    picture = piece_picture(worked(net), "piece")
    ElementTree.fromstring(picture)
    dark = [path for path in tree(picture).iter(f"{SVG}path") if path.get("fill") == "#282624"]
    assert dark


MITTEN = rounds(
    "ch 1, 6 sc in ring, join",
    "ch 1, 2 sc in each st around, join",
    "ch 1, (sc in next st, 2 sc in next st) x 6, join",
    *["ch 1, sc in each st around, join"] * 5,
    "ch 1, sc in next 3 sts, ch 4, sk next 4 sts, sc in next 11 sts, join",
    "ch 1, sc in next 3 sts, sc in each of next 4 chs, sc in next 11 sts, join",
)
THUMB = (
    "thumb:\n  yarn: A\n  worked: joined rounds\n  start: {edge: piece, round: 8, stitches: unworked}\n"
    "  rounds:\n"
    '    - {round: 1, work: "ch 1, sc in next 4 sts, sc in each of 4 chs, join"}\n'
    '    - {rounds: 2-6, work: "ch 1, sc in each st around, join"}\n'
)


def test_a_thumb_stands_out_at_the_side_of_its_mitten() -> None:
    bare, whole = (tree(first_picture(worked(text))).get("viewBox", "") for text in (MITTEN, MITTEN + THUMB))
    wide, with_thumb = (float(box.split()[2]) for box in (bare, whole))
    assert 1.15 * wide < with_thumb < 2 * wide
    assert float(bare.split()[3]) == pytest.approx(float(whole.split()[3]), rel=0.03), "it ends no lower"
