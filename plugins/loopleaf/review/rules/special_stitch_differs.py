"""What the text of a special stitch says differs from how it is worked.

What: The text tells so many stitches of a kind, or writes the stitch out in brackets, and `work` makes
another number of them.

Why it matters: One maker follows the words, another the line: two that made the same pattern hold different
pieces. The counts here are those of `work`.

Wrong:

    special stitches:
      shell: {short: sh, work: 5 dc in same st, text: "6 dc in the same stitch."}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (sc in next st, sk next st, sh in next st, sk next st) x 2, join, fasten off"}

Right:

    special stitches:
      shell: {short: sh, work: 5 dc in same st, text: "5 dc in the same stitch."}
    rounds:
      - {round: 1, work: "ch 1, 8 hdc in ring, join", count: 8}
      - {round: 2, work: "ch 1, (sc in next st, sk next st, sh in next st, sk next st) x 2, join, fasten off"}

When to ignore: When the text speaks of another stitch of the same kind.
"""

import re
from collections.abc import Iterator

from ...notation import Vocabulary, parse
from ...notation.tree import Chain, Group, Next, Step, Work
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject, quote

_GATHERED = ("tog", "bobble", "cluster", "popcorn", "puff")
_BRACKETS = re.compile(r"\([^()]*,[^()]*\)")
_NUMBER = re.compile(r"\b(\d+|two|three|four|five|six|seven|eight|nine|ten)[ -]", re.IGNORECASE)
_WORDS_OF_A_NAME = 3

Amounts = tuple[tuple[str, int], ...]
"""Stitches in the order made: (kind, number), neighbours of a kind added up."""


def find(subject: Subject) -> Iterator[Finding]:
    vocabulary = subject.work.vocabulary
    for name, own in subject.pattern.special_stitches.items():
        line = parse(own.work, vocabulary).line if own.work and own.text else None
        made = _amounts(line.steps) if line is not None else None
        if not made:
            continue
        for start, end in _differing(own.text, made, vocabulary):
            words = Words(
                message=f"{quote(own.text[start:end])} is said of the special stitch “{name}”, and it is "
                f"worked as {quote(own.work or '')}.",
                suggestion=Suggestion("Say the same in the text and in `work`.", None, "fill-in"),
            )
            at = subject.source.locate(("special stitches", name, "text"), start, end)
            yield told(__name__, "warning", subject, at, words)
            break


def _differing(text: str, made: Amounts, vocabulary: Vocabulary) -> Iterator[tuple[int, int]]:
    """Stretches of the text that tell the whole stitch in another way than it is made."""
    written = [
        (found.span(), amounts)
        for found in _BRACKETS.finditer(text)
        if (amounts := _read(f"{found.group()} in same st", vocabulary))
    ]
    if len(written) == 1 and len(made) > 1 and written[0][1] != made:
        yield written[0][0]
    stitches = [one for one in made if one[0] != "chain"]
    if len(stitches) != 1:
        return
    kind, number = stitches[0]
    told_of = [(span, many) for span, (one, many) in _numbers(text, vocabulary) if one == kind]
    # A chain at the beginning may be counted among them.
    known = {number, number + 1} if made[0][0] == "chain" else {number}
    if len(told_of) == 1 and told_of[0][1] not in known:
        yield told_of[0][0]


def _numbers(text: str, vocabulary: Vocabulary) -> Iterator[tuple[tuple[int, int], tuple[str, int]]]:
    """Every `5 dc` of the text: where it stands, with its kind and number."""
    for found in _NUMBER.finditer(text):
        behind = [word.end() for word in re.finditer(r"[^\W\d]+", text[found.end() :])][:_WORDS_OF_A_NAME]
        for length in reversed(behind):
            end = found.end() + length
            amounts = _read(f"{text[found.start() : end]} in same st", vocabulary)
            if amounts and len(amounts) == 1:
                yield (found.start(), end), amounts[0]
                break


def _read(text: str, vocabulary: Vocabulary) -> Amounts | None:
    parsed = parse(text, vocabulary)
    return _amounts(parsed.line.steps) if parsed.line is not None and not parsed.problems else None


def _amounts(steps: tuple[Step, ...]) -> Amounts | None:
    """What the steps make; None where they hold anything but stitches and chains."""
    found: list[tuple[str, int]] = []
    for step in steps:
        match step:
            case Group(steps=inside):
                within = _amounts(inside)
                if within is None:
                    return None
                found += within
            case Chain(length=length):
                found.append(("chain", length.sizes[0] or 0))
            case Work(stitch=stitch, each=each, places=places) if stitch.kind and not stitch.name:
                number = stitch.number if stitch.form in _GATHERED else each.sizes[0] or 1
                if places and isinstance(places[0], Next):
                    number *= places[0].count.sizes[0] or 1
                found.append((stitch.kind, number))
            case _:
                return None
    amounts: list[tuple[str, int]] = []
    for kind, number in found:
        if amounts and amounts[-1][0] == kind:
            amounts[-1] = (kind, amounts[-1][1] + number)
        else:
            amounts.append((kind, number))
    return tuple(amounts)


RULE = rule(__name__, __doc__, "warning", find, of_sound_work=True)
