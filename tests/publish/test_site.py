"""The plugin in MkDocs: which pages a build gives, what it says, and what it leaves alone."""

import json
import logging
import re
from collections.abc import Sequence
from pathlib import Path

import pytest
from mkdocs.exceptions import Abort

from loopleaf.publish import leaflet
from loopleaf.publish.leaflet_heights import Height
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.settings import Settings
from loopleaf.review import Checked
from tests.publish.small_site import COASTER, WRONG, SmallSite

PNG = b"\x89PNG\r\n\x1a\n\0\0\0\0"


@pytest.fixture(scope="module")
def built(tmp_path_factory: pytest.TempPathFactory) -> SmallSite:
    site = SmallSite(tmp_path_factory.mktemp("built"), {"coaster.yml": COASTER, "tide-cloth.yml": None})
    site.build()
    return site


def test_a_pattern_has_a_page_in_each_terminology_and_its_file_is_not_published(built: SmallSite) -> None:
    for terms in ("us", "uk"):
        for slug in ("coaster", "tide-cloth"):
            assert "<h1" in built.page(f"{terms}/{slug}/")
    assert not list(built.html.rglob("*.yml"))


def test_the_rounds_are_in_the_page_s_terms(built: SmallSite) -> None:
    def rounds(address: str) -> list[str]:
        texts = re.findall(
            r'<span class="leaf-round__text">(.*?)</span>\s*<span class="leaf-heard">',
            built.page(address),
            re.S,
        )
        return [re.sub(r"<[^>]+>", "", text).strip() for text in texts]

    assert rounds("us/coaster/")[1] == "ch 1, 2 sc in each st around, join with sl st to first sc"
    assert rounds("uk/coaster/")[1] == "1ch, 2 dc in each st around, join with ss to first dc"


@pytest.mark.parametrize(("terms", "lang"), [("us", "en-US"), ("uk", "en-GB")])
def test_a_page_says_its_language_and_names_both(built: SmallSite, terms: str, lang: str) -> None:
    html = built.page(f"{terms}/coaster/")
    assert f'<html lang="{lang}"' in html
    assert re.findall(r'rel="alternate " hreflang="([^"]+)" href="([^"]+)"', html) == [
        ("en-US", "https://patterns.example.org/us/coaster/"),
        ("en-GB", "https://patterns.example.org/uk/coaster/"),
        ("x-default", "https://patterns.example.org/us/coaster/"),
    ]


def test_both_pages_have_the_same_anchors(built: SmallSite) -> None:
    def anchors(terms: str) -> list[str]:
        return re.findall(r'id="(cloth-\d+)"', built.page(f"{terms}/tide-cloth/"))

    assert anchors("us") == anchors("uk")
    assert anchors("us") == [f"cloth-{row}" for row in range(1, 30)]


def test_the_parts_stand_in_the_order_of_a_printed_pattern(built: SmallSite) -> None:
    ids = re.findall(r'<h2 id="([^"]+)"', built.page("us/tide-cloth/"))
    order = [
        "size", "level", "cautions", "materials", "gauge", "abbreviations", "steps",
        "special-stitches", "notes",
        "piece-cloth", "finishing", "variations", "care", "licence", "questions", "changes", "booklets",
    ]  # fmt: skip
    assert ids == [one for one in order if one in ids]
    assert {
        "size",
        "level",
        "materials",
        "gauge",
        "abbreviations",
        "piece-cloth",
        "finishing",
        "care",
    } <= set(ids)


def test_a_page_says_what_to_learn_first(built: SmallSite) -> None:
    assert "<p>To learn first: Working under a chain instead of into it. Several" in built.page(
        "uk/tide-cloth/"
    )
    assert "To learn first" not in built.page("us/coaster/")


def test_the_template_s_words_follow_the_terms(built: SmallSite) -> None:
    assert '<h2 id="gauge">Gauge</h2>' in built.page("us/coaster/")
    assert '<h2 id="gauge">Tension</h2>' in built.page("uk/coaster/")


def test_the_collection_page_shows_every_piece_in_either_terms(built: SmallSite) -> None:
    for address, link in (("", "us/coaster/"), ("uk/", "coaster/")):
        html = built.page(address)
        assert f'<a href="{link}">' in html
        assert html.count('class="leaf-shelf__item"') == 2
        assert html.count("<svg") >= 2


def test_glossary_and_patterns_lead_to_each_other(built: SmallSite) -> None:
    assert 'href="../../glossary/#stitch-single"' in built.page("us/coaster/")
    assert 'href="../glossary/#stitch-single"' in built.page("uk/coaster/")
    entry = re.search(r'<div id="stitch-single">.*?</div>', built.page("uk/glossary/"), re.S)
    assert entry
    assert 'href="../coaster/#abbreviations"' in entry[0]
    assert ">dc<" in entry[0]


def test_the_head_keeps_to_the_page_s_terms(built: SmallSite) -> None:
    def head(address: str) -> list[str]:
        html = built.page(address).split('<header class="leaf-head"')[1].split("</header>")[0]
        return re.findall(r'<a[^>]* href="([^"]*)"', html)

    assert head("us/coaster/") == ["../..", "../../glossary/"]
    assert head("uk/coaster/") == ["../", "../glossary/"]


def test_nothing_that_comes_later_is_left_out_of_a_page(built: SmallSite) -> None:
    for path in built.html.rglob("*.html"):
        html = path.read_text(encoding="utf-8")
        assert "data-later" not in html
        assert "data-drawing" not in html


def test_the_search_finds_the_words_of_the_rounds(built: SmallSite) -> None:
    index = json.loads((built.html / "search/search_index.json").read_text())
    (coaster,) = (doc["text"] for doc in index["docs"] if doc["location"] == "us/coaster/#piece-coaster")
    assert "2 sc in each st around" in coaster


def test_the_glossary_has_no_word_that_no_pattern_uses(built: SmallSite) -> None:
    assert "stitch-treble" not in built.page("glossary/")


def test_pattern_pages_stay_out_of_the_navigation_and_the_twin_out_of_the_search(built: SmallSite) -> None:
    head = built.page("us/coaster/").split("</header>")[0]
    assert "tide-cloth" not in head.split("<body")[1]
    found = {
        doc["location"] for doc in json.loads((built.html / "search/search_index.json").read_text())["docs"]
    }
    assert "us/coaster/" in found
    assert not [place for place in found if place.startswith("uk/")]


def test_nothing_is_fetched_from_elsewhere(built: SmallSite) -> None:
    for path in built.html.rglob("*.html"):
        html = path.read_text(encoding="utf-8")
        assert not re.findall(
            r'(?:src|<link rel="(?:stylesheet|preconnect|icon)" href)="https?://[^"]+', html
        )
    css = (built.html / "assets/loopleaf/leaflet.css").read_text()
    assert "http" not in css
    fonts = built.html / "assets/loopleaf/fonts"
    for name in re.findall(r'url\("([^"]+)"\)', (fonts / "fonts.css").read_text()):
        assert (fonts / name).is_file()
    assert list(fonts.glob("OFL*.txt"))


def test_an_error_leaves_that_pattern_out_builds_the_others_and_fails_at_the_end(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "wrong.yml": COASTER})
    site.build()
    assert (site.html / "us/wrong/index.html").is_file()
    (site.docs / "wrong.yml").write_text(WRONG)
    with caplog.at_level(logging.INFO), pytest.raises(Abort):
        site.build()
    assert caplog.messages[-1].startswith("1 pattern was not published: wrong.yml.")
    assert "Coaster" in site.page("us/coaster/")
    assert not (site.html / "us/wrong").exists()
    assert "wrong" not in site.page("")
    said = [record.getMessage() for record in caplog.records if record.levelno == logging.ERROR]
    assert any(re.search(r"patterns/wrong\.yml:\d+:\d+: .*\(count-differs\)", text) for text in said)


def test_a_file_that_can_t_be_read_is_an_error_of_its_own(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "broken.yml": "pieces: *nowhere\n"})
    with pytest.raises(Abort):
        site.build()
    assert "broken.yml" in caplog.messages[-1]
    assert "Coaster" in site.page("us/coaster/")


def test_a_warning_fails_a_strict_build_only(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER.replace("licence: CC0-1.0\n", "")})
    site.build()
    with pytest.raises(Abort):
        site.build(strict=True)


def test_a_collection_without_warnings_passes_a_strict_build(tmp_path: Path) -> None:
    SmallSite(tmp_path, {"coaster.yml": COASTER}).build(strict=True)


def test_while_serving_findings_stand_where_the_page_would(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "wrong.yml": WRONG})
    site.build("serve")
    html = site.page("us/wrong/")
    assert "count-differs" in html
    assert "not published" in html.lower()
    assert "leaf-round" not in html


def test_while_serving_only_a_changed_pattern_is_worked_again(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "tide-cloth.yml": None})
    plugin = site.build("serve")
    assert sorted(plugin.workshop.worked) == ["coaster.yml", "tide-cloth.yml"]
    plugin = site.build("serve", plugin)
    assert plugin.workshop.worked == []
    (site.docs / "coaster.yml").write_text(COASTER.replace("Machine wash.", "Hand wash."))
    plugin = site.build("serve", plugin)
    assert plugin.workshop.worked == ["coaster.yml"]
    assert "Hand wash." in site.page("uk/coaster/")


def test_mkdocs_keeps_the_plugin_over_rebuilds() -> None:
    # MkDocs keeps one object over the rebuilds of `serve` only for plugins with one of these events.
    from loopleaf.publish.site import LoopleafPlugin

    assert "on_startup" in vars(LoopleafPlugin)


def test_other_yaml_is_left_alone(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "places.yml": "- a\n- b\n"})
    site.build()
    assert (site.html / "places.yml").is_file()


def test_a_picture_that_is_not_there_leaves_no_page_with_a_hole(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    with_picture = COASTER + "pictures: [{file: mug.png, alt: A mug.}]\n"
    site = SmallSite(tmp_path, {"more/mug.yml": with_picture, "coaster.yml": COASTER})
    with pytest.raises(Abort):
        site.build()
    assert "The picture mug.png isn't there." in caplog.text
    assert not list(site.html.rglob("mug*"))
    assert "mug" not in site.page("")
    (site.docs / "more" / "mug.png").write_bytes(PNG)
    site.build()
    assert 'src="../../more/mug.png"' in site.page("us/mug/")


def test_two_files_for_one_address_are_an_error(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "more/Coaster.yml": COASTER})
    with pytest.raises(Abort):
        site.build()
    assert "1 pattern was not published" in caplog.messages[-1]
    assert "(address-taken)" in caplog.text


@pytest.mark.parametrize("name", ["index.yml", "glossary.yml"])
def test_a_name_that_the_collection_needs_itself_is_an_error(
    tmp_path: Path, caplog: pytest.LogCaptureFixture, name: str
) -> None:
    with pytest.raises(Abort):
        SmallSite(tmp_path, {name: COASTER}).build()
    assert "(address-taken)" in caplog.text


def test_the_author_s_own_pages_come_first(tmp_path: Path) -> None:
    own = {
        "index.md": "# Hello\n\nWords.\n\n<!-- patterns -->\n\nMore words.\n",
        "glossary.md": "# My own words\n",
    }
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, **own})
    site.build()
    first = site.page("")
    assert first.index("Words.") < first.index("leaf-shelf__item") < first.index("More words.")
    assert "My own words" in site.page("glossary/")


def test_an_author_s_template_takes_the_place_of_ours(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER})
    own = tmp_path / "own" / "partials"
    own.mkdir(parents=True)
    (own / "footer.html").write_text("<footer>Our own foot</footer>")
    site.build(theme={"name": "material", "custom_dir": str(tmp_path / "own")})
    html = site.page("us/coaster/")
    assert "Our own foot" in html
    assert "leaf-round" in html


def test_the_collection_s_terms_are_those_of_its_first_page(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER}, terms="UK")
    site.build()
    assert '<a href="uk/coaster/">' in site.page("")
    assert '<a href="coaster/">' in site.page("us/")
    assert '<html lang="en-GB"' in site.page("")


def test_addresses_without_folders(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER})
    site.build(use_directory_urls=False, strict=True)
    assert 'href="../uk/coaster.html"' in (site.html / "us/coaster.html").read_text()


def test_another_theme_is_refused_in_a_sentence(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    with pytest.raises(Abort):
        SmallSite(tmp_path, {"coaster.yml": COASTER}).build(theme={"name": "mkdocs"})
    assert "made for the theme `material`" in caplog.messages[-1]


def test_booklets_are_offered_and_there(tmp_path: Path) -> None:
    site = SmallSite(tmp_path, {"coaster.yml": COASTER}, booklets=True)
    site.build(strict=True)
    for terms in ("us", "uk"):
        for paper in ("a4", "letter"):
            name = f"booklets/coaster-{terms}-{paper}.pdf"
            assert (site.html / name).read_bytes().startswith(b"%PDF")
            assert f'href="../../{name}"' in site.page(f"{terms}/coaster/")
            assert name not in site.page(f"{'uk' if terms == 'us' else 'us'}/coaster/")


def test_a_defect_of_ours_in_one_pattern_leaves_the_others_unharmed(
    tmp_path: Path, caplog: pytest.LogCaptureFixture, monkeypatch: pytest.MonkeyPatch
) -> None:
    set_out = leaflet.leaflets

    def failing(checked: Checked, settings: Settings, offered: Sequence[Height]) -> dict[Terms, Leaflet]:
        if checked.source.file == "tide-cloth.yml":
            raise KeyError("no such thing")
        return set_out(checked, settings, offered)

    monkeypatch.setattr(leaflet, "leaflets", failing)
    site = SmallSite(tmp_path, {"coaster.yml": COASTER, "tide-cloth.yml": None})
    with pytest.raises(Abort):
        site.build()
    assert "tide-cloth.yml could not be worked" in caplog.text
    assert "Traceback" not in caplog.text
    assert "Coaster" in site.page("us/coaster/")
    assert not list(site.html.rglob("tide-cloth*"))


def test_no_anchor_stands_twice_on_a_page(tmp_path: Path) -> None:
    # A piece may be called like the pattern, like a part of the page, or like another piece's round.
    twice = COASTER.replace("  coaster:\n", "  notes 2:\n", 1)
    rounds = COASTER[COASTER.index("    title: Coaster\n") : COASTER.index("finishing:")]
    text = twice.replace("finishing:", f"  coaster:\n{rounds}  notes:\n{rounds}finishing:")
    site = SmallSite(tmp_path, {"coaster.yml": text})
    site.build()
    ids = re.findall(r'\bid="([^"]+)"', site.page("us/coaster/"))
    assert {"piece-notes", "piece-notes-2", "notes", "notes-2", "notes-2-1", "coaster-1"} <= set(ids)
    assert sorted(set(ids)) == sorted(ids)
