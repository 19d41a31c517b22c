"""Runs a command and says how long it took and how much memory it needed at most."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Measurement:
    """Wall-clock time in seconds, peak resident memory in MB, the exit code, CPU seconds."""

    seconds: float
    megabytes: float
    code: int
    cpu: float = 0.0


def measure(command: Sequence[str], cwd: Path, *, quiet: bool = True) -> Measurement:
    """Run a command once. Memory is that of the process itself or its largest child."""
    sink = subprocess.DEVNULL if quiet else None
    began = time.perf_counter()
    process = subprocess.Popen(command, cwd=cwd, stdout=sink, stderr=sink)
    _, status, usage = os.wait4(process.pid, 0)
    seconds = time.perf_counter() - began
    process.returncode = os.waitstatus_to_exitcode(status)
    per_megabyte = 1_000_000 if sys.platform == "darwin" else 1_000
    megabytes, cpu = usage.ru_maxrss / per_megabyte, usage.ru_utime + usage.ru_stime
    return Measurement(seconds, megabytes, process.returncode, cpu)


def best(
    command: Sequence[str], cwd: Path, *, runs: int, codes: Sequence[int] = (0,)
) -> Measurement:
    """Return the fastest of several runs; stop when one ends with another code."""
    all_runs = [measure(command, cwd) for _ in range(runs)]
    for run in all_runs:
        if run.code not in codes:
            sys.exit(f"{' '.join(command)} ended with {run.code}")
    return min(all_runs, key=lambda run: run.seconds)


def namegen(*words: str) -> list[str]:
    """Return the command line of namegen for the running Python: its script, if there is one."""
    script = Path(sys.executable).with_name("namegen")
    return [*([str(script)] if script.exists() else [sys.executable, "-m", "namegen"]), *words]


def verdict(bounds: Sequence[tuple[str, float, float]]) -> int:
    """Print each bound as (what, measured, at most) and return 1 when one is missed."""
    missed = 0
    for what, measured, most in bounds:
        kept = measured <= most
        missed += not kept
        print(f"{'kept  ' if kept else 'MISSED'} {what}: {measured:.3g} (at most {most:g})")
    return 1 if missed else 0
