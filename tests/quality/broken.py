"""Files that nobody should write: patterns torn, mixed and stretched, and files out of nothing at all.

Each is made from one number, so a bad one can be made again. Some are whole patterns with senseless lines,
for a file that isn't YAML says nothing about the engine.
"""

import random
import string
from collections.abc import Callable
from functools import cache
from pathlib import Path

from .collected import right_patterns

WORDS = tuple((Path(__file__).parent / "words.txt").read_text(encoding="utf-8").split())
ODD = (
    "\x00",
    "\t",
    "\u2028",
    "\ufeff",
    "é",
    "𝒳",
    "\r",
    "&a",
    "*a",
    "<<:",
    "!!python/object:os.system",
    "%",
    "@",
)
HUGE = ("9" * 30, "1e400", "0x7fffffff", "-0", "1_000_000", ".inf", "²", "٣", "1000000", "99999")

Way = Callable[[random.Random], bytes]


@cache
def _texts() -> tuple[str, ...]:
    return tuple(right_patterns().values())


def _bytes_changed(chance: random.Random) -> bytes:
    data = bytearray(chance.choice(_texts()).encode())
    for _ in range(chance.randint(1, 12)):
        at = chance.randrange(len(data) or 1)
        match chance.randrange(4):
            case 0:
                data[at : at + 1] = bytes([chance.randrange(256)])
            case 1:
                del data[at : at + chance.randint(1, 40)]
            case 2:
                data[at:at] = data[at : at + chance.randint(1, 200)]
            case _:
                data[at:at] = chance.choice(ODD).encode()
    return bytes(data)


def _cut(chance: random.Random) -> bytes:
    data = chance.choice(_texts()).encode()
    start = chance.randrange(len(data)) if chance.random() < 0.3 else 0
    return data[start : chance.randrange(start, len(data) + 1)]


def _words_changed(chance: random.Random) -> bytes:
    text = chance.choice(_texts())
    words = text.split(" ")
    for _ in range(chance.randint(1, 8)):
        at = chance.randrange(len(words))
        match chance.randrange(5):
            case 0:
                words[at] = chance.choice(WORDS)
            case 1:
                words.insert(at, chance.choice(WORDS + HUGE))
            case 2:
                del words[at]
            case 3:
                words[at] = "".join(chance.choice(HUGE) if one.isdigit() else one for one in words[at])
            case _:
                other = chance.randrange(len(words))
                words[at], words[other] = words[other], words[at]
        if not words:
            break
    return " ".join(words).encode()


def _lines_mixed(chance: random.Random) -> bytes:
    lines = chance.choice(_texts()).split("\n")
    others = chance.choice(_texts()).split("\n")
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(lines))
        match chance.randrange(4):
            case 0:
                lines[at] = chance.choice(others)
            case 1:
                lines.insert(at, chance.choice(others))
            case 2:
                lines[at] = " " * chance.randint(0, 8) + lines[at].lstrip()
            case _:
                other = chance.randrange(len(lines))
                lines[at], lines[other] = lines[other], lines[at]
    return "\n".join(lines).encode()


def _line(chance: random.Random, words: int) -> str:
    return " ".join(chance.choice(WORDS) for _ in range(words)).replace('"', "").replace("\\", "")


def _senseless_lines(chance: random.Random) -> bytes:
    worked = chance.choice(("joined rounds", "spiral rounds", "rows", "rows, right side only"))
    name = "row" if worked.startswith("rows") else "round"
    start = chance.choice(("magic ring", "ring", "chain 12", "chain 4, joined", "chain 9, both sides"))
    lines = [
        "title: Senseless",
        f"terms: {chance.choice(('US', 'UK'))}",
        f"chain spaces: {chance.choice(('counted', 'not counted'))}",
        "special stitches: {shell: {short: sh, work: " + f'"{_line(chance, chance.randint(1, 6))}"' + "}}",
        "pieces:",
        "  p:",
        f"    worked: {worked}",
        f"    start: {start}",
        f"    {name}s:",
    ]
    for number in range(1, chance.randint(2, 6)):
        line = _line(chance, chance.randint(1, 25))
        if chance.random() < 0.5:
            line = f"{chance.choice(('sc', 'dc', '2 dc', 'inc'))} in each st, {line}, sc in next 3 sts"
        lines.append(
            f'      - {{{name}: {number}, work: "{line}", count: "{_line(chance, chance.randint(1, 4))}"}}'
        )
    return "\n".join(lines).encode()


def _stretched(chance: random.Random) -> bytes:
    depth = chance.choice((50, 400, 3000))
    number = chance.choice((10**4, 10**6, 10**9))
    deep = f"{'(' * depth}sc in next st{')' * depth} x 2"
    line = chance.choice(
        (
            deep,
            f"{'[(' * depth}sc{') x 3] x 3' * depth}",
            "(" * depth,
            "*" * depth,
            "inc, " * depth,
            "inc around, " * 40,
            f"(sc in next st) x {number}",
            f"(((inc x {number}) x {number}) x {number})",
            f"ch {number}",
            f"ch {number}, sc in 2nd ch from hook and in each ch across",
            f"{number} sc in ring",
            f"sc in next {number} sts",
            f"{number} inc in each st around",
            f"dc{number}tog, {number} inc",
        )
    )
    start = chance.choice(
        (f"chain {number}", "magic ring", f"chain {number}, joined", f"chain {number}, both sides")
    )
    rounds = chance.choice(("1", f"1-{number}", "1-300", f"{number}-{number + 3}"))
    more = '{rounds: 301-302, as: 1}, {round: 303, work: "inc around"}'
    body = f'{{rounds: {rounds}, work: "{line}"}}, {more}'
    bomb = "\n".join(_alias(step) for step in range(9))
    nest = f"notes: {'[' * depth}{']' * depth}"
    head = chance.choice(("", "", "", bomb, nest, f"title: {'a' * 200000}"))
    piece = f"{{worked: joined rounds, start: '{start}', rounds: [{body}]}}"
    return f"title: Stretched\nterms: US\n{head}\npieces: {{p: {piece}}}\n".encode()


def _alias(step: int) -> str:
    """Nine of the one before, nine deep: a few lines that would unfold to a few hundred million."""
    return f"x{step}: &x{step} [{', '.join([f'*x{step - 1}'] * 9)}]" if step else "x0: &x0 [a]"


def _out_of_nothing(chance: random.Random) -> bytes:
    length = chance.choice((0, 1, 10, 200, 5000))
    if chance.random() < 0.4:
        return chance.randbytes(length)
    signs = string.printable + "".join(ODD) + ":{}[]-,&*!|>'\"%@`#?" * 4
    return "".join(chance.choice(signs) for _ in range(length)).encode("utf-8", "surrogatepass")


WAYS: dict[str, Way] = {
    "bytes changed": _bytes_changed,
    "cut off": _cut,
    "words changed": _words_changed,
    "lines mixed": _lines_mixed,
    "senseless lines": _senseless_lines,
    "stretched": _stretched,
    "out of nothing": _out_of_nothing,
}
SHARES = (3, 1, 5, 3, 5, 1, 1)


def broken(number: int, seed: int = 1) -> tuple[str, bytes]:
    """The broken file of that number: how it was made, and its bytes."""
    chance = random.Random(f"{seed} {number}")
    name = chance.choices(list(WAYS), SHARES)[0]
    return name, WAYS[name](chance)
