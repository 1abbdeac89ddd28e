"""The changes tell of a later version than the pattern has, or of versions that go back in time.

What: `version` is the newest of the versions under `changes`, and a later date never has an earlier version.

Why it matters: A maker compares the number on the booklet at home with the one on the page.

Wrong:

    version: 1.0.0
    changes:
      - {date: 2026-11-05, version: 1.1.0, note: Round 1 has eight stitches.}

Right:

    version: 1.1.0
    changes:
      - {date: 2026-11-05, version: 1.1.0, note: Round 1 has eight stitches.}

When to ignore: When an older edition was mended after a newer one.
"""

import re
from collections.abc import Iterator

from ...pattern import Finding, Related
from ..rule import Words, rule, told
from ..subject import Subject

Version = tuple[int, ...]


def find(subject: Subject) -> Iterator[Finding]:
    pattern = subject.pattern
    changes = [
        (str(one.date), version, number)
        for number, one in enumerate(pattern.changes)
        if (version := _version(one.version)) is not None
    ]
    now = _version(pattern.version)
    if not changes:
        return
    _, newest, at = max(changes, key=lambda one: one[1])
    if now is not None and newest > now:
        words = Words(
            message=f"The pattern is version {pattern.version}, and its changes tell of "
            f"{pattern.changes[at].version}.",
            related=(Related(subject.source.locate(("changes", at, "version")), "the later version"),),
        )
        yield told(__name__, "warning", subject, subject.source.locate(("version",)), words)
        return
    for date, version, number in changes:
        later = next((one for one in changes if one[0] < date and one[1] > version), None)
        if later is not None:
            words = Words(
                message=f"Version {pattern.changes[number].version} is dated after "
                f"{pattern.changes[later[2]].version}.",
                related=(Related(subject.source.locate(("changes", later[2], "version")), "dated before"),),
            )
            place = subject.source.locate(("changes", number, "version"))
            yield told(__name__, "warning", subject, place, words)
            return


def _version(said: str) -> Version | None:
    """`1.2.0` as numbers, without noughts at its end; None for anything else."""
    if not re.fullmatch(r"v?\d+(?:\.\d+)*", said.strip()):
        return None
    numbers = [int(part) for part in said.strip().lstrip("v").split(".")]
    while len(numbers) > 1 and not numbers[-1]:
        numbers.pop()
    return tuple(numbers)


RULE = rule(__name__, __doc__, "warning", find)
