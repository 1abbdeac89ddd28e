"""What the picture of the finished piece shows, in words, for who can't see it."""

from collections.abc import Iterator, Sequence

from .leaflet_voice import Voice, listed


def picture_told(voice: Voice) -> str:
    """`Sandbank seal, drawn from its stitches, in wet slate and chalk. Sewn on: head, fore flipper × 2.`"""
    pattern = voice.pattern
    yarns = [voice.prose(yarn.name or letter) for letter, yarn in pattern.materials.yarns.items()]
    words = voice.say("drawn_alt", title=voice.prose(pattern.title))
    if yarns:
        words += voice.say("drawn_alt_yarns", yarns=listed(voice, yarns))
    added = list(_added(voice))
    return ". ".join([words, *added]) + ("." if added else "")


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
