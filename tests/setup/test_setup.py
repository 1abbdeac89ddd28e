"""The set-up script on machines that lack one thing or another, its package managers being stand-ins."""

import re
from pathlib import Path

import pytest

from tests.setup.fresh_machine import Machine

VENV = "python -m venv --clear .venv"


@pytest.fixture
def machine(tmp_path: Path) -> Machine:
    return Machine(tmp_path)


def installed(calls: list[str]) -> list[str]:
    """The pip calls: `packages` by the lock alone, `loopleaf` itself, `whole` where they are checked, `aside`
    for the test of the wheel.
    """
    found = []
    for call in calls:
        if " -m pip install" in call and "--no-deps --require-hashes -r requirements.txt" in call:
            found.append("packages")
        elif " -m pip install" in call and "--no-build-isolation" in call and call.endswith("-e ."):
            found.append("loopleaf")
        elif " -m pip check" in call:
            found.append("whole")
        elif " -m pip wheel" in call and "--require-hashes" in call:
            found.append("aside")
        elif " -m pip" in call:
            found.append(call)
    return found


def test_a_complete_machine_is_set_up_and_builds(machine: Machine) -> None:
    status, _, calls = machine.run("site")
    assert status == 0
    assert calls[0] == VENV
    assert installed(calls) == ["packages", "loopleaf", "whole"]
    assert calls[-1] == "loopleaf build"


def test_a_second_run_installs_nothing(machine: Machine) -> None:
    machine.run("site")
    status, said, calls = machine.run("site")
    assert (status, calls) == (0, ["loopleaf build"])
    assert "Setting up" not in said


def test_root_on_debian_gets_the_missing_packages(machine: Machine) -> None:
    machine.add_manager("apt-get")
    machine.lacks("venv", "pango")
    status, _, calls = machine.run("site")
    assert status == 0
    assert calls[0] == "apt-get update -q"
    assert calls[1].startswith("apt-get install -y ")
    assert set(calls[1].split()[2:]) - {"-y", "-q", "--no-install-recommends"} == {
        "python3-venv",
        "libpango-1.0-0",
        "libpangoft2-1.0-0",
        "libharfbuzz-subset0",
    }
    assert calls[2] == VENV
    assert calls[-1] == "loopleaf build"


def test_the_venv_package_goes_with_the_python_that_is_used(machine: Machine) -> None:
    machine.add_manager("apt-get")
    machine.lacks("venv")
    machine.add_python("python3.12")
    _, _, calls = machine.run("site", "PYTHON=python3.12")
    assert re.search(r"install .* python3\.\d+-venv$", calls[1])


def test_root_on_fedora_gets_them_by_dnf(machine: Machine) -> None:
    machine.add_manager("dnf")
    machine.lacks("pango")
    status, _, calls = machine.run("site")
    assert status == 0
    assert calls[0] == "dnf install -y -q pango harfbuzz"


def test_anyone_else_is_told_the_one_command_and_nothing_is_done(machine: Machine) -> None:
    machine.user("1000")
    machine.add_manager("apt-get")
    machine.lacks("venv", "pango")
    status, said, calls = machine.run("site")
    assert status != 0
    assert calls == []
    assert not (machine.project / ".venv").exists()
    debian = "apt-get install python3-venv libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"
    assert re.search(rf"Debian.*: +{re.escape(debian)}$", said, re.M)
    assert re.search(r"Fedora: +dnf install python3-libs pango harfbuzz$", said, re.M)
    assert re.search(r"macOS: +brew install python pango$", said, re.M)
    assert "sudo" not in said


def test_root_without_a_known_package_manager_is_told_too(machine: Machine) -> None:
    machine.lacks("pango")
    status, said, calls = machine.run("site")
    assert status != 0
    assert calls == []
    assert re.search(r"macOS: +brew install pango$", said, re.M)


def test_only_the_tests_ask_for_a_browser(machine: Machine) -> None:
    machine.add_manager("apt-get")
    machine.lacks("chromium", "poppler", "atomic")
    status, _, calls = machine.run("test")
    assert status == 0
    assert calls[1].endswith(" chromium poppler-utils libatomic1")
    assert installed(calls) == ["packages", "loopleaf", "whole", "aside"]
    assert calls[-1].startswith("python -m pytest ")


def test_packages_are_put_aside_once(machine: Machine) -> None:
    machine.run("site")
    assert installed(machine.run("test")[2]) == ["aside"]
    assert installed(machine.run("test")[2]) == []


def test_a_new_lock_is_installed_into_the_same_environment(machine: Machine) -> None:
    machine.run("test")
    with (machine.project / "requirements.txt").open("a") as lock:
        lock.write("# renewed\n")
    calls = machine.run("test")[2]
    assert VENV not in calls
    assert installed(calls) == ["packages", "loopleaf", "whole", "aside"]


def test_another_python_gets_a_new_environment(machine: Machine) -> None:
    machine.run("site")
    machine.python_version("3.13.0 (made for a test)")
    calls = machine.run("site")[2]
    assert calls[0] == VENV
    assert installed(calls) == ["packages", "loopleaf", "whole"]


def test_a_folder_that_was_moved_gets_a_new_environment(machine: Machine) -> None:
    machine.run("site")
    elsewhere = Machine(machine.folder / "elsewhere")
    (machine.project / ".venv").rename(elsewhere.project / ".venv")
    assert elsewhere.run("site")[2][0] == VENV


@pytest.mark.parametrize("target", ["site", "test"])
def test_an_environment_that_is_linked_to_is_left_alone(machine: Machine, target: str) -> None:
    machine.run("site")
    elsewhere = Machine(machine.folder / "elsewhere")
    theirs = (machine.project / ".venv").resolve()
    (elsewhere.project / ".venv").symlink_to(theirs)
    before = sorted(theirs.rglob("*"))
    status, said, calls = elsewhere.run(target)
    assert status != 0
    assert calls == []
    assert sorted(theirs.rglob("*")) == before
    assert ".venv is a link" in said
    assert "rm .venv" in said


def test_what_broke_off_is_done_again(machine: Machine) -> None:
    machine.offline()
    status, _, calls = machine.run("site")
    assert status != 0
    assert "loopleaf build" not in calls
    machine.offline(False)
    status, _, calls = machine.run("site")
    assert (status, installed(calls)) == (0, ["packages", "loopleaf", "whole"])


def test_an_old_python_is_named_as_the_reason(machine: Machine) -> None:
    machine.add_old_python()
    status, said, calls = machine.run("site")
    assert status != 0
    assert calls == []
    assert "Python 3.11 or newer" in said


def test_a_package_manager_that_brings_nothing_ends_in_words(machine: Machine) -> None:
    machine.add_manager("apt-get")
    machine.lacks("pango")
    machine.stubborn()
    status, said, calls = machine.run("site")
    assert status != 0
    assert VENV not in calls
    assert "still not found: pango" in said


@pytest.mark.parametrize("target", ["site", "test"])
def test_sudo_is_never_called(machine: Machine, target: str) -> None:
    machine.user("1000")
    machine.add_manager("apt-get")
    machine.add_manager("dnf")
    machine.lacks("venv", "pango", "chromium", "poppler")
    assert machine.run(target)[2] == []
