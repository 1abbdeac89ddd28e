"""The site against plain MkDocs, each built by its own fresh process."""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from tests.benchmarks.plain_site import copies, make_plain
from tests.benchmarks.timing import Result, in_turn, seconds

TIMES = 5
"""How often each pattern of the demo is put into the collection: one of each is over too soon to compare."""
RUNS = 3


def site_against_plain(project: Path) -> Iterator[Result]:
    with tempfile.TemporaryDirectory() as name:
        ours, plain = Path(name) / "ours", Path(name) / "plain"
        ours.mkdir()
        plain.mkdir()
        copies(project, ours, TIMES)
        first = seconds(lambda: build(ours / "mkdocs.yml"))
        settings = make_plain(project, ours / "site", plain)
        pages = len(list((plain / "docs").rglob("*.md")))
        mine, theirs = in_turn([lambda: build(ours / "mkdocs.yml"), lambda: build(settings)], RUNS)
        built = len(list((plain / "site").rglob("index.html")))
        if built != pages:
            raise SystemExit(f"The plain site has {built} pages where {pages} were written.")
        because = f"{mine:.1f} s and {theirs:.1f} s for {pages} pages; patterns worked before and unchanged"
        yield Result("Site: Loopleaf ÷ plain MkDocs, same pages", mine / theirs, most=1.5, because=because)
        # Plain pages come ready made, here each pattern is worked and drawn first: told, held to no budget.
        because = f"{first:.1f} s: each pattern worked, checked and drawn"
        yield Result("Site, very first build ÷ plain MkDocs", first / theirs, because=because)


def build(settings: Path) -> None:
    """One build as a user starts it; a site that isn't built ends the benchmark."""
    shutil.rmtree(settings.parent / "site", ignore_errors=True)
    environment = {**os.environ, "NO_MKDOCS_2_WARNING": "1"}
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-f", str(settings)]
    done = subprocess.run(command, capture_output=True, text=True, env=environment, timeout=600)
    if done.returncode:
        raise SystemExit(f"{settings} could not be built:\n{done.stderr}")
