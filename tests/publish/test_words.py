"""The template's own words."""

import re
from pathlib import Path

from loopleaf.publish.overrides import overrides
from loopleaf.publish.words import words


def test_both_terminologies_say_the_same_things() -> None:
    us, uk = words("US"), words("UK")
    assert set(us) == set(uk)
    for key in us:
        assert set(re.findall(r"\{(\w+)\}", us[key])) == set(re.findall(r"\{(\w+)\}", uk[key])), key


def test_the_words_follow_the_terms() -> None:
    # "The template's own words follow the page's terms": gauge or tension, skip or miss, color or colour.
    assert (words("US")["gauge"], words("UK")["gauge"]) == ("Gauge", "Tension")
    assert "colors" in words("US")["colors"]
    assert "colours" in words("UK")["colors"]


def test_every_word_that_the_site_templates_ask_for_is_there() -> None:
    asked = {
        key
        for path in Path(overrides("site")).rglob("*.html")
        for key in re.findall(r"\bw\.(\w+)|words\.(\w+)|\bwords\[.(\w+).\]", path.read_text(encoding="utf-8"))
        for key in key
        if key
    }
    assert asked
    assert asked - set(words("US")) == set()
