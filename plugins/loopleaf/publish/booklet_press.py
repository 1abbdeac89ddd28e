"""The press: many booklets printed side by side, in processes of our own or through a given executor.

WeasyPrint keeps one core busy and keeps memory, so a pool of processes does the work and is renewed between
batches. Every wait has a limit. Whatever goes
wrong with a worker costs a second try in this process, never the build.
"""

from collections.abc import Sequence
from concurrent.futures import Executor, Future
from dataclasses import dataclass

from .booklet import Assets, BookletFailed, Printed, print_booklet
from .processes import pool

FEW = 2
"""So many booklets are sooner printed here than a pool is started (a worker's first one costs 1.2 s)."""
BATCH = 40
"""Booklets that one pool prints before it is renewed."""
WAIT_S = 120.0
"""Seconds to wait for one booklet; the largest we know of, 400 rows, takes 4."""


@dataclass(frozen=True, slots=True)
class Order:
    """What one booklet is printed from."""

    html: str
    assets: Assets


Outcome = Printed | BookletFailed


def print_all(
    orders: Sequence[Order], executor: Executor | None = None, wait_s: float = WAIT_S
) -> list[Outcome]:
    """One outcome an order, in their order.

    executor: where given, it does the work and isn't shut down here. Raises BookletsUnavailable where this
    process can't load WeasyPrint either.
    """
    if executor is not None:
        return _finished_here(orders, _through(executor, orders, wait_s))
    if len(orders) <= FEW:
        return _finished_here(orders, [None] * len(orders))
    outcomes: list[Outcome] = []
    for start in range(0, len(orders), BATCH):
        batch = orders[start : start + BATCH]
        with pool(len(batch)) as workers:
            found = _through(workers, batch, wait_s)
        outcomes += _finished_here(batch, found)
    return outcomes


def _through(executor: Executor, orders: Sequence[Order], wait_s: float) -> list[Outcome | None]:
    """The outcomes as an executor gives them; None where a worker died or could not even begin."""
    futures: list[Future[Printed] | None] = []
    for order in orders:
        try:
            futures.append(executor.submit(print_booklet, order.html, order.assets))
        except RuntimeError:  # a pool that is broken or shut down
            futures.append(None)
    return [None if future is None else _outcome(future, wait_s) for future in futures]


def _outcome(future: Future[Printed], wait_s: float) -> Outcome | None:
    try:
        return future.result(timeout=wait_s)
    except BookletFailed as failed:
        return failed
    except TimeoutError:
        future.cancel()
        return BookletFailed(f"The booklet was not printed within {wait_s:g} seconds.")
    except Exception:  # noqa: BLE001
        # A dead worker, or one elsewhere without Pango: executors differ in how they say so.
        return None


def _finished_here(orders: Sequence[Order], outcomes: Sequence[Outcome | None]) -> list[Outcome]:
    """What has no outcome yet is printed in this process."""
    return [outcome or _printed_here(order) for order, outcome in zip(orders, outcomes, strict=True)]


def _printed_here(order: Order) -> Outcome:
    try:
        return print_booklet(order.html, order.assets)
    except BookletFailed as failed:
        return failed
