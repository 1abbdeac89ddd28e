"""A pattern's pictures: where they are named, and whether their files are there and are pictures."""

from collections.abc import Callable, Iterator

from ..pattern import (
    PICTURE_ENDINGS,
    Finding,
    Path,
    Pattern,
    Picture,
    Source,
    Suggestion,
    is_picture,
    leaves_the_folder,
)

Beginning = Callable[[str], bytes | None]
"""The first bytes of a file, by its path from the pattern's own folder; None where it isn't there."""


def pictures(pattern: Pattern) -> Iterator[tuple[Path, Picture, str]]:
    """Every picture with the place where it stands in the file and the piece that it belongs to."""
    for number, picture in enumerate(pattern.pictures):
        yield ("pictures", number), picture, ""
    for name, piece in pattern.pieces.items():
        for number, entry in enumerate(piece.entries):
            if entry.picture:
                yield ("pieces", name, piece.entries_field, number, "picture"), entry.picture, name
    for number, step in enumerate(pattern.finishing):
        if step.picture:
            yield ("finishing", number, "picture"), step.picture, ""


def unshowable(source: Source, beginning: Beginning) -> list[Finding]:
    """An error for each picture that isn't there, or isn't one: its page would have a hole.

    One whose very name is at fault has its finding already, and is never opened.
    """
    if source.pattern is None:
        return []
    return [
        Finding(
            rule="not-a-picture",
            severity="error",
            file=source.file,
            location=source.locate((*path, "file")),
            message=f"The picture {picture.file} {wrong}.",
            working=working,
            suggestion=Suggestion(cure, None, "fill-in"),
            piece=piece,
        )
        for path, picture, piece in pictures(source.pattern)
        if not leaves_the_folder(picture.file) and picture.file.lower().endswith(PICTURE_ENDINGS)
        for wrong, working, cure in _wrong(beginning(picture.file))
    ]


def _wrong(beginning: bytes | None) -> Iterator[tuple[str, str, str]]:
    """What is the matter with a picture's file, the facts, and the cure."""
    if beginning is None:
        yield (
            "isn't there",
            "It is looked for from the pattern's own folder.",
            "Put it there, or mend its name.",
        )
    elif not is_picture(beginning):
        forms = "Whatever its name says, it holds no JPEG, PNG, WebP or GIF."
        yield "can't be shown", forms, "Save it anew as one of these."
