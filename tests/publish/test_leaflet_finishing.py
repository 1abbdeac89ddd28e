"""Finishing in sentences: parts sewn on once and more often, headings, moments of the video; what changed."""

import pytest

from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.leaflet_parts import Heading, Leaflet, Telling
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.publish.small_site import COASTER, ROOT

BEFORE, _ = COASTER.split("finishing:")


def _with(finishing: str, more: str = "", make: int = 1) -> Leaflet:
    """A coaster that parts are sewn to: so many bumps."""
    bump = (
        f"  bump:\n    title: Bump\n    make: {make}\n    yarn: A\n    worked: spiral rounds\n"
        '    start: magic ring\n    rounds: [{round: 1, work: "6 sc in ring, fasten off", count: 6}]\n'
    )
    checked = check(f"{BEFORE}{bump}finishing:\n{finishing}{more}".encode(), "coaster.yml")
    return leaflet(checked, "US", Settings())


def _sewn(where: str, make: int) -> str:
    step = _with(f"  - sew: {{piece: bump, to: coaster{where}}}\n", make=make).finishing[0]
    assert isinstance(step, Telling)
    return step.text


@pytest.mark.parametrize(
    ("where", "make", "said"),
    [
        ("", 1, "Sew the bump to the coaster."),
        ("", 2, "Sew the 2 bumps to the coaster."),
        (", round: 3", 1, "Sew the bump to round 3 of the coaster."),
        (", round: 3, stitches: 5", 1, "Sew the bump to round 3 of the coaster, over stitch 5."),
        (", round: 3, stitches: 5-6", 1, "Sew the bump to round 3 of the coaster, over stitches 5–6."),
        (
            ', round: 3, stitches: "1-2, 9, 11"',
            1,
            "Sew the bump to round 3 of the coaster, over stitches 1–2, 9 and 11.",
        ),
        (
            ', round: 3, stitches: "1-2, 10-11"',
            2,
            "Sew the 2 bumps to round 3 of the coaster, one over stitches 1–2 and one over stitches 10–11.",
        ),
        (
            ', round: 3, stitches: "1, 8"',
            3,
            "Sew 2 of the bumps to round 3 of the coaster, one over stitch 1 and one over stitch 8.",
        ),
        (
            ', round: 3, stitches: "1-2, 5-6, 9-10, 13-14"',
            4,
            "Sew the 4 bumps to round 3 of the coaster, one over stitches 1–2 and then one every 4 stitches, "
            "the last over stitches 13–14.",
        ),
        (
            ', round: 3, stitches: "1, 3, 9, 13"',
            4,
            "Sew the 4 bumps to round 3 of the coaster, one over stitch 1, one over stitch 3, one over "
            "stitch 9 and one over stitch 13.",
        ),
    ],
)
def test_where_parts_are_sewn(where: str, make: int, said: str) -> None:
    assert _sewn(where, make) == said


@pytest.mark.parametrize(
    ("step", "said"),
    [
        ("place: {what: button, to: coaster}", "Put the button on the coaster."),
        ("place: {what: button, to: coaster, round: 2}", "Put the button on round 2 of the coaster."),
        (
            'place: {what: safety eyes, to: coaster, between: 2-3, stitches: "3, 6", text: Press them in.}',
            "Put the safety eyes on the coaster between rounds 2 and 3, one over stitch 3 and one over "
            "stitch 6. Press them in.",
        ),
        ("embroider: {what: nose, to: coaster}", "Embroider the nose on the coaster."),
        (
            "embroider: {what: nose, to: coaster, between: 2-3}",
            "Embroider the nose on the coaster between rounds 2 and 3.",
        ),
        (
            "embroider: {what: mouth, to: coaster, round: 3, stitches: 4-6}",
            "Embroider the mouth on round 3 of the coaster, over stitches 4–6.",
        ),
    ],
)
def test_what_is_put_on_and_embroidered(step: str, said: str) -> None:
    told = _with(f"  - {step}\n").finishing[0]
    assert isinstance(told, Telling)
    assert told.text == said


def test_steps_of_their_own_take_one_each() -> None:
    step = "  - sew: {piece: bump, to: coaster, round: 3, stitches: %s}\n"
    one, other = _with(step % "1-2" + step % "9-10", make=2).finishing
    assert isinstance(one, Telling)
    assert isinstance(other, Telling)
    assert one.text == "Sew one bump to round 3 of the coaster, over stitches 1–2."
    assert other.text == "Sew one bump to round 3 of the coaster, over stitches 9–10."


def test_headings_part_the_steps_and_a_step_has_its_moment_of_the_video() -> None:
    set_out = _with(
        '  - heading: Face\n  - {text: Sew the bump on., video: "1:05"}\n'
        "  - heading: End\n  - text: Weave in.\n",
        more='video: {url: "https://example.org/v", length: "3:00"}\n',
    )
    assert set_out.finishing == (
        Heading("Face", "finishing-face-0"),
        Telling("Sew the bump on.", None, "1:05", "https://example.org/v#t=65"),
        Heading("End", "finishing-end-2"),
        Telling("Weave in."),
    )
    assert (set_out.video, set_out.video_length) == ("https://example.org/v", "3:00")


def test_what_a_variation_leaves_out_is_all_of_it() -> None:
    plain = "variations:\n  plain: {title: Plain, leave out: [bump]}\n"
    sewn = "  - sew: {piece: bump, to: coaster}\n"
    assert _with(sewn, plain).variations[0].lines == ("Leave out the bump.",)
    assert _with(sewn, plain, make=2).variations[0].lines == ("Leave out the bumps.",)


@pytest.mark.parametrize(
    ("changes", "printed", "edition"),
    [
        ("", [("January 2, 2026", "1.0.0", "First published.")], "Version 1.0.0, January 2, 2026"),
        (
            "changes: [{date: 2026-01-02, version: 1.0.0, note: First of all.}]\n",
            [("January 2, 2026", "1.0.0", "First of all.")],
            "Version 1.0.0, January 2, 2026",
        ),
        (
            "changes: [{date: 2026-02-01, version: 0.9.0, note: A.}, "
            "{date: 2026-03-01, version: 1.0.0, note: B.}]\n",
            [
                ("March 1, 2026", "1.0.0", "B."),
                ("February 1, 2026", "0.9.0", "A."),
                ("January 2, 2026", "", "First published."),
            ],
            "Version 1.0.0, March 1, 2026",
        ),
    ],
)
def test_changes_the_newest_first_and_the_first_day_once(
    changes: str, printed: list[tuple[str, str, str]], edition: str
) -> None:
    set_out = leaflet(check((COASTER + changes).encode(), "coaster.yml"), "US", Settings())
    assert [(one.date, one.version, one.note) for one in set_out.changes] == printed
    assert set_out.edition == edition


def test_the_author_s_other_pictures_follow_the_first() -> None:
    pictures = "pictures: [{file: a.jpg, alt: Front.}, {file: img/b.jpg, alt: Back., credit: A. Maker}]\n"
    set_out = leaflet(check((COASTER + pictures).encode(), "home/coaster.yml"), "US", Settings())
    assert set_out.picture.file == "home/a.jpg"
    assert [(one.file, one.alt, one.credit) for one in set_out.more_pictures] == [
        ("home/img/b.jpg", "Back.", "A. Maker")
    ]


def test_a_steel_hook_is_numbered_by_its_own_scale() -> None:
    """Steel hooks have numbers of their own, finer ones higher (trade guidelines): a plain 8 is 5 mm."""
    file = "sea-lavender-doily.yml"
    checked = check((ROOT / "patterns" / file).read_bytes(), file)
    assert leaflet(checked, "US", Settings()).hooks[0].size == "1.5 mm (US steel 8)"


def test_a_gauge_is_printed_as_the_author_typed_it() -> None:
    text = COASTER.replace(
        "gauge: {stitch: sc, stitches: 14, rows: 15, over: 10 cm, blocked: no}",
        "gauge: {rounds: 1-3, across: 4.2 cm}",
    )
    assert leaflet(check(text.encode(), "coaster.yml"), "US", Settings()).gauge == (
        "Rounds 1–3 measure 4.2 cm (1¾ in) across.",
    )
