"""The command line: arguments, a call, output, exit code."""

import gc
import os
import sys
from collections.abc import Callable, Iterable
from functools import partial
from pathlib import Path
from typing import IO, TYPE_CHECKING, NoReturn

import click

from . import __version__
from .publish.commands import Commands, defect, yarn_weight

if TYPE_CHECKING:
    from .draw.kinds import Kind
    from .publish.checking import File
    from .publish.terminal import Paint
    from .review import Checked
    from .trade import Terms

# Everything else is imported inside the commands: a check must not wait for what only a build needs.

_LONG_WORK = 24  # files; fewer are checked before a progress bar could be read


@click.group(cls=Commands, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="loopleaf")
def main() -> None:
    """Crochet patterns as YAML: worked stitch by stitch, published as a site and as booklets."""
    collect_seldom()


def collect_seldom() -> None:
    """Look for circles of objects a hundred times less often.

    Stitches refer only to what was made before them, so that they go when their pattern goes; looking through
    hundreds of thousands of them again and again costs a tenth of a check and finds nothing.
    """
    gc.set_threshold(70_000, 50, 50)


@main.command()
@click.argument("paths", nargs=-1, metavar="[PATH …]")
@click.option(
    "--format", "form", type=click.Choice(["text", "json", "sarif"]), default="text", show_default=True
)
@click.option("--strict", is_flag=True, help="Warnings fail the check too.")
@click.option("--fix", is_flag=True, help="First put in what is certain, and show the difference.")
def check(paths: tuple[str, ...], form: str, strict: bool, fix: bool) -> None:
    """Work every round of patterns and say what doesn't add up.

    PATH is a file, a folder, or - for standard input; without one, the collection that you are in.
    Exit code: 0 nothing to mend, 1 something to mend, 2 the check could not run.
    """
    from .publish.checking import Outcome, checked, files_of
    from .publish.collection import NotReadable, collection_of

    outcome = Outcome(("error", "warning") if strict else ("error",))
    if fix and "-" in paths:
        _cannot("--fix mends files in their place; what comes from standard input has none. Name the file.")
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
        files = list(files_of(paths))
        if fix:
            _fix(files, form)
        hidden = len(files) < _LONG_WORK or not sys.stderr.isatty()
        with click.progressbar(files, label="Working the rounds", file=sys.stderr, hidden=hidden) as bar:
            text = _report(checked(bar, outcome), form, collection.site_url if collection else "")
    except NotReadable as error:
        _cannot(str(error))
    if form == "text":
        _text(text)
    else:
        _utf8(text)
    for name in outcome.passed_over:
        if name in paths:
            click.echo(f"{name} has no “pieces:”, so it isn't a pattern and wasn't checked.", err=True)
    for file, cause in outcome.defects.items():
        click.echo(defect(f"{file} could not be worked", cause), err=True)
    if outcome.defects or outcome.fails:
        sys.exit(2 if outcome.defects else 1)


def _fix(files: list["File"], form: str) -> None:
    """Mend the files in their place and show the difference: beside the report, where programs read that."""
    from .publish.mending_files import NotWritten, difference, put_in_place
    from .review import mend

    beside = form != "text"
    stream = sys.stderr if beside else sys.stdout
    untouched = True
    for file in files:
        before = file.read()
        mended = mend(before, file.name)
        if mended.mended:
            try:
                put_in_place(Path(file.name), before, mended.data)
            except NotWritten as error:
                _cannot(str(error))
            untouched = False
        if mended.mended or mended.refused:
            text = before.decode("utf-8-sig", "replace")
            _text(difference(file.name, text, mended, _paint(stream)), stream)
    if untouched:
        _text("There was nothing certain to put in: no file was changed.\n", stream)


def _report(checked: Iterable["Checked"], form: str, site_url: str) -> str:
    if form == "json":
        from .publish.json_report import report as json_report

        return json_report(checked, site_url)
    if form == "sarif":
        from .publish.sarif import report as sarif_report

        return sarif_report(checked, site_url, Path.cwd())
    from .publish.terminal import report as text_report
    from .publish.worked_out import worked_out

    return text_report(checked, _paint(sys.stdout), worked_out)


def _paint(stream: IO[str]) -> "Paint":
    """In colour on a terminal, unless NO_COLOR is set; plain in a pipe."""
    from .publish.terminal import coloured, plain

    return coloured if stream.isatty() and not os.environ.get("NO_COLOR") else plain


def _utf8(text: str) -> None:
    """For programs: UTF-8, whatever the terminal's own encoding."""
    sys.stdout.buffer.write(text.encode())


def _text(text: str, stream: IO[str] | None = None) -> None:
    """For people: what the terminal can't show is replaced, never a failure."""
    stream = stream or sys.stdout
    encoding = getattr(stream, "encoding", None) or "utf-8"
    click.echo(text.encode(encoding, "replace").decode(encoding, "replace"), stream, nl=False, color=True)


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
@click.option("-o", "output", default="-", metavar="FILE", help="Where to write; standard output without it.")
def schema(output: str) -> None:
    """Print the JSON Schema of pattern files, by which an editor completes fields and shows their meaning."""
    from .publish.start import schema_text

    _to(output, schema_text())


@main.command()
@click.argument("file")
def new(file: str) -> None:
    """Write a commented pattern FILE to begin with."""
    from .publish.collection import NotReadable, collection_of
    from .publish.start import AlreadyThere, new_pattern

    try:
        path = new_pattern(file)
        collection = collection_of(path.parent)
    except (AlreadyThere, OSError, NotReadable) as error:
        _cannot(str(error))
    click.echo(f"Wrote {path}. It checks as it stands; change it round by round, and check again.")
    if collection and not path.resolve().is_relative_to(collection.docs.resolve()):
        click.echo(f"The collection takes its patterns from {collection.docs}: move it there to publish it.")


@main.command()
@click.argument("folder", metavar="DIR")
def init(folder: str) -> None:
    """Start a collection in DIR: settings, a first page, one example pattern, the schema for editors."""
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
    """Print what PATTERN measures: sizes round by round, yarn, cords, time, level, heights on offer."""
    from .publish.altering import heights_offered
    from .publish.measure_report import measure_text

    checked = _one(pattern)
    assert checked.measured is not None
    _text(measure_text(checked.measured) + heights_offered(checked))


@main.command()
@click.argument("pattern")
@click.option("--piece", default="", metavar="NAME", help="One piece by itself; without it all of them.")
@click.option(
    "--kind",
    type=click.Choice(["chart", "schematic", "profile", "picture"]),
    default="chart",
    show_default=True,
    help="One sign a stitch; the outline with measures; work in the round in section; the finished piece.",
)
@click.option("--left-handed", is_flag=True, help="As a left-hander works it: mirrored, the words upright.")
@click.option(
    "--terms", type=click.Choice(["US", "UK"]), help="Terms of a chart's key; without it the pattern's own."
)
@click.option(
    "-o", "output", default="-", metavar="FILE.svg", help="Where to write; standard output without it."
)
def draw(
    pattern: str, piece: str, kind: "Kind", left_handed: bool, terms: "Terms | None", output: str
) -> None:
    """Draw PATTERN as SVG from its worked stitches."""
    from .draw.kinds import NOTHING, drawing
    from .publish.leaflet_told import told_alone

    checked = _one(pattern)
    work, measured = checked.work, checked.measured
    assert work is not None
    if piece and work.piece(piece) is None:
        names = ", ".join(one.name for one in work.pieces)
        _cannot(f"{pattern} has no piece “{piece}”; it has {names}.")
    own = terms or work.pattern.terms
    drawn = drawing(work, kind, piece, own, left_handed, measured)
    if not drawn:
        _cannot(f"There is nothing to draw in {piece or pattern}: {NOTHING[kind]}.")
    _to(output, told_alone(work, kind, piece, own, drawn))


_NEW_FILE = click.option(
    "-o", "output", default="-", metavar="FILE.yml", help="Where to write; standard output without it."
)


@main.command()
@click.argument("pattern")
@click.option(
    "--height",
    metavar='"+3 rounds"',
    help="How much taller or shorter, with its sign: “+3 rounds”, “-2 rounds” or “+3 cm”.",
)
@_NEW_FILE
def adjust(pattern: str, height: str | None, output: str) -> None:
    """Make PATTERN taller or shorter where its author allows it; without a height, list what is offered.

    The pattern so adjusted goes to the file or to standard output, what changed is told beside it.
    Exit code: 0 done, 1 the pattern doesn't allow it, 2 it could not be tried.
    """
    from .publish.altering import adjusted, heights

    checked = _one(pattern, sound=True)
    if height is None:
        _text(heights(checked))
    else:
        _altered(pattern, output, partial(adjusted, checked, height))


@main.command()
@click.argument("pattern")
@click.option("--around", metavar="32cm", help="How far around it is to be (in rows: how wide).")
@click.option("--gauge", metavar='"18 sts, 13 rows / 10 cm"', help="Your own gauge; the size stays.")
@click.option(
    "--yarn", type=yarn_weight, metavar="0-7", help="Another yarn weight or its name; the size stays."
)
@click.option("--size", metavar="NAME", help="Which of its sizes; by itself: that size alone.")
@click.option("--piece", default="", metavar="NAME", help="Which piece is to be so far around.")
@_NEW_FILE
def resize(
    pattern: str,
    around: str | None,
    gauge: str | None,
    yarn: int | None,
    size: str | None,
    piece: str,
    output: str,
) -> None:
    """Make of PATTERN the nearest of the same design for another size, gauge or yarn.

    The new pattern goes to the file or to standard output, what changed is told beside it.
    Exit code: 0 done, 1 the design doesn't allow it, 2 it could not be tried.
    """
    from .publish.altering import Wanted, resized

    asked = sum(one is not None for one in (around, gauge, yarn))
    if asked > 1 or (not asked and size is None):
        _cannot("Say one of --around, --gauge and --yarn.")
    if piece and around is None:
        _cannot("--piece goes with --around.")
    checked = _one(pattern, sound=True)
    _altered(pattern, output, partial(resized, checked, Wanted(around, gauge, yarn, size, piece)))


def _altered(name: str, output: str, alter: Callable[[], tuple[str, str]]) -> None:
    """The new pattern to its file, what is told of it beside it; never over the one that it comes from."""
    from .alter import CannotAlter, NotUnderstood

    if output != "-" and Path(output).resolve() == Path(name).resolve():
        _cannot(f"{output} is the pattern itself; name another file.")
    try:
        text, told = alter()
    except NotUnderstood as no:
        _cannot(str(no))
    except CannotAlter as no:
        _text("\n  ".join(no.reasons) + "\n", sys.stderr)
        sys.exit(1)
    _to(output, text)
    _text(told, sys.stderr if output == "-" else sys.stdout)


def _to(output: str, text: str) -> None:
    """To a file, or to standard output where it is `-`."""
    if output == "-":
        _utf8(text)
        return
    try:
        Path(output).write_text(text, encoding="utf-8")
    except OSError as error:
        _cannot(f"{output} can't be written: {(error.strerror or 'unknown reason').lower()}.")


def _one(name: str, sound: bool = False) -> "Checked":
    """One pattern, worked; ends with its findings where it can't be, or isn't sound though it must be."""
    from .publish.collection import NotReadable, read
    from .review import check as check_file

    try:
        data = sys.stdin.buffer.read() if name == "-" else read(Path(name))
    except NotReadable as error:
        _cannot(str(error))
    checked = check_file(data, name)
    if checked.measured is None or (sound and checked.has_errors):
        if not checked.findings:
            _cannot(f"{name} holds no pattern: it has no `pieces:`.")
        _text(_report([checked], "text", ""))
        sys.exit(1)
    return checked
