"""The sentence for a machine without the libraries that booklets are printed with."""

import re
import shutil

COMMANDS = {
    "apt-get": "apt-get install libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0",
    "dnf": "dnf install pango harfbuzz",
    "brew": "brew install pango",
}
"""Package manager -> the command that brings Pango and what belongs to it."""


def missing_library(trouble: Exception) -> str:
    """One plain sentence: which library is missing, and the command for this machine that brings it.

    trouble: what importing WeasyPrint raised: OSError names the library file, ImportError the module.
    """
    if isinstance(trouble, ImportError):
        module = trouble.name or "weasyprint"
        missing, command = f"Python package {module} is missing", f"pip install {module}"
        return f"No booklets were made, because the {missing}: `{command}` brings it."
    named = re.search(r"library '([^']+)'", str(trouble))
    file = f" ({named[1]} was not found)" if named else ""
    return f"No booklets were made, because the library Pango is missing{file}: `{_command()}` brings it."


def _command() -> str:
    """The command of the first package manager that is here; Debian's where there is none."""
    present = [command for manager, command in COMMANDS.items() if shutil.which(manager)]
    return (present or list(COMMANDS.values()))[0]
