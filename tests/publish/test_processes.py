"""Processes of our own: gone when the work is over, also where one of them never would end."""

import time
from concurrent.futures import CancelledError, Future
from concurrent.futures.process import BrokenProcessPool
from multiprocessing import active_children

import pytest

from loopleaf.publish import processes


def test_idle_workers_are_gone_afterwards() -> None:
    before = set(active_children())
    with processes.pool(2) as workers:
        assert list(workers.map(abs, (-1, 2, -3))) == [1, 2, 3]
    assert set(active_children()) == before


def test_a_worker_that_never_ends_is_gone_afterwards(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(processes, "LEAVE_S", 0.1)
    before = set(active_children())
    stuck: list[Future[None]] = []
    with processes.pool(1) as workers:
        workers.submit(abs, -1).result()
        stuck += [workers.submit(time.sleep, 600) for _ in range(4)]
    assert set(active_children()) == before
    with pytest.raises((BrokenProcessPool, CancelledError)):
        stuck[0].result(timeout=5)
