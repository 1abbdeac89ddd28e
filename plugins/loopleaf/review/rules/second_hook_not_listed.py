"""The texts change to a hook that the materials don't list.

What: A note or a step that goes on with the larger, smaller or other hook, or with a hook of a size in
millimetres, has that hook among the materials. Advice (“try a smaller hook if …”) is left alone.

Why it matters: The maker sits down with everything on the list, and has to get up again.

Wrong:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: 5.5 mm
    notes: [Change to the smaller hook for the last round.]

Right:

    materials:
      yarns: {A: {weight: 4, name: lichen}}
      hook: [5.5 mm, 4.5 mm for the last round]
    notes: [Change to the smaller hook for the last round.]

When to ignore: When the second hook is left to the maker.
"""

import re
from collections.abc import Iterator

from ... import trade
from ...pattern import Finding, Suggestion
from ..rule import Words, rule, told
from ..subject import Subject
from ..texts import free_texts
from ..tricks import sentences

_SIZED = re.compile(r"(\d+(?:[.,]\d+)?) ?mm hook|\bhook \((\d+(?:[.,]\d+)?) ?mm\)", re.I)
_LETTERED = re.compile(r"\b(?:size )?((?-i:[B-Q]))(?:[-/ ]?\d{1,2}½?)?(?: size)?(?: crochet)? hook\b", re.I)
_OTHER = re.compile(
    r"\b(?:(?:chang|switch)(?:e|es|ed|ing)? to (?:a|the)|(?:with|using|for) the|back to the)"
    r" (?:larger|smaller|bigger|thicker|thinner|finer|second|other) hook\b",
    re.I,
)
_ADVICE = re.compile(r"\b(?:if|try|where|when|unless|may|might|can|could|or)\b", re.I)
_NEAR_MM = 0.05
_SAME_LETTER_MM = 0.3
"""By so much one maker's G differs from another's (`trade/hooks.yml`)."""


def find(subject: Subject) -> Iterator[Finding]:
    listed = subject.pattern.materials.hook
    if not listed:
        return
    sizes = [hook.size.mm for hook in listed]
    for path, text, piece in free_texts(subject.pattern):
        for begin, sentence in sentences(text):
            if _ADVICE.search(sentence):
                continue
            found = _missing(sentence, sizes)
            if found:
                at = subject.source.locate(path, begin + found.start(), begin + found.end())
                words = Words(
                    message=f"“{found[0]}” is told, and the materials list "
                    + (f"only {listed[0].size}." if len(sizes) == 1 else "other hooks."),
                    suggestion=Suggestion(
                        "Add that hook under “hook”, with what it is for.", None, "fill-in"
                    ),
                )
                yield told(__name__, "warning", subject, at, words, piece)
                return


def _missing(sentence: str, sizes: list[float]) -> re.Match[str] | None:
    """The words for a hook that isn't among these sizes."""
    for found in _SIZED.finditer(sentence):
        mm = float((found[1] or found[2]).replace(",", "."))
        if all(abs(mm - size) > _NEAR_MM for size in sizes):
            return found
    for found in _LETTERED.finditer(sentence):
        named = [row.mm for row in trade.hooks() if found[1] in (row.us or "").split("-")[0].split("/")]
        if named and all(abs(mm - size) > _SAME_LETTER_MM for mm in named for size in sizes):
            return found
    return _OTHER.search(sentence) if len(sizes) < 2 else None


RULE = rule(__name__, __doc__, "warning", find)
