"""The pages to look at: steps, signs and drawings, linked both ways and to each other."""

import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from loopleaf.publish.booklet_html import booklet_html
from loopleaf.publish.how_to import how_to, step_files, used
from loopleaf.publish.leaflet_parts import Leaflet, Terms
from loopleaf.publish.overrides import overrides
from loopleaf.publish.settings import Settings
from loopleaf.publish.site_looking import MOST_IN_A_GALLERY, drawings_html
from loopleaf.publish.site_pages import Later, Switch, templates
from loopleaf.publish.workshop import work
from tests.demo.leaflets import leaf_of

from .small_site import COASTER, SmallSite


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> SmallSite:
    small = SmallSite(tmp_path_factory.mktemp("looking"), {"lantern-pouch.yml": None, "coaster.yml": COASTER})
    small.build()
    return small


def lantern(terms: Terms) -> Leaflet:
    return leaf_of("lantern-pouch", terms)


def page(site: SmallSite, path: str) -> str:
    return (site.html / path / "index.html").read_text(encoding="utf-8")


def test_the_steps_are_those_that_the_collection_uses(site: SmallSite) -> None:
    found = re.findall(r'<h2 id="step-([a-z-]+)">', page(site, "steps"))
    assert found == [
        *(
            "ring",
            "slip-knot",
            "chain",
            "into-chain",
            "slip",
            "single",
            "half",
            "double",
            "increase",
            "group",
            "space",
            "join",
            "fasten-off",
            "cord",
            "sew",
        ),
    ]


@pytest.mark.parametrize("terms", ["", "uk/"])
def test_every_step_drawing_is_there_for_both_hands(site: SmallSite, terms: str) -> None:
    text = page(site, f"{terms}steps")
    sources = re.findall(r'<img class="leaf-moves__(right|left)" src="(?:\.\./)+([^"]+)" alt="([^"]+)"', text)
    assert len(sources) == 2 * text.count("<li>\n            <img") > 60
    for _, source, alt in sources:
        assert (site.html / source).read_text(encoding="utf-8").startswith("<svg")
        assert len(alt) > 20
    assert {hand for hand, _, _ in sources} == {"right", "left"}


def test_the_glossary_leads_to_the_steps_and_they_to_the_patterns(site: SmallSite) -> None:
    glossary = page(site, "glossary")
    assert 'href="../steps/#step-half"' in glossary
    assert 'href="../signs/"' in glossary
    assert 'href="../drawings/"' in glossary
    assert 'href="../us/lantern-pouch/"' in page(site, "steps")
    assert 'href="../steps/#step-half"' in page(site, "uk/lantern-pouch")


def test_both_terms_have_each_page_and_lead_to_each_other(site: SmallSite) -> None:
    for kind in ("steps", "signs", "drawings"):
        assert f'href="../uk/{kind}/"' in page(site, kind)
        assert f'href="../../{kind}/"' in page(site, f"uk/{kind}")


def test_signs_have_their_names_on_both_sides(site: SmallSite) -> None:
    us, uk = page(site, "signs"), page(site, "uk/signs")
    assert "hdc, half double crochet" in us
    assert "UK terms: htr, half treble" in us
    assert "US terms: hdc, half double crochet" in uk
    assert us.count("leaf-signs__sign") == uk.count("leaf-signs__sign") > 25


def test_the_gallery_shows_every_drawing(site: SmallSite) -> None:
    text = page(site, "drawings")
    assert text.count("leaf-drawing--chart") == 3  # pouch, moon, coaster
    assert "Pouch: in section" in text
    assert text.count("<figcaption>Finishing") == 2


def test_the_gallery_s_charts_have_their_keys_in_the_page_s_words(site: SmallSite) -> None:
    """What a chart has of a key itself is as small as the chart: it is left out below its signs."""
    text = page(site, "drawings")
    charts = re.findall(r'style="--wide: (\d+); --high: (\d+)"><img [^>]*width="(\d+)" height="(\d+)"', text)
    assert len(charts) == text.count('class="leaf-key"') == 3
    for wide, high, whole_wide, whole_high in charts:
        assert wide == whole_wide
        assert int(high) < int(whole_high) - 20


def test_a_pattern_of_that_name_would_take_the_page_s_place() -> None:
    for name in ("steps", "signs", "drawings"):
        found = work(f"{name}.yml", COASTER.encode(), Settings())
        assert found is not None
        assert [finding.rule for finding in found.findings] == ["address-taken"]


def test_step_drawings_are_kept_between_builds(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    first = how_to("UK", tmp_path)

    def never(terms: Any) -> str:
        raise AssertionError("drawn again")

    monkeypatch.setattr("loopleaf.publish.how_to._made", never)
    assert how_to("UK", tmp_path) == first
    files = step_files(first)
    assert len(files) == 2 * sum(len(one.steps) for one in first)
    assert used(first, ["sew", "ring"]) == (first[0], first[-1])


def test_a_booklet_ends_with_the_steps_that_it_needs(tmp_path: Path) -> None:
    leaflet = lantern("UK")
    html = booklet_html(leaflet, "a4", "", how_to("UK", tmp_path))
    assert re.findall(r'<div class="technique">\s*<h3>([^<]+)</h3>', html)[:3] == [
        "Magic ring",
        "Slip knot",
        "Chain",
    ]
    assert 'href="#part-steps"' in html
    assert "Half treble. Put the hook into the next stitch and yarn round hook again." in html
    assert 'id="part-steps"' not in booklet_html(leaflet, "a4")


def test_a_booklet_shows_measures_section_and_charts() -> None:
    html = booklet_html(lantern("US"), "a4")
    assert "The outline of the pouch: 13.5 cm (5¼ in) high" in html
    assert "Pouch in section" in html
    assert html.count('<div class="chart"') == 2
    assert "Chart of the piece “Pouch”: one sign a stitch" in html


def test_a_large_collection_names_the_patterns_whose_drawings_stand_elsewhere() -> None:
    one = lantern("US")
    many = [
        replace(one, slug=f"pouch-{at:02}", title=f"Pouch {at:02}") for at in range(MOST_IN_A_GALLERY + 2)
    ]
    env = templates([str(overrides("site"))])
    text = drawings_html(env, many, Switch("US", "../uk/drawings/"), str, Later(str))
    shown, others = text.split('id="others"')
    assert shown.count("<section") == MOST_IN_A_GALLERY + 1
    assert re.findall(r'href="(pouch-\d+)"', others) == ["pouch-60", "pouch-61"]
    assert 'id="others"' not in drawings_html(env, many[:2], Switch("US", "../uk/drawings/"), str, Later(str))


def test_the_gallery_begins_with_the_finished_piece_unless_the_author_has_a_photograph() -> None:
    drawn = lantern("US")
    photographed = replace(
        drawn, slug="other", picture=replace(drawn.picture, svg="", file="pictures/pouch.jpg")
    )
    env = templates([str(overrides("site"))])
    later = Later(str)
    text = later.fill(drawings_html(env, [drawn, photographed], Switch("US", "../uk/drawings/"), str, later))
    first, second = (part.partition('id="other"')[0] for part in text.split("<section")[1:])
    assert drawn.picture.svg in first
    assert first.index("leaf-drawing--picture") < first.index("Pouch: measures")
    assert "leaf-drawing--picture" not in second
