"""Booklets kept by content, printed side by side, whatever happens to those who print."""

import os
import signal
import threading
import time
from collections.abc import Callable
from concurrent.futures import Executor, Future, ProcessPoolExecutor, ThreadPoolExecutor
from dataclasses import replace
from multiprocessing import active_children, get_context
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from loopleaf.publish import booklet_shelf
from loopleaf.publish.booklet import Assets, BookletFailed, Printed, render
from loopleaf.publish.booklet_press import FEW, Order, print_all
from loopleaf.publish.booklet_shelf import BookletJob, content_key, make_booklets
from tests.pdf.printed import lantern_html, lantern_pdf

BRIEF = '<html lang="en-US"><head><title>{0}</title></head><body><h1>{0}</h1></body></html>'


def jobs(number: int) -> list[BookletJob]:
    return [BookletJob(f"p{i}", "US", "a4", BRIEF.format(f"Pattern {i}"), Assets()) for i in range(number)]


def orders(number: int) -> list[Order]:
    return [Order(job.html, job.assets) for job in jobs(number)]


class Counting(Executor):
    """Prints at once in this process and counts."""

    def __init__(self) -> None:
        self.asked = 0

    def submit(self, work, /, *args: Any, **kwargs: Any):
        self.asked += 1
        future: Future[Any] = Future()
        future.set_result(work(*args, **kwargs))
        return future


def test_the_same_input_gives_the_same_bytes_here_and_in_other_processes():
    here = lantern_pdf()
    assert render(lantern_html(), Assets()) == here
    with ProcessPoolExecutor(1, mp_context=get_context("spawn")) as other:
        assert other.submit(render, lantern_html(), Assets()).result(timeout=60) == here


def test_what_lies_on_the_shelf_is_not_printed_again(tmp_path):
    first, second = Counting(), Counting()
    made = make_booklets(jobs(4), tmp_path, first)
    assert first.asked == 4
    assert made.rendered == tuple(job.key for job in jobs(4)) == tuple(made.paths)
    assert all(path.read_bytes().startswith(b"%PDF-1.7") for path in made.paths.values())
    again = make_booklets(jobs(4), tmp_path, second)
    assert (second.asked, again.rendered, again.paths) == (0, (), made.paths)


def test_only_what_changed_is_printed(tmp_path):
    make_booklets(jobs(3), tmp_path, Counting())
    changed = [*jobs(2), replace(jobs(3)[2], html=BRIEF.format("Another"))]
    executor = Counting()
    assert make_booklets(changed, tmp_path, executor).rendered == ("booklets/p2-us-a4.pdf",)
    assert executor.asked == 1


def test_the_key_follows_html_pictures_and_versions_but_not_the_place(tmp_path, monkeypatch):
    def job(folder: Path, colour: str, html: str = '<img src="pictures/a%20b.png" alt="x">') -> BookletJob:
        folder.mkdir(exist_ok=True)
        Image.new("RGB", (2, 2), colour).save(folder / "a b.png")
        return BookletJob("p", "UK", "letter", html, Assets(folder))

    red = content_key(job(tmp_path / "one", "red"))
    assert content_key(job(tmp_path / "two", "red")) == red
    assert content_key(job(tmp_path / "one", "blue")) != red
    assert content_key(job(tmp_path / "one", "red", '<img src="pictures/a%20b.png" alt="y">')) != red
    monkeypatch.setattr(booklet_shelf, "_edition", lambda: b"other versions, fonts, code")
    assert content_key(job(tmp_path / "one", "red")) != red


def test_remarks_are_kept_and_said_again(tmp_path):
    job = BookletJob(
        "p", "US", "a4", BRIEF.format("T") + '<img src="data:image/png;base64,AAAA" alt="x">', Assets()
    )
    first = make_booklets([job], tmp_path, Counting())
    assert [remark.key for remark in first.remarks] == ["booklets/p-us-a4.pdf"]
    again = make_booklets([job], tmp_path, Counting())
    assert again.rendered == ()
    assert again.remarks == first.remarks


def test_one_that_fails_does_not_take_the_others_with_it(tmp_path):
    bad = BookletJob("bad", "US", "a4", '<img src="file:///etc/hostname" alt="x">', Assets())
    made = make_booklets([jobs(2)[0], bad, jobs(2)[1]], tmp_path)
    assert list(made.paths) == ["booklets/p0-us-a4.pdf", "booklets/p1-us-a4.pdf"]
    assert [failure.key for failure in made.failures] == ["booklets/bad-us-a4.pdf"]
    assert "was not printed" in made.failures[0].text
    assert bad.key not in made.rendered
    assert not list(tmp_path.glob("*.part"))


def test_nothing_half_written_is_left_where_writing_breaks_off(tmp_path, monkeypatch):
    def no_room(source, target):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", no_room)
    with pytest.raises(OSError, match="No space"):
        make_booklets(jobs(1), tmp_path, Counting())
    assert list(tmp_path.iterdir()) == []


def test_what_nobody_asked_for_in_a_long_time_leaves_the_shelf(tmp_path):
    old, kept = (make_booklets([job], tmp_path, Counting()).paths[job.key] for job in jobs(2))
    long_ago = time.time() - (booklet_shelf.KEPT_DAYS + 1) * 86400
    os.utime(old, (long_ago, long_ago))
    make_booklets(jobs(2)[1:], tmp_path, Counting())
    assert not old.exists()
    assert kept.exists()


def test_few_booklets_start_no_processes(monkeypatch):
    monkeypatch.setattr("loopleaf.publish.booklet_press.pool", None)
    assert len(print_all(orders(FEW))) == FEW


def test_several_are_printed_in_processes_that_are_gone_afterwards():
    before = set(active_children())
    outcomes = print_all(orders(FEW + 2))
    assert [type(outcome) for outcome in outcomes] == [Printed] * (FEW + 2)
    assert outcomes == print_all(orders(FEW + 2), Counting()), "in the order asked, with the same bytes"
    assert set(active_children()) == before


def when_workers_come(act: Callable[[int], None], how_many: int) -> threading.Thread:
    """Does `act(process id)` to so many worker processes, a moment after each appeared."""
    before = set(active_children())

    def watch() -> None:
        met = set(before)
        until = time.monotonic() + 30
        while len(met - before) < how_many and time.monotonic() < until:
            for process in list(set(active_children()) - met)[: how_many - len(met - before)]:
                time.sleep(0.2)
                met.add(process)
                assert process.pid
                act(process.pid)
            time.sleep(0.01)

    thread = threading.Thread(target=watch)
    thread.start()
    return thread


def test_a_dead_worker_costs_a_second_try_here():
    killer = when_workers_come(lambda pid: os.kill(pid, signal.SIGKILL), 1)
    outcomes = print_all(orders(4))
    killer.join()
    assert [type(outcome) for outcome in outcomes] == [Printed] * 4


def test_stuck_workers_cost_their_booklets_and_are_ended():
    before = set(active_children())
    stopper = when_workers_come(
        lambda pid: os.kill(pid, signal.SIGSTOP), min(3, len(os.sched_getaffinity(0)))
    )
    outcomes = print_all(orders(3), wait_s=1)
    stopper.join()
    assert [str(outcome) for outcome in outcomes] == ["The booklet was not printed within 1 seconds."] * 3
    assert set(active_children()) == before


def test_a_broken_executor_given_by_the_caller_costs_nothing():
    broken = ProcessPoolExecutor(1, mp_context=get_context("spawn"))
    with pytest.raises(Exception, match="terminated"):
        broken.submit(os._exit, 1).result(timeout=60)
    assert [type(outcome) for outcome in print_all(orders(2), broken)] == [Printed] * 2
    broken.shutdown()


def test_a_wait_for_somebody_elses_executor_has_a_limit():
    go_on = threading.Event()
    with ThreadPoolExecutor(1) as busy:
        busy.submit(go_on.wait, 60)
        outcomes = print_all(orders(1), busy, wait_s=0.2)
        go_on.set()
    assert isinstance(outcomes[0], BookletFailed)
    assert str(outcomes[0]) == "The booklet was not printed within 0.2 seconds."
