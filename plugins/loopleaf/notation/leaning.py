"""Reads one stitch whose legs go into places of several kinds: `sc3tog in same st and next 2 sts`.

Also with its legs one by one, `dc2tog, working first leg in same st and second leg in next st`.
"""

from .cursor import Cursor
from .gathering import NEVER_GATHERED, apart, gathered
from .place_kinds import read_place
from .targets import CHAIN
from .tree import (
    ONE,
    STITCH,
    Amount,
    First,
    FromHook,
    JustMade,
    Last,
    Next,
    Over,
    Place,
    Same,
    Span,
    Step,
    Stitch,
    Together,
    Work,
)

_LEGS = frozenset({"leg", "legs"})
_WHICH = frozenset({"first", "next", "last", "ord"})
_SMALL = frozenset({",", "and", "then"})


def read_legs(cursor: Cursor) -> tuple[Place, ...]:
    """The places of legs told one by one, in brackets or not; () (and nothing passed) where none are."""
    start = cursor.at
    if _pass_inserting(cursor):
        return _inserted(cursor)
    opened = cursor.take("(")
    _pass_doing(cursor)
    places: list[Place] = []
    at = cursor.at
    while _pass_leg(cursor):
        cursor.take("in")
        places.append(read_place(cursor))
        at = cursor.at
        while cursor.means in _SMALL:
            cursor.at += 1
        _pass_doing(cursor)
    cursor.at = at
    if not places or (opened and not cursor.take(")")):
        cursor.at = start
        return ()
    return tuple(places)


def _pass_inserting(cursor: Cursor) -> bool:
    """`, inserting hook` before a place."""
    words, at = cursor.words, cursor.at + (cursor.means == ",")
    said = cursor.said(at, at + 1).lower() if words[at].means in ("?", "insert-hook") else ""
    behind = at + 1 + (words[at].means == "?")
    if not (said == "inserting" and words[at + 1].means == "hook" and words[behind].means == "in"):
        return False
    cursor.at = behind
    return True


def _inserted(cursor: Cursor) -> tuple[Place, ...]:
    """`in same place as last st, then in each of next 2 dc`."""
    places: list[Place] = []
    at = cursor.at
    while cursor.take("in"):
        places.append(read_place(cursor))
        at = cursor.at
        while cursor.means in _SMALL:
            cursor.at += 1
    cursor.at = at
    return tuple(places)


def _pass_doing(cursor: Cursor) -> None:
    """`working`, `placing`, `inserting hook for` first leg."""
    at = cursor.at
    if cursor.means == ",":
        at += 1
    while cursor.words[at].means in ("?", "working", "for", "a", "with") and at < cursor.at + 4:
        if cursor.text[cursor.words[at].start : cursor.words[at].end].lower() in _LEGS:
            break
        at += 1
    if cursor.words[at].means in _WHICH:
        cursor.at = at


def _pass_leg(cursor: Cursor) -> bool:
    """`first leg`, `next 2 legs`, `2nd leg`."""
    if cursor.means not in _WHICH:
        return False
    at = cursor.at + 1 + (cursor.ahead() == "num")
    word = cursor.words[at]
    if cursor.text[word.start : word.end].lower() not in _LEGS:
        return False
    cursor.at = at + 1
    return True


def begun_in_same(cursor: Cursor, stitch: Stitch) -> tuple[Place, ...]:
    """`sc2tog beginning in same st`: the first leg there, the others behind it; () where that isn't said."""
    words, at = cursor.words, cursor.at + (cursor.means == ",")
    if words[at].means not in ("beg", "foundation") or words[at + 1].means != "in":
        return ()
    if words[at + 2].means != "same":
        return ()
    cursor.at = at + 2
    return read_place(cursor), Next(Amount((stitch.number - 1,)))


def over_several(stitch: Stitch, places: tuple[Place, ...], span: Span) -> Step | None:
    """The gathered stitch whose legs go into all the places together; None where they aren't as many."""
    if stitch.form != "tog" or stitch.loop or stitch.post or len(places) < 2:
        return None
    legs = 0
    for place in places:
        if isinstance(place, Next | First | Last | Over) and not place.count.varies:
            legs += place.count.sizes[0] or 0
        elif isinstance(place, Same | JustMade | FromHook):
            legs += 1
        else:
            return None
    if legs != stitch.number:
        return None
    plain = Stitch(stitch.kind, name=stitch.name)
    each = apart([Work(plain, ONE, (_leaned_on(place),), span=span) for place in places])
    return gathered(each, None, span)


def _leaned_on(place: Place) -> Place:
    """`over last st` as the place that it is for one of several legs."""
    match place:
        case Over(which="first"):
            return First(place.count, place.target)
        case Over(which="last"):
            return Last(place.count, place.target)
        case Over():
            return Next(place.count, place.target)
    return place


def leaning(step: Together) -> Work | None:
    """`sc3tog in same st and in each of next 2 sts`: the other way, where print would say it so."""
    match step.steps:
        case (Work(stitch=stitch, places=(Same() | FromHook() as begun,)) as first, *rest) if (
            rest and not stitch.form
        ):
            target = CHAIN if isinstance(begun, FromHook) else STITCH
            if any(one != Work(stitch, ONE, (Next(target=target),)) for one in rest) or first.each != ONE:
                return None
            if step.place is not None or stitch.loop or stitch.post or stitch.kind in NEVER_GATHERED:
                return None
            legs = Stitch(stitch.kind, "tog", len(rest) + 1, name=stitch.name)
            return Work(
                legs, ONE, (*first.places, Next(Amount((len(rest),)), target)), step.counts, span=step.span
            )
    return None
