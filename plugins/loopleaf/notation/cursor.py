"""The reader's finger on the line: which word comes next, what can't be read, and what is being read just
now.
"""

from collections.abc import Callable
from dataclasses import dataclass, field

from .behind_counts import only_ends
from .lexer import Word
from .problem import Problem
from .tree import Amount, Ring, Span, Step, Until
from .vocabulary import Vocabulary


class UnreadableError(Exception):
    """The words from `at` on can't be read.

    expected: a key of expected.yml. to: the last word that belongs to it, -1 where that is open. began:
    where the step begins that it stands in. follows: no whole step stands between it and the one before it.
    """

    def __init__(self, at: int, expected: str, to: int = -1) -> None:
        super().__init__(expected)
        self.at = at
        self.expected = expected
        self.to = to
        self.began = at
        self.follows = False


@dataclass(slots=True)
class Cursor:
    """Words, the index of the next one, and the surroundings that decide how a step is read.

    here: inside a group in one place, so that a stitch without a place goes there. loop, through: said
    once for the steps that follow (`in BLO, …`). ring: so was `in ring`. stars: asterisks now open. passage:
    the line has a stretch between two asterisks; passages: where each of them begins, by its asterisk. held:
    a bracket's stitches were left on the hook. unread: what couldn't be read so far; astray: no whole step
    has been read since. each_group: how far the step goes that was read into each group of several (`in
    centre dc of each 3-dc group across`). read_block, read_step: the readers of a stretch of steps and of
    one step, for brackets and repeats, which hold steps themselves.
    """

    text: str
    words: list[Word]
    vocabulary: Vocabulary
    problems: list[Problem]
    read_block: "Callable[[Cursor, str], list[Step]]"
    read_step: "Callable[[Cursor, list[Step]], None]"
    at: int = 0
    here: bool = False
    loop: str = ""
    through: str = ""
    ring: Ring | None = None
    stars: list[str] = field(default_factory=list)
    stop_at: int | None = None
    passage: bool = False
    passages: dict[str, int] = field(default_factory=dict)
    held: bool = False
    unread: list[UnreadableError] = field(default_factory=list)
    astray: bool = False
    each_group: Until | None = None

    @property
    def means(self) -> str:
        """What the next word is to the grammar."""
        return self.words[self.at].means

    def ahead(self, by: int = 1) -> str:
        """What the word after that is (`end` beyond the line's end)."""
        index = self.at + by
        return self.words[index].means if index < len(self.words) else "end"

    def take(self, means: str) -> bool:
        """Pass the next word if it is this one."""
        if self.words[self.at].means == means:
            self.at += 1
            return True
        return False

    def need(self, means: str, expected: str) -> Word:
        """Pass the next word, which has to be this one."""
        word = self.words[self.at]
        if word.means != means:
            raise UnreadableError(self.at, expected)
        self.at += 1
        return word

    def span(self, first: int) -> Span:
        """From a word up to the last one read."""
        last = self.at - 1 if self.at > first else first
        return Span(self.words[first].start, self.words[last].end)

    def said(self, first: int, after: int) -> str:
        """The author's own text from one word up to before another."""
        return self.text[self.words[first].start : self.words[after - 1].end]

    def fail(self, expected: str) -> UnreadableError:
        """What to raise where the next word doesn't fit."""
        return UnreadableError(self.at, expected)


def read_amount(cursor: Cursor) -> Amount | None:
    """`8`, `8 (10, 12)`, `- (2, 3)`, `n`; None where no number stands."""
    word = cursor.words[cursor.at]
    if word.means == "num":
        amount: Amount = word.value
        if amount.varies:  # an `n` of several sizes
            cursor.at += 1
            return amount
        first: int | None = amount.sizes[0]
    elif word.means == "-" and cursor.words[cursor.at + 1].means == "(":
        amount = Amount((None,))
        first = None
    else:
        return None
    after = cursor.words[cursor.at + 1]
    if after.means == "(" and not _is_the_count(cursor, after.value):
        sizes = _sizes(cursor.words, cursor.at + 2, after.value)
        if sizes is not None:
            cursor.at = after.value + 1
            return Amount((first, *sizes))
    if first is None:
        return None
    cursor.at += 1
    return amount


def _is_the_count(cursor: Cursor, close: int) -> bool:
    """`inc x 6 (12)`: in a pattern of one size a single number in brackets at a line's end is its count;
    behind a number of times (`x 6 (12), join`) more may follow that isn't counted.
    """
    words, opened = cursor.words, cursor.at + 1
    times = words[cursor.at - 1].means == "x" and words[close + 1].means == ","
    return (
        cursor.vocabulary.sizes == 1
        and cursor.at > 0
        and close == opened + 2
        and words[close - 1].means == "num"
        and (words[close + 1].means == "end" or (times and only_ends(words, close + 1)))
    )


def _sizes(words: list[Word], start: int, end: int) -> tuple[int | None, ...] | None:
    sizes: list[int | None] = []
    for word in words[start:end]:
        if word.means == "num" and not word.value.variable:
            sizes.append(word.value.sizes[0])
        elif word.means == "-":
            sizes.append(None)
        elif word.means != ",":
            return None
    return tuple(sizes) or None
