"""The builds of 200 robots with 40 devices and 5 outputs each, from start to end.

Run with ``python tests/bench/fleet.py``. The bounds are CPU seconds, and the peak memory in MB.
"""

from __future__ import annotations

import os
import shutil
import sys
import tempfile
from pathlib import Path

import yaml
from measuring import Measurement, measure, namegen, verdict

ROBOTS, RUNS = 200, 3
OUTPUTS = {
    "python-constants": "out/{robot}/devices.py",
    "java-constants": "out/{robot}/{Robot}Devices.java",
    "kotlin-constants": "out/{robot}/Devices.kt",
    "config-json": "out/{robot}/config.json",
    "sheet-markdown": "out/{robot}/sheet.md",
}
PLACES = ("bow", "stern", "net", "hatch", "bilge", "bump", "hull", "deck", "mast", "keel")
THINGS = ("Thruster", "Winch", "Lamp", "Level")


def lay_out(root: Path) -> None:
    """Write the workspace."""
    names = [place + thing for place in PLACES for thing in THINGS]
    boards = {"harbour": {"ports": {"motor": "1-60"}}}
    settings = {
        "robots": ["robots/*.yaml"],
        "catalogue": "catalogue.yaml",
        "build": [{"target": target, "to": to} for target, to in OUTPUTS.items()],
    }
    devices = {
        name: {"kind": "motor", "port": f"bridge motor {number}", "does": f"Moves the {name}"}
        for number, name in enumerate(names, 1)
    }
    (root / "robots").mkdir()
    (root / "catalogue.yaml").write_text(yaml.dump({"boards": boards}), encoding="utf-8")
    (root / "namegen.yaml").write_text(yaml.dump(settings), encoding="utf-8")
    for number in range(ROBOTS):
        robot = {
            "robot": f"boat{number}",
            "controllers": {"bridge": {"board": "harbour"}},
            "devices": devices,
            "setups": {"harvest": "everything"},
            "selected": "harvest",
        }
        path = root / "robots" / f"boat{number}.yaml"
        path.write_text(yaml.dump(robot, sort_keys=False), encoding="utf-8")


def best_of(root: Path, *words: str) -> Measurement:
    """Return the run with the least CPU time."""
    return min((measure(namegen(*words), root) for _ in range(RUNS)), key=lambda run: run.cpu)


def _cold(root: Path, cache: Path) -> Measurement:
    """Build with no output, no record and nothing remembered."""
    for folder in (root / "out", cache):
        shutil.rmtree(folder, ignore_errors=True)
    (root / "namegen.outputs.json").unlink(missing_ok=True)
    return measure(namegen("build"), root)


def main() -> int:
    """Measure a cold build, one with nothing to do, and whether anything is stale."""
    with tempfile.TemporaryDirectory() as folder:
        root, cache = Path(folder) / "boats", Path(folder) / "cache"
        root.mkdir()
        lay_out(root)
        os.environ["NAMEGEN_CACHE"] = str(cache)
        cold = min((_cold(root, cache) for _ in range(RUNS)), key=lambda run: run.cpu)
        files = [path for path in (root / "out").rglob("*") if path.is_file()]
        assert cold.code == 0 and len(files) == ROBOTS * len(OUTPUTS)
        runs = {"build, all to write": cold, "build, nothing to do": best_of(root, "build")}
        runs["build --stale"] = best_of(root, "build", "--stale")
        shutil.rmtree(cache)
        runs["--stale, forgotten"] = measure(namegen("build", "--stale"), root)
        runs["verify"] = best_of(root, "verify")
    assert all(run.code == 0 for run in runs.values())
    for title, run in runs.items():
        print(f"{title:22} {run.cpu:5.2f} s CPU {run.seconds:5.2f} s {run.megabytes:4.0f} MB")
    return verdict(
        [
            ("cold build, CPU seconds", cold.cpu, 3.0),
            ("nothing to do, CPU seconds", runs["build, nothing to do"].cpu, 1.0),
            ("--stale, CPU seconds", runs["build --stale"].cpu, 1.0),
            ("most memory, MB", max(run.megabytes for run in runs.values()), 200.0),
        ]
    )


if __name__ == "__main__":
    sys.exit(main())
