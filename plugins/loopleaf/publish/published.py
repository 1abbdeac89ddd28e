"""What each pattern was published as, kept beside the collection from one build to the next."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, replace
from pathlib import Path

from ..review.rules.changed_without_version import Published, changed
from .kept import Worked


def published(worked: Worked) -> Published | None:
    """The version and counts that a pattern's leaflet prints; None for one that isn't published."""
    leaflet = next(iter(worked.leaflets.values()), None)
    if leaflet is None:
        return None
    counts = {piece.name: {one.label: one.count for one in piece.rounds} for piece in leaflet.pieces}
    return Published(leaflet.version, {name: rounds for name, rounds in counts.items() if rounds})


def last(file: Path) -> dict[str, Published]:
    """What the last whole build published, by the patterns' paths; nothing where none is known."""
    try:
        kept = json.loads(file.read_bytes())
        return {source: Published(one["version"], one["counts"]) for source, one in kept.items()}
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return {}


def compared(
    patterns: Iterable[Worked], before: Mapping[str, Published], contents: Mapping[str, bytes]
) -> list[Worked]:
    """The patterns, with a warning where counts have changed and the version hasn't."""
    from ..pattern import load

    done: list[Worked] = []
    for worked in patterns:
        was, now = before.get(worked.source), published(worked)
        if was is not None and now is not None and was.version == now.version and was != now:
            found = changed(load(contents[worked.source], worked.source), was, now)
            worked = replace(worked, findings=(*worked.findings, *found))
        done.append(worked)
    return done


def keep(file: Path, patterns: Iterable[Worked], before: Mapping[str, Published]) -> None:
    """Write down what was published. Under the same version the first counts stay: the warning then stays
    until the version is raised. Patterns that aren't published now keep what they had.
    """
    told = dict(before)
    for worked in patterns:
        now = published(worked)
        if now is not None and (worked.source not in told or told[worked.source].version != now.version):
            told[worked.source] = now
    file.parent.mkdir(parents=True, exist_ok=True)
    text = json.dumps({source: asdict(one) for source, one in sorted(told.items())}, ensure_ascii=False)
    file.write_text(text, encoding="utf-8")
