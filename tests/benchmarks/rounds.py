"""The check of many rounds: 40,000 of 50 stitches on average, 200 different lines in a thousand rounds.

Also the curve from one pattern to a thousand (cost a stitch, and memory), and the plainest of rounds, often.
Each takes the time of its own process, one core, so that a busy machine says the same as an idle one.
"""

import multiprocessing
import random
import resource
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from pathlib import Path

from loopleaf.cli import collect_seldom
from loopleaf.fabric import work_pattern
from loopleaf.pattern import load
from loopleaf.review import check
from loopleaf.review.rules import written_back_differs
from loopleaf.review.subject import Subject
from tests.benchmarks.timing import Result

ROUNDS = 40
PATTERNS = 1_000
CURVE = (1, 10, 100, 1_000)
HEAD = """title: Basket {number}
designer: Saltmarsh Makers' Library
terms: US
licence: CC-BY-4.0
contact: https://example.org/help
materials: {{yarns: {{A: {{weight: 4, name: oat}}}}, hook: 5.5 mm}}
gauge: not critical
finished size: {{across: 20 cm}}
turning chains: {{sc: does not count, hdc: does not count}}
pieces:
  basket:
    title: Basket
    yarn: A
    worked: joined rounds
    start: magic ring
    rounds:
"""
PLAIN = """title: Plain
terms: US
turning chains: {dc: counts}
materials: {yarns: {A: {name: oat}}}
pieces:
  sheet:
    title: Sheet
    yarn: A
    worked: joined rounds
    start: magic ring
    rounds:
      - {round: 1, work: "ch 1, 500 sc in ring, join", count: 500}
      - {rounds: 2-501, work: "ch 3 (counts as dc), dc in each st around, join", count: 500}
"""


def basket(number: int) -> bytes:
    """A pattern of forty rounds and eight different lines: a base that grows, sides, an edge that closes in.

    The eight lines of one pattern in twenty-five are shared with no other of them.
    """
    chance = random.Random(number % 25)
    stitch = chance.choice(("sc", "hdc"))
    of = chance.randint(7, 8)
    flat = chance.randint(7, 8)
    wide = of * flat
    rows = [
        f"{{round: 1, work: 'ch 1, {of} {stitch} in ring, join', count: {of}}}",
        f"{{round: 2, work: 'ch 1, 2 {stitch} in each st around, join', count: {2 * of}}}",
    ]
    for each in range(1, flat - 1):
        line = f"ch 1, ({stitch} in next {each} sts, 2 {stitch} in next st) x {of}, join"
        rows.append(f"{{round: {each + 2}, work: '{line}', count: {of * (each + 2)}}}")
    begins, ends = flat + 1, ROUNDS - 3
    rows.append(f"{{rounds: {begins}-{ends}, work: 'ch 1, {stitch} in each st around, join', count: {wide}}}")
    first, rest = chance.randint(2, wide // 3), wide % 2
    pairs = (wide - first - rest) // 2
    odd = wide - first - 2 * pairs
    more = f", {stitch} in next {odd} sts" if odd else ""
    other = "hdc" if stitch == "sc" else "sc"
    line = (
        f"ch 1, {stitch} in next {first} sts, ({stitch} in next st, {other} in next st) x {pairs}{more}, join"
    )
    count = f"{wide - pairs} {stitch}, {pairs} {other}"
    rows.append(f"{{rounds: {ends + 1}-{ends + 2}, work: '{line}', count: '{count}'}}")
    line = f"ch 1, *{stitch} in next {flat - 2} sts, {stitch}2tog; rep from * around, join, fasten off"
    rows.append(f"{{round: {ROUNDS}, work: '{line}', count: {of * (flat - 1)}}}")
    return (HEAD.format(number=number) + "".join(f"      - {row}\n" for row in rows)).encode()


def _apart() -> tuple[float, float, int]:
    """Seconds for checking all the patterns, those of them that the proof of written lines took, stitches."""
    files = [basket(number) for number in range(PATTERNS)]
    check(files[0], "basket.yml")
    taken = proof = 0.0
    stitches = 0
    for number, data in enumerate(files):
        begun = time.process_time()
        checked = check(data, f"basket-{number}.yml")
        taken += time.process_time() - begun
        assert checked.work is not None
        assert checked.measured is not None
        assert not checked.findings
        begun = time.process_time()
        assert written_back_differs.RULE.find is not None
        list(written_back_differs.RULE.find(Subject(checked.source, checked.work, checked.measured)))
        proof += time.process_time() - begun
        stitches += sum(
            len(size.made) for p in checked.work.pieces for r in p.rounds for size in r.sizes if size
        )
    return taken, proof, stitches


def _curve(patterns: int) -> tuple[float, int]:
    """Seconds for so many patterns checked one after another, and the most memory (MB) that it took."""
    files = (basket(number) for number in range(patterns))
    begun = time.process_time()
    for data in files:
        check(data, "basket.yml")
    taken = time.process_time() - begun
    most = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return taken, most // (1024**2 if sys.platform == "darwin" else 1024)


def _plainly() -> float:
    """Seconds for working five hundred plain rounds of five hundred stitches."""
    source = load(PLAIN.encode(), "plain.yml")
    begun = time.process_time()
    work = work_pattern(source)
    taken = time.process_time() - begun
    assert len(work.pieces[0].rounds) == 501
    assert not any(r.troubles for r in work.pieces[0].rounds)
    return taken


def many_rounds(project: Path) -> Iterator[Result]:
    """Each figure in a process of its own, which has kept nothing of the others."""
    context = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(1, context, initializer=collect_seldom, max_tasks_per_child=1) as pool:
        taken, proof, stitches = pool.submit(_apart).result()
        rounds = PATTERNS * ROUNDS
        because = f"{stitches / rounds:.0f} stitches a round on average, one core"
        yield Result(f"Check of {rounds:,} rounds, without the proof", taken - proof, " s", 10, because)
        yield Result("… the proof that written lines read back", proof, " s", 20)
        for patterns in CURVE:
            taken, most = pool.submit(_curve, patterns).result()
            name = f"… a pattern, of {patterns:,}"
            yield Result(name, 1000 * taken / patterns, " ms", because=f"{most} MB at most")
        yield Result("500 plain rounds of 500 stitches", pool.submit(_plainly).result(), " s", 1)
