"""What of PDF/UA-1 a machine can check. Source: ISO 14289-1 as the public validation profile and a checker's
list retell it (named in the project's page of trade facts); figures and artifacts: ISO 32000-1, 14.8.
"""

from collections.abc import Callable
from itertools import pairwise

import pikepdf
import pytest

from tests.pdf.printed import lantern_pdf, long_pdf
from tests.pdf.reading import Element, elements, mark_numbers, opened

BOOKLETS: dict[str, Callable[[], bytes]] = {
    "US": lambda: lantern_pdf("US"),
    "UK": lambda: lantern_pdf("UK", "letter"),
    "long": long_pdf,
}


@pytest.fixture(params=BOOKLETS)
def pdf(request: pytest.FixtureRequest) -> bytes:
    return BOOKLETS[request.param]()


def test_it_says_that_it_is_tagged_and_of_which_standard(pdf: bytes):
    book = opened(pdf)
    assert book.Root.MarkInfo.Marked
    assert book.Root.ViewerPreferences.DisplayDocTitle
    assert "/StructTreeRoot" in book.Root
    assert book.open_metadata()["pdfuaid:part"] == "1"


@pytest.mark.parametrize(("terms", "language"), [("US", "en-US"), ("UK", "en-GB")])
def test_language_and_title_are_those_of_the_terms(terms, language):
    book = opened(lantern_pdf(terms))
    assert str(book.Root.Lang) == language
    title = book.open_metadata()["dc:title"]
    assert title == f"Lantern pouch ({terms} terms)" == str(book.docinfo.Title)


def test_tab_order_follows_the_structure_on_every_page(pdf: bytes):
    assert [str(page.obj.Tabs) for page in opened(pdf).pages] == ["/S"] * len(opened(pdf).pages)


def test_every_figure_has_words_and_stands_on_its_page(pdf: bytes):
    figures = [element for element in elements(pdf) if element.kind == "Figure"]
    assert figures
    for figure in figures:
        assert str(figure.raw.Alt).strip()
        left, bottom, right, top = (float(edge) for edge in figure.raw.A.BBox)
        _, _, width, height = (float(edge) for edge in figure.raw.Pg.MediaBox)
        assert 0 <= left < right <= width
        assert 0 <= bottom < top <= height


def test_the_cover_picture_stands_in_the_lower_two_thirds_above_the_facts():
    figure = next(element for element in elements(lantern_pdf()) if element.kind == "Figure")
    _, bottom, _, top = (float(edge) for edge in figure.raw.A.BBox)
    assert 842 * 0.15 < bottom < top < 842 * 0.75


def test_headings_leave_no_level_out(pdf: bytes):
    levels = [int(element.kind[1]) for element in elements(pdf) if element.kind in {"H1", "H2", "H3", "H4"}]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert len(levels) > 5
    assert all(later <= earlier + 1 for earlier, later in pairwise(levels))


def test_every_cell_of_a_table_knows_its_heads(pdf: bytes):
    cells = [element for element in elements(pdf) if element.kind == "TD"]
    heads = {str(element.raw.ID) for element in elements(pdf) if element.kind == "TH"}
    assert cells
    for cell in cells:
        named = [str(head) for head in cell.raw.A.Headers]
        assert len(named) == 2, "its column's head and its row's"
        assert set(named) <= heads


def test_every_head_says_whether_it_is_a_column_s_or_a_row_s(pdf: bytes):
    """ISO 14289-1, 7.5: heads that no cell names (the one in the corner) are told by their scope alone."""
    heads = [element for element in elements(pdf) if element.kind == "TH"]
    assert {"THead", "TBody"} == {head.above[-2] for head in heads}
    for head in heads:
        assert str(head.raw.A.Scope) == ("/Column" if head.above[-2] == "THead" else "/Row")


def test_a_round_s_number_is_its_label(pdf: bytes):
    """ISO 14289-1, 7.6: an item has its label, if there is one, and a body; the list says how it counts."""
    items = [element for element in elements(pdf) if element.kind == "LI"]
    labelled = [item for item in items if str(item.raw.K[0].S) == "/Lbl"]
    assert len(labelled) > 10
    for item in items:
        assert [str(kid.S) for kid in item.raw.K] in (["/Lbl", "/LBody"], ["/LBody"])
    assert all(str(item.raw.P.A.ListNumbering) == "/Decimal" for item in labelled)


def test_nothing_empty_stops_a_reader(pdf: bytes):
    empty = [element.kind for element in elements(pdf) if not len(element.raw.get("/K", ()))]
    assert [kind for kind in empty if kind not in {"TD", "TH"}] == []


def test_parts_of_lists_and_tables_stand_only_where_they_may(pdf: bytes):
    allowed = {"LI": {"L"}, "LBody": {"LI"}, "TR": {"Table", "THead", "TBody"}, "TH": {"TR"}, "TD": {"TR"}}
    seen = set()
    for element in elements(pdf):
        if element.kind in allowed:
            seen.add(element.kind)
            assert element.above[-1] in allowed[element.kind]
        if element.kind in {"P", "H1", "H2", "H3"}:
            assert not {"P", "H1", "H2", "H3"} & set(element.above)
    assert seen == set(allowed)


def test_every_link_can_be_followed_and_is_described(pdf: bytes):
    links = [element for element in elements(pdf) if element.kind == "Link"]
    assert links
    for link in links:
        annotations = [kid.Obj for kid in link.raw.K if isinstance(kid, pikepdf.Dictionary) and "/Obj" in kid]
        assert annotations
        assert all(str(annotation.Contents) for annotation in annotations)
        assert all(int(annotation.F) & 4 for annotation in annotations), "there in print too"
        assert "Link" not in link.above


def test_every_annotation_is_a_link_s(pdf: bytes):
    """ISO 14289-1, 7.18.5: a link's annotation stands in a Link element, and nowhere else."""
    found = elements(pdf)
    holders = [
        element.kind
        for element in found
        for kid in element.raw.get("/K", pikepdf.Array())
        if isinstance(kid, pikepdf.Dictionary) and str(kid.get("/Type", "")) == "/OBJR"
    ]
    there = sum(len(page.obj.get("/Annots", ())) for page in opened(pdf).pages)
    assert holders == ["Link"] * there
    assert there


def test_all_text_is_either_in_reading_order_or_set_aside(pdf: bytes):
    """Nothing is drawn outside marked content; every mark with a number belongs to an element of the tree."""
    book = opened(pdf)
    for number, page in enumerate(book.pages):
        owned = {mark for element in _on_page(elements(pdf), page.obj) for mark in mark_numbers(element)}
        marked, running = _marks_of_content(page)
        assert marked == owned, f"page {number + 1}"
        assert running, "running lines are set aside on every page"


def _on_page(found: list[Element], page: pikepdf.Object) -> list[Element]:
    return [element for element in found if "/Pg" in element.raw and element.raw.Pg.objgen == page.objgen]


def _marks_of_content(page: pikepdf.Page) -> tuple[set[int], int]:
    """The numbers of marked content, and how many stretches of text are pagination artifacts; asserts that no
    text is shown outside both.
    """
    numbers: set[int] = set()
    running = 0
    open_marks: list[str] = []
    for instruction in pikepdf.parse_content_stream(page):
        operands, name = instruction.operands, str(instruction.operator)
        if name in {"BDC", "BMC"}:
            properties = operands[1] if name == "BDC" else pikepdf.Dictionary()
            open_marks.append(str(operands[0]))
            if "/MCID" in properties:
                numbers.add(int(properties.MCID))
            running += properties.get("/Type") == pikepdf.Name.Pagination
        elif name == "EMC":
            open_marks.pop()
        elif name in {"Tj", "TJ"}:
            assert open_marks
    assert not open_marks
    return numbers, running


def test_nothing_is_left_of_the_tags_that_nobody_can_reach(pdf: bytes):
    book = opened(pdf)
    reached = {element.raw.objgen for element in elements(pdf)}
    owners = book.Root.StructTreeRoot.ParentTree.Nums
    for entry in list(owners)[1::2]:
        for owner in entry if isinstance(entry, pikepdf.Array) else [entry]:
            assert owner is None or owner.objgen in reached
