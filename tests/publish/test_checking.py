"""Files checked one after another, none kept."""

import gc
from pathlib import Path

from loopleaf.fabric import PatternWork
from loopleaf.publish.checking import Outcome, checked, files_of

PATTERN = "title: {name}\nterms: US\npieces: {{cord: {{worked: chain, length: 10 cm}}}}\n"


def _files(folder: Path, *names: str) -> list[str]:
    for name in names:
        (folder / name).parent.mkdir(exist_ok=True)
        (folder / name).write_text(PATTERN.format(name=name), encoding="utf-8")
    return [str(folder / name) for name in names]


def test_the_stitches_of_one_pattern_are_held_at_a_time(tmp_path: Path) -> None:
    """Memory grows with the largest pattern, not with the collection."""
    files = files_of(_files(tmp_path, "a.yml", "b.yml", "c.yml", "d.yml"))
    before = _works()
    alive = [_works() - before for _ in checked(files, Outcome(()))]
    assert alive == [1, 1, 1, 1]


def _works() -> int:
    """How many worked patterns are held in memory."""
    gc.collect()
    return sum(isinstance(one, PatternWork) for one in gc.get_objects())


def test_addresses_are_taken_shelf_by_shelf(tmp_path: Path) -> None:
    paths = _files(tmp_path, "one/Tide Cloth.yml", "one/tide-cloth.yml", "two/tide-cloth.yml")
    rules = {
        one.source.file: [finding.rule for finding in one.findings]
        for one in checked(files_of(paths), Outcome(("error",)))
    }
    assert ["address-taken" in rules[path] for path in paths] == [False, True, False]


def test_the_same_file_is_checked_once(tmp_path: Path) -> None:
    (path,) = _files(tmp_path, "a.yml")
    assert [file.name for file in files_of([path, str(tmp_path), path])] == [path]
