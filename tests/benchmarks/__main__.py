"""`make bench`: ratios, so that they mean the same on a fast machine and on a slow one.

Ends with 1 where a budget isn't kept.
"""

import os
import sys
from pathlib import Path

from tests.benchmarks.booklets import booklet_against_raw, second_build_and_processes
from tests.benchmarks.checking import check_of_the_demo
from tests.benchmarks.measuring import measuring_of_the_demo
from tests.benchmarks.rounds import many_rounds
from tests.benchmarks.site import site_against_plain

PROJECT = Path(__file__).resolve().parents[2]


def main() -> int:
    print(f"On {os.cpu_count()} cores; what is compared runs in turn, the median counts.\n", flush=True)
    kept = True
    measures = (
        check_of_the_demo, measuring_of_the_demo, many_rounds, booklet_against_raw,
        second_build_and_processes, site_against_plain,
    )  # fmt: skip
    for measure in measures:
        for result in measure(PROJECT):
            print(result, flush=True)
            kept = kept and result.kept
    return 0 if kept else 1


if __name__ == "__main__":
    sys.exit(main())
