"""A stitch name in free text can't be put into the other terms for certain.

What: Notes and captions are translated phrase by phrase. Here a name could be either of two stitches, or no
stitch at all.

Why it matters: The page in the other terms would say something that you didn't write.

Wrong:

    notes: [Work a double in each corner.]

Right:

    notes: [Work a double crochet in each corner.]

When to ignore: When the text is right as it stands in both terms; writing the stitch in full usually
settles it.
"""

from collections.abc import Iterator

from ...notation import translate_prose
from ...pattern import Finding
from ..rule import rule
from ..subject import Subject
from ..texts import free_texts
from ..told import from_problem


def find(subject: Subject) -> Iterator[Finding]:
    terms = subject.pattern.terms
    other = "UK" if terms == "US" else "US"
    for path, text, piece in free_texts(subject.pattern):
        _, problems = translate_prose(text, terms, other, subject.work.vocabulary)
        for problem in problems:
            yield from_problem(subject.source, path, problem, piece)


RULE = rule(__name__, __doc__, "warning", find)
