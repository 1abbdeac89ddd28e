"""A style of print: US or UK, in abbreviations or in full words; names of stitches and kinds of places in
it.
"""

from dataclasses import dataclass, replace
from functools import cache
from typing import Any

from ..trade import FormRow, StitchNames, StitchRow, stitch_forms, stitches
from ..trade.data_files import data_file
from .stitch_words import own_names
from .taken_names import beside_the_authors
from .tree import Amount, Stitch, Target
from .vocabulary import SpecialStitch, Terms, Vocabulary


@cache
def _print_file() -> dict[str, Any]:
    return data_file(__package__, "print.yml")


@cache
def _word(key: str, terms: Terms, full: bool) -> tuple[str, str]:
    row = _print_file()["words"][key]
    row = row.get(terms, row)
    forms = row.get("full", row["short"]) if full else row["short"]
    return forms[0], forms[-1]


@cache
def _rows() -> dict[str, StitchRow]:
    return {row.key: row for row in stitches()}


@cache
def _forms() -> dict[str, FormRow]:
    return {row.key: row for row in stitch_forms()}


def kind_names(key: str, terms: Terms) -> StitchNames:
    """What one terminology calls a plain kind (`single`, `double` …): short, name, plurals. KeyError for an
    unknown key.
    """
    return _rows()[key].names(terms)


@dataclass(frozen=True, slots=True)
class Style:
    """terms and full say which of the four styles; vocabulary gives the author's stitches their names."""

    terms: Terms
    full: bool = False
    vocabulary: Vocabulary | None = None

    def word(self, key: str, plural: bool = False, n: int | str = "") -> str:
        """A word of print.yml, with its number filled in."""
        text = _word(key, self.terms, self.full)[plural]
        return text.replace("{n}", str(n)) if n != "" else text

    def stitch(self, stitch: Stitch, plural: bool = False) -> str:
        """A stitch's name, without its loop: `sc`, `FPdc`, `dc3tog`, `5-dc bobble`, `half trebles`."""
        name = self._named(stitch, plural)
        return f"invisible {name}" if stitch.invisible else name

    def _named(self, stitch: Stitch, plural: bool) -> str:
        kind, form = stitch.kind, stitch.form
        if kind == "special" and not form and not stitch.post:
            return self._special(stitch.name, plural)
        if kind in ("inc", "dec"):
            return self.word(kind, plural)
        if form == "picot":
            return (
                self.word("picot-of", plural, stitch.number) if stitch.number else self.word("picot", plural)
            )
        if not kind:
            name = self.word(form or "stitch", plural)
            return f"post {name}" if stitch.post else name
        base = self._posted(self._names(stitch), stitch.post, plural and not form)
        if not form:
            return base
        if form == "v-stitch":
            chains = "" if stitch.number <= 1 else self.word("arch", n=stitch.number) + " "
            return f"{chains}{base} {self.word(form, plural)}"
        if form == "tog":
            return f"{base} {stitch.number} together" if self.full else f"{base}{stitch.number}tog"
        number = f"{stitch.number}-" if stitch.number else ""
        return f"{number}{base} {self.word(form, plural)}"

    def _posted(self, names: StitchNames, post: str, plural: bool) -> str:
        short, name = (names.short_plural, names.plural) if plural else (names.short, names.name)
        if post not in ("front", "back"):
            return name if self.full else short
        form = _forms()[f"{post}-post"].names(self.terms)
        pattern = (form.plural if plural else form.name) if self.full else form.short
        return pattern.format(short=names.short, name=names.name, plural=names.plural)

    def _names(self, stitch: Stitch) -> StitchNames:
        if stitch.kind != "special":
            return beside_the_authors(kind_names(stitch.kind, self.terms), self.vocabulary)
        special = self.vocabulary.specials.get(stitch.name) if self.vocabulary else None
        return own_names(special if special is not None else SpecialStitch(stitch.name))

    def _special(self, key: str, plural: bool) -> str:
        special = self.vocabulary.specials.get(key) if self.vocabulary else None
        if special is None:
            return key
        shortened = bool(special.short) and special.short.lower() != special.name.lower()
        if shortened and not self.full:
            return special.short
        return own_names(special).plural if plural else special.name

    def target(self, target: Target, plural: bool = False) -> str:
        """A kind of place: `st`, `ch-2 sps`, `2ch-sp`, `corner sp`, `sh`, `3-dc group`."""
        if target.unworked and target.kind != "free-loop":
            return f"unworked {self._place(target, plural)}"
        if target.round and target.kind != "free-loop":
            of = self.word("row" if target.rows else "round")
            return f"{self._place(target, plural)} of {of} {target.round}"
        return self._place(target, plural)

    def _place(self, target: Target, plural: bool) -> str:
        kind = target.kind
        if kind == "stitch":
            return (
                self.word("stitch", plural) if target.stitch is None else self.stitch(target.stitch, plural)
            )
        if kind == "space":
            return self._space(target, plural)
        if kind == "corner":
            if target.length:
                return f"corner {self._space(target, plural)}"
            more = {"sp": "space", "st": "stitch"}.get(target.word)
            return f"corner {self.word(more, plural)}" if more else self.word("corner", plural)
        if kind == "gap":
            return f"{self.word('space', plural)} between {self.word('group', True)}"
        if kind == "free-loop":
            return self._free_loop(target, plural)
        if kind == "picot" and target.length:
            return self.word("picot-of", plural, target.length)
        if kind == "group" and target.stitch is not None:
            name = self._named(replace(target.stitch, number=0), False)
            return f"{target.stitch.number}-{name} {self.word('group', plural)}"
        return self.word(kind, plural)

    def _free_loop(self, target: Target, plural: bool) -> str:
        which = {"front": "front ", "back": "back "}.get(target.loop, "")
        name = f"free {which}{self.word('loop', plural)}"
        of = self.word("row" if target.word == "row" else "round")
        return f"{name} of {of} {target.round}" if target.round else name

    def _space(self, target: Target, plural: bool) -> str:
        if target.length:
            return self.word("chain-n-space", plural, target.length)
        return self.word("space" if target.word == "sp" else "chain-space", plural)

    def counted(self, amount: Amount, noun: str) -> str:
        """A number before a noun; in words where the noun begins with a number itself (`two 2ch-sps`)."""
        plain = amount.sizes[0] if not amount.varies and not amount.variable else None
        if noun[:1].isdigit() and plain is not None and 0 < plain <= 12:
            return f"{_print_file()['numbers'][plain]} {noun}"
        return f"{written(amount)} {noun}"


def written(amount: Amount) -> str:
    """`8`, `8 (10, 12)`, `- (2, 3)`, `n`."""
    if amount.variable:
        return amount.variable
    first, *more = ("-" if size is None else str(size) for size in amount.sizes)
    return f"{first} ({', '.join(more)})" if more else first


def is_one(amount: Amount) -> bool:
    """Whether it is just one, in every size."""
    return not amount.variable and amount.sizes == (1,)


def ordinal(number: int) -> str:
    """`2nd`, `3rd`, `11th`."""
    ending = "th" if 10 <= number % 100 <= 20 else {1: "st", 2: "nd", 3: "rd"}.get(number % 10, "th")
    return f"{number}{ending}"
