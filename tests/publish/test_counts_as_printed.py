"""Counts in the style of the collection: `40`, `(40)`, `40 sts`; on page and booklet alike."""

from pathlib import Path

import pytest
from lxml import html  # type: ignore[import-untyped]
from mkdocs.exceptions import Abort

from loopleaf.publish.booklet_html import booklet_html
from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.leaflet_parts import CountStyle, Leaflet, Round, Terms
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.publish.small_site import COASTER, ROOT, SmallSite

KINDS = COASTER.replace(
    '"ch 1, (sc in next st, 2 sc in next st) x 6, join, fasten off", count: 18',
    '"ch 1, (sc in next st, ch 2, sk next st) x 6, join, fasten off", count: "6 sc, 6 ch-2 sps"',
)
SIZES = COASTER.replace("level: basic", "sizes: [S, M]\nlevel: basic")
for one, both in (("6 sc in", "6 (7) sc in"), ("count: 6}", 'count: "6 (7)"}')):
    SIZES = SIZES.replace(one, both)
SIZES = SIZES.replace("count: 12}", 'count: "12 (14)"}').replace(") x 6, join", ") x 6 (7), join")
SIZES = SIZES.replace("count: 18}", 'count: "18 (21)"}')


def set_out(text: str, style: CountStyle, terms: Terms = "US") -> Leaflet:
    checked = check(text.encode(), "coaster.yml")
    assert not checked.has_errors
    return leaflet(checked, terms, Settings(counts=style))


def counts(text: str, style: CountStyle, terms: Terms = "US") -> list[str]:
    (piece,) = set_out(text, style, terms).pieces
    return [item.count for item in piece.items if isinstance(item, Round)]


def in_html(text: str, name: str) -> list[str]:
    """What stands in the elements of a class, as a reader sees it."""
    found = html.document_fromstring(text).find_class(name)
    return ["".join(one.text_content().split("\n")).strip() for one in found]


def test_plain_as_ever() -> None:
    assert Settings().counts == "plain"
    assert counts(KINDS, "plain") == ["6", "12", "6 sc, 6 ch-2 sps"]


@pytest.mark.parametrize(
    ("style", "plain", "by_kind", "by_kind_uk"),
    [
        ("brackets", ["(6)", "(12)", "(18)"], "(6 sc, 6 ch-2 sps)", "(6 dc, 6 2ch-sps)"),
        ("sts", ["6 sts", "12 sts", "18 sts"], "6 sc, 6 ch-2 sps", "6 dc, 6 2ch-sps"),
    ],
)
def test_in_brackets_and_with_sts(style: CountStyle, plain: list[str], by_kind: str, by_kind_uk: str) -> None:
    assert counts(COASTER, style) == plain
    assert counts(KINDS, style)[-1] == by_kind
    assert counts(KINDS, style, "UK")[-1] == by_kind_uk


def test_by_size() -> None:
    assert counts(SIZES, "plain") == ["6 (7)", "12 (14)", "18 (21)"]
    assert counts(SIZES, "brackets") == ["[6 (7)]", "[12 (14)]", "[18 (21)]"]
    assert counts(SIZES, "sts") == ["6 (7) sts", "12 (14) sts", "18 (21) sts"]


def test_one_stitch_is_not_several() -> None:
    one = COASTER.replace("6 sc in ring, join", "1 sc in ring, join").replace("count: 6}", "count: 1}")
    one = one.replace("count: 12}", "count: 2}").replace(") x 6, join", ") x 1, join")
    assert counts(one.replace("count: 18}", "count: 3}"), "sts") == ["1 st", "2 sts", "3 sts"]


@pytest.mark.parametrize("style", ["plain", "brackets", "sts"])
def test_page_and_booklet_print_the_same(tmp_path: Path, style: CountStyle) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": KINDS}, counts=style)
    site.build()
    both: tuple[Terms, Terms] = ("US", "UK")
    for terms in both:
        expected = counts(KINDS, style, terms)
        booklet = booklet_html(set_out(KINDS, style, terms), "a4")
        assert in_html(booklet, "figure") == expected
        page = in_html(site.page(f"{terms.lower()}/coaster/"), "leaf-round__count")
        assert [one.removesuffix(" sts") if style != "sts" else one for one in page] == expected


def test_what_is_read_aloud_names_stitches_once() -> None:
    def units(style: CountStyle) -> list[str]:
        (piece,) = set_out(KINDS, style).pieces
        return [item.unit for item in piece.items if isinstance(item, Round)]

    assert units("plain") == units("brackets") == ["sts", "sts", ""]
    assert units("sts") == ["", "", ""]


def test_another_word_is_refused(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER}, counts="stitches")
    with pytest.raises(Abort):
        site.build()


def test_the_starter_says_what_there_is() -> None:
    settings = (ROOT / "plugins" / "loopleaf" / "starter" / "mkdocs.yml").read_text("utf-8")
    assert "# counts: brackets" in settings
