"""A leaflet that asks much of a booklet: many rounds, three sizes, pictures at steps, long words."""

from dataclasses import replace

from loopleaf.publish.leaflet_parts import Abbreviation, Heading, Leaflet, Picture, Piece, Round, Telling
from tests.publish.lantern import lantern

SKETCH = (
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 60 40"><path d="M2 38 L30 4 L58 38 Z" fill="none" '
    'stroke="#22282b"/></svg>'
)


def long_pattern() -> Leaflet:
    """Seventy rows in one piece, a second piece with a picture of its own, and a table longer than a page."""
    rows = [_row(number) for number in range(1, 71)]
    items: list[Heading | Telling | Round] = [Heading("Body", "collar-body"), *rows]
    items.insert(25, Telling("Lay the work flat and compare it with your neck before going on."))
    buttons = (
        _row(1, "edge", picture=Picture("Where the loops sit", svg=SKETCH)),
        _row(2, "edge", picture=Picture("The loops, closed", svg=SKETCH)),
    )
    pieces = (
        Piece(
            "collar", "Collar with a rather long name", "collar", 1,
            ("Yarn A (lichen).",), "Begin with 41 (49, 57) chains.", tuple(items),
        ),
        Piece("edge", "Edge", "edge", 1, (), "", buttons, Picture("The edge seen flat", svg=SKETCH)),
    )  # fmt: skip
    words = tuple(Abbreviation(f"st{number}", f"stitch number {number}") for number in range(1, 61))
    return replace(
        lantern(),
        title="Gull collar with ribs in three sizes for grown people",
        pieces=pieces,
        abbreviations=words,
        notes=tuple(
            f"Note {number}. Extraordinarily characteristic handcrafted counterparts are interchangeable, "
            "which hyphenation demonstrates in unpredictable circumstances." for number in range(1, 9)
        ),
    )  # fmt: skip


def _row(number: int, piece: str = "collar", picture: Picture | None = None) -> Round:
    return Round(
        anchors=(f"{piece}-{number}",),
        word="row",
        label=f"Row {number}",
        number=str(number) if number < 70 else f"{number}–{number + 30}",
        text=f"ch 2 (counts as dc), *FPdc around next {number} sts, "
        "(BPdc around next st, FPdc around next st) × 2; rep from * across, hdc in top of tch, turn",
        count=f"{40 + number} ({48 + number}, {56 + number})",
        side="RS" if number % 2 else "WS",
        note="Keep the sides even." if number % 9 == 0 else "",
        picture=picture,
    )
