"""Mended files: what is different in them, and putting them in the place of the old ones."""

import os
import re
import shutil
import tempfile
from collections.abc import Iterator
from difflib import unified_diff
from pathlib import Path

from ..review import Mended
from .collection import NotReadable, read
from .terminal import Paint, plain

_LINE = re.compile(r"[^\r\n]*(?:\r\n|\n|\r)|[^\r\n]+")
_STYLES = {"+": "added", "-": "removed", "@": "quiet"}


class NotWritten(Exception):
    """A file that stays as it was; the text says which and why, in plain words."""


def difference(file: str, before: str, mended: Mended, paint: Paint = plain) -> str:
    """What a mending has changed, as a unified difference, and what it has left as it was."""
    lines = unified_diff(_LINE.findall(before), _LINE.findall(mended.text), file, file)
    shown = "".join(f"{_painted(line, paint)}\n" for line in _ended(lines))
    for one in mended.refused:
        at = one.location
        place = f"{file}:{at.line}:{at.column}"
        shown += f"{place}: left as it is ({one.rule}), since mending it changes other things.\n"
    return shown


def put_in_place(path: Path, before: bytes, after: bytes) -> None:
    """Write a mended file beside the old one, then move it over that one, so that no half file is ever seen.

    before: what the file held when it was read. Raises NotWritten, and leaves the file alone, where it holds
    something else by now or can't be written.
    """
    path = path.resolve()  # through a link to the file itself
    aside: Path | None = None
    try:
        if not os.access(path, os.W_OK):
            raise NotWritten(f"{path} is not to be written to; it stays as it was.")
        with tempfile.NamedTemporaryFile(dir=path.parent, prefix=f".{path.name}.", delete=False) as file:
            aside = Path(file.name)
            file.write(after)
            file.flush()
            os.fsync(file.fileno())
        shutil.copymode(path, aside)
        if read(path) != before:
            raise NotWritten(f"{path} was changed by someone else meanwhile; it stays as it is now.")
        aside.replace(path)
    except (OSError, NotReadable) as error:
        reason = (getattr(error, "strerror", "") or "unknown reason").lower()
        raise NotWritten(f"{path} can't be written: {reason}. It stays as it was.") from None
    finally:
        if aside is not None:
            aside.unlink(missing_ok=True)


def _ended(lines: Iterator[str]) -> Iterator[str]:
    """The lines without their line breaks; a last line that has none is said to have none."""
    for line in lines:
        bare = line.rstrip("\r\n")
        yield bare
        if bare == line:
            yield "\\ No newline at end of file"


def _painted(line: str, paint: Paint) -> str:
    shown = "".join(
        letter if letter.isprintable() or letter == "\t" else "\N{REPLACEMENT CHARACTER}" for letter in line
    )
    style = "strong" if line.startswith(("--- ", "+++ ")) else _STYLES.get(line[:1])
    return paint(shown, style) if style else shown
