"""Reading the site: quiet pages, the other terms, no JavaScript, dark, narrow, and for everyone."""

import re
from collections.abc import Callable
from importlib.resources import files

import pytest
from playwright.sync_api import BrowserContext, Page

AXE = files("axe_playwright_python").joinpath("axe.min.js").read_text(encoding="utf-8")
Reader = Callable[..., BrowserContext]


def test_no_page_complains_or_asks_another_machine(site: str, addresses: list[str], reader: Reader) -> None:
    page = reader().new_page()
    complaints: list[str] = []
    asked: list[str] = []
    page.on(
        "console", lambda said: complaints.append(said.text) if said.type in ("error", "warning") else None
    )
    page.on("pageerror", lambda error: complaints.append(str(error)))
    page.on("request", lambda request: asked.append(request.url))
    page.on("response", lambda answer: complaints.append(answer.url) if answer.status >= 400 else None)
    for address in addresses:
        page.goto(address, wait_until="networkidle")
    assert complaints == []
    assert len(asked) > len(addresses)
    assert [url for url in asked if not url.startswith((site, "data:"))] == []


def _go_to(page: Page, anchor: str) -> None:
    page.evaluate("id => document.getElementById(id).scrollIntoView({block: 'start'})", anchor)
    page.wait_for_timeout(200)


@pytest.mark.parametrize("width", [390, 1280])
def test_changing_the_terms_keeps_the_round(site: str, reader: Reader, width: int) -> None:
    page = reader(width=width).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    _go_to(page, "pouch-17")
    page.locator(".leaf-terms__other:visible").first.click()
    page.wait_for_url(re.compile(r"/uk/lantern-pouch/#pouch-17$"))
    page.wait_for_timeout(200)
    top = page.locator("#pouch-17").bounding_box()
    assert top is not None
    assert 0 <= top["y"] < 300
    assert page.evaluate("document.documentElement.lang") == "en-GB"


def test_changing_the_terms_keeps_the_round_of_the_address(site: str, reader: Reader) -> None:
    page = reader(width=390).new_page()
    page.goto(f"{site}us/lantern-pouch/#pouch-9")
    page.locator(".leaf-terms__other:visible").first.click()
    page.wait_for_url(re.compile(r"/uk/lantern-pouch/#pouch-9$"))


def test_from_the_top_the_other_page_begins_at_its_top(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(f"{site}us/lantern-pouch/")
    page.locator(".leaf-terms__other:visible").first.click()
    page.wait_for_url(re.compile(r"/uk/lantern-pouch/$"))


def test_the_phone_s_bar_names_the_piece(site: str, reader: Reader) -> None:
    page = reader(width=390).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    bar = page.locator("[data-leaf-piece]")
    assert bar.inner_text() == "Lantern pouch"
    _go_to(page, "moon-2")
    assert bar.inner_text() == "Moon"
    assert page.locator(".leaf-bar").bounding_box()["y"] == 0  # type: ignore[index]


def test_without_javascript_a_round_leads_to_itself_in_the_other_terms(site: str, reader: Reader) -> None:
    page = reader(java_script_enabled=False).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    page.locator("#pouch-5 .leaf-round__number").click()
    link = page.get_by_role("link", name="Round 5 in UK terms")
    assert link.is_visible()
    link.click()
    page.wait_for_url(re.compile(r"/uk/lantern-pouch/#pouch-5$"))
    assert "htr" in page.locator("#pouch-5 .leaf-round__text").inner_text()


def test_without_javascript_the_whole_pattern_is_there(site: str, reader: Reader) -> None:
    page = reader(java_script_enabled=False).new_page()
    page.goto(f"{site}uk/lantern-pouch/")
    assert page.locator(".leaf-round").count() >= 10
    assert page.locator(".leaf-figure svg, .leaf-figure img").first.is_visible()
    page.locator(".leaf-terms__other:visible").first.click()
    page.wait_for_url(re.compile(r"/us/lantern-pouch/$"))


def test_without_javascript_a_booklet_is_downloaded(site: str, reader: Reader) -> None:
    page = reader(java_script_enabled=False).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    href = page.locator("a[href$='lantern-pouch-us-a4.pdf']").first.get_attribute("href")
    answer = page.request.get(f"{site}us/lantern-pouch/{href}")
    assert answer.ok
    assert answer.body().startswith(b"%PDF")


def test_light_and_dark_follow_the_reader_s_system(site: str, reader: Reader) -> None:
    papers = {}
    for scheme in ("light", "dark"):
        page = reader(color_scheme=scheme).new_page()
        page.goto(f"{site}us/lantern-pouch/")
        papers[scheme] = page.evaluate("getComputedStyle(document.body).backgroundColor")
    assert papers == {"light": "rgb(251, 248, 242)", "dark": "rgb(21, 25, 27)"}


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("width", [390, 1280])
def test_axe_finds_nothing(addresses: list[str], reader: Reader, scheme: str, width: int) -> None:
    page = reader(width=width, color_scheme=scheme).new_page()
    found = {}
    patterns = [address for address in addresses if re.search(r"/(us|uk)/[^/]+/$", address)]
    others = [address for address in addresses if address not in patterns]
    # Pattern pages are many and alike: each of the four passes takes its quarter, every page has its turn.
    turn = (scheme == "dark") + 2 * (width == 1280)
    # The others are seen in both schemes and in both widths, but not in all four pairs of them.
    for address in (others if turn in (0, 3) else []) + patterns[turn::4]:
        page.goto(address)
        page.evaluate(AXE)
        # All rules, but only what breaks one is told in full: naming every element that passes takes longest.
        # The gallery's pictures are the shelf's, where all is looked at: thousands of strokes.
        result = page.evaluate(
            "axe.run({exclude: ['.leaf-drawing--picture svg']}, {resultTypes: ['violations']})"
        )
        assert result["passes"]
        found[address] = [f"{rule['id']}: {rule['nodes'][0]['html'][:120]}" for rule in result["violations"]]
    assert {address: rules for address, rules in found.items() if rules} == {}


def test_at_320_pixels_nothing_runs_off_the_side(addresses: list[str], reader: Reader) -> None:
    # WCAG 2.2, 1.4.10 Reflow: no scrolling in two directions at a width of 320 CSS pixels.
    page = reader(width=320).new_page()
    wide = {}
    for address in addresses:
        page.goto(address)
        wide[address] = page.evaluate("document.documentElement.scrollWidth - window.innerWidth")
    assert {address: by for address, by in wide.items() if by > 0} == {}


@pytest.mark.parametrize(("terms", "lang"), [("us", "en-US"), ("uk", "en-GB")])
def test_a_page_is_marked_with_its_language(site: str, reader: Reader, terms: str, lang: str) -> None:
    page = reader().new_page()
    page.goto(f"{site}{terms}/tide-cloth/")
    assert page.evaluate("document.documentElement.lang") == lang
    assert page.locator(f".leaf[lang='{lang}']").count() == 1


@pytest.mark.parametrize("width", [390, 1280])
def test_a_long_piece_does_not_fill_the_gallery(site: str, reader: Reader, width: int) -> None:
    """The scarf is eight times as long as it is wide; a shorter piece still has the whole width."""
    page = reader(width=width).new_page()
    page.goto(f"{site}drawings/")
    boxes = page.locator(".leaf-drawing--picture svg").evaluate_all(
        """all => all.map(s => {
            const { width, height } = s.viewBox.baseVal
            return [s.clientWidth, s.clientHeight, width / height]
        })"""
    )
    assert len(boxes) > 8
    root = page.evaluate("parseFloat(getComputedStyle(document.documentElement).fontSize)")
    assert max(high for _, high, _ in boxes) <= 34 * root + 1
    assert min(ratio for *_, ratio in boxes) < 0.2
    flat = [(wide, high, ratio) for wide, high, ratio in boxes if ratio > 1]
    assert flat
    assert all(high == pytest.approx(wide / ratio, abs=1) for wide, high, ratio in flat)


def test_the_search_opens_at_its_word_and_finds_a_pattern(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(site)
    page.get_by_role("button", name="Search", exact=True).click()
    page.get_by_role("textbox", name="Search").press_sequentially("lantern")
    result = page.locator(".md-search-result__link").first
    result.wait_for()
    assert "us/lantern-pouch/" in (result.get_attribute("href") or "")


def test_the_counts_stand_in_one_column(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(f"{site}us/lantern-pouch/")
    edges = page.evaluate(
        "[...document.querySelectorAll('#pouch-1, #pouch-2, #pouch-3, #pouch-19')].map(round =>"
        " Math.round(round.querySelector('.leaf-round__count').getBoundingClientRect().right))"
    )
    assert len(edges) == 4
    assert len(set(edges)) == 1
