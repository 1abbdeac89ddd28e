"""The leaflet of a pattern: from the checked pattern to everything that a page or a booklet prints."""

from collections.abc import Iterator, Sequence
from datetime import date

from .. import trade
from ..alter import one_size
from ..draw.step_uses import uses
from ..fabric import Made, PatternWork, WorkedRound
from ..measure import Measured, measure, reason, to_learn
from ..notation.tree import Chain
from ..review import Checked, slug
from .leaflet_amounts import amounts_note
from .leaflet_drawings import Drawn, drawn, of_a_piece, of_the_finishing
from .leaflet_finishing import finishing, variations
from .leaflet_heights import Height, heights_worked, in_one_size, with_heights
from .leaflet_marks import marked
from .leaflet_materials import facts, gauges, hooks, made, sizes, yarns
from .leaflet_parts import Caution, Change, Leaflet, Level, Licence, Piece, SizePage, Special, Terms
from .leaflet_pictures import cover_picture, folder_of, more_pictures
from .leaflet_pieces import pieces
from .leaflet_rounds import anchor_of
from .leaflet_short import abbreviations
from .leaflet_tables import tables
from .leaflet_voice import Voice, sentence, voice
from .settings import Settings

_LANGUAGES: dict[Terms, str] = {"US": "en-US", "UK": "en-GB"}


def leaflet(checked: Checked, terms: Terms, settings: Settings) -> Leaflet:
    """Set out a pattern in one terminology.

    The file's path as checked is taken as its path below the collection's folder. Raises ValueError for a
    pattern that can't be published: it wasn't worked, or has an error.
    """
    work = _publishable(checked)
    measured = measure(work)
    made_out = _set_out(checked, work, measured, drawn(work, measured), terms, settings)
    return with_heights(made_out, settings, checked, work, measured, heights_worked(checked))


def leaflets(
    checked: Checked, settings: Settings, offered: Sequence[Height] | None = None
) -> dict[Terms, Leaflet]:
    """The same in both terminologies, measured and drawn once. offered: its heights, if they are worked."""
    work = _publishable(checked)
    measured = measure(work)
    figures = drawn(work, measured)
    heights = heights_worked(checked) if offered is None else offered
    return {
        terms: with_heights(
            _set_out(checked, work, measured, figures, terms, settings),
            settings,
            checked,
            work,
            measured,
            heights,
        )
        for terms in _LANGUAGES
    }


def leaflets_by_size(
    checked: Checked, settings: Settings, offered: Sequence[Height] | None = None
) -> dict[str, dict[Terms, Leaflet]]:
    """Of a pattern in several sizes each size alone, by its name; {} for one that has a single size.

    offered: the pattern's heights, if they are worked.
    """
    work = _publishable(checked)
    found: dict[str, dict[Terms, Leaflet]] = {}
    if work.pattern.size_count < 2:
        return found
    worked = heights_worked(checked) if offered is None else offered
    for at, size in enumerate(work.pattern.sizes):
        alone = one_size(work, at)
        measured = measure(alone)
        figures = drawn(alone, measured)
        heights = in_one_size(worked, at)
        found[size] = {
            terms: with_heights(
                _set_out(checked, alone, measured, figures, terms, settings, size),
                settings,
                checked,
                alone,
                measured,
                heights,
            )
            for terms in _LANGUAGES
        }
    return found


def _publishable(checked: Checked) -> PatternWork:
    if checked.work is None or checked.has_errors:
        raise ValueError(f"{checked.source.file} can't be published as it stands")
    return checked.work


def _set_out(
    checked: Checked,
    work: PatternWork,
    measured: Measured,
    figures: Drawn,
    terms: Terms,
    settings: Settings,
    alone: str = "",
) -> Leaflet:
    pattern = work.pattern
    said = voice(work, terms, settings.counts)
    folder = folder_of(checked.source.file)
    level = _level(said, measured)
    name = slug(checked.source.file) + (f"-{anchor_of(alone)}" if alone else "")
    drawings = {piece.name: tuple(of_a_piece(said, work, piece, figures, name)) for piece in work.pieces}
    printed = marked(said, measured, pieces(said, work, measured, folder, drawings))
    specials = _specials(said)
    gauge = gauges(said)
    worked_out = any(one.worked_out for piece in printed for one in piece.rounds)
    return Leaflet(
        title=said.say("size_alone", title=said.prose(pattern.title), size=alone)
        if alone
        else said.prose(pattern.title),
        slug=name,
        terms=terms,
        lang=_LANGUAGES[terms],
        summary=said.prose(pattern.summary),
        designer=pattern.designer,
        picture=cover_picture(said, work, measured, figures.picture, folder),
        made=made(said),
        sizes=sizes(said, measured),
        facts=facts(said, measured, level.name),
        level=level,
        cautions=tuple(
            Caution(
                trade.say(one.caution.title, terms),
                trade.say(one.caution.text, terms),
                tuple(f"{row.name} ({row.says})" for row in one.caution.standards),
            )
            for one in measured.cautions
        ),
        yarns=yarns(said, measured),
        yarn_note=amounts_note(said, measured),
        hooks=hooks(said),
        notions=tuple(said.prose(notion) for notion in pattern.materials.notions),
        gauge=gauge,
        abbreviations=abbreviations(said, work, _lines(printed, specials, gauge)),
        specials=specials,
        notes=(*(said.told(note) for note in pattern.notes), *_first_stitch(said, work)),
        pieces=printed,
        finishing=finishing(said, folder, of_the_finishing(said, work, figures)),
        variations=variations(said),
        care=said.prose(pattern.care),
        licence=_licence(said),
        contact=pattern.contact or settings.contact,
        changes=tuple(_changes(said)),
        version=pattern.version,
        published=day(pattern.published, terms) if pattern.published else "",
        foot=(said.words["worked_out"],) if worked_out else (),
        techniques=tuple(sorted(uses(work))),
        ink=next((yarn.colour for yarn in pattern.materials.yarns.values() if yarn.colour), ""),
        video=pattern.video.url if pattern.video else "",
        words=said.words,
        edition=_edition(said),
        video_length=pattern.video.length if pattern.video else "",
        more_pictures=more_pictures(said, folder),
        tables=tables(said, measured),
        size_pages=tuple(_size_pages(checked, alone)),
    )


def _size_pages(checked: Checked, alone: str) -> Iterator[SizePage]:
    """The other pages of a pattern in several sizes: all sizes together first, then each but this one."""
    pattern, name = checked.source.pattern, slug(checked.source.file)
    if pattern is not None and pattern.size_count > 1:
        if alone:
            yield SizePage("", name)
        yield from (SizePage(size, f"{name}-{anchor_of(size)}") for size in pattern.sizes if size != alone)


def _changes(said: Voice) -> Iterator[Change]:
    """The newest first, and at the end the day of the first publication, unless a change tells of it."""
    pattern = said.pattern
    for change in sorted(pattern.changes, key=lambda change: change.date, reverse=True):
        yield Change(day(change.date, said.terms), change.version, said.told(change.note))
    if pattern.published and all(change.date != pattern.published for change in pattern.changes):
        version = "" if pattern.changes else pattern.version
        yield Change(day(pattern.published, said.terms), version, said.words["first_published"])


def _edition(said: Voice) -> str:
    """The version and its day: that of the change that brought it, else that of the publication."""
    pattern = said.pattern
    brought = next((one.date for one in pattern.changes if one.version == pattern.version), pattern.published)
    date = day(brought, said.terms) if brought else ""
    if not pattern.version:
        return said.say("published_on", date=date) if date else ""
    if not date:
        return f"{said.words['version']} {pattern.version}"
    return said.say("version_of", version=pattern.version, date=date)


def day(when: date, terms: Terms) -> str:
    """`November 5, 2026` in US, `5 November 2026` in UK."""
    month = _MONTHS[when.month - 1]
    return f"{month} {when.day}, {when.year}" if terms == "US" else f"{when.day} {month} {when.year}"


_MONTHS = (
    "January", "February", "March", "April", "May", "June",
    "July", "August", "September", "October", "November", "December",
)  # fmt: skip


def _level(said: Voice, measured: Measured) -> Level:
    """The author's own level, else the one worked out; the reasons are those of the techniques either way."""
    key = said.pattern.level or measured.level.level
    row = next(row for row in trade.levels() if row.key == key)
    reasons = tuple(reason(use, said.pattern, said.terms) for use in measured.level.because)
    meaning, learn = trade.say(row.meaning, said.terms), to_learn(measured.level, said.terms)
    return Level(row.name.lower(), meaning, reasons, f"level-{row.key}", learn)


def _specials(said: Voice) -> tuple[Special, ...]:
    return tuple(
        Special(
            sentence(said.prose(name)),
            special.short if special.short.lower() != name.lower() else "",
            said.text(special.work) if special.work else "",
            said.prose(special.text),
            f"special-{anchor_of(name)}",
        )
        for name, special in said.pattern.special_stitches.items()
    )


def _lines(printed: Sequence[Piece], specials: Sequence[Special], gauge: Sequence[str]) -> list[str]:
    """Every text of the leaflet that may abbreviate."""
    rounds = [one for piece in printed for one in piece.rounds]
    texts = [text for one in rounds for text in (one.text, one.count, one.side)]
    return [*texts, *(special.work for special in specials), *gauge, *(piece.start for piece in printed)]


def _first_stitch(said: Voice, work: PatternWork) -> Iterator[str]:
    """Said once, where it matters: a beginning chain that doesn't count stands on no stitch."""
    ways = {
        said.pattern.pieces[piece.name].worked.startswith("rows")
        for piece in work.pieces
        for one in piece.rounds[1:]
        if one.settled is not None
        and one.settled.steps
        and isinstance(one.settled.steps[0], Chain)
        and _stands_on_none(next((size for size in one.sizes if size is not None), None))
    }
    if False in ways:
        yield said.words["first_stitch"]
    if True in ways:
        yield said.words["first_stitch_rows"]


def _stands_on_none(worked: WorkedRound | None) -> bool:
    first = next((one for one in worked.made if isinstance(one, Made)), None) if worked else None
    return first is not None and first.role == "chain"


def _licence(said: Voice) -> Licence | None:
    spdx = said.pattern.licence
    if not spdx:
        return None
    row = next((row for row in trade.licences() if row.spdx.lower() == spdx.lower()), None)
    if row is None:
        return Licence(spdx.removeprefix("LicenseRef-"), said.words["own_licence"])
    return Licence(row.name, trade.say(row.meaning, said.terms), row.url)
