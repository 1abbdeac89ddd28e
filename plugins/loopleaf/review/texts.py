"""The free texts of a pattern: what is printed as words, with where each stands in the file."""

from collections.abc import Iterator

from ..pattern import Path, Pattern


def free_texts(pattern: Pattern) -> Iterator[tuple[Path, str, str]]:
    """Path, text, and the piece it belongs to ("" for none), in the order of the file's fields."""
    yield from _some(("summary",), pattern.summary)
    for number, note in enumerate(pattern.notes):
        yield ("notes", number), note, ""
    yield from _some(("care",), pattern.care)
    for name, special in pattern.special_stitches.items():
        yield from _some(("special stitches", name, "text"), special.text)
    for name, piece in pattern.pieces.items():
        for number, entry in enumerate(() if piece.as_ else piece.entries):
            at: Path = ("pieces", name, piece.entries_field, number)
            stuff = entry.stuff.text if entry.stuff else ""
            for field, text in (
                ("note", entry.note),
                ("text", entry.text or ""),
                ("heading", entry.heading or ""),
                ("stuff", stuff),
            ):
                yield from _some((*at, field), text, name)
    for number, step in enumerate(pattern.finishing):
        at = ("finishing", number)
        yield from _some((*at, "text"), step.text or "")
        yield from _some((*at, "note"), step.note)
        if step.mark is not None:
            yield from _some((*at, step.kind, "what"), step.mark.what)
        for field, part in (
            ("place", step.place),
            ("embroider", step.embroider),
            ("knot", step.knot),
            ("sew", step.sew),
            ("lay out", step.lay_out),
            ("stuff", step.stuff),
        ):
            if part is not None:
                yield from _some((*at, field, "text"), part.text)
    for name, variation in pattern.variations.items():
        yield from _some(("variations", name, "text"), variation.text)


def _some(path: Path, text: str, piece: str = "") -> Iterator[tuple[Path, str, str]]:
    if text:
        yield path, text, piece
