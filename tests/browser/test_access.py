"""For everyone: by keyboard alone, with wider spaces, with targets that a finger finds, and on paper.

WCAG 2.2: 1.4.12 text spacing, 2.1.1 keyboard, 2.4.7 focus visible, 2.4.11 focus not obscured, 2.5.8 target
size.
"""

from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import BrowserContext, Page, Route

from tests.browser.test_reading import AXE

Reader = Callable[..., BrowserContext]
PAGES = ("", "us/lantern-pouch/", "uk/lighthouse-bookmark/", "glossary/")

SPACED = (
    "* {line-height: 1.5 !important; letter-spacing: .12em !important; word-spacing: .16em !important}"
    "p {margin-bottom: 2em !important}"
)
"""The spaces that 1.4.12 names."""

CUT = """() => [...document.querySelectorAll('main :is(p, li, dt, dd, h1, h2, h3, a)')]
    .filter(one => getComputedStyle(one).overflowX === 'hidden' && !one.closest('.leaf-heard'))
    .filter(one => one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 1)
    .map(one => one.textContent.trim().slice(0, 60))"""

FOCUSED = """() => {
    const one = document.activeElement;
    if (!one || one === document.body) return null;
    const box = one.getClientRects()[0];
    if (!box) return {what: one.outerHTML.slice(0, 120), seen: false, marked: true};
    const at = document.elementFromPoint(box.left + box.width / 2, box.top + box.height / 2);
    return {
        what: one.outerHTML.slice(0, 120),
        seen: !!at && (one.contains(at) || at.contains(one)),
        marked: getComputedStyle(one).outlineStyle !== 'none' || getComputedStyle(one).boxShadow !== 'none',
    };
}"""


def _over(page: Page) -> int:
    return int(page.evaluate("document.documentElement.scrollWidth - window.innerWidth"))


@pytest.mark.parametrize("width", [390, 1280])
def test_with_wider_spaces_nothing_is_lost(site: str, reader: Reader, width: int) -> None:
    page = reader(width=width).new_page()
    for address in PAGES:
        page.goto(site + address)
        page.add_style_tag(content=SPACED)
        assert _over(page) <= 0, address
        assert page.evaluate(CUT) == [], address


@pytest.mark.parametrize("width", [390, 1280])
def test_by_keyboard_every_stop_is_seen(site: str, reader: Reader, width: int) -> None:
    page = reader(width=width).new_page()
    for address in PAGES[:3]:
        page.goto(site + address, wait_until="networkidle")
        stops: list[dict[str, Any]] = []
        while len(stops) < 70:
            page.keyboard.press("Tab")
            stop = page.evaluate(FOCUSED)
            if stop is None:
                break
            stops.append(stop)
        assert len(stops) > 15
        assert [stop["what"] for stop in stops if not stop["seen"] or not stop["marked"]] == [], address


def test_a_chart_that_comes_late_leaves_the_focus_where_it_is(site: str, reader: Reader) -> None:
    page = reader(width=390).new_page()
    page.goto(f"{site}uk/lighthouse-bookmark/", wait_until="networkidle")
    assert page.locator(".leaf-chart__bar").count() == 0
    held: list[Route] = []
    page.route("**/*.svg", lambda route: held.append(route))
    number = page.locator("#bookmark-2 .leaf-round__number")
    number.focus()
    number.evaluate("one => one.scrollIntoView({block: 'end'})")
    while not held:
        page.wait_for_timeout(20)
    before = number.evaluate("one => one.getBoundingClientRect().top")
    assert page.locator(".leaf-chart__bar").count() == 0
    for one in held:
        one.continue_()
    page.locator(".leaf-chart__bar").nth(1).wait_for()
    after = number.evaluate("one => one.getBoundingClientRect().top")
    assert abs(after - before) < 1
    assert page.evaluate(FOCUSED)["seen"]


@pytest.mark.parametrize("width", [390, 1280])
def test_backwards_by_keyboard_nothing_hides_under_a_kept_chart(
    site: str, reader: Reader, width: int
) -> None:
    page = reader(width=width).new_page()
    page.goto(f"{site}uk/lighthouse-bookmark/", wait_until="networkidle")
    page.locator(".leaf-chart").first.scroll_into_view_if_needed()
    page.locator(".leaf-chart__bar button[aria-pressed]").first.click()
    assert page.locator(".leaf-chart--kept").count() == 1
    page.locator("#bookmark-30 .leaf-round__number").focus()
    stops: list[dict[str, Any]] = []
    while len(stops) < 20:
        page.keyboard.press("Shift+Tab")
        stops.append(page.evaluate(FOCUSED))
    assert [stop["what"] for stop in stops if not stop["seen"]] == []


@pytest.mark.parametrize("width", [390, 1280])
def test_targets_are_large_enough(site: str, reader: Reader, width: int) -> None:
    page = reader(width=width).new_page()
    for address in PAGES:
        page.goto(site + address)
        page.evaluate(AXE)
        found = page.evaluate("axe.run({runOnly: {type: 'rule', values: ['target-size']}})")
        assert found["passes"] or found["inapplicable"]
        assert [node["html"][:120] for rule in found["violations"] for node in rule["nodes"]] == [], address


def test_on_paper_only_the_pattern_is_left(site: str, reader: Reader) -> None:
    page = reader(color_scheme="dark").new_page()
    page.goto(f"{site}us/lantern-pouch/#pouch-3", wait_until="networkidle")
    page.emulate_media(media="print", color_scheme="dark")
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(255, 255, 255)"
    assert page.evaluate("getComputedStyle(document.querySelector('.leaf')).color") == "rgb(34, 40, 43)"
    for gone in (
        ".leaf-head",
        ".leaf-foot",
        ".leaf-bar",
        ".leaf button",
        ".leaf select",
        ".leaf-round__other",
    ):
        assert not any(one.is_visible() for one in page.locator(gone).all()), gone
    for there in ("h1", ".leaf-facts", "#pouch-3", ".leaf-steps > li"):
        assert page.locator(there).first.is_visible(), there
    assert page.pdf().startswith(b"%PDF")
