"""Building a collection's site aside, and putting it in its place when it is whole."""

import logging
import shutil
from pathlib import Path

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.config.base import Config
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort, BuildError, ConfigurationError
from mkdocs.plugins import BasePlugin, event_priority


class CannotBuild(Exception):
    """The build couldn't begin: the settings can't be read."""


class _NoOptions(Config):  # type: ignore[no-untyped-call]  # MkDocs leaves it untyped
    """It has none."""


class _Whole(BasePlugin[_NoOptions]):  # type: ignore[no-untyped-call]
    """Notes that every page was written, before anyone says that not everything was published."""

    reached = False

    @event_priority(100)
    def on_post_build(self, *, config: MkDocsConfig) -> None:
        self.reached = True


def build(config_file: Path) -> bool:
    """Build the site that `mkdocs.yml` describes; True where all of it was published.

    The new site is built in a folder of its own and takes the old one's place only when it is whole: a
    pattern with an error then has no page, and the old page isn't left behind. Where the build breaks off,
    the old site stays. Raises CannotBuild.
    """
    _say_what_happens()
    try:
        site = Path(load_config(config_file=str(config_file)).site_dir)
        aside = site.with_name(f".{site.name}.new")
        config = load_config(config_file=str(config_file), site_dir=str(aside))
    except (ConfigurationError, Abort) as error:
        raise CannotBuild(str(error) or f"{config_file} can't be used as it stands.") from None
    shutil.rmtree(aside, ignore_errors=True)
    whole = _Whole()
    config.plugins["loopleaf/whole"] = whole
    published = True
    config.plugins.on_startup(command="build", dirty=False)
    try:
        mkdocs_build(config)
    except (Abort, BuildError):
        published = False
    finally:
        config.plugins.on_shutdown()
        if whole.reached:
            _swap(aside, site)
        shutil.rmtree(aside, ignore_errors=True)
    return published


def _swap(new: Path, site: Path) -> None:
    """Put the new folder where the old one was, in two renamings."""
    old = site.with_name(f".{site.name}.old")
    shutil.rmtree(old, ignore_errors=True)
    if site.exists():
        site.rename(old)
    new.rename(site)
    shutil.rmtree(old, ignore_errors=True)


def _say_what_happens() -> None:
    """MkDocs' own records on standard error, as its own command shows them."""
    log = logging.getLogger("mkdocs")
    if not log.handlers:
        handler = logging.StreamHandler()
        handler.setFormatter(logging.Formatter("%(levelname)s - %(message)s"))
        log.addHandler(handler)
        log.setLevel(logging.INFO)
