"""One-token mistakes in a line of shorthand: each kind gives every way that it can befall the line.

All kinds work on print's own words, US and UK, and know nothing of what a line means.
"""

import re
from collections.abc import Callable, Iterator

Mistake = Callable[[str], Iterator[str]]

NAMES = r"(?:sc|hdc|dc|tr|dtr|trtr|htr)"
COUNTED = r"(?:sts?|chs?|dc|sc|hdc|tr|htr|rows?)"
OTHER_NAME = {"sc": "hdc", "hdc": "dc", "dc": "tr", "tr": "dtr", "dtr": "tr", "trtr": "dtr", "htr": "tr"}


def each_match(pattern: str, new: Callable[[re.Match[str]], str | None]) -> Mistake:
    """Every match replaced, one at a time."""
    compiled = re.compile(pattern)

    def mistake(line: str) -> Iterator[str]:
        for found in compiled.finditer(line):
            put = new(found)
            if put is not None and put != found[0]:
                changed = line[: found.start()] + put + line[found.end() :]
                yield re.sub(r",\s*([,;)\]])", r"\1", changed).strip(", ")

    return mistake


def by_one(pattern: str, step: int, least: int = 1) -> Mistake:
    """The number in group 1 one higher or lower, not below `least`."""

    def new(found: re.Match[str]) -> str | None:
        number = int(found[1]) + step
        if number < least:
            return None
        at, end = found.span(1)
        start = found.start()
        return found[0][: at - start] + str(number) + found[0][end - start :]

    return each_match(pattern, new)


def becomes(pattern: str, text: str) -> Mistake:
    return each_match(pattern, lambda found: found.expand(text))


def steps_of(line: str) -> list[str]:
    """A line cut at its commas, brackets left where they stand."""
    return [step.strip() for step in line.split(",")]


def a_step_lost(line: str) -> Iterator[str]:
    steps = steps_of(line)
    for at, step in enumerate(steps):
        if not re.search(r"[()\[\]*;]", step) and len(steps) > 1:
            yield ", ".join(steps[:at] + steps[at + 1 :])


def a_step_twice(line: str) -> Iterator[str]:
    steps = steps_of(line)
    for at, step in enumerate(steps):
        if not re.search(r"[()\[\]*;]", step):
            yield ", ".join(steps[: at + 1] + steps[at:])


def steps_exchanged(line: str) -> Iterator[str]:
    steps = steps_of(line)
    for at in range(len(steps) - 1):
        one, other = steps[at], steps[at + 1]
        if one != other and not re.search(r"[()\[\]*;]", one + other):
            yield ", ".join([*steps[:at], other, one, *steps[at + 2 :]])


def an_ordinal(step: int, before: str, behind: str) -> Mistake:
    """`3rd ch of ch-5`: the ordinal between two words one higher or lower."""
    names = {1: "1st", 2: "2nd", 3: "3rd"}

    def new(found: re.Match[str]) -> str | None:
        number = int(found["n"]) + step
        return f"{found['b']}{names.get(number, f'{number}th')}{found['a']}" if number >= 1 else None

    return each_match(rf"(?P<b>{before})(?P<n>\d+)(?:st|nd|rd|th)(?P<a>{behind})", new)


def a_word_lost(line: str) -> Iterator[str]:
    words = line.split(" ")
    for at, word in enumerate(words):
        rest = words[:at] + words[at + 1 :]
        if at and word.endswith(",") and rest:
            rest[at - 1] = rest[at - 1].rstrip(",") + ","
        yield " ".join(rest).strip(", ")


def too_many(step: str) -> Mistake:
    """A step that doesn't belong there, after each of the line's own."""

    def mistake(line: str) -> Iterator[str]:
        name = re.search(rf"(?<![-\w]){NAMES}\b", line)
        skip = "miss" if re.search(r"\bmiss\b|\dch\b", line) else "sk"
        new = step.replace("NAME", name[0] if name else "dc").replace("SKIP", skip)
        for found in re.finditer(r",|;|(?<!\*)[)\]]", line):
            depth = line[: found.start()].count("(") - line[: found.start()].count(")")
            aside = re.search(r"\((?:counts|skipped|missed|does)[^)]*$", line[: found.start()])
            if depth <= 1 and not aside:
                yield f"{line[: found.start()]}, {new}{line[found.start() :]}"

    return mistake


def a_bracket_moved(line: str) -> Iterator[str]:
    """The closing bracket of a repeat one step too early."""
    for found in re.finditer(r", ([^,()\[\]*]+)([)\]])( ?x \d+| \d+ times)", line):
        yield f"{line[: found.start()]}{found[2]}{found[3]}, {found[1]}{line[found.end() :]}"


def sizes_exchanged(line: str) -> Iterator[str]:
    for found in re.finditer(r"(\d+) \((\d+)((?:, \d+)*)\)", line):
        if found[1] != found[2]:
            yield f"{line[: found.start()]}{found[2]} ({found[1]}{found[3]}){line[found.end() :]}"


def a_size_lost(line: str) -> Iterator[str]:
    for found in re.finditer(r"\d+ \(\d+(, \d+)+\)", line):
        yield line[: found.start()] + re.sub(r", \d+\)", ")", found[0]) + line[found.end() :]


def all_in_other_terms(line: str) -> Iterator[str]:
    to_uk = {"sc": "dc", "hdc": "htr", "dc": "tr", "tr": "dtr", "dtr": "trtr"}
    to_us = {"dc": "sc", "htr": "hdc", "tr": "dc", "dtr": "tr", "trtr": "dtr"}
    for other in (to_uk, to_us):
        new = re.sub(rf"\b{NAMES}\b", lambda found, other=other: other.get(found[0], found[0]), line)  # type: ignore[misc]
        if new != line:
            yield new


IN_A_LINE: dict[str, Mistake] = {
    "one stitch more in a run": by_one(rf"\b(?:next|last|first|of next) (\d+) {COUNTED}\b", 1),
    "one stitch fewer in a run": by_one(rf"\b(?:next|last|first|of next) (\d+) {COUNTED}\b", -1),
    "one more in a place": by_one(rf"(?<![-\w(])(\d+) (?:FP|BP)?{NAMES}\b(?! ?\d)", 1),
    "one fewer in a place": by_one(rf"(?<![-\w(])(\d+) (?:FP|BP)?{NAMES}\b(?! ?\d)", -1),
    "two in a place instead of one": becomes(
        rf"(?<!\w)(?<!\d )((?:FP|BP)?{NAMES}) in next st\b", r"2 \1 in next st"
    ),
    "a repeat one more": by_one(r"[)\]] ?x (\d+)", 1),
    "a repeat one fewer": by_one(r"[)\]] ?x (\d+)", -1),
    "a repeat in words one more": by_one(r"(\d+) (?:more )?times\b", 1),
    "a repeat in words one fewer": by_one(r"(\d+) (?:more )?times\b", -1),
    "`more` lost from a repeat": becomes(r"(\d+) more times", r"\1 times"),
    "a repeat to before the end": becomes(r"rep from \* (?:around|across)", "rep from * to last 2 sts"),
    "a repeat to another place before the end": by_one(r"to last (\d+) sts", 1),
    "a repeat that runs to the end": becomes(r"rep from \* to last (?:\d+ )?sts?", "rep from * across"),
    "a number of stitches lost": becomes(r"\b(next|last|first) \d+ (st|ch|dc|tr|sc)s?\b", r"\1 \2"),
    "two stitches more in a run": by_one(rf"\b(?:next|last|first|of next) (\d+) {COUNTED}\b", 2),
    "two repeats more": by_one(r"[)\]] ?x (\d+)", 2),
    "a nought too many": each_match(r"(?<![-\d])\d{1,2}(?![-\d]|th|st|nd|rd)", lambda found: found[0] + "0"),
    "a comma lost": becomes(r", (?=[a-z0-9])", " "),
    "a bracket moved": a_bracket_moved,
    "a stitch gathered with the next": becomes(rf"(?<![-\w])({NAMES}) in next st\b", r"\g<1>2tog"),
    "a skip one more": by_one(r"\b(?:sk|miss) (?:next )?(\d+) sts", 1),
    "a skip one fewer": by_one(r"\b(?:sk|miss) (?:next )?(\d+) sts", -1),
    "a skip lost": becomes(
        r"\b(?:sk|miss) (?:\d+|next|\d+ sts|next \d+|next st) ?(?:sts?|ch)?(?=[,;)\]])", ""
    ),
    "a skip doubled": becomes(r"\b((?:sk|miss) (?:next st|\d+ sts?))", r"\1, \1"),
    "an opening bracket lost": becomes(r"[(\[]", ""),
    "a closing bracket lost": becomes(r"[)\]]", ""),
    "an asterisk lost": becomes(r"(?<!from )\*", ""),
    "inc for dec": becomes(r"\b(?:invisible )?dec\b", "inc"),
    "dec for inc": becomes(r"\binc\b", "dec"),
    "an increase forgotten": becomes(r"\binc\b", "sc in next st"),
    "a decrease forgotten": becomes(r"\b(?:invisible )?dec\b", "sc in next st"),
    "a gathered stitch of one more": by_one(r"[a-z]+(\d)tog", 1),
    "a bunch of one more": by_one(rf"(\d+)-{NAMES} (?:cluster|bobble|puff|popcorn|shell)", 1),
    "a chain one longer": by_one(r"(?<!-)\bch (\d+)\b", 1),
    "a chain one shorter": by_one(r"(?<!-)\bch (\d+)\b", -1),
    "a chain one longer in UK print": by_one(r"(?<![\w-])(\d+)ch\b(?!-)", 1),
    "a chain one shorter in UK print": by_one(r"(?<![\w-])(\d+)ch\b(?!-)", -1),
    "a space of another length": by_one(r"ch-(\d+) sp", 1),
    "a space of another length in UK print": by_one(r"(\d+)ch-sp", 1),
    "a joining chain one higher": an_ordinal(1, r"join (?:with sl st )?(?:to|in) ", r" ch of"),
    "a joining chain one lower": an_ordinal(-1, r"join (?:with sl st )?(?:to|in) ", r" ch of"),
    "a join to another chain": by_one(r"join[\w ]* of ch-(\d+)", 1),
    "a join to another stitch": each_match(rf"(?<=to first ){NAMES}", lambda found: OTHER_NAME[found[0]]),
    "a join to the top of a chain": becomes(r"\bjoin(?=,|$)", "join to top of ch-3"),
    "a join lost": becomes(r", join\b[^,]*", ""),
    "a turn lost": becomes(r", turn\b", ""),
    "a turn too many": becomes(r"$(?<!turn)(?<!off)", ", turn"),
    "another stitch": each_match(
        rf"(?<![-\w]){NAMES}(?= in| around|\b,)", lambda found: OTHER_NAME[found[0]]
    ),
    "the other country's terms": all_in_other_terms,
    "every other stitch": becomes(r"\bin each st\b", "in every other st"),
    "one stitch for each": becomes(r"\bin each (st|ch)\b(?: around| across)?", r"in next \1"),
    "each stitch for one": becomes(r"\bin next st\b", "in each st"),
    "the same stitch": becomes(r"\bin next st\b", "in same st"),
    "the next place for the same": becomes(r"\bin same (st|sp)\b", r"in next \1"),
    "the next stitch for the first": becomes(r"\bin first\b", "in next"),
    "the next stitch for the last": becomes(r"\bin last\b", "in next"),
    "a space for a stitch": becomes(r"\bin next st\b", "in next ch-1 sp"),
    "a stitch for a space": becomes(r"\bin next (?:ch-\d+ sp|\d+ch-sp)", "in next st"),
    "a front post behind": becomes(r"\bFP", "BP"),
    "a back post in front": becomes(r"\bBP", "FP"),
    "a post stitch made plain": becomes(
        rf"\b[FB]P({NAMES}) around (?:next st|each of next)", r"\1 in next st"
    ),
    "the other loop": becomes(r"\bBLO\b", "FLO"),
    "a chain that doesn't count": becomes(r"\(counts as [^)]*\)", "(does not count)"),
    "what a chain counts as lost": becomes(r" \(counts as [^)]*\)", ""),
    "a chain that counts": becomes(r"^(ch [123]|[123]ch)(?=,)", r"\1 (counts as st)"),
    "another chain from the hook": an_ordinal(1, "in ", " ch from hook"),
    "a nearer chain from the hook": an_ordinal(-1, "in ", " ch from hook"),
    "skipped chains said to be nothing": becomes(r" \((?:skipped|missed) chs? count[^)]*\)", ""),
    "fastened off too soon": becomes(r"$(?<!off)(?<!off [A-Z])", ", fasten off"),
    "fastened off no more": becomes(r", fasten off\b(?: [A-Z])?", ""),
    "a yarn that isn't there": becomes(r"\b(with|to|join|off) ([A-C])\b", r"\1 Q"),
    "sizes exchanged": sizes_exchanged,
    "a size lost": a_size_lost,
    "a letter lost": becomes(r"\b(s)c\b|\b(h)dc\b|\b(t)r\b", r"\1\2\3"),
    "the other side forgotten": becomes(r"(?:working )?along other side of foundation ch, ", ""),
    "what is left not said": becomes(r", leave [^,]*", ""),
    "another number left": by_one(r"leave last (\d+)", 1),
    "one row up instead of two": becomes(r"2 rounds below", "3 rounds below"),
    "a picot lost": becomes(r", (?:ch-\d|\dch) picot", ""),
    "a stitch too many": too_many("NAME in next st"),
    "a chain too many": too_many("ch 1"),
    "a skip too many": too_many("SKIP next st"),
    "a step lost": a_step_lost,
    "a step twice": a_step_twice,
    "two steps exchanged": steps_exchanged,
    "a word lost": a_word_lost,
}
"""The kinds, by their name in the report. A chain stitch name stays clear of `ch-2 sp`."""
