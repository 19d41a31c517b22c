"""How long ``namegen --help`` takes, in times of importing click alone."""

from __future__ import annotations

import sys
from pathlib import Path

from measuring import measure, namegen, verdict

RUNS = 20
COMMANDS = {
    "python -c pass": [sys.executable, "-c", "pass"],
    'python -c "import click"': [sys.executable, "-c", "import click"],
    "namegen --help": namegen("--help"),
    "namegen --version": namegen("--version"),
}


def main() -> int:
    """Measure in turns, so that a busy moment strikes all alike."""
    fastest = dict.fromkeys(COMMANDS, float("inf"))
    for _ in range(RUNS):
        for name, command in COMMANDS.items():
            run = measure(command, Path.cwd())
            if run.code:
                sys.exit(f"{name} ended with {run.code}")
            fastest[name] = min(fastest[name], run.seconds)
    click = fastest['python -c "import click"']
    print(f"{'command':26} {'ms':>7} {'times':>6}")
    for name, seconds in fastest.items():
        print(f"{name:26} {seconds * 1000:7.1f} {seconds / click:6.2f}")
    return verdict([("namegen --help in times of click", fastest["namegen --help"] / click, 4)])


if __name__ == "__main__":
    sys.exit(main())
