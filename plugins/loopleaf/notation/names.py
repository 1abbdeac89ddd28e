"""Reads what a stitch is called: plain kinds, posts, togethers, clusters and their kin, picots, the
author's own.
"""

from dataclasses import replace

from .cursor import Cursor, UnreadableError, read_amount
from .lexicon import form_words
from .own_forms import as_the_authors
from .picot_said import picot_said
from .problem import Problem
from .tree import Amount, Span, Stitch

_STARTS = frozenset({"stitch", "inc", "dec", "special", "form", "fp", "invisible", "picot", "spike"})


def starts_stitch(cursor: Cursor, at: int) -> bool:
    """Whether a stitch's name begins at a word (`ch` only where it makes a picot or a V-stitch)."""
    words = cursor.words
    means = words[at].means
    if means in _STARTS:
        return True
    if means == "loop-of":
        return words[at + 1].means in _STARTS
    return (
        means == "ch"
        and words[at + 1].means == "num"
        and words[at + 2].means in ("picot", "stitch", "special", "form")
        and (words[at + 2].means == "picot" or words[at + 3].means == "form")
    )


def is_tall(cursor: Cursor, at: int) -> bool:
    """Whether the author's stitch at a word is a plain tall one, given by its yarn overs: it is made into
    clusters and the rest as any other is.
    """
    own: Stitch = cursor.words[at].value
    special = cursor.vocabulary.specials[own.name]
    return special.yarn_overs is not None and special.work is None


def read_counted_stitch(cursor: Cursor) -> tuple[Amount | None, Stitch]:
    """A stitch with the number before it: `2 hdc`, `5-dc bobble` (the 5 belongs to the bobble), `2 3-dc cl`,
    `3ch picot`.

    Raises UnreadableError where no stitch is named.
    """
    amount: Amount | None = None
    words = cursor.words
    first = cursor.at
    if cursor.means in ("num", "-"):
        if words[first].means == "num" and _owns_number(cursor, first):
            return None, as_the_authors(_read_numbered(cursor), cursor)
        amount = read_amount(cursor)
        if amount is None:
            raise cursor.fail("stitch")
        cursor.take("more")
        cursor.take("x")
        if cursor.means == "num" and _owns_number(cursor, cursor.at):
            return amount, as_the_authors(_read_numbered(cursor), cursor)
    return amount, read_stitch(cursor)


def _owns_number(cursor: Cursor, at: int) -> bool:
    """Whether the number at a word is part of the name after it: `5-dc bobble`, `2 dc tog`, `3ch picot`,
    `2ch tr V-st`.
    """
    words = cursor.words
    if words[at].value.variable or words[at + 1].means in ("(", "end"):
        return False
    at += 1
    if words[at].means == "ch":
        after = words[at + 1].means
        return after == "picot" or (after in ("stitch", "special") and words[at + 2].means == "form")
    while words[at].means in ("loop-of", "fp", "spike"):
        at += 1
    own = words[at].means == "special" and is_tall(cursor, at)
    if words[at].means != "stitch" and not own:
        return words[at].means == "st" and words[at].glued and words[at + 1].means in ("form", "tog")
    name = words[at + 1]
    if name.means == "form":
        return bool(name.value != "v-stitch")
    return name.means == "tog" or (name.means == "special" and name.name in form_words())


def _read_numbered(cursor: Cursor) -> Stitch:
    first = cursor.at
    number = cursor.words[first].value.sizes[0]
    cursor.at += 1
    if cursor.take("ch"):
        if cursor.take("picot"):
            return Stitch("chain", form="picot", number=number)
        return replace(_read_base(cursor), form=_form(cursor, first), number=number)
    stitch = _read_base(cursor)
    if cursor.take("tog"):
        return replace(stitch, form="tog", number=number)
    return replace(stitch, form=_form(cursor, first), number=number)


def _form(cursor: Cursor, first: int) -> str:
    word = cursor.words[cursor.at]
    if word.means == "special":
        cursor.at += 1
        return form_words().get(word.name, word.name)
    form: str = cursor.need("form", "form").value
    if form == "puff":
        cursor.take("st")
    return form


def read_stitch(cursor: Cursor, as_place: bool = False) -> Stitch:
    """A stitch without a number before it: `sc`, `FPdc`, `sc2tog`, `BLO sc`, `invisible dec`, `ch-3 picot`,
    `sh`.

    as_place: the name stands for a place (`in next cl`), where a form needs neither kind nor number.
    """
    words = cursor.words
    first = cursor.at
    word = words[first]
    means = word.means
    if means in ("stitch", "loop-of", "fp", "spike") or (means == "special" and is_tall(cursor, first)):
        stitch = _read_base(cursor)
        after = words[cursor.at]
        if after.means == "num" and words[cursor.at + 1].means == "tog" and not after.value.variable:
            cursor.at += 2
            return replace(stitch, form="tog", number=after.value.sizes[0])
        if after.means == "dec":
            cursor.at += 1
            return replace(stitch, form="tog", number=2)
        if after.means == "form":
            return _formed(cursor, stitch, first, as_place)
        if (
            after.means == "ch"
            and words[cursor.at + 1].means == "num"
            and words[cursor.at + 2].means == "form"
        ):
            cursor.at += 3
            return replace(stitch, form="v-stitch", number=words[cursor.at - 2].value.sizes[0])
        return stitch
    if means == "special":
        cursor.at += 1
        own: Stitch = word.value
        return own
    if means in ("inc", "dec"):
        cursor.at += 1
        return Stitch(means)
    if means == "invisible":
        cursor.at += 1
        stitch = read_stitch(cursor)
        if stitch.kind != "dec" and stitch.form != "tog":
            raise UnreadableError(first + 1, "decrease")
        return replace(stitch, invisible=True)
    if means == "ch" and words[first + 1].means == "num":
        cursor.at += 2
        number = words[first + 1].value.sizes[0]
        if cursor.take("picot"):
            return Stitch("chain", form="picot", number=number)
        stitch = _read_base(cursor)
        return replace(stitch, form=_form(cursor, first), number=number)
    if means == "picot":
        cursor.at += 1
        number = 0 if as_place else _of_number(cursor, "ch", "picot-of") or picot_said(cursor, first)
        if number:
            return Stitch("chain", form="picot", number=number)
        if not as_place:
            _undefined(cursor, first, "picot")
        return Stitch("chain", form="picot", number=0 if as_place else 3)
    if means == "form":
        cursor.at += 1
        form: str = word.value
        number = 0 if as_place else _of_number(cursor, "stitch", "form-of")
        if number:
            kind: Stitch = words[cursor.at - 1].value
            return replace(kind, form=form, number=number)
        told = next((one for one in cursor.vocabulary.groups if one[0] == form and not as_place), None)
        if told is not None:  # `5 dc in next ch (shell made)`
            return Stitch(told[1], form=form, number=told[2])
        if not as_place:
            _undefined(cursor, first, form)
        return Stitch("", form=form)
    raise cursor.fail("stitch")


def _read_base(cursor: Cursor) -> Stitch:
    """A plain kind with loops and posts said before it: `sc`, `BLO sc`, `FP dc`."""
    words = cursor.words
    loop = post = ""
    while True:
        word = words[cursor.at]
        if word.means == "loop-of":
            loop = word.value
        elif word.means == "fp":
            post = word.value
        elif word.means != "spike":
            break
        cursor.at += 1
    if word.means == "st" and words[cursor.at - 1].means == "spike":  # `spike st` is the single one
        cursor.at += 1
        return Stitch("single", loop=loop, post=post)
    if word.means == "st" and not loop and not post:
        cursor.at += 1
        return Stitch("")
    if word.means == "special" and (loop or is_tall(cursor, cursor.at)):
        cursor.at += 1
        own: Stitch = word.value
        return replace(own, loop=loop, post=post or own.post)
    if word.means in ("inc", "dec") and loop:
        cursor.at += 1
        return Stitch(word.means, loop=loop)
    if word.means != "stitch":
        raise cursor.fail("stitch")
    cursor.at += 1
    stitch: Stitch = word.value
    if loop or post:
        stitch = replace(stitch, loop=loop or stitch.loop, post=post or stitch.post)
    return stitch


def _formed(cursor: Cursor, stitch: Stitch, first: int, as_place: bool) -> Stitch:
    """`dc V-st` (one chain between), `dc cluster of 3`; a form whose number isn't said is named as
    undefined.
    """
    form: str = cursor.words[cursor.at].value
    cursor.at += 1
    words = cursor.words
    if form == "v-stitch":
        return replace(stitch, form=form, number=1)
    if words[cursor.at].means == "of" and words[cursor.at + 1].means == "num":
        cursor.at += 2
        return replace(stitch, form=form, number=words[cursor.at - 1].value.sizes[0])
    legs = _stitches_under(cursor) if form == "cluster" else 0
    if not as_place and not legs:
        _undefined(cursor, first, form)
    return replace(stitch, form=form, number=legs)


def _stitches_under(cursor: Cursor) -> int:
    """Over how many stitches a cluster is said to be worked, `dc cluster over next 3 sts`: so many legs it
    has; 0 where that isn't said.
    """
    words, at = cursor.words, cursor.at
    if words[at].means != "over":
        return 0
    at += 1 + (words[at + 1].means in ("next", "first", "last"))
    if words[at].means != "num" or words[at + 1].means not in ("st", "stitch") or words[at].value.varies:
        return 0
    return words[at].value.sizes[0] or 0


def _of_number(cursor: Cursor, means: str, expected: str) -> int:
    """The number in `picot of 3 ch`, `cluster of 3 dc`, passed with its noun; 0 where no `of` stands."""
    if cursor.means != "of":
        return 0
    if cursor.ahead() != "num" or cursor.ahead(2) != means:
        raise cursor.fail(expected)
    cursor.at += 3
    number: int = cursor.words[cursor.at - 2].value.sizes[0]
    return number


def _undefined(cursor: Cursor, first: int, form: str) -> None:
    said = cursor.said(first, cursor.at)
    span = cursor.span(first)
    double = "dc" if cursor.vocabulary.terms == "US" else "tr"
    what = {"v-stitch": f"{double} V-st", "picot": "ch-3 picot" if double == "dc" else "3ch picot"}.get(
        form, f"5-{double} {form}"
    )
    missing = {"v-stitch": "the kind of its stitches", "picot": "the number of its chains"}.get(
        form, "the number of its stitches"
    )
    cursor.problems.append(
        Problem(
            "special-stitch-undefined",
            "error",
            Span(span.start, span.end),
            f"“{said}” has neither {missing} nor a definition under `special stitches`.",
            "Its stitches can't be counted without one of the two.",
            (
                f"Write how it is made, as in “{what}”, or define “{said}” under `special stitches`.",
                None,
                "fill-in",
            ),
        )
    )
