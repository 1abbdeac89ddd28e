"""Charts at the back of a booklet: on a page of their own or several, told of where the rounds end."""

import re
from functools import cache
from textwrap import indent

from loopleaf.publish.leaflet import leaflet
from loopleaf.publish.leaflet_parts import Leaflet
from loopleaf.publish.print_chart import parts
from loopleaf.publish.settings import Settings
from loopleaf.review import check
from tests.measure.worked_patterns import HEAD, rows
from tests.pdf.hairlines import THINNEST, strokes
from tests.pdf.printed import clean
from tests.pdf.reading import elements, opened, pages

ABOUT = "designer: A\nsummary: B\nlicence: CC0-1.0\nlevel: easy\nversion: 1.0.0\n"
SPINED = (
    "ch 3 (counts as dc), dc in same st, dc in each st to next ch-2 sp, (2 dc, ch 2, 2 dc) in ch-2 sp, "
    "dc in each st to last st, 2 dc in last st, turn"
)


@cache
def shawl(many: int) -> Leaflet:
    """A shawl of so many rows, told in two entries."""
    told = rows("(2 dc, ch 2, 3 dc) in 4th ch from hook, turn", SPINED, chain=4)
    told = told.replace("row: 2,", f"rows: 2-{many},")
    checked = check(f"{HEAD}{ABOUT}pieces:\n{indent(told, '  ')}".encode(), "shawl.yml")
    return leaflet(checked, "US", Settings())


@cache
def printed(many: int) -> bytes:
    return clean(shawl(many), "letter")


def test_a_chart_never_stands_on_the_page_that_names_it() -> None:
    """It would have had room below its rounds."""
    book = pages(printed(12))
    (at,) = (number for number, text in enumerate(book) if "Chart on page" in text)
    named = re.search(r"Chart on page (\d+)", book[at])
    assert named is not None
    assert int(named[1]) == at + 2
    assert "Chart: Cloth" in book[at + 1]


def test_one_too_large_for_a_page_is_parted_over_several() -> None:
    (drawing,) = (one for piece in shawl(25).pieces for one in piece.drawings if one.kind == "chart")
    shown = parts(drawing.svg)
    assert [part.place for part in shown] == [f"{at} of {len(shown)}" for at in range(1, len(shown) + 1)]
    assert len(shown) > 1
    assert all("stroke-dasharray" in part.svg for part in shown)  # where the next one begins
    book = pages(printed(25))
    for at in range(1, len(shown) + 1):
        assert any(f"Chart: Cloth {at} / {len(shown)}" in text for text in book)


def test_each_part_says_what_it_is_and_prints_in_lines_that_a_printer_holds() -> None:
    pdf = printed(25)
    told = [str(one.raw.get("/Alt", "")) for one in elements(pdf) if one.kind == "Figure"]
    assert any(re.search(r"1 of \d", alt) for alt in told)
    (drawing,) = (one for piece in shawl(25).pieces for one in piece.drawings if one.kind == "chart")
    assert "Row 1: (2 dc, ch 2, 3 dc) in 4th ch from hook" in drawing.alt
    assert any(alt.startswith(drawing.alt) for alt in told), "the page's own words"
    assert all(told)
    with opened(pdf) as book:
        found = [width for page in book.pages for width in strokes(page, page.get("/Resources"))]
    assert min(found) >= THINNEST
