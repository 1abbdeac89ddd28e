"""Hooks and yarn weights by the names that both countries give them, for the glossary."""

from .. import trade
from .leaflet_parts import Table, Terms
from .words import words


def lookup_tables(terms: Terms) -> tuple[Table, ...]:
    """The two tables, in one terminology's words; the names of both countries stand in either."""
    return (_hooks(terms), _yarns(terms))


def _hooks(terms: Terms) -> Table:
    w = words(terms)
    rows = tuple((f"{row.mm:g} mm", row.us or "–", row.old_uk or "–") for row in trade.hooks())
    return Table("hooks", w["hooks"], (w["hook_mm"], w["hook_us"], w["hook_old_uk"]), rows, w["hooks_note"])


def _yarns(terms: Terms) -> Table:
    w = words(terms)
    head = tuple(
        w[key] for key in ("weight_number", "weight_us", "weight_uk", "weight_stitches", "weight_hook")
    )
    rows = tuple(
        (
            f"{row.number} {row.name}",
            ", ".join(row.us),
            ", ".join(row.uk),
            _span(row.stitches, trade.stitch(row.gauge_stitch).names(terms).short),
            _span(row.hook_mm, "mm"),
        )
        for row in trade.yarn_weights()
    )
    return Table("weights", w["weights"], head, rows, w["weights_note"])


def _span(ends: tuple[float | None, float | None], unit: str) -> str:
    """`12–17 sc`; with an open end `up to 5 sc` or `16 mm and up`."""
    low, high = ends
    if low is None:
        return f"up to {high:g} {unit}"
    return f"{low:g} {unit} and up" if high is None else f"{low:g}–{high:g} {unit}"
