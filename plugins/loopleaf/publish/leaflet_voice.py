"""The voice of one leaflet: lines, counts, names and free text of a pattern in the reader's terms."""

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, is_dataclass, replace
from typing import Any

from .. import notation, trade
from ..fabric import PatternWork
from ..notation.tree import FastenOff, JoinYarn, Line, Stitch, Tally, Yarn
from ..pattern import Pattern, Run
from .leaflet_parts import CountStyle, Terms
from .plurals import plural
from .words import words


@dataclass(frozen=True, slots=True)
class Voice:
    """terms: of the leaflet. vocabulary: of the pattern, in its own terms. labels: yarn's letter -> `B
    (oat)`. counts: how the collection prints them.
    """

    terms: Terms
    pattern: Pattern
    vocabulary: notation.Vocabulary
    labels: Mapping[str, str]
    counts: CountStyle = "plain"

    @property
    def words(self) -> Mapping[str, str]:
        """The template's own words in these terms."""
        return words(self.terms)

    def say(self, key: str, **parts: object) -> str:
        """One of the template's sentences, filled in."""
        return self.words[key].format(**parts)

    def line(self, line: Line) -> str:
        """An instruction line as printed: in these terms, the yarns by letter and name."""
        return notation.write(_with_labels(line, self.labels), self.terms, vocabulary=self.vocabulary)

    def text(self, shorthand: str) -> str:
        """Shorthand that isn't a round's (`5 dc in same st`): written anew where it reads as a line, else
        as free text.
        """
        parsed = notation.parse(shorthand, self.vocabulary)
        return self.line(parsed.line) if parsed.line is not None else self.prose(shorthand)

    def prose(self, text: str) -> str:
        """Free text of the author's."""
        if self.terms == self.pattern.terms:
            return text
        said, _ = notation.translate_prose(text, self.pattern.terms, self.terms, self.vocabulary)
        return said

    def told(self, text: str) -> str:
        """Free text that may speak of yarns: where one is first named, its name follows its letter."""
        said = self.prose(text)
        for letter, label in self.labels.items():
            named = re.compile(
                rf"(?<=[a-z] ){re.escape(letter)}(?![\w'’])(?! \()|(?<=Yarn ){re.escape(letter)}(?! \()\b"
            )
            said = named.sub(label.replace("\\", r"\\"), said, count=1)
        return said

    def count(self, tally: Tally) -> str:
        """A count: `48`, `24 dc, 24 ch-1 sps`, `40 (48, 56)`."""
        return notation.write_count(tally, self.terms, vocabulary=self.vocabulary)

    def counted(self, count: str) -> str:
        """A count in the collection's style; one by kind names its stitches itself. A size that has none is a
        dash.
        """
        count = re.sub(r"(?<!\w)-(?!\w)", "–", count)
        if not count or self.counts == "plain":
            return count
        if self.counts == "brackets":
            return f"[{count}]" if "(" in count else f"({count})"
        return count if by_kind(count) else f"{count} {'st' if count == '1' else 'sts'}"

    def stitch(self, name: str) -> str:
        """A stitch that the author names (`FPdc`), by its short name in these terms."""
        tally, _ = notation.parse_count(f"2 {name}", self.vocabulary)
        entry = tally.entries[0][1] if tally is not None and tally.entries else None
        if isinstance(entry, Stitch):
            return notation.stitch_name(entry, self.terms, plural=True, vocabulary=self.vocabulary)
        return self.prose(name)

    def stitch_short(self, kind: str) -> str:
        """A plain stitch's short name, by its neutral key."""
        return notation.stitch_name(Stitch(kind), self.terms, vocabulary=self.vocabulary)

    def yarn(self, letter: str) -> str:
        """A yarn as it is called everywhere: `B (oat)`."""
        return self.labels.get(letter, letter)

    def title(self, piece: str) -> str:
        """A piece's title."""
        model = self.pattern.pieces.get(piece)
        return self.prose((model and model.title) or sentence(piece))

    def named(self, piece: str) -> str:
        """A piece inside a sentence: `pouch`."""
        return lowered(self.title(piece))

    def pieces(self, piece: str, number: int) -> str:
        """So many of a piece: `1 moon`, `2 drawstrings`."""
        return f"{number} {plural(self.named(piece)) if number != 1 else self.named(piece)}"


def voice(work: PatternWork, terms: Terms, counts: CountStyle = "plain") -> Voice:
    """The voice of a pattern's leaflet in some terms."""
    pattern = work.pattern
    plain = Voice(terms, pattern, work.vocabulary, {}, counts)
    labels = {
        letter: f"{letter} ({plain.prose(yarn.name)})" if yarn.name else letter
        for letter, yarn in pattern.materials.yarns.items()
    }
    return replace(plain, labels=labels)


def by_kind(count: str) -> bool:
    """Whether a count names what it counts: `24 dc, 24 ch-1 sps`."""
    return any(sign.isalpha() for sign in count)


def per_size(texts: Sequence[str]) -> str:
    """One a size, smallest first: `40 (48, 56)`; once where all are alike."""
    if len(set(texts)) == 1:
        return texts[0]
    return f"{texts[0]} ({', '.join(texts[1:])})"


def listed(voice: Voice, texts: Sequence[str]) -> str:
    """`S`, `S and M`, `S, M and L`; "" for none."""
    return voice.words["and"].join(part for part in (", ".join(texts[:-1]), *texts[-1:]) if part)


def sentence(text: str) -> str:
    """With a capital at its beginning."""
    return text[:1].upper() + text[1:]


def lowered(text: str) -> str:
    """Without the capital at its beginning, unless the whole first word is in capitals."""
    first = text.split(" ", 1)[0]
    return text if len(first) > 1 and first.isupper() else text[:1].lower() + text[1:]


def _with_labels(tree: Any, labels: Mapping[str, str]) -> Any:
    """The tree with its yarns' letters replaced by what they are called."""
    if isinstance(tree, tuple):
        return tuple(_with_labels(part, labels) for part in tree)
    if isinstance(tree, Yarn | JoinYarn | FastenOff):
        return replace(tree, yarn=labels.get(tree.yarn, tree.yarn))
    if is_dataclass(tree) and not isinstance(tree, type):
        changed = {
            part.name: _with_labels(getattr(tree, part.name), labels)
            for part in fields(tree)
            if part.init and isinstance(getattr(tree, part.name), tuple)
        }
        return replace(tree, **changed) if changed else tree
    return tree


def over(voice: Voice, run: Run) -> str:
    """`stitch 5`, `stitches 5–6`."""
    if run.last in (None, run.first):
        return voice.say("stitch_number", number=run.first)
    return voice.say("stitch_numbers", numbers=f"{run.first}–{run.last}")


def hook_size(voice: Voice, mm: float) -> str:
    """`5.5 mm (US I-9)`; just the millimetres of a hook that has no US size."""
    us = trade.us_hook(mm)
    named = "us_steel" if mm < trade.STEEL_BELOW_MM else "us_size"
    return f"{mm:g} mm ({voice.say(named, us=us)})" if us else f"{mm:g} mm"
