"""Chart and rounds read together: by mouse, finger and keyboard, enlarged, mirrored, without JavaScript."""

from collections.abc import Callable

import pytest
from playwright.sync_api import BrowserContext, Locator, Page

Reader = Callable[..., BrowserContext]


def opened(page: Page, site: str, pattern: str = "us/lantern-pouch/") -> Locator:
    """The first piece's chart, its drawing in the picture's place."""
    page.goto(f"{site}{pattern}")
    page.evaluate("document.querySelector('[data-leaf-chart]').scrollIntoView()")
    chart = page.locator("[data-leaf-chart]").first
    chart.locator(".leaf-chart__view svg").wait_for()
    return chart


def lit(chart: Locator) -> set[str]:
    """The rounds of the signs that are lit."""
    found: list[str] = chart.locator(".is-chosen").evaluate_all("all => all.map(one => one.dataset.round)")
    return set(found)


def chosen(page: Page) -> list[str]:
    """The rounds marked in the text."""
    found: list[str] = page.locator(".leaf-round--chosen[aria-current]").evaluate_all(
        "all => all.map(r => r.id)"
    )
    return found


def test_a_round_chosen_in_the_text_lights_up_in_the_chart(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    page.locator("#pouch-17 .leaf-round__text").click()
    assert lit(chart) == {"17"}
    assert chosen(page) == ["pouch-17"]
    said = chart.get_by_role("status").inner_text()
    assert said.startswith("Round 17 ch 4 (counts as dc, ch 1)")
    assert said.endswith("(24 dc, 24 ch-1 sps)")
    other = chart.locator("g[data-round='12']").first
    shown = "one => [one, one.firstElementChild].map(part => Number(getComputedStyle(part).opacity))"
    assert other.evaluate(shown) == [0.28, 1], "lighter once, not once more a sign"
    page.locator("#pouch-17 .leaf-round__text").click()
    assert lit(chart) == set()
    assert chosen(page) == []


def test_a_picture_in_squares_and_its_chart_light_up_together(site: str, reader: Reader) -> None:
    page = reader().new_page()
    picture = opened(page, site, "uk/lighthouse-bookmark/")
    chart = page.locator("[data-leaf-chart=chart]")
    chart.scroll_into_view_if_needed()
    chart.locator(".leaf-chart__view svg").wait_for()
    page.locator("#bookmark-9 .leaf-round__text").click()
    assert lit(picture) == lit(chart) == {"9"}
    assert chosen(page) == ["bookmark-9"]
    picture.locator("g[data-round='4'] path").first.click(force=True)
    assert lit(picture) == lit(chart) == {"4"}
    page.locator("#bookmark-4 .leaf-round__text").click()
    assert lit(picture) == lit(chart) == set()
    assert chosen(page) == []


def test_one_drawing_is_kept_in_view_at_a_time(site: str, reader: Reader) -> None:
    page = reader().new_page()
    opened(page, site, "uk/lighthouse-bookmark/")
    page.locator("[data-leaf-chart=chart]").scroll_into_view_if_needed()
    page.locator("[data-leaf-chart=chart] .leaf-chart__view svg").wait_for()
    for kind in ("squares", "chart"):
        page.locator(f"[data-leaf-chart={kind}] [aria-pressed]").click()
        kept = page.locator(".leaf-chart--kept")
        assert kept.evaluate_all("all => all.map(one => one.dataset.leafChart)") == [kind]
        assert page.locator("[aria-pressed=true]").count() == 1


def test_a_sign_chosen_in_the_chart_marks_its_round_in_the_text(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    before = page.evaluate("scrollY")
    chart.locator("[data-round='12'] [data-stitch='20']").click(force=True)
    assert lit(chart) == {"12"}
    assert chosen(page) == ["pouch-7"], "rounds 7 to 16 are printed as one"
    assert chart.get_by_role("status").inner_text().startswith("Round 12 ")
    assert page.evaluate("scrollY") == before


def test_a_finger_beside_a_sign_chooses_the_nearest(site: str, reader: Reader) -> None:
    page = reader(width=390, has_touch=True).new_page()
    chart = opened(page, site, "us/lantern-pouch/")
    sign = chart.locator("[data-round='19'] [data-kind='dc']").first
    sign.evaluate("sign => sign.scrollIntoView({block: 'center'})")
    box = sign.bounding_box()
    assert box is not None
    page.touchscreen.tap(box["x"] + box["width"] / 2, max(box["y"] - 4, 1))
    assert lit(chart) == {"19"}


def test_by_keyboard_round_after_round(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    later = chart.get_by_role("button", name="Later")
    later.focus()
    for label in ("1", "2", "3"):
        page.keyboard.press("Enter")
        assert lit(chart) == {label}
    page.keyboard.press("Escape")
    assert lit(chart) == set()
    page.locator("#pouch-5 .leaf-round__number, [id='pouch-4'] .leaf-round__number").first.focus()
    page.keyboard.press("Enter")
    assert len(lit(chart)) == 1


def test_a_round_that_the_chart_does_not_draw_says_so_and_dims_nothing(site: str, reader: Reader) -> None:
    """Rounds 11 to 13 of the cap are worked in larger sizes only; the chart is drawn in the smallest."""
    page = reader().new_page()
    chart = opened(page, site, "us/curlew-cap/")
    said = chart.get_by_role("status")
    page.locator("#cap-12 .leaf-round__number").click()
    assert chosen(page) == ["cap-12"]
    assert lit(chart) == set()
    assert chart.locator(".has-chosen").count() == 0
    assert said.inner_text().endswith(" It is not in this chart.")
    chart.get_by_role("button", name="Later").click()
    assert lit(chart) == {"14"}, "on from there, not from the first round"
    assert "not in this chart" not in said.inner_text()
    page.locator("#cap-12 .leaf-round__number").click()
    chart.get_by_role("button", name="Earlier").click()
    assert lit(chart) == {"10"}


def test_at_the_ends_the_rounds_stay_and_the_focus_too(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    earlier = chart.get_by_role("button", name="Earlier")
    earlier.click()
    (last,) = lit(chart)
    chart.get_by_role("button", name="Later").click()
    assert lit(chart) == {last}
    chart.get_by_role("button", name="Larger").click()
    whole = chart.get_by_role("button", name="Whole chart")
    assert whole.get_attribute("aria-disabled") == "false"
    whole.focus()
    page.keyboard.press("Enter")
    assert whole.get_attribute("aria-disabled") == "true"
    assert page.evaluate("document.activeElement.textContent") == "Whole chart"
    link = chart.get_by_role("status").get_by_role("link").bounding_box()
    assert link is not None
    assert link["height"] >= 24


def test_enlarging_keeps_the_middle_and_the_chosen_round(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    page.locator("#pouch-17 .leaf-round__text").click()
    view = chart.locator(".leaf-chart__view")
    middle = """v => [
        (v.scrollLeft + v.clientWidth / 2) / v.scrollWidth,
        (v.scrollTop + v.clientHeight / 2) / v.scrollHeight,
    ]"""
    chart.get_by_role("button", name="Larger").click()
    wide = view.evaluate("v => v.scrollWidth / v.clientWidth")
    assert wide == pytest.approx(1.5, abs=0.02)
    view.evaluate("v => v.scrollTo(40, 60)")
    before = view.evaluate(middle)
    chart.get_by_role("button", name="Larger").click()
    assert view.evaluate(middle) == pytest.approx(before, abs=0.02)
    assert lit(chart) == {"17"}
    view.focus()
    left = view.evaluate("v => v.scrollLeft")
    page.keyboard.press("ArrowRight")
    page.wait_for_timeout(400)
    assert view.evaluate("v => v.scrollLeft") > left
    chart.get_by_role("button", name="Whole chart").click()
    assert view.evaluate("v => v.scrollWidth - v.clientWidth") <= 1
    assert lit(chart) == {"17"}


def test_a_kept_chart_stays_in_view_and_hides_no_round(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    kept = chart.get_by_role("button", name="Keep in view")
    kept.click()
    assert kept.get_attribute("aria-pressed") == "true"
    page.locator("#pouch-18 .leaf-round__number").click()
    page.wait_for_timeout(300)
    figure, round_ = chart.bounding_box(), page.locator("#pouch-18").bounding_box()
    assert figure is not None
    assert round_ is not None
    assert figure["y"] == pytest.approx(0, abs=40)
    assert round_["y"] >= figure["y"] + figure["height"] - 1


def test_a_left_hander_s_chart_takes_its_place(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    page.locator("#pouch-17 .leaf-round__text").click()
    assert chart.locator(".leaf-chart__view svg g[transform='scale(-1 1)']").count() == 0
    chart.get_by_role("link", name="For left-handers").click()
    chart.locator(".leaf-chart__view svg g[transform*='scale(-1']").first.wait_for()
    assert lit(chart) == {"17"}
    assert chart.get_by_role("link", name="For right-handers").count() == 1


def test_all_drawings_of_a_page_turn_to_the_hand_that_is_chosen(site: str, reader: Reader) -> None:
    """Those that are open, one that is opened later, and those that stand in the page."""
    page = reader().new_page()
    page.goto(f"{site}us/sandbank-seal/")
    charts = page.locator("[data-leaf-chart]")
    mirrored = ".leaf-chart__view svg g[transform*='scale(-1']"
    for at in (0, 1):
        charts.nth(at).scroll_into_view_if_needed()
        charts.nth(at).locator(".leaf-chart__view svg").wait_for()
    placed = page.locator("#finishing ~ ol .leaf-step svg, .leaf-steps .leaf-step svg").first
    right = placed.inner_html()
    assert page.locator("[data-leaf-hands]").first.inner_text() == "For left-handers"
    charts.nth(1).get_by_role("link", name="For left-handers").click()
    for at in (0, 1):
        charts.nth(at).locator(mirrored).first.wait_for()
    last = charts.last
    last.scroll_into_view_if_needed()
    last.locator(mirrored).first.wait_for()
    assert placed.inner_html() != right
    page.locator("button[data-leaf-hands]").first.click()
    charts.nth(0).locator(mirrored).first.wait_for(state="detached")
    charts.nth(1).locator(mirrored).first.wait_for(state="detached")
    assert placed.inner_html() == right


def test_a_side_that_a_sentence_names_turns_too(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(f"{site}us/gull-collar/")
    note = page.locator(".leaf-round__note", has_text="when you wear the collar").first
    assert "the front that lies on your right when" in note.inner_text()
    chart = page.locator("[data-leaf-chart]").first
    chart.scroll_into_view_if_needed()
    chart.locator(".leaf-chart__view svg").wait_for()
    chart.get_by_role("link", name="For left-handers").click()
    chart.get_by_role("link", name="For right-handers").wait_for()
    assert "the front that lies on your left when" in note.inner_text()
    chart.get_by_role("link", name="For right-handers").click()
    chart.get_by_role("link", name="For left-handers").wait_for()
    assert "the front that lies on your right when" in note.inner_text()


def test_the_round_of_the_address_is_lit(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(f"{site}us/lantern-pouch/#pouch-11")
    page.evaluate("document.querySelector('[data-leaf-chart]').scrollIntoView()")
    chart = page.locator("[data-leaf-chart]").first
    chart.locator(".leaf-chart__view svg").wait_for()
    assert lit(chart) == {"11"}


def test_without_javascript_the_chart_is_a_picture_with_words(site: str, reader: Reader) -> None:
    page = reader(java_script_enabled=False).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    picture = page.locator("[data-leaf-chart] img").first
    assert "rounds 1 to 6 from the middle outwards" in (picture.get_attribute("alt") or "")
    for link in page.locator("[data-leaf-chart] a").all()[:2]:
        answer = page.request.get(f"{site}us/lantern-pouch/{link.get_attribute('href')}")
        assert answer.status == 200
        assert answer.text().startswith("<svg")


def test_the_drawing_in_the_page_says_what_the_picture_said(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    named = page.get_by_role("img", name="Chart of the piece “Pouch”: one sign a stitch, rounds 1 to 6")
    assert named.count() == 1
    ids = page.locator(".leaf-chart__view svg [id]").evaluate_all("all => all.map(one => one.id)")
    assert len(ids) == len({*ids})
    assert chart.locator(".leaf-chart__view svg use").first.evaluate(
        "one => document.querySelector(one.getAttribute('href')) !== null"
    )


def test_a_long_chart_opens_at_its_beginning_as_wide_as_the_page(site: str, reader: Reader) -> None:
    page = reader(width=390).new_page()
    chart = opened(page, site, "us/ebb-scarf/")
    view = chart.locator(".leaf-chart__view")
    first, last = chart.locator("[data-round='1']").first, chart.locator("g[data-round]").last
    seen = "(sign, inside) => { const r = e => e.getBoundingClientRect(), v = r(inside), s = r(sign);"
    seen += " return s.top >= v.top && s.bottom <= v.bottom && s.width > v.width / 2 }"
    inside = view.element_handle()
    assert first.evaluate(seen, inside)
    assert not last.evaluate(seen, inside)
    page.locator("#scarf-2 .leaf-round__number").press("Enter")
    assert lit(chart) == {"2"}
    chart.get_by_role("button", name="Whole chart").click()
    assert view.evaluate("v => v.scrollHeight <= v.clientHeight + 1")
    assert lit(chart) == {"2"}


@pytest.mark.parametrize("width", [390, 1280])
def test_a_small_chart_is_not_blown_up(site: str, reader: Reader, width: int) -> None:
    """The moon has fourteen stitches in its last round; filling the column each was as large as a thumb."""
    page = reader(width=width).new_page()
    page.goto(f"{site}us/lantern-pouch/")
    chart = page.locator("[data-leaf-chart]").nth(1)
    chart.evaluate("one => one.scrollIntoView()")
    chart.locator(".leaf-chart__view svg").wait_for()
    box = chart.locator("[data-round='2'] [data-stitch='1']").bounding_box()
    assert box is not None
    assert 10 < box["width"] < 26
    chart.get_by_role("button", name="Larger").click()
    larger = chart.locator("[data-round='2'] [data-stitch='1']").bounding_box()
    assert larger is not None
    assert larger["width"] > 1.3 * box["width"]


def test_a_chosen_round_shows_its_repeats_in_full_ink(site: str, reader: Reader) -> None:
    page = reader().new_page()
    chart = opened(page, site)
    light = "[data-round='12'][stroke-opacity]"
    ink = "one => getComputedStyle(one).strokeOpacity"
    assert float(chart.locator(light).first.evaluate(ink)) < 1
    chart.locator("[data-round='12'] [data-stitch='20']").click(force=True)
    assert float(chart.locator(light).first.evaluate(ink)) == 1
