"""A piece's rounds as they are printed: consecutive ones alike stand once, repeated rows are called by
number.
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from ..fabric import PieceWork, RoundWork
from ..pattern import Entry, Piece
from .leaflet_parts import Heading, Picture, Round, Telling
from .leaflet_pictures import author_picture
from .leaflet_voice import Voice, by_kind, listed, per_size

Item = Heading | Telling | Round


def items(voice: Voice, work: PieceWork, piece: Piece, folder: str) -> tuple[Item, ...]:
    """Headings, tellings and rounds in order. folder: of the pattern's file, for pictures beside it."""
    name = anchor_of(work.name)
    printed: list[Item] = []
    waiting = list(enumerate(piece.entries))
    for group in _by_entry(work.rounds):
        at = group[0].plan.entry
        printed += _before(voice, name, waiting, at, folder)
        entry = piece.entries[at]
        rounds = _called_by_number(voice, name, group, work) or [
            _round(voice, name, one, first=one is work.rounds[0]) for one in group
        ]
        printed += [_dressed(voice, rounds[0], entry, folder), *rounds[1:]]
    printed += _before(voice, name, waiting, len(piece.entries), folder)
    return tuple(_merged(voice, printed))


def anchor_of(name: str) -> str:
    """A piece's name as an address: `loop band` is `loop-band`."""
    return "-".join("".join(sign if sign.isalnum() else " " for sign in name.lower()).split())


def _by_entry(rounds: Sequence[RoundWork]) -> Iterator[list[RoundWork]]:
    """Neighbouring rounds of one entry."""
    group: list[RoundWork] = []
    for one in rounds:
        if group and group[-1].plan.entry != one.plan.entry:
            yield group
            group = []
        group.append(one)
    if group:
        yield group


def _before(
    voice: Voice, piece: str, waiting: list[tuple[int, Entry]], at: int, folder: str
) -> Iterator[Item]:
    """The headings and tellings that stand before an entry, each once."""
    while waiting and waiting[0][0] < at:
        index, entry = waiting.pop(0)
        if entry.kind == "heading":
            text = voice.prose(entry.heading or "")
            yield Heading(text, f"{piece}-{anchor_of(text)}-{index}")
        elif entry.kind in ("text", "stuff"):
            text = entry.text if entry.text is not None else entry.stuff.text if entry.stuff else ""
            picture = author_picture(voice, entry.picture, folder)
            said = voice.told(" ".join(part for part in (text, entry.note) if part))
            yield Telling(said, picture, *video_at(voice, entry.video))


def _round(voice: Voice, piece: str, one: RoundWork, first: bool) -> Round:
    plan = one.plan
    count, worked_out = _count(voice, one)
    rows = plan.word == "row"
    word = voice.words[plan.word]
    return Round(
        anchors=(f"{piece}-{plan.label}",),
        word=plan.word,
        label=f"{word} {plan.label}",
        number=plan.label,
        text=voice.line(one.settled) if one.settled is not None else "",
        count=voice.counted(count),
        unit="sts" if count and voice.counts != "sts" and not by_kind(count) else "",
        worked_out=worked_out,
        side=plan.side or (one.side if first and rows else ""),
        note=_sizes_only(voice, plan.sizes),
    )


def _dressed(voice: Voice, round: Round, entry: Entry, folder: str) -> Round:
    """The entry's own note, picture and moment of the video, at the first of its rounds."""
    parts = (round.note, voice.told(entry.note), _how_far(voice, entry))
    note = " ".join(part for part in parts if part)
    moment, address = video_at(voice, entry.video)
    return replace(
        round,
        note=note,
        picture=author_picture(voice, entry.picture, folder),
        video=moment,
        video_url=address,
    )


def _how_far(voice: Voice, entry: Entry) -> str:
    """`Go on so until the piece measures 20 cm`, where no gauge tells how many rows that are."""
    if entry.until is None or not voice.pattern.gauge_not_critical:
        return ""
    if entry.end and entry.word == "row":
        return voice.say("until_it_measures_ending", length=str(entry.until), side=entry.end)
    return voice.say("until_it_measures", length=str(entry.until))


def video_at(voice: Voice, moment: str | None) -> tuple[str, str]:
    """A moment of the pattern's video and the address that leads there; "" for none."""
    video = voice.pattern.video
    return str(moment or ""), f"{video.url}#t={seconds(str(moment))}" if video and moment else ""


def seconds(moment: str) -> int:
    """`6:10` is 370, `1:00:05` is 3605."""
    total = 0
    for part in moment.split(":"):
        total = total * 60 + int(part)
    return total


def _count(voice: Voice, one: RoundWork) -> tuple[str, bool]:
    """The count as printed, and whether it was only worked out."""
    if one.stated is not None and one.stated.entries:
        return voice.count(one.stated), False
    if one.stated is not None and one.stated.total is not None:
        return per_size(["-" if size is None else str(size) for size in one.stated.total.sizes]), False
    counts = ["-" if size is None else str(size.count) for size in one.sizes]
    if not counts or set(counts) <= {"0", "-"}:
        return "", False
    return per_size(counts), True


def _sizes_only(voice: Voice, sizes: tuple[int, ...] | None) -> str:
    if sizes is None:
        return ""
    named = listed(voice, [voice.pattern.sizes[size] for size in sizes])
    return voice.say("sizes_only" if len(sizes) > 1 else "one_size_only", sizes=named)


def _called_by_number(
    voice: Voice, piece: str, group: Sequence[RoundWork], work: PieceWork
) -> list[Round] | None:
    """`Rows 10–25: repeat rows 2–9 twice more`, where nothing about the rows differs; None where something
    does.
    """
    if group[0].plan.by_rule != "repeat":
        return None
    written = {one.plan.label: one for one in work.rounds}
    named = [one.plan.again for one in group]
    cycle = list(dict.fromkeys(named))
    whole, rest = divmod(len(named), len(cycle))
    same = all(
        label in written and written[label].settled == one.settled and _worked(written[label]) == _worked(one)
        for label, one in zip(named, group, strict=True)
    )
    if rest or not same or named != cycle * whole:
        return None
    rounds = labelled(voice, group[0].plan.word, cycle[0], cycle[-1]).lower()
    key = {1: "repeat_once", 2: "repeat_twice"}.get(whole, "repeat_times")
    plain = _round(voice, piece, group[-1], first=False)
    first, last = group[0].plan.label, group[-1].plan.label
    count = plain.count if len({tuple(_worked(one)) for one in group}) == 1 else ""
    return [
        replace(
            plain,
            anchors=tuple(f"{piece}-{one.plan.label}" for one in group),
            label=labelled(voice, plain.word, first, last),
            number=_numbers(first, last),
            text=voice.say(key, rounds=rounds, times=whole),
            count=count,
            worked_out=bool(count) and any(_count(voice, written[label])[1] for label in cycle),
            side="",
        )
    ]


def _worked(one: RoundWork) -> list[int | None]:
    return [None if size is None else size.count for size in one.sizes]


def labelled(voice: Voice, word: str, first: str, last: str) -> str:
    """`Round 3`, `Rounds 7–16`."""
    if first == last:
        return f"{voice.words[word]} {first}"
    return f"{voice.words[f'{word}s_label']} {_numbers(first, last)}"


def _numbers(first: str, last: str) -> str:
    return first if first == last else f"{first}–{last}"


def _merged(voice: Voice, printed: Sequence[Item]) -> Iterator[Item]:
    """Rounds that follow each other and are alike, as one."""
    held: Round | None = None
    for item in printed:
        if held is not None and isinstance(item, Round) and _alike(held, item):
            first, last = held.number.split("–")[0], item.number.split("–")[-1]
            held = replace(
                held,
                anchors=held.anchors + item.anchors,
                label=labelled(voice, held.word, first, last),
                number=_numbers(first, last),
            )
            continue
        if held is not None:
            yield held
        held = item if isinstance(item, Round) else None
        if held is None:
            yield item
    if held is not None:
        yield held


def _alike(one: Round, next: Round) -> bool:
    """Whether the next round needs no line of its own."""
    plain = not (next.note or next.picture or next.video or next.side)
    return plain and (one.word, one.text, one.count, one.worked_out) == (
        next.word,
        next.text,
        next.count,
        next.worked_out,
    )


__all__ = ["Item", "Picture", "anchor_of", "items", "labelled", "seconds", "video_at"]
