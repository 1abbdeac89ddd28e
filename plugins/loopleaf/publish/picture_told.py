"""What the picture of the finished piece shows, in words, for who can't see it."""

from collections.abc import Iterator, Sequence, Set

from ..draw import trimmings_yarns
from ..fabric import PatternWork, PieceWork
from ..pattern import Pattern
from .leaflet_voice import Voice, listed


def picture_told(voice: Voice, work: PatternWork) -> str:
    """`Sandbank seal, drawn from its stitches, in wet slate and chalk. Sewn on: head, fore flipper × 2.`"""
    pattern, worked = voice.pattern, _yarns(work)
    yarns = [
        voice.prose(yarn.name or letter)
        for letter, yarn in pattern.materials.yarns.items()
        if letter in worked
    ]
    words = voice.say("drawn_alt", title=voice.prose(pattern.title))
    if yarns:
        words += voice.say("drawn_alt_yarns", yarns=listed(voice, yarns))
    added = list(_added(voice))
    return ". ".join([words, *added]) + ("." if added else "")


def _yarns(work: PatternWork) -> Set[str]:
    """The letters of the yarns of all that the picture has: the first piece that is worked, what is worked
    onto it, sewn to it and drawn through it, and so on, and what is put on in words.
    """
    pattern = work.pattern
    found = trimmings_yarns(pattern)
    shown = _shown(pattern, next((one.name for one in work.pieces if _made_in(one)), ""))
    for piece in work.pieces:
        if piece.name in shown:
            found |= _made_in(piece)
    first = next(iter(pattern.materials.yarns), "")
    cords = shown & {name for name, piece in pattern.pieces.items() if piece.worked == "chain"}
    return found | {pattern.pieces[name].yarn or first for name in cords}


def _made_in(piece: PieceWork) -> set[str]:
    """The yarns of a piece's stitches in its first size."""
    sizes = (round.sizes[0] for round in piece.rounds)
    return {made.yarn for one in sizes if one is not None for made in one.made}


def _shown(pattern: Pattern, first: str) -> Set[str]:
    """The names of the pieces that hang together with the first; all where none has rounds."""
    if not first:
        return set(pattern.pieces)
    onto = [(name, one.start.edge) for name, one in pattern.pieces.items() if one.start and one.start.edge]
    for step in pattern.finishing:
        if step.sew is not None:
            onto.append((step.sew.piece, step.sew.to or first))
        if step.thread is not None:
            onto.append((step.thread.piece, step.thread.through))
    shown = {first}
    for _ in onto:
        shown |= {name for name, base in onto if base in shown}
    return shown


def _added(voice: Voice) -> Iterator[str]:
    steps = voice.pattern.finishing
    sewn = [step.sew.piece for step in steps if step.sew is not None]
    cords = [step.thread.piece for step in steps if step.thread is not None]
    marks = [voice.prose(step.mark.what) for step in steps if step.mark is not None]
    begun = [*_begun(voice)]
    named = {"begun": _pieces(voice, begun), "sewn": _pieces(voice, sewn), "cords": _pieces(voice, cords)}
    for key, parts in {**named, "marks": marks}.items():
        if parts:
            yield voice.say(f"drawn_alt_{key}", parts=", ".join(dict.fromkeys(parts)))


def _begun(voice: Voice) -> Iterator[str]:
    """The pieces that begin on the one that is shown, which is the first that is more than a chain, and on
    those.
    """
    pieces = voice.pattern.pieces
    shown = {next((name for name, piece in pieces.items() if piece.worked != "chain"), "")}
    for name, piece in pieces.items():
        if piece.start is not None and piece.start.edge in shown and name not in shown:
            shown.add(name)
            yield name


def _pieces(voice: Voice, names: Sequence[str]) -> list[str]:
    """Each piece once: `head`, `ear × 2`."""
    made = {name: piece.make for name, piece in voice.pattern.pieces.items()}
    return [
        voice.named(name) + (f" × {made[name]}" if made.get(name, 1) > 1 else "")
        for name in dict.fromkeys(names)
    ]
