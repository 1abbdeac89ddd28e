"""The licence isn't written as an identifier that everybody reads alike.

What: An SPDX identifier names one licence in one version: `CC-BY-4.0`. Terms of your own are called
`LicenseRef-` and a name.

Why it matters: “CC BY” leaves open which version, and other collections can't tell what they may do.

Wrong:

    licence: Creative Commons BY 4.0

Right:

    licence: CC-BY-4.0

When to ignore: When only people are to read it.
"""

import re
from collections.abc import Iterator

from ... import trade
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject

_ONE = r"(?:DocumentRef-[\w.-]+:)?LicenseRef-[\w.-]+|[A-Za-z][\w.+]*(?:-[\w.+]+)*-\d[\w.+]*(?:-[\w.+]+)*"
_NAMES = "0BSD|MIT|ISC|Unlicense|Zlib|WTFPL|Beerware|FSFAP|CC-PDDC"
_SPDX = re.compile(
    rf"\(*(?:{_ONE}|{_NAMES})\)*(?: (?:AND|OR|WITH) \(*(?:{_ONE}|{_NAMES})\)*)*", re.IGNORECASE
)


def find(subject: Subject) -> Iterator[Finding]:
    said = subject.pattern.licence.strip()
    if not said or _SPDX.fullmatch(said):
        return
    meant = _meant(said)
    words = Words(
        message=f"“{said}” isn't a licence's identifier.",
        suggestion=Suggestion(f"Write “{meant}”, if that is meant.", meant, "likely")
        if meant
        else Suggestion("Write such as CC-BY-4.0, or LicenseRef- and a name.", None, "fill-in"),
    )
    yield told(__name__, "note", subject, subject.source.locate(("licence",)), words)


def _meant(said: str) -> str | None:
    """The one licence of the table whose words are all there, and no others."""
    words = re.sub(r"creative commons|\bcc\b", "cc", said.lower().replace("attribution", "by"))
    words = words.replace("noncommercial", "nc").replace("sharealike", "sa").replace("noderivatives", "nd")
    parts = sorted(re.findall(r"[a-z]+\d?|\d+\.\d+", words.replace("cc0", "cc0 ")))
    return next(
        (row.spdx for row in trade.licences() if sorted(row.spdx.lower().split("-")) == parts),
        None,
    )


RULE = rule(__name__, __doc__, "note", find)
