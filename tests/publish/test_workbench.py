"""Patterns worked side by side: in their order, and nothing lost where a worker is."""

import time
from concurrent.futures import ThreadPoolExecutor
from multiprocessing import active_children

from loopleaf.publish.kept import Worked
from loopleaf.publish.settings import Settings
from loopleaf.publish.workbench import FEW, work_beside
from loopleaf.publish.workshop import work
from tests.publish.small_site import COASTER

FILES = [(f"coaster-{number}.yml", COASTER.encode()) for number in range(FEW + 1)]


def _plain(source: str, data: bytes, settings: Settings) -> Worked:
    if b"slow" in data:
        time.sleep(5)
    if b"wrong" in data:
        raise KeyError("no such thing")
    return Worked(source, source, data.decode(), True, (), {})


def test_few_are_left_to_the_caller() -> None:
    def never(source: str, data: bytes, settings: Settings) -> Worked:
        raise AssertionError

    assert work_beside(never, FILES[:FEW], Settings()) == [None] * FEW


def test_many_are_worked_by_processes_that_are_gone_afterwards() -> None:
    before = set(active_children())
    found = work_beside(work, FILES, Settings())
    assert set(active_children()) == before
    assert [one.source if one else "" for one in found] == [source for source, _ in FILES]
    assert found[0] == work(*FILES[0], Settings())


def test_what_fails_or_takes_too_long_is_left_to_the_caller() -> None:
    files = [("a.yml", b"a"), ("b.yml", b"wrong"), ("c.yml", b"slow"), ("d.yml", b"d")]
    executor = ThreadPoolExecutor(4)
    found = work_beside(_plain, files, Settings(), executor, wait_s=0.5)
    executor.shutdown(wait=False, cancel_futures=True)
    assert [one and one.title for one in found] == ["a", None, None, "d"]


def test_an_executor_that_is_shut_down_does_nothing() -> None:
    executor = ThreadPoolExecutor(1)
    executor.shutdown()
    assert work_beside(_plain, [("a.yml", b"a")], Settings(), executor) == [None]
