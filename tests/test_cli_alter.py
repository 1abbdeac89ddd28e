"""`loopleaf adjust` and `loopleaf resize`: the new pattern to where it is asked for, the story beside it."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from loopleaf import cli
from tests.alter.patterns import DEMO, POUCH


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "pouch.yml").write_text((DEMO / "lantern-pouch.yml").read_text("utf-8"), encoding="utf-8")
    (tmp_path / "small.yml").write_text(POUCH, encoding="utf-8")
    return tmp_path


def run(*arguments: str) -> Result:
    return CliRunner().invoke(cli.main, arguments)


@pytest.mark.parametrize(
    "wish",
    [
        ("adjust", "pouch.yml", "--height", "+3 rounds"),
        ("adjust", "pouch.yml", "--height", "-2 rounds"),
        ("adjust", "pouch.yml", "--height", "+3 cm"),
        ("resize", "pouch.yml", "--around", "43cm"),
        ("resize", "pouch.yml", "--around", "32cm"),
        ("resize", "pouch.yml", "--gauge", "18 sts, 13 rows / 10 cm"),
        ("resize", "pouch.yml", "--yarn", "3"),
    ],
)
def test_the_new_file_checks(folder: Path, wish: tuple[str, ...]) -> None:
    done = run(*wish, "-o", "new.yml")
    assert done.exit_code == 0, done.output
    assert done.stdout.startswith("Lantern pouch: ")
    assert run("check", "new.yml", "--strict").exit_code == 0


def test_without_a_file_the_pattern_goes_to_standard_output(folder: Path) -> None:
    done = run("adjust", "pouch.yml", "--height", "+3 rounds")
    assert done.stdout.startswith("title: Lantern pouch\n")
    assert "rounds: 7-19" in done.stdout
    assert "Lantern pouch: 3 rounds more, about 3 cm (1¼ in) taller." in done.stderr
    assert "  line 50, pouch, rounds 7-19: was rounds 7-16\n" in done.stderr
    assert "  line 28, note 3: “rounds 7 and 19”, before “rounds 7 and 16”\n" in done.stderr
    assert "  line 16, yarn A: weighed 52 g left out\n" in done.stderr
    assert "  line 28 says “1 cm”: look whether it still holds" in done.stderr


def test_what_is_offered(folder: Path) -> None:
    told = run("adjust", "pouch.yml").stdout
    assert "\n  1 round more, about 10 mm (⅜ in) taller. A about 45 to 65 g (1¾ to 2¼ oz), " in told
    assert "\n  5 rounds fewer, about 5 cm (2 in) shorter. A about 30 to 45 g" in told
    assert len(told.splitlines()) == 12
    measured = run("measure", "pouch.yml").stdout
    assert told.split("\n", 1)[1] == measured.split("Other heights, each worked:\n")[1]


def test_heights_of_sizes_and_without_a_gauge(folder: Path) -> None:
    told = run("adjust", str(DEMO / "curlew-cap.yml")).stdout
    assert "\n  1 round fewer, about 9 mm (⅜ in) shorter. Size large adult: A about " in told
    (folder / "ungauged.yml").write_text(POUCH.replace("gauge:", "# gauge:"), encoding="utf-8")
    assert "\n  1 round more. About " in run("adjust", "ungauged.yml").stdout
    told = run("adjust", "ungauged.yml", "--height", "+1 round", "-o", "new.yml").stdout
    assert "  line 8, yarn A: weighed 40 g left out\n" in told  # nobody can tell what it takes now


def test_a_height_without_a_sign_is_asked_back(folder: Path) -> None:
    done = run("adjust", "pouch.yml", "--height", "20 cm", "-o", "new.yml")
    assert done.exit_code == 2
    assert "write “+20 cm”" in done.stderr
    assert not (folder / "new.yml").exists()
    assert "with its sign" in " ".join(run("adjust", "--help").stdout.split())


def test_rows_are_called_around_where_the_file_does(folder: Path) -> None:
    """The collar's file states how far around it is; the scarf's, how wide."""
    collar = run("resize", str(DEMO / "gull-collar.yml"), "--around", "39.5cm", "-o", "new.yml").stdout
    assert collar.startswith("Gull collar, M: now 39.5 cm (15½ in) around;")
    scarf = run("resize", str(DEMO / "ebb-scarf.yml"), "--around", "31cm", "-o", "new2.yml").stdout
    assert " wide" in scarf.split("\n")[0]


def test_a_size_that_is_the_nearest_as_it_is_stands_alone(folder: Path) -> None:
    told = run("resize", str(DEMO / "gull-collar.yml"), "--around", "40.5cm", "-o", "new.yml").stdout
    assert "the pattern as it is, 40.5 cm (16 in) around; the other sizes are left out." in told
    told = run("resize", "pouch.yml", "--around", "34.5cm", "-o", "new.yml").stdout
    assert "the pattern as it is, 34.5 cm (13½ in) around.\n" in told


def test_a_size_that_was_to_stay_and_couldnt_is_told(folder: Path) -> None:
    """Eight increase sections and a scallop of six stitches leave few numbers of stitches to choose from."""
    told = run("resize", "pouch.yml", "--yarn", "3", "-o", "new.yml").stdout
    assert "now 37.5 cm (14¾ in) around, the nearest to 34.5 cm (13½ in) that this design allows." in told
    told = run("resize", "pouch.yml", "--gauge", "18 sts / 4 in", "-o", "new.yml").stdout
    assert "now 34.5 cm (13½ in) around.\n" in told


def test_a_note_that_the_pattern_hadnt_is_told(folder: Path) -> None:
    told = run("resize", "pouch.yml", "--gauge", "18 sts, 13 rows / 10 cm", "-o", "new.yml").stdout
    assert "  line 21: A gauge of 18 stitches is unusual for yarn of weight 4 (medium)." in told
    assert "unusual" not in run("resize", "pouch.yml", "--around", "43cm", "-o", "new.yml").stdout


def test_what_the_design_doesnt_allow(folder: Path) -> None:
    for arguments in (
        ("adjust", "pouch.yml", "--height", "-10 rounds"),
        ("resize", "pouch.yml", "--around", "18cm"),
    ):
        done = run(*arguments, "-o", "new.yml")
        assert done.exit_code == 1
        assert done.stdout == ""
        assert done.stderr
        assert not (folder / "new.yml").exists()


def test_what_cant_be_tried(folder: Path) -> None:
    for arguments in (
        ("adjust", "pouch.yml", "--height", "taller"),
        ("resize", "pouch.yml"),
        ("resize", "pouch.yml", "--around", "30cm", "--yarn", "3"),
        ("resize", "pouch.yml", "--around", "wide"),
        ("resize", "pouch.yml", "--gauge", "tight"),
        ("resize", "pouch.yml", "--yarn", "9"),
        ("adjust", "pouch.yml", "--height", "+1 round", "-o", "pouch.yml"),
        ("adjust", "nowhere.yml", "--height", "+1 round"),
    ):
        done = run(*arguments)
        assert done.exit_code == 2, arguments
        assert done.stderr
        assert "Traceback" not in done.output


def test_a_pattern_with_an_error_shows_it(folder: Path) -> None:
    (folder / "small.yml").write_text(
        POUCH.replace("count: 16}", "count: 17}").replace("count: 16\n", "count: 17\n")
    )
    done = run("adjust", "small.yml", "--height", "+1 round")
    assert done.exit_code == 1
    assert "count-differs" in done.stdout


@pytest.mark.parametrize(
    ("name", "wish", "says"),
    [
        ("curlew-cap", ("--around", "50cm"), "Curlew cap, child: now 49.5 cm"),
        ("ebb-scarf", ("--around", "20cm"), "Ebb scarf: the nearest to 20 cm (7¾ in) of this design is the"),
        ("curlew-cap", ("--size", "adult"), "Curlew cap, adult: this size alone"),
        ("gull-collar", ("--size", "m", "--gauge", "18 sts"), "Gull collar, M: now "),
        ("sandbank-seal", ("--piece", "head", "--around", "16cm"), "Sandbank seal: “head” is now 16 cm"),
        (
            "lantern-pouch",
            ("--around", "42cm"),
            "Lantern pouch: now 43 cm (16¾ in) around, the nearest to 42 cm",
        ),
    ],
)
def test_sizes_and_other_pieces(folder: Path, name: str, wish: tuple[str, ...], says: str) -> None:
    done = run("resize", str(DEMO / f"{name}.yml"), *wish, "-o", "new.yml")
    assert done.exit_code == 0, done.output
    assert done.stdout.startswith(says)
    assert run("check", "new.yml", "--strict").exit_code == 0


def test_sizes_and_pieces_that_arent_there(folder: Path) -> None:
    for wish in (
        ("--size", "L"),
        ("--piece", "lid", "--around", "30cm"),
        ("--piece", "pouch", "--yarn", "3"),
        (),
    ):
        done = run("resize", "pouch.yml", *wish)
        assert done.exit_code == (1 if wish[:1] == ("--size",) else 2), done.output


def test_a_yarn_weight_goes_by_its_number_or_a_name_that_is_only_its_own(folder: Path) -> None:
    by_number, by_name = (run("resize", "pouch.yml", "--yarn", one) for one in ("3", "light worsted"))
    assert by_number.exit_code == by_name.exit_code == 0
    assert by_number.stdout == by_name.stdout
    two = run("resize", "pouch.yml", "--yarn", "baby")
    assert two.exit_code == 2
    assert "“baby” is more than one yarn weight: write 1 (super fine), 2 (fine)." in two.stderr
    none = run("resize", "pouch.yml", "--yarn", "string")
    assert "“string” is no yarn weight: write 0 (lace), 1 (super fine)" in none.stderr
