"""The measures of a pattern as a table for the terminal."""

from collections.abc import Iterator

from ..measure import Measured, PieceMeasure, amounts, because


def measure_text(measured: Measured) -> str:
    """Size, rounds, yarn, cords, time and level; with sizes, one block of rounds a size."""
    pattern = measured.pattern
    lines = [pattern.title, ""]
    for piece in measured.pieces:
        for size in range(pattern.size_count):
            lines += _piece(piece, pattern.sizes[size] if pattern.sizes else "", size)
    for size in range(pattern.size_count):
        name = f" (size {pattern.sizes[size]})" if pattern.sizes else ""
        lines += [f"Yarn{name}"]
        for need in measured.yarn[size]:
            told = [amounts.about_metres(need.metres)] if need.metres else []
            told += [amounts.about_grams(need.grams)] if need.grams else []
            if need.balls:
                low, high = need.balls
                told.append(
                    f"{low} to {high} balls" if low != high else f"{low} ball{'s' if low > 1 else ''}"
                )
            lines.append(f"  {need.yarn}  {', '.join(told) or 'not known without a gauge'}")
        for cord in measured.cords[size]:
            chains = f", about {cord.chains} chains" if cord.chains else ""
            lines.append(f"  {cord.piece}: {amounts.length(cord.length_mm)}{chains}")
        lines.append(f"Time{name}: {amounts.about_hours(measured.hours[size].practised)}")
    lines.append(f"Level: {because(measured.level, pattern, pattern.terms)}")
    return "\n".join(lines) + "\n"


def _piece(piece: PieceMeasure, size_name: str, size: int) -> Iterator[str]:
    yield f"{piece.name}{f' (size {size_name})' if size_name else ''}"
    if not piece.rounds or not piece.rounds[size]:
        yield "  not measured: the pattern gives no gauge for it, or it has no rounds"
        yield ""
        return
    for what, band in piece.size[size].items():
        yield f"  {what:<8} {amounts.length(band.middle)}"
    for stretch in piece.shape[size]:
        run = stretch.first if stretch.first == stretch.last else f"{stretch.first}-{stretch.last}"
        yield f"  {_FORMS[stretch.form]}: {run}"
    way = "around" if piece.in_rounds else "wide"
    yield f"  {'':>6}  {'stitches':>8}  {way:>9}  {'height':>9}"
    for one in piece.known_rounds(size):
        yield (
            f"  {one.label:>6}  {one.stitches:>8}  {amounts.centimetres(one.length_mm):>9}"
            f"  {amounts.centimetres(one.height_mm):>9}"
        )
    yield ""


_FORMS = {"flat": "lies flat", "cups": "cups", "ruffles": "ruffles", "tube": "stands as a tube"}
