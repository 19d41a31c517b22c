"""Reads mutated charts: CSV text of the tests' papers, and workbooks.

    python tests/bench/fuzz_charts.py [CASES [FIRST SEED]]

One case in four is a workbook: half of these have their packed bytes mutated, half
the text inside. A traceback ends it. Prints the slowest chart and the peak
memory, and ends with 1 when one is over its bound.
"""

from __future__ import annotations

import io
import random
import resource
import sys
import tempfile
import time
import zipfile
from importlib import util
from pathlib import Path

from measuring import verdict

_FILE = Path(__file__).parents[1] / "loading" / "charts" / "test_hostile_charts.py"
_SPEC = util.spec_from_file_location("test_hostile_charts", _FILE)
assert _SPEC is not None and _SPEC.loader is not None
hostile = util.module_from_spec(_SPEC)
_SPEC.loader.exec_module(hostile)


def spoilt_inside(data: bytes, chance: random.Random) -> bytes:
    """Return a workbook that unpacks well, with one of its texts mutated."""
    packed, held = zipfile.ZipFile(io.BytesIO(data)), io.BytesIO()
    chosen = chance.choice([name for name in packed.namelist() if name.startswith("xl/")])
    with zipfile.ZipFile(held, "w") as out:
        for name in packed.namelist():
            text = packed.read(name)
            out.writestr(name, hostile.mutated(text, chance) if name == chosen else text)
    return held.getvalue()


def main(cases: int, first: int) -> int:
    """Read the cases and print what they took."""
    workbook = hostile.workbook()
    slowest, refused = 0.0, 0
    with tempfile.TemporaryDirectory() as folder:
        for seed in range(first, first + cases):
            chance = random.Random(seed)
            if seed % 4:
                name, data = "boat.csv", hostile.mutated(chance.choice(hostile.PAPERS), chance)
            elif seed % 8:
                name, data = "boat.xlsx", hostile.mutated(workbook, chance)
            else:
                name, data = "boat.xlsx", spoilt_inside(workbook, chance)
            began = time.perf_counter()
            files = hostile.made_of(data, Path(folder), name)
            slowest = max(slowest, time.perf_counter() - began)
            hostile.check(files)
            refused += not files
    print(f"{cases} cases: {refused} refused, each with the way out")
    megabytes = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1_000
    return verdict(
        [("slowest case in seconds", slowest, 2.0), ("peak memory in MB", megabytes, 300.0)]
    )


if __name__ == "__main__":
    numbers = [int(word) for word in sys.argv[1:]]
    sys.exit(main(*(*numbers, *(10_000, 0)[len(numbers) :])))
