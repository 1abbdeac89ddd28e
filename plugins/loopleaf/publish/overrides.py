"""Where the templates, styles and fonts lie: inside the installed package, or in the repository beside it."""

from pathlib import Path


def overrides(part: str) -> Path:
    """The folder of one part of `theme_overrides`: `site`, `booklet` or `fonts`.

    A wheel carries them inside the package; an editable installation has none there, so the repository's
    own folder serves.
    """
    package = Path(__file__).resolve().parent.parent
    packaged = package / "theme_overrides" / part
    return packaged if packaged.is_dir() else package.parent.parent / "theme_overrides" / part
