"""Checking the files that paths name, one after another, for a report that keeps none of them."""

import sys
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path

from ..review import Checked, Shelf, check, on_the_shelf
from ..review.check import with_pictures_seen
from .collection import NotReadable, beginning, pattern_files, read


@dataclass(frozen=True, slots=True)
class File:
    """A file to check. name: its path as given. shelf: the folder whose files make pages of one site."""

    name: str
    shelf: str
    read: Callable[[], bytes]


def files_of(paths: Iterable[str]) -> Iterator[File]:
    """The files that the paths name (a file, a folder, `-`), the same one once.

    Raises NotReadable where there is nothing of that name.
    """
    seen = set()
    for name in paths:
        path = Path(name)
        if name == "-":
            yield File(name, name, sys.stdin.buffer.read)
        elif path.is_dir():
            for file in pattern_files(path):
                if file.resolve() not in seen:
                    seen.add(file.resolve())
                    yield File(str(file), name, partial(read, file))
        elif path.exists():
            if path.resolve() not in seen:
                seen.add(path.resolve())
                yield File(name, str(path.parent), partial(read, path))
        else:
            raise NotReadable(f"There is no file or folder {name}.")


@dataclass(slots=True)
class Outcome:
    """How a check ended.

    failing: the severities that fail it. defects: the files that Loopleaf itself failed on, and how: a defect
    of ours in one file mustn't keep the others unchecked. passed_over: the files that are no patterns.
    """

    failing: tuple[str, ...]
    fails: bool = False
    defects: dict[str, Exception] = field(default_factory=dict)
    passed_over: list[str] = field(default_factory=list)


def checked(files: Iterable[File], outcome: Outcome) -> Iterator[Checked]:
    """The files that are patterns, checked in their order.

    None is kept here, so that memory grows with the largest pattern and not with the collection.
    """
    shelves: defaultdict[str, Shelf] = defaultdict(Shelf)
    for file in files:
        data = file.read()
        try:
            one = check(data, file.name)
        except Exception as error:  # noqa: BLE001 - whatever it is, the others are still checked
            outcome.defects[file.name] = error
            continue
        if not one.source.is_pattern:
            outcome.passed_over.append(file.name)
            continue
        if file.name != "-":
            one = with_pictures_seen(one, partial(beginning, Path(file.name).parent))
        one = on_the_shelf(one, shelves[file.shelf])
        outcome.fails |= any(finding.severity in outcome.failing for finding in one.findings)
        yield one
