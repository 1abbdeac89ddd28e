"""The command line: what it prints, what it writes, and how it ends."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from loopleaf import cli
from tests.review.frame import framed

GOOD = framed('rounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 8}')
PNG = b"\x89PNG\r\n\x1a\n\0\0\0\0"
WARNED = framed("# without licence")
BAD = framed('rounds:\n  - {round: 1, work: "ch 1, 8 hdc in ring, join, fasten off", count: 9}')
SETTINGS = (
    "site_name: Shelf\nsite_url: https://shelf.example/knots/\ndocs_dir: bench\nextra: !ENV [NOWHERE, x]\n"
)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to stand in."""
    monkeypatch.chdir(tmp_path)
    return tmp_path


def run(*arguments: str, given: str | bytes | None = None) -> Result:
    return CliRunner().invoke(cli.main, arguments, input=given)


def write(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def test_exit_codes(folder: Path) -> None:
    write(folder / "good.yml", GOOD)
    write(folder / "warned.yml", WARNED)
    write(folder / "bad.yml", BAD)
    assert run("check", "good.yml").exit_code == 0
    assert run("check", "good.yml", "--strict").exit_code == 0
    assert run("check", "warned.yml").exit_code == 0
    assert run("check", "warned.yml", "--strict").exit_code == 1
    assert run("check", "bad.yml", "good.yml").exit_code == 1


def test_what_could_not_run(folder: Path) -> None:
    for arguments in (("check", "nowhere.yml"), ("check",), ("build",), ("check", "--format", "xml")):
        result = run(*arguments)
        assert result.exit_code == 2, result.output
        assert result.stdout == ""
        assert result.stderr
        assert "Traceback" not in result.output


def test_good_says_so(folder: Path) -> None:
    write(folder / "good.yml", GOOD)
    assert run("check", "good.yml").stdout == "1 pattern checked: nothing to mend.\n"


def test_a_file_named_that_is_no_pattern_is_told_of(folder: Path) -> None:
    """In a folder such files are passed over in silence: a collection may hold others."""
    write(folder / "shelf" / "notes.yml", "title: Notes\nrounds: []\n")
    named = run("check", "shelf/notes.yml")
    assert named.exit_code == 0
    assert "shelf/notes.yml has no “pieces:”, so it isn't a pattern" in named.stderr
    assert run("check", "shelf").stderr == ""


def test_standard_input() -> None:
    result = run("check", "-", "--format", "json", given=BAD)
    assert result.exit_code == 1
    (found,) = json.loads(result.stdout)
    assert found["pattern"] == "-"
    assert {finding["file"] for finding in found["findings"]} == {"-"}


def test_a_folder_is_read_in_order_and_other_yaml_left_alone(folder: Path) -> None:
    write(folder / "shelf" / "b.yml", GOOD)
    write(folder / "shelf" / "a.yaml", BAD)
    write(folder / "shelf" / "deeper" / "c.yml", GOOD)
    write(folder / "shelf" / "prices.yml", "wool: 4\n")
    write(folder / "shelf" / ".hidden" / "d.yml", BAD)
    result = run("check", "shelf", "--format", "json")
    assert [one["pattern"] for one in json.loads(result.stdout)] == [
        "shelf/a.yaml",
        "shelf/b.yml",
        "shelf/deeper/c.yml",
    ]


def test_a_file_named_twice_is_checked_once(folder: Path) -> None:
    write(folder / "shelf" / "a.yml", GOOD)
    result = run("check", "shelf/a.yml", "shelf", "--format", "json")
    assert [one["pattern"] for one in json.loads(result.stdout)] == ["shelf/a.yml"]


def test_the_collection_that_one_stands_in(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(folder / "mkdocs.yml", SETTINGS)
    write(folder / "bench" / "bad.yml", BAD)
    within = folder / "bench" / "pictures"
    within.mkdir()
    monkeypatch.chdir(within)
    result = run("check", "--format", "json")
    assert result.exit_code == 1
    (found,) = json.loads(result.stdout)
    assert found["pattern"] == "../bad.yml"
    assert found["findings"][0]["url"] == "https://shelf.example/knots/rules/#count-differs"


def test_a_collection_without_its_folder(folder: Path) -> None:
    write(folder / "mkdocs.yml", SETTINGS)
    result = run("check")
    assert result.exit_code == 2
    assert "bench" in result.stderr


def test_two_files_for_one_page(folder: Path) -> None:
    write(folder / "shelf" / "tide cloth.yml", GOOD)
    write(folder / "shelf" / "Tide-Cloth.yml", GOOD)
    result = run("check", "shelf", "--format", "json")
    assert result.exit_code == 1
    rules = [finding["rule"] for one in json.loads(result.stdout) for finding in one["findings"]]
    assert rules == ["address-taken"]


def test_no_colour_in_a_pipe(folder: Path) -> None:
    write(folder / "bad.yml", BAD)
    assert "\x1b" not in run("check", "bad.yml").stdout


def test_explain() -> None:
    result = run("explain", "count-differs")
    assert result.exit_code == 0
    for part in ("count-differs (error)", "Why it matters", "Wrong", "Right", "When to ignore", "count: 15"):
        assert part in result.stdout


def test_an_unknown_command_names_the_nearest() -> None:
    result = run("chek")
    assert result.exit_code == 2
    assert "There is no command “chek”. Did you mean check?" in result.stderr
    far = run("zzzz")
    assert far.exit_code == 2
    assert "There are adjust, build, check" in far.stderr


def test_explain_an_unknown_rule() -> None:
    result = run("explain", "count-differ")
    assert result.exit_code == 2
    assert "count-differs" in result.stderr


@pytest.mark.parametrize(
    ("name", "file", "title"),
    [
        ("lantern-pouch", "lantern-pouch.yml", "Lantern pouch"),
        ("shelf/tide_cloth.yaml", "shelf/tide_cloth.yaml", "Tide cloth"),
        ("yes", "yes.yml", '"Yes"'),
        ("2-pots", "2-pots.yml", '"2 pots"'),
    ],
)
def test_new(folder: Path, name: str, file: str, title: str) -> None:
    result = run("new", name)
    assert result.exit_code == 0, result.output
    text = (folder / file).read_text("utf-8")
    assert text.startswith(f"title: {title}\n")
    assert "#" in text
    checked = run("check", file, "--strict")
    assert checked.exit_code == 0, checked.output
    assert "nothing to mend" in checked.stdout


def test_new_beside_a_collection_says_where_its_patterns_stand(folder: Path) -> None:
    write(folder / "mkdocs.yml", SETTINGS)
    (folder / "bench").mkdir()
    assert "takes its patterns from bench" in run("new", "coaster").stdout
    assert "takes its patterns" not in run("new", "bench/coaster").stdout


def test_new_writes_nothing_over(folder: Path) -> None:
    write(folder / "pouch.yml", "mine")
    result = run("new", "pouch")
    assert result.exit_code == 2
    assert (folder / "pouch.yml").read_text("utf-8") == "mine"


def test_init(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    result = run("init", "shelf")
    assert result.exit_code == 0, result.output
    files = {
        path.relative_to(folder / "shelf").as_posix()
        for path in (folder / "shelf").rglob("*")
        if path.is_file()
    }
    assert files == {"mkdocs.yml", "pattern.schema.json", "patterns/index.md", "patterns/first-coaster.yml"}
    monkeypatch.chdir(folder / "shelf")
    checked = run("check", "--strict")
    assert checked.exit_code == 0, checked.output
    assert "1 pattern checked" in checked.stdout


def test_init_writes_nothing_over(folder: Path) -> None:
    write(folder / "shelf" / "patterns" / "index.md", "mine")
    result = run("init", "shelf")
    assert result.exit_code == 2
    assert not (folder / "shelf" / "mkdocs.yml").exists()


def test_measure(folder: Path) -> None:
    run("new", "coaster")
    result = run("measure", "coaster.yml")
    assert result.exit_code == 0, result.output
    for part in ("Coaster", "across", "lies flat", "Yarn", "Level: basic"):
        assert part in result.stdout


def test_measure_what_cannot_be_read(folder: Path) -> None:
    write(folder / "broken.yml", "pieces: [")
    result = run("measure", "broken.yml")
    assert result.exit_code == 1
    assert "not-yaml" in result.stdout
    write(folder / "prices.yml", "wool: 4\n")
    assert run("measure", "prices.yml").exit_code == 2
    assert run("measure", "nowhere.yml").exit_code == 2


def test_draw(folder: Path) -> None:
    run("new", "coaster")
    whole = run("draw", "coaster.yml")
    assert whole.exit_code == 0, whole.output
    assert whole.stdout.startswith("<svg")
    to_file = run("draw", "coaster.yml", "--piece", "coaster", "-o", "coaster.svg")
    assert to_file.exit_code == 0, to_file.output
    assert (folder / "coaster.svg").read_text("utf-8").startswith("<svg")


def test_the_kinds_of_drawing(folder: Path) -> None:
    run("new", "coaster")
    chart = run("draw", "coaster.yml")
    assert 'data-kind="hdc"' in chart.stdout
    assert run("draw", "coaster.yml", "--kind", "chart", "--terms", "US").stdout == chart.stdout
    british = run("draw", "coaster.yml", "--terms", "UK").stdout
    assert 'data-kind="hdc"' in british
    assert "htr, half treble (US: hdc, half double crochet)" in british
    picture = run("draw", "coaster.yml", "--kind", "picture")
    assert picture.stdout.startswith("<svg")
    assert "data-kind" not in picture.stdout
    for kind in ("chart", "picture"):
        mirrored = run("draw", "coaster.yml", "--kind", kind, "--left-handed")
        assert 'transform="scale(-1 1)"' in mirrored.stdout
    assert ">4<" in run("draw", "coaster.yml", "--kind", "profile").stdout  # the number of its fourth round
    told = [
        svg.partition("<desc>Coaster. Round 1: ")[2].partition("</desc>")[0]
        for svg in (chart.stdout, british)
    ]
    assert [" hdc " in words for words in told] == [True, False]
    assert [" htr " in words for words in told] == [False, True]
    assert "<desc>Coaster, drawn from its stitches" in picture.stdout
    for hand in ((), ("--left-handed",)):
        outline = run("draw", "coaster.yml", "--kind", "schematic", "--piece", "coaster", *hand)
        assert ">10 cm (4 in)<" in outline.stdout


def test_what_cannot_be_drawn(folder: Path) -> None:
    run("new", "coaster")
    unknown = run("draw", "coaster.yml", "--piece", "lid")
    assert unknown.exit_code == 2
    assert "coaster" in unknown.stderr
    assert run("draw", "coaster.yml", "-o", "nowhere/coaster.svg").exit_code == 2
    assert run("draw", "coaster.yml", "--kind", "portrait").exit_code == 2


def test_a_defect_of_ours_is_a_sentence(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(folder / "good.yml", GOOD)

    def breaks(data: bytes, file: str) -> None:
        raise KeyError("shell")

    monkeypatch.setattr("loopleaf.publish.checking.check", breaks)
    result = run("check", "good.yml")
    assert result.exit_code == 2
    assert "defect of Loopleaf" in result.stderr
    assert "Traceback" not in result.output


def test_a_defect_of_ours_in_one_file_leaves_the_others_checked(
    folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from loopleaf.review import Checked, check

    def breaks(data: bytes, file: str) -> Checked:
        if file == "good.yml":
            raise KeyError("shell")
        return check(data, file)

    write(folder / "good.yml", GOOD)
    write(folder / "bad.yml", BAD)
    monkeypatch.setattr("loopleaf.publish.checking.check", breaks)
    result = run("check", "good.yml", "bad.yml")
    assert result.exit_code == 2
    assert "good.yml could not be worked: KeyError" in result.stderr
    assert "bad.yml:14:74" in result.stdout


def test_counts_that_the_file_does_not_state_are_told(folder: Path) -> None:
    write(folder / "good.yml", GOOD.replace(", count: 8", ""))
    result = run("check", "good.yml", "--strict")
    assert "  piece, round 1: 8\n" in result.stdout
    assert result.exit_code == 0


@pytest.mark.parametrize(
    ("name", "content", "said"),
    [
        ("other.png", PNG, "The picture pouch.png isn't there."),
        ("pouch.png", b"words", "The picture pouch.png can't be shown."),
        ("pouch.png", PNG, ""),
    ],
)
def test_a_picture_must_be_there_and_be_one(folder: Path, name: str, content: bytes, said: str) -> None:
    text = write(folder / "shelf" / "good.yml", framed("pictures: [{file: pouch.png, alt: A pouch.}]"))
    (folder / "shelf" / name).write_bytes(content)
    result = run("check", "shelf/good.yml")
    assert said in result.stdout
    assert ("shelf/good.yml:7:19" in result.stdout) is bool(said)
    assert result.exit_code == bool(said)
    assert run("check", "-", given=text.read_bytes()).exit_code == 0


HOSTILE = {
    "not-yaml": b"pieces: [\n",
    "not-utf8": b"title: caf\xe9\npieces: {}\n",
    "markup-in-text": framed("title: <script>alert(1)</script>").encode(),
    "path-leaves-collection": framed("pictures: [{file: ../../secrets.png, alt: x}]").encode(),
    "number-too-large": framed(
        'rounds:\n  - {round: 1, work: "ch 1, (sc in ring) x 1000000000, join"}'
    ).encode(),
    "too-deep": b"pieces: " + b"[" * 5000 + b"]" * 5000,
}


@pytest.mark.parametrize("rule", HOSTILE)
def test_hostile_files_are_findings_and_harm_no_others(folder: Path, rule: str) -> None:
    (folder / "shelf").mkdir()
    (folder / "shelf" / "hostile.yml").write_bytes(HOSTILE[rule])
    write(folder / "shelf" / "good.yml", GOOD)
    result = run("check", "shelf", "--format", "json")
    assert result.exit_code == 1
    good, hostile = json.loads(result.stdout)
    assert good["findings"] == []
    first = next(finding for finding in hostile["findings"] if finding["rule"] == rule)
    assert first["line"] >= 1
    assert first["column"] >= 1


def test_the_light_commands_load_no_heavy_tools() -> None:
    import subprocess
    import sys

    script = (
        "import sys; from loopleaf.cli import main; main(['explain', 'count-differs'], "
        "standalone_mode=False);"
        "heavy = {'mkdocs', 'weasyprint', 'jinja2', 'markdown'} & {*sys.modules}; "
        "sys.exit(repr(heavy) if heavy else 0)"
    )
    done = subprocess.run([sys.executable, "-c", script], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
