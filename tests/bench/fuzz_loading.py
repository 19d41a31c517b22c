"""Reads 10,000 mutated YAML files of the examples as each sort of document.

    python tests/bench/fuzz_loading.py [CASES [FIRST SEED]]

A traceback ends it; so does a reading over 2 s. Prints the slowest reading and
the peak memory, and ends with 1 when one is over its bound.
"""

from __future__ import annotations

import random
import resource
import sys
import time
from importlib import util
from pathlib import Path

from measuring import verdict

_FILE = Path(__file__).parents[1] / "loading" / "test_hostile.py"
_SPEC = util.spec_from_file_location("test_hostile", _FILE)
assert _SPEC is not None and _SPEC.loader is not None
hostile = util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(hostile)


def main(cases: int, first: int) -> int:
    """Read the cases and print what they took."""
    slowest, unreadable, faults = 0.0, 0, 0
    for seed in range(first, first + cases):
        chance = random.Random(seed)
        data = hostile.mutated(chance.choice(hostile.SEEDS), chance)
        began = time.perf_counter()
        results = hostile.read_all(data)
        slowest = max(slowest, time.perf_counter() - began)
        unreadable += sum(loaded.value is None for loaded in results)
        faults += sum(len(loaded.faults) for loaded in results)
    print(f"{cases} cases, read as 3 documents each: {unreadable} without value, {faults} faults")
    megabytes = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1_000
    return verdict(
        [("slowest case in seconds", slowest, 2.0), ("peak memory in MB", megabytes, 300.0)]
    )


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:]]
    sys.exit(main(*(*numbers, *(10_000, 0)[len(numbers) :])))
