"""The moments of the video don't follow the rounds.

What: Down a piece's rounds, and down the finishing, the moments of the video go forward, and none lies behind
the video's end.

Why it matters: A link that jumps to the wrong place costs a maker more time than no link.

Wrong:

    video: {url: "https://example.org/coaster", length: "12:30"}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8, video: "6:10"}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16, video: "1:40"}

Right:

    video: {url: "https://example.org/coaster", length: "12:30"}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8, video: "1:40"}
      - {round: 2, work: "ch 1, 2 hdc in each st around, join", count: 16, video: "6:10"}

When to ignore: When the video shows the rounds in another order.
"""

from collections.abc import Iterator

from ...pattern import Finding, Path, Related
from ..rule import Words, rule, told
from ..subject import Subject

Moment = tuple[Path, str, str, str]
"""Where it stands, the moment, the piece, the round's label."""


def find(subject: Subject) -> Iterator[Finding]:
    video = subject.pattern.video
    end = _seconds(video.length) if video and video.length else None
    for moments in _lists(subject):
        before: Moment | None = None
        for moment in moments:
            path, said, piece, label = moment
            place = subject.source.locate(path)
            if end is not None and _seconds(said) > end:
                words = Words(
                    f"{said} lies behind the end of the video, which is {video and video.length} long."
                )
                yield told(__name__, "warning", subject, place, words, piece, label)
                continue
            if before is not None and _seconds(said) < _seconds(before[1]):
                words = Words(
                    f"{said} comes before {before[1]}, the moment of the step above.",
                    related=(Related(subject.source.locate(before[0]), "the step above stands here"),),
                )
                yield told(__name__, "warning", subject, place, words, piece, label)
            before = moment


def _lists(subject: Subject) -> Iterator[list[Moment]]:
    """The moments of each piece, and of the finishing, as they stand."""
    for name, piece in subject.pattern.pieces.items():
        yield [
            (
                ("pieces", name, piece.entries_field, number, "video"),
                entry.video,
                name,
                str(entry.run.first) if entry.run else "",
            )
            for number, entry in enumerate(piece.entries)
            if entry.video
        ]
    yield [
        (("finishing", number, "video"), step.video, "", "")
        for number, step in enumerate(subject.pattern.finishing)
        if step.video
    ]


def _seconds(moment: str) -> int:
    total = 0
    for part in moment.split(":"):
        total = total * 60 + int(part)
    return total


RULE = rule(__name__, __doc__, "warning", find)
