"""The last touch to a booklet's tags, for readers who listen.

What WeasyPrint (70) leaves undone, with the part of PDF/UA-1 (ISO 14289-1) or ISO 32000-1 that asks for it:

- It marks the text in page margins like any other text but leaves it out of the reading order: neither read
  nor declared as furniture. Every piece of content has to be either in the structure tree or marked as an
  artifact (7.1); so what the tree doesn't reach becomes a pagination artifact.
- It says where a figure stands in CSS pixels from the page's top; a BBox is in points from its foot
  (ISO 32000-1, 14.8.5.4.3).
- It names the heads of each cell, but a head has no scope of its own (7.5).
- A round's number is not told apart from its text. In a list it is the label, `Lbl` (7.6; ISO 32000-1,
  14.8.4.3.3).
- What is drawn and says nothing (a box to tick) leaves empty elements that a reader may stop at.
- A link's annotation doesn't say that it is there in print too (7.18.1).
"""

from collections.abc import Callable
from typing import Any

PX = 0.75
"""Points in a CSS pixel."""

PRINT = 1 << 2
"""The flag of an annotation that is there in print too (ISO 32000-1, table 165, bit 3)."""

Follow = Callable[[Any], Any]
"""A reference (`12 0 R`) -> the object that it names."""


def finish_tags(document: object, pdf: Any) -> None:
    """A finisher for `weasyprint.Document.write_pdf`: pdf is the pydyf document, its structure tree made."""

    def follow(reference: bytes) -> Any:
        return pdf.objects[int(reference.split()[0])]

    root = follow(pdf.catalog["StructTreeRoot"])
    _drop_empty(follow(root["K"][0]), follow)
    elements = _elements(root, follow)
    for element in elements.values():
        if element.get("S") == "/LI":
            _label(element, follow)
        elif element.get("S") in ("/THead", "/TBody"):
            _scope(element, follow)
        if element.get("S") == "/Figure":
            height = follow(element["Pg"])["MediaBox"][3]
            left, top, right, bottom = (PX * value for value in element["A"]["BBox"])
            element["A"]["BBox"][:] = [left, height - bottom, right, height - top]
    numbers = follow(root["ParentTree"])["Nums"]
    owners_by_page = dict(zip(numbers[0::2], numbers[1::2], strict=True))
    elements = _elements(root, follow)
    for page in map(follow, pdf.page_references):
        for annotation in map(follow, page.get("Annots", ())):
            annotation["F"] = annotation.get("F", 0) | PRINT
        owners = owners_by_page[page["StructParents"]]
        aside = {mark for mark, owner in enumerate(owners) if follow(owner).number not in elements}
        _declare_artifacts(follow(page["Contents"]).stream, aside)
        for mark in aside:
            follow(owners[mark]).clear()
            owners[mark] = "null"


_HOLDERS = ("/Span", "/NonStruct", "/Div")


def _drop_empty(element: Any, follow: Follow) -> None:
    """Takes out what holds nothing, from the leaves up."""
    kept = []
    for kid in element["K"]:
        below = follow(kid) if isinstance(kid, bytes) else None
        if below is None or "S" not in below:
            kept.append(kid)
            continue
        _drop_empty(below, follow)
        if below["K"] or below["S"] not in _HOLDERS:
            kept.append(kid)
        else:
            below.clear()
    element["K"][:] = kept


def _label(item: Any, follow: Follow) -> None:
    """The number that hangs before an item's text becomes the item's label."""
    holder, inside = follow(item["K"][0]), None
    while holder["S"] in ("/LBody", "/Div", "/NonStruct") and not _only_words(holder, follow):
        first = holder["K"][0] if holder["K"] else None
        if not isinstance(first, bytes) or "S" not in follow(first):
            return
        holder, inside = follow(first), holder
    if inside is None or holder["S"] != "/Div":
        return
    inside["K"].pop(0)
    holder["S"] = "/Lbl"
    holder["P"] = item.reference
    item["K"].insert(0, holder.reference)
    numbering = type(item)({"O": "/List", "ListNumbering": "/Decimal"})
    follow(item["P"])["A"] = numbering


def _only_words(element: Any, follow: Follow) -> bool:
    return bool(element["K"]) and all(
        isinstance(kid, bytes) and follow(kid).get("S") == "/Span" for kid in element["K"]
    )


def _scope(group: Any, follow: Follow) -> None:
    """The heads of a table's head are those of columns, the others of rows."""
    for row in map(follow, group["K"]):
        for cell in map(follow, row["K"]):
            if cell["S"] == "/TH":
                cell["A"]["Scope"] = "/Column" if group["S"] == "/THead" else "/Row"


def _elements(root: Any, follow: Follow) -> dict[int, Any]:
    """All structure elements that the tree's root leads to, by their object number."""
    found: dict[int, Any] = {}
    waiting = [root]
    while waiting:
        element = waiting.pop()
        found[element.number] = element
        waiting.extend(follow(kid) for kid in element.get("K", ()) if isinstance(kid, bytes))
    return found


def _declare_artifacts(stream: list[Any], aside: set[int]) -> None:
    """In a page's content (`/Span`, `<</MCID 3>>`, `BDC`, …), the marks of `aside` become artifacts."""
    for place, properties in enumerate(stream):
        if isinstance(properties, dict) and properties.get("MCID") in aside:
            stream[place - 1] = "/Artifact"
            properties.clear()
            properties["Type"] = "/Pagination"
