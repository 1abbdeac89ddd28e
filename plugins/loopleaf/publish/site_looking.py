"""Pages to look at: techniques step by step, every chart sign, the drawings of all patterns."""

import json
from collections.abc import Callable, Sequence
from pathlib import Path

from jinja2 import Environment

from . import kept
from .how_to import HowTo
from .leaflet_parts import Leaflet, Terms
from .site_pages import LANGUAGES, Href, Later, Switch
from .words import words

MOST_IN_A_GALLERY = 60
"""The drawings of more patterns would make a page that no phone opens; a pattern's own page has them all."""


def steps_html(
    env: Environment,
    techniques: Sequence[HowTo],
    uses: Callable[[str], Sequence[Leaflet]],
    switch: Switch,
    pattern: Href,
    later: Later,
) -> str:
    """Techniques step by step. uses: a technique's key -> the patterns that use it. pattern: a pattern's
    slug -> its page's address.
    """
    return env.get_template("loopleaf/steps.html").render(
        techniques=techniques,
        uses=uses,
        loopleaf=switch,
        lang=LANGUAGES[switch.terms],
        w=words(switch.terms),
        pattern=pattern,
        path=later.path,
    )


def signs_html(env: Environment, switch: Switch, keep: Path) -> str:
    """Every chart sign. keep: a folder of the collection's own, where they stay between builds."""
    text = kept.text(keep, f"signs-{switch.terms.lower()}", lambda: _symbols(switch.terms))
    return env.get_template("loopleaf/signs.html").render(
        symbols=json.loads(text),
        away="UK" if switch.terms == "US" else "US",
        loopleaf=switch,
        lang=LANGUAGES[switch.terms],
        w=words(switch.terms),
    )


def _symbols(terms: Terms) -> str:
    # Imported where they must be drawn: it brings the whole engine with it.
    from ..draw.sign_sheet import symbols

    return json.dumps([{"svg": one.svg, "name": one.name, "other": one.other} for one in symbols(terms)])


def drawings_html(
    env: Environment, leaflets: Sequence[Leaflet], switch: Switch, pattern: Href, later: Later
) -> str:
    """The drawings of all patterns by title; of a large collection the first, with links to the others."""
    by_title = sorted(leaflets, key=lambda one: one.title.lower())
    return env.get_template("loopleaf/drawings.html").render(
        leaflets=by_title[:MOST_IN_A_GALLERY],
        others=by_title[MOST_IN_A_GALLERY:],
        loopleaf=switch,
        lang=LANGUAGES[switch.terms],
        w=words(switch.terms),
        pattern=pattern,
        show=later.show,
        path=later.path,
    )
