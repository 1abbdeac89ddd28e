"""The last touch to a booklet's tags, for readers who listen.

Two things that WeasyPrint (70) leaves undone:

- It marks the text in page margins like any other text but leaves it out of the reading order: neither read
  nor declared as furniture. PDF/UA-1 (ISO 14289-1, 7.1) wants every piece of content either in the structure
  tree or marked as an artifact; so what the tree doesn't reach becomes a pagination artifact.
- It says where a figure stands in CSS pixels from the page's top; a BBox is in points from its foot
  (ISO 32000-1, 14.8.5.4.3).
"""

from collections.abc import Callable
from typing import Any

PX = 0.75
"""Points in a CSS pixel."""

Follow = Callable[[Any], Any]
"""A reference (`12 0 R`) -> the object that it names."""


def finish_tags(document: object, pdf: Any) -> None:
    """A finisher for `weasyprint.Document.write_pdf`: pdf is the pydyf document, its structure tree made."""

    def follow(reference: bytes) -> Any:
        return pdf.objects[int(reference.split()[0])]

    root = follow(pdf.catalog["StructTreeRoot"])
    elements = _elements(root, follow)
    for element in elements.values():
        if element.get("S") == "/Figure":
            height = follow(element["Pg"])["MediaBox"][3]
            left, top, right, bottom = (PX * value for value in element["A"]["BBox"])
            element["A"]["BBox"][:] = [left, height - bottom, right, height - top]
    numbers = follow(root["ParentTree"])["Nums"]
    owners_by_page = dict(zip(numbers[0::2], numbers[1::2], strict=True))
    for page in map(follow, pdf.page_references):
        owners = owners_by_page[page["StructParents"]]
        aside = {mark for mark, owner in enumerate(owners) if follow(owner).number not in elements}
        _declare_artifacts(follow(page["Contents"]).stream, aside)
        for mark in aside:
            follow(owners[mark]).clear()
            owners[mark] = "null"


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
