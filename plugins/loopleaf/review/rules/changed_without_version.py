"""The counts differ from those that were published last, and the version is still the same.

What: A build remembers each published pattern's version and the counts of its rounds (in `.loopleaf`, beside
the collection). Where a count has changed since then and the version hasn't, two different patterns would
bear the same number.

Why it matters: A maker has the old booklet at home. They can't see that it was mended, and whoever helps them
looks at another text under the same name.

Wrong:

    version: 1.0.0
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8}

Right:

    version: 1.0.1
    changes:
      - {date: 2026-11-05, version: 1.0.1, note: Round 1 has eight stitches.}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8}

When to ignore: Never; a pattern without `version` isn't compared. The build says it until the version
changes.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from ...pattern import Finding, Source, Suggestion
from ..rule import name_of, rule


@dataclass(frozen=True, slots=True)
class Published:
    """What a pattern was published as: its version, and by piece and round the counts as printed."""

    version: str
    counts: Mapping[str, Mapping[str, str]] = field(default_factory=dict)


def changed(source: Source, before: Published, now: Published) -> Iterator[Finding]:
    """The warning that counts changed under the same version, or none. before: as it was published last."""
    if not now.version or now.version != before.version or now.counts == before.counts:
        return
    piece, label, old, new = next(_differing(before, now))
    yield Finding(
        rule=name_of(__name__),
        severity="warning",
        file=source.file,
        location=source.locate(("version",)),
        message=f"Counts have changed since version {now.version} was published, and the version hasn't.",
        working=f"In “{piece}”, {label} had {old or 'no count'}, and has {new or 'none'} now.",
        suggestion=Suggestion("Raise “version”, and say under “changes” what was mended.", None, "fill-in"),
        piece=piece,
    )


def _differing(before: Published, now: Published) -> Iterator[tuple[str, str, str, str]]:
    """Piece, round, old and new count of all that differs, in the order of the pattern."""
    for piece in (*now.counts, *(name for name in before.counts if name not in now.counts)):
        old, new = before.counts.get(piece, {}), now.counts.get(piece, {})
        for label in (*new, *(one for one in old if one not in new)):
            if old.get(label, "") != new.get(label, ""):
                yield piece, label, old.get(label, ""), new.get(label, "")
    yield "", "", "", ""


RULE = rule(__name__, __doc__, "warning")
