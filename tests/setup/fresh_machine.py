"""A machine as the set-up script sees it: the real script and Makefile, with a PATH that is ours.

`python3` is a stand-in that answers questions like the real one, but pretends about what is missing and only
writes down what would be made and installed; `apt-get` and `dnf` write down how they were called.
"""

import os
import shutil
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
REAL = ("sh", "make", "dirname", "tr", "sed", "cat", "cksum", "rm", "mkdir", "cp", "chmod", "expand")

PYTHON = """#!/bin/sh
echo "python $*" >>"{log}"
case "$*" in
    *.setup/needs.py*) cat "{missing}" ;;
    "-m venv"*)
        mkdir -p .venv/bin
        cp "$0" .venv/bin/python
        printf '#!/bin/sh\\necho "loopleaf $*" >>"{log}"\\n' >.venv/bin/loopleaf
        chmod +x .venv/bin/loopleaf ;;
    "-m pip"*) [ ! -e "{offline}" ] ;;
    "-m pytest"*) ;;
    *"print(sys.version)"*) cat "{version}" ;;
    *) exec "{python}" "$@" ;;
esac
"""

MANAGER = """#!/bin/sh
echo "{name} $*" >>"{log}"
case "$*" in *install*) [ -e "{stubborn}" ] || : >"{missing}" ;; esac
"""


@dataclass
class Machine:
    """One such machine; `run` calls make there and gives what was said and done."""

    folder: Path

    def __post_init__(self) -> None:
        self.project.mkdir(parents=True)
        self.programs.mkdir()
        shutil.copytree(ROOT / ".setup", self.project / ".setup")
        for name in ("Makefile", "requirements.txt", "pyproject.toml"):
            shutil.copy(ROOT / name, self.project / name)
        for name in REAL:
            found = shutil.which(name)
            assert found, name
            (self.programs / name).symlink_to(found)
        self.lacks()
        self.python_version("3.11.7 (made for a test)")
        self.add_python("python3")
        self.user("0")
        self._script("sudo", f'#!/bin/sh\necho "sudo $*" >>"{self.log}"\nexit 1\n')

    @property
    def project(self) -> Path:
        return self.folder / "project"

    @property
    def programs(self) -> Path:
        return self.folder / "programs"

    @property
    def log(self) -> Path:
        return self.folder / "log"

    def _script(self, name: str, text: str) -> None:
        (self.programs / name).write_text(text)
        (self.programs / name).chmod(0o755)

    def _paths(self) -> dict[str, object]:
        names = ("missing", "version", "offline", "stubborn")
        return {name: self.folder / name for name in names} | {"log": self.log, "python": sys.executable}

    def lacks(self, *needs: str) -> None:
        """What is not installed, in the words of needs.py."""
        (self.folder / "missing").write_text("".join(f"{need}\n" for need in needs))

    def python_version(self, words: str) -> None:
        (self.folder / "version").write_text(words + "\n")

    def add_python(self, name: str) -> None:
        self._script(name, PYTHON.format(**self._paths()))

    def add_old_python(self) -> None:
        self._script("python3", "#!/bin/sh\nexit 1\n")

    def add_manager(self, name: str) -> None:
        self._script(name, MANAGER.format(name=name, **self._paths()))

    def user(self, number: str) -> None:
        self._script("id", f"#!/bin/sh\necho {number}\n")

    def offline(self, yes: bool = True) -> None:
        """Whether pip fails."""
        (self.folder / "offline").touch() if yes else (self.folder / "offline").unlink()

    def stubborn(self) -> None:
        """The package manager says that all is well and installs nothing."""
        (self.folder / "stubborn").touch()

    def run(self, *target: str) -> tuple[int, str, list[str]]:
        """Exit status, what was said, and the calls worth noticing, in order."""
        self.log.write_text("")
        done = subprocess.run(
            [self.programs / "make", *target],
            cwd=self.project,
            env={"PATH": os.fspath(self.programs), "HOME": os.fspath(self.folder)},
            capture_output=True,
            text=True,
            timeout=60,
        )
        calls = [line for line in self.log.read_text().splitlines() if not line.startswith("python -c")]
        return done.returncode, done.stdout + done.stderr, [c for c in calls if "needs.py" not in c]
