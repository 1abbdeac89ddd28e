"""Processes of our own, spawned (MkDocs' server has threads, which a fork would tear), gone afterwards."""

import os
from collections.abc import Iterator
from concurrent.futures import ProcessPoolExecutor
from contextlib import contextmanager
from multiprocessing import active_children, get_context
from threading import Thread

LEAVE_S = 2.0
"""Seconds that idle workers get to leave by themselves."""


def cores() -> int:
    """The cores that this process may use."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


@contextmanager
def pool(most: int) -> Iterator[ProcessPoolExecutor]:
    """A pool with a process a core, `most` at most, that is gone afterwards even where a worker is stuck."""
    others = set(active_children())
    made = ProcessPoolExecutor(min(cores(), most), mp_context=get_context("spawn"))
    try:
        yield made
    finally:
        # Idle workers leave by themselves; one that is still at work has outlived its limit. The pool alone
        # waits for them: where two wait for one process, the second may find it neither there nor gone.
        leaving = Thread(target=made.shutdown, kwargs={"cancel_futures": True})
        leaving.start()
        leaving.join(timeout=LEAVE_S)
        if leaving.is_alive():
            for worker in set(active_children()) - others:
                worker.kill()
        leaving.join()
