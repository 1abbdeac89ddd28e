"""Print's own words for rows that follow a rule, as the fields that say the same."""

import re
from typing import Any

from .reading import plain_text, unfit

_AGAIN = re.compile(
    r"(?:rep(?:eat)?|(?:work )?(?:the )?(?:same )?as(?: for)?) (?:the )?"
    r"(?:(?:(?:rows?|rounds?|rnds?) |r)(\d+)(?:\s*(?:and|to|-|–)\s*r?(\d+))?"
    r"|(\d+)(?:st|nd|rd|th) (?:row|round|rnd)|(?:last|previous|prev)(?: (?P<few>\d|two|three|four))? "
    r"(?:row|round|rnd)s?)(?P<often> (?:once|twice|(?:\d{1,4}|[a-z]{3,6})(?: more)? times)(?: more)?)?"
    r"(?:,? until (?:piece |work |it )?measures (?P<until>.+?)(?: from [a-z ]+)?)?"
    r"(?:[.,;]?\s+(?:and |but )?"
    r"(?P<close>(?:fasten off|turn|join|do not turn|break yarn|cut yarn|(?:inc|dec)(?:rease)? 1 )\b.*?))?\.?",
    re.IGNORECASE,
)
LONGEST = 200
"""So many characters say at most that a row is worked again."""

_LABEL = re.compile(
    r"^(?:rows?|rounds?|rnds?|r) ?(\d{1,4})(?:-\d{1,4})? ?(?:\((?:RS|WS)\) ?)?: *", re.IGNORECASE
)
_SO_MANY = re.compile(r",? (?:for|over) (?:the )?(?:next )?(\d{1,4}) (?:rows|rounds|rnds)\.?$", re.IGNORECASE)
_CLOSES = re.compile(
    r"(?:fasten off|turn|join|do not turn|break yarn|cut yarn"
    r"|(?:inc|dec|increase|decrease) 1 (?:st|stitch) at (?:each end|both ends|beg|beginning|start|end))\b.*",
    re.IGNORECASE,
)
_EVERY_OTHER = re.compile(
    r"(\d+) and (?:every|each) (?:other|alt(?:ernate)?|foll(?:owing)? alt(?:ernate)?) (?:row|round|rnd)",
    re.IGNORECASE,
)


_COUNT = re.compile(
    r"(?:[.,;:]\s+|\s*\(|\s*\[|\s+[-–—]\s+|[–—])"
    r"(?P<count>(?P<number>\d{1,5})(?: ?[a-z][a-z0-9 ,-]{0,40})?)[)\]]?[.\s]*$",
    re.IGNORECASE,
)
_NO_COUNT = re.compile(r"\b(?:times?|twice|once|more|until|rows?|rounds?|rnds?|inch|cm)\b", re.IGNORECASE)


def _without_its_count(entry: dict[Any, Any], work: str) -> tuple[str, str]:
    """`rep row 2. 6 sc`, `as row 2 (6)`: the words before the count, and the count; "" for none, or where the
    entry has another one.
    """
    said = _COUNT.search(work) if len(work) <= LONGEST else None
    before = work[: said.start()] if said is not None else work
    if said is None or _NO_COUNT.search(said["count"]) or _AGAIN.fullmatch(before) is None:
        return work, ""
    if said["count"].isdigit() and said[0].strip()[0] not in ".([":  # `rows 2 – 5`
        return work, ""
    own = plain_text(entry.get("count"))
    return (before, said["count"]) if own is None or own.split()[:1] == [said["number"]] else (work, "")


def said_in_print(entry: dict[Any, Any]) -> dict[Any, Any]:
    """An entry with `rep rows 3 and 4` as `repeat`, and `2 and every other row` as `every: 2`.

    Only rows that follow each other are read so; anything else is left as it stands.
    """
    made = dict(entry)
    work = plain_text(entry.get("work")) or ""
    label = _LABEL.match(work)
    work = work[label.end() :] if label is not None else work
    work, count = _without_its_count(entry, work)
    again = _AGAIN.fullmatch(work) if len(work) <= LONGEST else None
    if again is not None and not {"repeat", "as", "from"} & set(entry):
        one = again[1] or again[3] or _before(entry)
        first, last = int(one[:6]), int((again[2] or one)[:6])
        first = max(0, first - (_number(again["few"] or "") or 1) + 1)
        follow = last in (first, first + 1) or "-" in again[0] or " to " in again[0]
        if first and (follow or again["few"]):
            _holds(entry, again[0], last - first + 1, again["often"] or "")
            del made["work"]
            if count and "count" not in entry:
                made["count"] = count
            made["repeat"] = str(first) if first == last else f"{first}-{last}"
            if again["until"] and "until" not in entry:
                made["until"] = again["until"]
            if again["close"]:
                made["work"] = again["close"]
    for one, several in (("row", "rows"), ("round", "rounds")):
        other = _EVERY_OTHER.fullmatch(plain_text(entry.get(one)) or "")
        if other is not None and "every" not in entry and several not in entry:
            del made[one]
            made |= {several: f"{other[1]} on", "every": 2}
    return made


_NUMBERS = ("", "once", "twice", "three", "four", "five", "six", "seven", "eight", "nine", "ten")


def _number(word: str) -> int | None:
    """A number in figures or as a word up to ten; None for anything else."""
    word = {"one": "once", "two": "twice"}.get(word.lower(), word.lower())
    return int(word) if word.isdigit() else (_NUMBERS.index(word) if word in _NUMBERS[1:] else None)


def _holds(entry: dict[Any, Any], said: str, several: int, often: str) -> None:
    """Raises where `rep rows 2 and 3 three more times` isn't as many rows as the entry has."""
    times = _number(often.split()[0]) if often else None
    for name in ("rows", "rounds", "row", "round"):
        run = re.fullmatch(r"(\d{1,6})(?:\s*[-–]\s*(\d{1,6}))?", plain_text(entry.get(name)) or "")
        if times is None or run is None:
            continue
        first, last = int(run[1]), int(run[2] or run[1])
        if last - first + 1 != times * several:
            rows = name if name.endswith("s") else f"{name}s"
            fits = f"{first}-{first + times * several - 1}" if times * several > 1 else str(first)
            worked = f"{times} × {several} = {times * several} {rows}"
            raise unfit(
                f"“{said}” is {worked}, and {run[0]} is {last - first + 1}.",
                f"{rows}: {fits}",
            )


def label_of(work: str) -> int | None:
    """The number in `Row 2 (RS): …`, a label pasted with its line; None where there is none."""
    label = _LABEL.match(work)
    return None if label is None else int(label[1])


def without_so_many(work: str, rounds: int) -> str:
    """`sc in each st around for 3 rounds` without its end, where these are three rounds."""
    said = _SO_MANY.search(work)
    return work[: said.start()] if said is not None and int(said[1]) == rounds else work


_AFTER_LAST = re.compile(
    r"[,.;]? *(?:and |then )?(?:fasten off|finish off|end off|break yarn|cut yarn)"
    r" (?:after|at end of|at the end of) (?:the )?last (?:row|round|rnd)\b.*$",
    re.IGNORECASE,
)


def before_the_last(work: str, last: bool) -> str:
    """`sc in each st around. Fasten off after last round.` as all but the last of several rounds work it."""
    return work if last or "last" not in work.lower() else _AFTER_LAST.sub("", work)


def closes(work: str) -> bool:
    """Whether a line only ends what it stands behind: `fasten off`, `turn`."""
    return _CLOSES.fullmatch(work) is not None


def ends_so(work: str, more: str) -> bool:
    """Whether a line closes already as `rep row 2, turn` or `rep rnd 3, join` says once more of it."""
    word = more.split()[0].strip(".,;").lower()
    again = rf"(?:^|[,.;])\s*{word}\b[^,.;]*(?:[,.;]\s*turn)?[.\s]*$"
    return word in ("turn", "join") and re.search(again, work, re.IGNORECASE) is not None


def _before(entry: dict[Any, Any]) -> str:
    """The number of the row before an entry's first, as text; `0` where it has none."""
    for name in ("row", "rows", "round", "rounds"):
        number = re.match(r"\d{1,6}", plain_text(entry.get(name)) or "")
        if number is not None:
            return str(int(number[0]) - 1)
    return "0"
