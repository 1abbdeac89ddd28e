"""Many patterns worked side by side: working and drawing one keeps one core busy."""

from collections.abc import Callable, Sequence
from concurrent.futures import Executor, Future
from contextlib import nullcontext

from .kept import Worked, packed, unpacked
from .processes import cores, pool
from .settings import Settings

FEW = 6
"""So many are sooner worked here than a pool is started: a worker takes two seconds before its first one."""
WAIT_S = 120.0
"""Seconds to wait for one pattern; the longest of the demo takes 3."""

Work = Callable[[str, bytes, Settings], Worked]


def work_beside(
    work: Work,
    files: Sequence[tuple[str, bytes]],
    settings: Settings,
    executor: Executor | None = None,
    wait_s: float = WAIT_S,
) -> list[Worked | None]:
    """What came of each file (path in the collection, content), in their order.

    None for one that wasn't worked: there are too few to start a pool for, a worker died or took too long,
    or the work itself failed.

    executor: where given, it does the work, and isn't shut down here.
    """
    if executor is None and (len(files) <= FEW or cores() == 1):
        return [None] * len(files)
    with nullcontext(executor) if executor is not None else pool(len(files)) as workers:
        futures = [_begun(workers, work, source, data, settings) for source, data in files]
        return [None if future is None else _outcome(future, wait_s) for future in futures]


def _begun(
    workers: Executor, work: Work, source: str, data: bytes, settings: Settings
) -> Future[bytes] | None:
    try:
        return workers.submit(_packed, work, source, data, settings)
    except RuntimeError:  # a pool that is broken or shut down
        return None


def _packed(work: Work, source: str, data: bytes, settings: Settings) -> bytes:
    """As it is kept, for the way from one process to the other."""
    return packed(work(source, data, settings))


def _outcome(future: Future[bytes], wait_s: float) -> Worked | None:
    try:
        return unpacked(future.result(timeout=wait_s))
    except Exception:  # noqa: BLE001
        # Whatever it is, the file is worked again in the caller's process, which says what is the matter.
        future.cancel()
        return None
