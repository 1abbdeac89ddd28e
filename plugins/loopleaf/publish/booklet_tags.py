"""Running heads and feet set aside for readers who listen.

WeasyPrint (70) marks the text in page margins like any other text but leaves it out of the reading order:
neither read nor declared as furniture. PDF/UA-1 (ISO 14289-1, 7.1) wants every piece of content either in the
structure tree or marked as an artifact; so what the tree doesn't reach becomes a pagination artifact.
"""

from collections.abc import Callable
from typing import Any

Follow = Callable[[Any], Any]
"""A reference (`12 0 R`) -> the object that it names."""


def set_aside_running_lines(document: object, pdf: Any) -> None:
    """A finisher for `weasyprint.Document.write_pdf`: pdf is the pydyf document, its structure tree made."""

    def follow(reference: bytes) -> Any:
        return pdf.objects[int(reference.split()[0])]

    root = follow(pdf.catalog["StructTreeRoot"])
    reached = _reached(root, follow)
    numbers = follow(root["ParentTree"])["Nums"]
    owners_by_page = dict(zip(numbers[0::2], numbers[1::2], strict=True))
    for page in map(follow, pdf.page_references):
        owners = owners_by_page[page["StructParents"]]
        aside = {mark for mark, owner in enumerate(owners) if follow(owner).number not in reached}
        _declare_artifacts(follow(page["Contents"]).stream, aside)
        for mark in aside:
            follow(owners[mark]).clear()
            owners[mark] = "null"


def _reached(root: Any, follow: Follow) -> set[int]:
    """The numbers of all structure elements that the tree's root leads to."""
    reached: set[int] = set()
    waiting = [root]
    while waiting:
        element = waiting.pop()
        reached.add(element.number)
        waiting.extend(follow(kid) for kid in element.get("K", ()) if isinstance(kid, bytes))
    return reached


def _declare_artifacts(stream: list[Any], aside: set[int]) -> None:
    """In a page's content (`/Span`, `<</MCID 3>>`, `BDC`, …), the marks of `aside` become artifacts."""
    for place, properties in enumerate(stream):
        if isinstance(properties, dict) and properties.get("MCID") in aside:
            stream[place - 1] = "/Artifact"
            properties.clear()
            properties["Type"] = "/Pagination"
