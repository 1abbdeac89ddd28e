"""Another height on the page: a table for everyone, a choice with JavaScript, kept over pages and terms."""

import re
from collections.abc import Callable

from playwright.sync_api import BrowserContext, Page, expect

SAID = ".leaf-heights [role=status]"
Reader = Callable[..., BrowserContext]
WRITTEN = ["1", "2", "3", "4", "5", "6", "7–16", "17", "18", "19"]
TALLER = ["1", "2", "3", "4", "5", "6", "7–19", "20", "21", "22"]


def rounds(page: Page) -> list[str]:
    texts = page.locator("#piece-pouch ~ .leaf-rounds .leaf-round__number").all_inner_texts()
    return [text.split()[-1] for text in texts]


def open_heights(page: Page, address: str) -> None:
    page.goto(address)
    page.locator("[data-leaf-heights] > summary").click()


def test_without_javascript_there_is_the_table(site: str, reader: Reader) -> None:
    page = reader(java_script_enabled=False).new_page()
    open_heights(page, f"{site}us/lantern-pouch/")
    row = page.locator("tr", has_text="3 rounds more")
    expect(row).to_be_visible()
    expect(row).to_contain_text("3 cm (1¼ in) taller")
    expect(page.locator(".leaf-heights")).to_have_count(0)
    assert rounds(page) == WRITTEN


def test_a_choice_puts_what_was_worked_into_its_place(site: str, reader: Reader) -> None:
    page = reader().new_page()
    open_heights(page, f"{site}us/lantern-pouch/")
    choice = page.get_by_label("Show the pattern")
    choice.select_option("3")
    expect(page.locator(SAID)).to_contain_text("Shown with 3 rounds more.")
    assert rounds(page) == TALLER
    expect(page.locator("[data-leaf-part=table-pieces-1]")).to_contain_text("about 50 to 65 g (1¾ to 2¼ oz)")
    expect(page.locator("#finishing ~ .leaf-steps")).to_contain_text("through round 20 of the pouch")
    expect(page.locator("[data-leaf-part=sizes]")).to_contain_text("16.5 cm")
    expect(page.locator("[data-leaf-part=notes]")).to_contain_text("between rounds 7 and 19")
    section = page.locator("[data-leaf-part=drawn-pouch-profile]")
    expect(section).to_contain_text("to round 22 at the top")
    chart = page.locator("#piece-pouch ~ .leaf-chart")
    chart.scroll_into_view_if_needed()
    chart.locator(".leaf-chart__view svg [data-round='22']").first.wait_for()
    page.locator("#pouch-20 .leaf-round__text").click()
    expect(chart.locator("[data-round='20'].is-chosen").first).to_be_attached()
    expect(chart.locator("[role=img]")).to_have_attribute("aria-label", re.compile("rounds 7 to 22 cut open"))
    picture = page.locator("[data-leaf-part=picture] img")
    expect(picture).to_have_attribute("src", "../../heights/lantern-pouch/plus-3.svg")
    assert picture.evaluate("img => img.decode().then(() => img.naturalHeight > 0)")
    choice.select_option("0")
    expect(page.locator(SAID)).to_be_empty()
    assert rounds(page) == WRITTEN
    expect(section).to_contain_text("to round 19 at the top")
    expect(page.locator("[data-leaf-part=picture] svg")).to_be_attached()
    chart.locator(".leaf-chart__view svg").wait_for()
    assert chart.locator(".leaf-chart__view svg [data-round='22']").count() == 0
    expect(page.locator("[data-leaf-part=notes]")).to_contain_text("between rounds 7 and 16")


def test_the_choice_is_kept_in_the_other_terms_and_the_links_follow(site: str, reader: Reader) -> None:
    page = reader().new_page()
    open_heights(page, f"{site}us/lantern-pouch/")
    page.get_by_label("Show the pattern").select_option("3")
    expect(page.locator("#pouch-22")).to_be_attached()
    page.evaluate("document.getElementById('pouch-22').scrollIntoView({block: 'start'})")
    page.wait_for_timeout(200)
    page.locator(".leaf-terms__other:visible").first.click()
    page.wait_for_url("**/uk/lantern-pouch/?height=3#pouch-22")
    expect(page.locator("#pouch-22")).to_be_attached()
    assert rounds(page) == TALLER
    expect(page.locator("[data-leaf-heights]")).to_have_attribute("open", "")


def test_the_choice_goes_along_to_the_pages_of_its_sizes(site: str, reader: Reader) -> None:
    page = reader(width=390).new_page()
    page.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new Error('off') } })"
    )
    open_heights(page, f"{site}uk/curlew-cap/")
    page.get_by_label("Show the pattern").select_option("2")
    expect(page.locator(SAID)).to_contain_text("Shown with 2 rounds more.")
    page.get_by_role("link", name="child", exact=True).click()
    page.wait_for_url("**/uk/curlew-cap-child/?height=2")
    expect(page.locator(SAID)).to_contain_text("Shown with 2 rounds more.")
    page.get_by_label("Show the pattern").select_option("0")
    page.wait_for_url("**/uk/curlew-cap-child/")
    page.get_by_role("link", name="all sizes").click()
    page.wait_for_url("**/uk/curlew-cap/")
    expect(page.locator(SAID)).to_be_empty()


def test_where_the_file_cant_be_read_the_page_stays_as_written(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.route("**/heights/*.json", lambda route: route.abort())
    open_heights(page, f"{site}us/lantern-pouch/")
    page.get_by_label("Show the pattern").select_option("3")
    expect(page.locator(SAID)).to_contain_text("The table below holds")
    assert rounds(page) == WRITTEN


def test_a_pattern_without_such_rounds_has_no_choice(site: str, reader: Reader) -> None:
    page = reader().new_page()
    page.goto(f"{site}us/pebble-ball/")
    expect(page.locator("[data-leaf-heights]")).to_have_count(0)
