"""How long verify, build and audit of the boat club take, each from start to end."""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

from measuring import best, namegen, verdict

EXAMPLE = Path(__file__).resolve().parents[2] / "examples" / "boatclub"
RUNS = 7
SECONDS, MEGABYTES = 1.0, 250.0


def main() -> int:
    """Measure each command on a copy of the example."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder, "boatclub")
        shutil.copytree(EXAMPLE, copy)
        rows = {
            "verify": best(namegen("verify"), copy, runs=RUNS),
            "build, all to write": best(namegen("build"), copy, runs=1),
            "build, none to write": best(namegen("build"), copy, runs=RUNS),
            "build --stale": best(namegen("build", "--stale"), copy, runs=RUNS),
            "audit": best(namegen("audit"), copy, runs=RUNS, codes=[1]),
            "audit one file": best(
                namegen("audit", "code/heron/skim.py"), copy, runs=RUNS, codes=[1]
            ),
            "audit --fix-suggested": best(
                namegen("audit", "--fix-suggested"), copy, runs=1, codes=[1]
            ),
        }
    print(f"{'namegen':22} {'s':>6} {'MB':>6}")
    for name, run in rows.items():
        print(f"{name:22} {run.seconds:6.2f} {run.megabytes:6.0f}")
    return verdict(
        [
            *((f"{name}, seconds", run.seconds, SECONDS) for name, run in rows.items()),
            ("most memory, MB", max(run.megabytes for run in rows.values()), MEGABYTES),
        ]
    )


if __name__ == "__main__":
    sys.exit(main())
