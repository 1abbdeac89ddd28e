"""The heights that a reader may choose: a table, and for each of them what the page then says.

Each is a pattern of its own, worked and checked like the one that it comes from; what it changes is set out
by the same hands as the leaflet itself.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from ..alter import one_size
from ..alter import settings as offered
from ..alter.height import Adjustable, adjustables
from ..fabric import PatternWork
from ..measure import Measured, YarnNeed, amounts, measure
from ..review import Checked
from .addresses import picture_file
from .drawing import Drawing
from .leaflet_amounts import amounts_note
from .leaflet_drawings import Drawn, drawn, of_a_piece, of_the_finishing
from .leaflet_finishing import finishing
from .leaflet_marks import marked
from .leaflet_materials import facts, sizes, yarns
from .leaflet_parts import Changed, Heights, Leaflet, Piece, Setting, Telling
from .leaflet_pictures import folder_of
from .leaflet_pieces import pieces
from .leaflet_tables import tables
from .leaflet_voice import Voice, per_size, sentence, voice
from .settings import Settings


@dataclass(frozen=True, slots=True)
class Height:
    """One height, worked. more: rounds more than written, 0 as written. rise_mm: what they add.

    parts: the rounds that more or fewer are worked of.
    """

    more: int
    rise_mm: float | None
    parts: tuple[Adjustable, ...]
    work: PatternWork
    measured: Measured
    drawn: Drawn
    folder: str


def heights_worked(checked: Checked) -> tuple[Height, ...]:
    """Every height on offer but that of the pattern as written, worked once for both terminologies."""
    found = []
    for one in offered(checked):
        work, measured = one.altered.checked.work, replace(one.altered.measured, yarn=one.altered.yarn)
        assert work is not None
        parts, folder = adjustables(one.altered.checked), folder_of(checked.source.file)
        found.append(Height(one.more, one.rise_mm, parts, work, measured, drawn(work, measured), folder))
    return tuple(found)


def in_one_size(heights: Sequence[Height], size: int) -> tuple[Height, ...]:
    """The same heights of one size (0-based) alone."""
    return tuple(_in_one_size(one, size) for one in heights)


def _in_one_size(height: Height, size: int) -> Height:
    work = one_size(height.work, size)
    measured = replace(measure(work), yarn=height.measured.yarn[size : size + 1])
    return replace(height, work=work, measured=measured, drawn=drawn(work, measured))


def with_heights(
    leaflet: Leaflet,
    settings: Settings,
    checked: Checked,
    work: PatternWork,
    measured: Measured,
    worked: Sequence[Height],
) -> Leaflet:
    """The leaflet with the heights that its pattern can be made in; as it is where there are none.

    work, measured: of the sizes that the leaflet tells of.
    """
    parts = adjustables(checked)
    if not worked:
        return leaflet
    said = voice(work, leaflet.terms, settings.counts)
    word = said.pattern.pieces[parts[0].piece].entries[parts[0].entry].word
    letters = [need.yarn for need in measured.yarn[0] if _differs(measured, worked, need.yarn)]
    largest = said.pattern.sizes[-1] if said.pattern.sizes else ""
    head = (
        said.words["heights_setting"],
        said.words[f"{word}s_label"],
        said.words["heights_height"],
        *(said.say("yarn_of", yarn=said.yarn(letter)) for letter in letters),
        said.words["time"] if measured.pattern.size_count == 1 else f"{said.words['time']}, {largest}",
    )
    run = _run(parts, leaflet.pieces)
    here = Setting(0, said.words["as_written"], ("", run, "", *_rest(said, measured, letters, True)))
    found = [here] + [_setting(leaflet, said, one, word, letters) for one in worked]
    found.sort(key=lambda one: one.more)
    rows = [replace(one, cells=(one.label, *one.cells[1:])) for one in found]
    return replace(leaflet, heights=Heights(head, tuple(rows), _off(said, worked, letters)))


def _setting(
    leaflet: Leaflet,
    said: Voice,
    one: Height,
    word: str,
    letters: Sequence[str],
) -> Setting:
    work, measured = one.work, one.measured
    then = voice(work, leaflet.terms, said.counts)
    key = f"{word}{'' if abs(one.more) == 1 else 's'}_{'more' if one.more > 0 else 'fewer'}"
    rise = "" if one.rise_mm is None else said.say(
        "taller" if one.rise_mm > 0 else "shorter", by=amounts.length(abs(one.rise_mm))
    )  # fmt: skip
    written = {piece.name: piece.drawings for piece in leaflet.pieces}
    drawings = {
        piece.name: tuple(of_a_piece(then, work, piece, one.drawn, leaflet.slug, one.more))
        for piece in work.pieces
    }
    printed = tuple(
        replace(piece, drawings=tuple(_kept(drawing, written[piece.name]) for drawing in piece.drawings))
        for piece in marked(then, measured, pieces(then, work, measured, one.folder, drawings))
    )
    cells = ("", _run(one.parts, printed), rise, *_rest(said, measured, letters, False))
    steps = finishing(then, one.folder, of_the_finishing(then, work, one.drawn))
    return Setting(
        one.more,
        said.say(key, number=abs(one.more)),
        cells,
        Changed(
            facts(then, measured, leaflet.level.name),
            sizes(then, measured),
            yarns(then, measured),
            tuple(then.told(note) for note in then.pattern.notes) + leaflet.notes[len(said.pattern.notes) :],
            tuple(_changed(leaflet.pieces, printed)),
            tuple(step for step in steps if isinstance(step, Telling)),
            _picture(leaflet, one),
            amounts_note(then, measured, followed=True),
            tables(then, measured),
        ),
    )


def _kept(drawing: Drawing, written: Sequence[Drawing]) -> Drawing:
    """The drawing as written where this one shows nothing else: it needs no file of its own."""
    return next((one for one in written if (one.svg, one.left) == (drawing.svg, drawing.left)), drawing)


def _picture(leaflet: Leaflet, one: Height) -> Drawing | None:
    alt, svg = leaflet.picture.alt, one.drawn.picture
    return Drawing("picture", "", alt, svg, picture_file(leaflet.slug, one.more)) if svg else None


def _changed(before: Sequence[Piece], now: Sequence[Piece]) -> list[Piece]:
    """The pieces that say something else now."""
    return [
        one
        for was, one in zip(before, now, strict=True)
        if (was.about, was.start, was.items) != (one.about, one.start, one.items)
        or any(drawing not in was.drawings for drawing in one.drawings)
    ]


def _run(parts: Sequence[Adjustable], printed: Sequence[Piece]) -> str:
    """`7–16`: the rounds as they are printed, with those alike beside them."""
    return ", ".join(dict.fromkeys(_printed(one, printed) for one in parts))


def _printed(part: Adjustable, printed: Sequence[Piece]) -> str:
    piece = next(one for one in printed if one.name == part.piece)
    ends = (f"-{part.first}", f"-{part.last}")
    for one in piece.rounds:
        if all(any(anchor.endswith(end) for anchor in one.anchors) for end in ends):
            return one.number
    return f"{part.first}–{part.last}" if part.first < part.last else str(part.first)


def _differs(measured: Measured, worked: Sequence[Height], letter: str) -> bool:
    now = [need.grams or need.metres for need in measured.yarn[0] if need.yarn == letter]
    return any(
        now != [need.grams or need.metres for need in one.measured.yarn[0] if need.yarn == letter]
        for one in worked
    )


def _off(said: Voice, worked: Sequence[Height], letters: Sequence[str]) -> str:
    """How far the amounts that the table tells may be off at the most; "" where it tells none."""
    offs = [
        band.off
        for one in worked
        for size in one.measured.yarn
        for need in size
        if need.yarn in letters and (band := need.grams or need.metres)
    ]
    return said.say("heights_off", off=f"{math.ceil(100 * max(offs) - 1e-9)}%") if offs else ""


def _rest(said: Voice, measured: Measured, letters: Sequence[str], written: bool) -> tuple[str, ...]:
    """Yarn by yarn, and the time (of the largest size). written: the pattern as written."""
    cells = []
    for letter in letters:
        needs = [next(need for need in size if need.yarn == letter) for size in measured.yarn]
        cells.append(_grams(said, needs, written and all(need.weighed for need in needs)))
    cells.append(sentence(amounts.about_hours(measured.hours[-1].practised)))
    return tuple(cells)


def _grams(said: Voice, needs: Sequence[YarnNeed], weighed: bool) -> str:
    """`about 61 g (2¼ oz)`; one a size: `about 73 (90, 107) g, 2½ (3¼, 3¾) oz`. Without grams, in metres.

    weighed: the author weighed just this, so that it isn't "about".
    """
    grams = [need.grams for need in needs if need.grams is not None]
    if len(grams) < len(needs):
        metres = [need.metres for need in needs if need.metres is not None]
        return amounts.about_metres(metres[-1]) if len(metres) == len(needs) else ""
    if len(grams) == 1:
        amount = amounts.weight(grams[0].middle)
    else:
        whole, ounces = ([write(band.middle) for band in grams] for write in (_in_grams, amounts.ounces))
        numbers = per_size([one.removesuffix(" oz") for one in ounces])
        amount = f"{per_size(whole)} g, {numbers} oz"
    return amount if weighed else said.say("about", amount=amount)


def _in_grams(grams: float) -> str:
    return f"{grams:.0f}"
