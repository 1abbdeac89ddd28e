"""The command line: arguments, a call, output, exit code."""

import os
import sys
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn

import click

from . import __version__

if TYPE_CHECKING:
    from .review import Checked
    from .trade import Terms

# Everything else is imported inside the commands: a check must not wait for what only a build needs.

_LONG_WORK = 24  # files; fewer are checked before a progress bar could be read


class _NeverATraceback(click.Group):
    """A group whose commands end with a sentence and exit code 2 when something in Loopleaf itself fails."""

    def invoke(self, ctx: click.Context) -> Any:
        try:
            return super().invoke(ctx)
        except (click.ClickException, click.exceptions.Exit, click.Abort, BrokenPipeError):
            raise
        except Exception as error:  # noqa: BLE001 - whatever it is, a crafter gets a sentence
            click.echo(
                f"Loopleaf could not go on: {type(error).__name__}: {error}\n"
                "That is a defect of Loopleaf, not of your pattern; please report it with the file.",
                err=True,
            )
            ctx.exit(2)


@click.group(cls=_NeverATraceback, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="loopleaf")
def main() -> None:
    """Crochet patterns as YAML: worked stitch by stitch, published as a site and as booklets."""


@main.command()
@click.argument("paths", nargs=-1, metavar="[PATH …]")
@click.option(
    "--format", "form", type=click.Choice(["text", "json", "sarif"]), default="text", show_default=True
)
@click.option("--strict", is_flag=True, help="Warnings fail the check too.")
def check(paths: tuple[str, ...], form: str, strict: bool) -> None:
    """Work every round of patterns and say what doesn't add up.

    PATH is a file, a folder, or - for standard input; without one, the collection that you are in.
    Exit code: 0 nothing to mend, 1 something to mend, 2 the check could not run.
    """
    from .publish.collection import NotReadable, collection_of

    try:
        collection = collection_of(Path())
        if not paths:
            if collection is None:
                raise NotReadable("There is no mkdocs.yml here or above; name a pattern file or a folder.")
            if not collection.docs.is_dir():
                raise NotReadable(
                    f"{collection.config} names the folder {collection.docs}, which isn't there."
                )
            paths = (os.path.relpath(collection.docs),)
        checked = _checked(list(_files(paths)))
    except NotReadable as error:
        _cannot(str(error))
    url = collection.site_url if collection else ""
    _print(checked, form, url)
    failing = ("error", "warning") if strict else ("error",)
    if any(finding.severity in failing for one in checked for finding in one.findings):
        sys.exit(1)


@dataclass(frozen=True, slots=True)
class _File:
    """A file to check. name: its path as given. shelf: the folder whose files make pages of one site."""

    name: str
    shelf: str
    read: Callable[[], bytes]


def _files(paths: Iterable[str]) -> Iterator[_File]:
    """The files that the paths name, the same one once."""
    from .publish.collection import NotReadable, pattern_files, read

    seen = set()
    for name in paths:
        path = Path(name)
        if name == "-":
            yield _File(name, name, sys.stdin.buffer.read)
        elif path.is_dir():
            for file in pattern_files(path):
                if file.resolve() not in seen:
                    seen.add(file.resolve())
                    yield _File(str(file), name, partial(read, file))
        elif path.exists():
            if path.resolve() not in seen:
                seen.add(path.resolve())
                yield _File(name, str(path.parent), partial(read, path))
        else:
            raise NotReadable(f"There is no file or folder {name}.")


def _checked(files: list[_File]) -> list["Checked"]:
    """The files that are patterns, checked; with a progress bar for long work on a terminal."""
    from .review import among_files
    from .review import check as check_file

    shelves: dict[str, list[Checked]] = {}
    hidden = len(files) < _LONG_WORK or not sys.stderr.isatty()
    with click.progressbar(files, label="Working the rounds", file=sys.stderr, hidden=hidden) as bar:
        for file in bar:
            one = check_file(file.read(), file.name)
            if one.source.is_pattern:
                shelves.setdefault(file.shelf, []).append(one)
    return [one for shelf in shelves.values() for one in among_files(shelf)]


def _print(checked: list["Checked"], form: str, site_url: str) -> None:
    if form == "json":
        from .publish.json_report import report as json_report

        _utf8(json_report(checked, site_url))
    elif form == "sarif":
        from .publish.sarif import report as sarif_report

        _utf8(sarif_report(checked, site_url, Path.cwd()))
    else:
        from .publish.terminal import coloured, plain
        from .publish.terminal import report as text_report

        colour = sys.stdout.isatty() and not os.environ.get("NO_COLOR")
        _text(text_report(checked, coloured if colour else plain))


def _utf8(text: str) -> None:
    """For programs: UTF-8, whatever the terminal's own encoding."""
    sys.stdout.buffer.write(text.encode())


def _text(text: str) -> None:
    """For people: what the terminal can't show is replaced, never a failure."""
    encoding = getattr(sys.stdout, "encoding", None) or "utf-8"
    click.echo(text.encode(encoding, "replace").decode(encoding, "replace"), nl=False, color=True)


def _cannot(reason: str) -> NoReturn:
    click.echo(reason, err=True)
    sys.exit(2)


@main.command()
@click.argument("rule")
def explain(rule: str) -> None:
    """Print what a finding's RULE looks for, why it matters, and how to mend it."""
    from .publish.rule_page import rule_text
    from .review import RULES, nearest_rules

    for one in RULES:
        if one.name == rule:
            _text(rule_text(one))
            return
    _cannot(f"There is no rule called {rule}. Near it: {', '.join(nearest_rules(rule))}.")


@main.command()
@click.argument("file")
def new(file: str) -> None:
    """Write a commented pattern FILE to begin with."""
    from .publish.start import AlreadyThere, new_pattern

    try:
        path = new_pattern(file)
    except (AlreadyThere, OSError) as error:
        _cannot(str(error))
    click.echo(f"Wrote {path}. It checks as it stands; change it round by round, and check again.")


@main.command()
@click.argument("folder", metavar="DIR")
def init(folder: str) -> None:
    """Start a collection in DIR: settings, a first page, one example pattern."""
    from .publish.start import AlreadyThere, new_collection

    try:
        written = new_collection(Path(folder))
    except (AlreadyThere, OSError) as error:
        _cannot(str(error))
    for path in written:
        click.echo(f"Wrote {path}.")
    click.echo(f"Now: cd {folder}, then loopleaf check, then loopleaf build.")


@main.command()
def build() -> None:
    """Check the collection, then build its site and booklets.

    Exit code: 0 all published, 1 something was left out, 2 the build could not run.
    """
    from .publish.collection import NotReadable, collection_of

    try:
        collection = collection_of(Path())
    except NotReadable as error:
        _cannot(str(error))
    if collection is None:
        _cannot("There is no mkdocs.yml here or above; `loopleaf init DIR` starts a collection.")
    from .publish.site_build import CannotBuild
    from .publish.site_build import build as build_site

    try:
        published = build_site(collection.config)
    except CannotBuild as error:
        _cannot(str(error))
    if not published:
        sys.exit(1)


@main.command()
@click.argument("pattern")
def measure(pattern: str) -> None:
    """Print what PATTERN measures: sizes round by round, yarn, cords, time, level."""
    from .publish.measure_report import measure_text

    checked = _one(pattern)
    assert checked.measured is not None
    _text(measure_text(checked.measured))


@main.command()
@click.argument("pattern")
@click.option("--piece", default="", metavar="NAME", help="One piece by itself; without it all of them.")
@click.option(
    "--kind",
    type=click.Choice(["chart", "picture"]),
    default="chart",
    show_default=True,
    help="One sign a stitch with its key, or the finished piece.",
)
@click.option("--left-handed", is_flag=True, help="As a left-hander works it: mirrored, the words upright.")
@click.option(
    "--terms", type=click.Choice(["US", "UK"]), help="Terms of a chart's key; without it the pattern's own."
)
@click.option(
    "-o", "output", default="-", metavar="FILE.svg", help="Where to write; standard output without it."
)
def draw(pattern: str, piece: str, kind: str, left_handed: bool, terms: "Terms | None", output: str) -> None:
    """Draw PATTERN as SVG from its worked stitches."""
    from .draw import diagram, first_picture, piece_picture

    checked = _one(pattern)
    work, measured = checked.work, checked.measured
    assert work is not None
    if piece and work.piece(piece) is None:
        names = ", ".join(one.name for one in work.pieces)
        _cannot(f"{pattern} has no piece “{piece}”; it has {names}.")
    if kind == "chart":
        drawn = diagram(work, piece, terms or work.pattern.terms, left_handed, measured)
    elif piece:
        drawn = piece_picture(work, piece, measured, left_handed)
    else:
        drawn = first_picture(work, measured, left_handed)
    if not drawn:
        _cannot(f"There is nothing to draw in {piece or pattern}: it has no rounds that could be worked.")
    if output == "-":
        _utf8(drawn)
        return
    try:
        Path(output).write_text(drawn, encoding="utf-8")
    except OSError as error:
        _cannot(f"{output} can't be written: {(error.strerror or 'unknown reason').lower()}.")


def _one(name: str) -> "Checked":
    """One pattern, worked; ends with its findings where it can't be."""
    from .publish.collection import NotReadable, read
    from .review import check as check_file

    try:
        data = sys.stdin.buffer.read() if name == "-" else read(Path(name))
    except NotReadable as error:
        _cannot(str(error))
    checked = check_file(data, name)
    if checked.measured is None:
        if not checked.findings:
            _cannot(f"{name} holds no pattern: it has no `pieces:`.")
        _print([checked], "text", "")
        sys.exit(1)
    return checked
