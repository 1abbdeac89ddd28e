"""All that the pieces of one pattern are worked with: what its words mean, and the pieces done so far."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from loopleaf import notation, pattern, trade
from loopleaf.notation.tree import ONE, FastenOff, Line, Next, Step, Stitch, Tally, Turn, Work

from .cells import Cell, Edge, Misfit, kind_of
from .counts import Key, makes
from .hand import Hand
from .looking_ahead import in_one_place, named_in, picots_in
from .rounds import RoundDone
from .setting import Setting, Undecided
from .stitching import work

BARE_PICOT = re.compile(r"(^|[,;.(\[*]\s*|\band |\b\d+ )(picots?)\b", re.IGNORECASE)
"""A picot that is made, without its chains; `in next picot` is a place."""


@dataclass
class Wrong:
    """What contradicts the file: where, and of which sort (see `Misfit.what`)."""

    piece: str
    round: str
    what: str
    why: str


@dataclass
class PieceDone:
    """A piece in all sizes: for each size its rounds as far as they could be worked."""

    name: str
    sizes: list[list[RoundDone]] = field(default_factory=list)


class Bench:
    """All that is needed to work the pieces of one pattern.

    picot: chains of the picot that a line has told with its name: `ch 3, sl st in 3rd ch from hook (picot
    made)`. Later lines only name it.
    """

    def __init__(self, of: pattern.Pattern) -> None:
        self.pattern = of
        specials = {
            name: notation.SpecialStitch(name, one.short, one.work, one.text, one.yarn_overs)
            for name, one in of.special_stitches.items()
        }
        self.vocabulary = notation.Vocabulary(
            of.terms,
            specials,
            frozenset(of.materials.yarns) | {yarn.name for yarn in of.materials.yarns.values() if yarn.name},
            frozenset(of.pieces),
            of.size_count,
        )
        self.picot = 0
        self.specials: dict[str, tuple[Step, ...]] = {}
        for name, one in of.special_stitches.items():
            if one.work:
                steps = self.read(one.work).steps
                if any(isinstance(step, Turn | FastenOff) for step in steps):
                    raise Misfit("turn", f"a stitch of one's own doesn't turn or end: {name}")
                self.specials[name] = in_one_place(steps)
        for name in self.specials:
            self._not_of_itself(name, ())
        self.counts = {self._kind(name): says for name, says in of.turning_chains.items()}
        self.own_chains = {row.key: row.turning_chain for row in trade.stitches() if row.turning_chain}
        for name, one in of.special_stitches.items():
            if one.yarn_overs is not None and not one.work:
                self.own_chains[name] = one.yarn_overs + 2
        self.opened = {name: self._opened(name) for name in self.specials}
        self.done: dict[str, PieceDone] = {}
        self.key = repr((self.vocabulary, sorted(self.counts.items()), of.chain_spaces, of.size_count))

    def _not_of_itself(self, name: str, within: tuple[str, ...]) -> None:
        """A stitch can't be made of itself, at whatever remove."""
        if name in within:
            raise Misfit("unclear", f"{name} is made of itself")
        for stitch in named_in(self.specials.get(name, ())):
            self._not_of_itself(stitch, (*within, name))

    def read(self, text: str, n: int | tuple[int | None, ...] | None = None) -> Line:
        """A line as a tree; what can't be read is a misfit of its own sort."""
        line, why = self._parsed(text, n)
        if line is None and self.picot:
            line, _ = self._parsed(BARE_PICOT.sub(rf"\1ch-{self.picot} \2", text), n)
        if line is None:
            raise Misfit("reading", why)
        if "(picot" in text:
            self.picot = next(picots_in(line.steps), self.picot)
        return line

    def _parsed(self, text: str, n: int | tuple[int | None, ...] | None) -> tuple[Line | None, str]:
        parsed = notation.parse(text, self.vocabulary, n)
        errors = [one.message for one in parsed.problems if one.severity == "error"]
        return (None if errors else parsed.line), next(iter(errors), "unreadable")

    def stated(self, text: str | None) -> Tally | None:
        if text is None:
            return None
        tally, problems = notation.parse_count(text, self.vocabulary)
        errors = [one for one in problems if one.severity == "error"]
        if tally is None or errors:
            raise Misfit("reading", f"count {text!r}")
        numbers = [tally.total] if tally.total else [amount for amount, _ in tally.entries]
        for amount in numbers:
            self.one_a_size(len(amount.sizes))
        return tally

    def one_a_size(self, numbers: int) -> None:
        if numbers not in (1, self.pattern.size_count):
            raise Misfit("numbers", f"{numbers} numbers for {self.pattern.size_count} sizes")

    def _kind(self, name: str) -> str:
        if not name:
            return ""
        line = self.read(f"{name} in next st")
        step = line.steps[0]
        stitch = getattr(step, "stitch", None)
        return kind_of(stitch) if stitch is not None else name

    def _opened(self, name: str) -> Counter[Key]:
        """What one of an author's stitches is made of."""
        for leading in (True, False):  # where its chain leaves open what it is at a start: inside a round
            hand = Hand(self.setting(0, "", {}), Edge([Cell("single") for _ in range(24)]), [])
            hand.leading = leading
            try:
                work(hand, Work(Stitch("special", name=name), ONE, (Next(),)))
            except Misfit:
                break
            except Undecided:
                continue
            return makes(hand.made)
        return Counter()

    def setting(self, size: int, worked: str, edges: Mapping[str, Sequence[Cell]]) -> Setting:
        return Setting(
            size,
            worked.startswith("rows"),
            worked == "rows",
            worked == "spiral rounds",
            self.pattern.chain_spaces == "counted",
            self.own_chains,
            self.counts,
            self.specials,
            edges,
            {},
        )
