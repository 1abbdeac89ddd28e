"""The heights that a reader may choose: a table, and for each of them what the page then says.

Each is a pattern of its own, worked and checked like the one that it comes from; what it changes is set out
by the same hands as the leaflet itself.
"""

from collections.abc import Sequence
from dataclasses import replace

from ..alter import Setting as Worked
from ..alter import settings as offered
from ..alter.height import Adjustable, adjustables
from ..measure import Measured, YarnNeed, amounts
from ..review import Checked
from .leaflet_finishing import finishing
from .leaflet_marks import marked
from .leaflet_materials import facts, sizes, yarns
from .leaflet_parts import Changed, Heights, Leaflet, Piece, Setting, Telling
from .leaflet_pictures import folder_of
from .leaflet_pieces import pieces
from .leaflet_voice import Voice, per_size, sentence, voice
from .settings import Settings


def heights_worked(checked: Checked) -> tuple[Worked, ...]:
    """Every height on offer, worked once for both terminologies."""
    return offered(checked)


def with_heights(leaflet: Leaflet, settings: Settings, checked: Checked, worked: Sequence[Worked]) -> Leaflet:
    """The leaflet with the heights that its pattern can be made in; as it is where there are none."""
    parts = adjustables(checked)
    work, measured = checked.work, checked.measured
    if not worked or not parts or work is None or measured is None:
        return leaflet
    said = voice(work, leaflet.terms, settings.counts)
    word = said.pattern.pieces[parts[0].piece].entries[parts[0].entry].word
    letters = [need.yarn for need in measured.yarn[0] if _differs(measured, worked, need.yarn)]
    head = (
        said.words["heights_setting"],
        said.words[f"{word}s_label"],
        said.words["heights_height"],
        *(said.say("yarn_of", yarn=said.yarn(letter)) for letter in letters),
        said.words["time"],
    )
    here = Setting(0, said.words["as_written"], ("", _run(parts), "", *_rest(said, measured, letters, True)))
    found = [here] + [_setting(leaflet, said, checked, parts, one, word, letters) for one in worked]
    found.sort(key=lambda one: one.more)
    rows = [replace(one, cells=(one.label, *one.cells[1:])) for one in found]
    return replace(leaflet, heights=Heights(head, tuple(rows)))


def _setting(
    leaflet: Leaflet,
    said: Voice,
    checked: Checked,
    parts: Sequence[Adjustable],
    one: Worked,
    word: str,
    letters: Sequence[str],
) -> Setting:
    work = one.altered.checked.work
    assert work is not None
    measured = replace(one.altered.measured, yarn=one.altered.yarn)
    then = voice(work, leaflet.terms, said.counts)
    key = f"{word}{'' if abs(one.more) == 1 else 's'}_{'more' if one.more > 0 else 'fewer'}"
    rise = "" if one.rise_mm is None else said.say(
        "taller" if one.rise_mm > 0 else "shorter", by=amounts.length(abs(one.rise_mm))
    )  # fmt: skip
    cells = ("", _run(adjustables(one.altered.checked)), rise, *_rest(said, measured, letters, False))
    folder = folder_of(checked.source.file)
    printed = marked(then, measured, pieces(then, work, measured, folder, {}))
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
            tuple(step.text for step in finishing(then, folder, {}) if isinstance(step, Telling)),
        ),
    )


def _changed(before: Sequence[Piece], now: Sequence[Piece]) -> list[Piece]:
    """The pieces that say something else now."""
    return [
        one
        for was, one in zip(before, now, strict=True)
        if (was.about, was.start, was.items) != (one.about, one.start, one.items)
    ]


def _run(parts: Sequence[Adjustable]) -> str:
    return ", ".join(
        dict.fromkeys(str(one.first) if one.first == one.last else f"{one.first}–{one.last}" for one in parts)
    )


def _differs(measured: Measured, worked: Sequence[Worked], letter: str) -> bool:
    now = [need.grams or need.metres for need in measured.yarn[0] if need.yarn == letter]
    return any(
        now != [need.grams or need.metres for need in one.altered.yarn[0] if need.yarn == letter]
        for one in worked
    )


def _rest(said: Voice, measured: Measured, letters: Sequence[str], written: bool) -> tuple[str, ...]:
    """Yarn by yarn, and the time (of the largest size). written: the pattern as written."""
    cells = []
    for letter in letters:
        needs = [next(need for need in size if need.yarn == letter) for size in measured.yarn]
        cells.append(_grams(said, needs, written and all(need.weighed for need in needs)))
    cells.append(sentence(amounts.about_hours(measured.hours[-1].practised)))
    return tuple(cells)


def _grams(said: Voice, needs: Sequence[YarnNeed], weighed: bool) -> str:
    """`about 61 g (2¼ oz)`; one a size: `about 73 (90, 107, 123) g`. Without grams, in metres.

    weighed: the author weighed just this, so that it isn't "about".
    """
    grams = [need.grams for need in needs if need.grams is not None]
    if len(grams) < len(needs):
        metres = [need.metres for need in needs if need.metres is not None]
        return amounts.about_metres(metres[-1]) if len(metres) == len(needs) else ""
    if len(grams) == 1:
        amount = amounts.weight(grams[0].middle)
    else:
        amount = f"{per_size([f'{band.middle:.0f}' for band in grams])} g"
    return amount if weighed else said.say("about", amount=amount)
