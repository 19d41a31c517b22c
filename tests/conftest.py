"""What tests of several parts need: outside tools, the command, a copy of the example."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen.bundled import bundled

Run = Callable[..., "subprocess.CompletedProcess[str]"]


@pytest.fixture(scope="session", autouse=True)
def cache(tmp_path_factory: pytest.TempPathFactory) -> None:
    """Keep what namegen remembers of builds out of the home of whoever runs the tests."""
    os.environ["NAMEGEN_CACHE"] = str(tmp_path_factory.mktemp("cache"))


@pytest.fixture(scope="session")
def tool() -> Callable[[str], str]:
    """Return a function that gives the path of an outside program, such as ``javac``.

    The test is skipped where the program is missing, unless NAMEGEN_REQUIRE_TOOLS
    is set: then it fails, so that a check cannot go missing unseen.
    """

    def find(name: str) -> str:
        path = shutil.which(name)
        if path:
            return path
        if os.environ.get("NAMEGEN_REQUIRE_TOOLS"):
            pytest.fail(f"{name} is not installed, and NAMEGEN_REQUIRE_TOOLS is set")
        pytest.skip(f"{name} is not installed")

    return find


@pytest.fixture(scope="session")
def namegen() -> Run:
    """Return a function that runs the command: ``namegen("audit", cwd=folder)``.

    A traceback, whatever the exit code, fails the test.
    """

    def run(
        *words: str, cwd: Path, timeout: float = 60, columns: int = 100
    ) -> subprocess.CompletedProcess[str]:
        done = subprocess.run(
            [sys.executable, "-m", "namegen", *words],
            cwd=cwd,
            capture_output=True,
            text=True,
            encoding="utf-8",
            env={**os.environ, "PYTHONUTF8": "1", "COLUMNS": str(columns)},
            timeout=timeout,
            check=False,
        )
        assert "Traceback (most recent call last)" not in done.stderr, done.stderr
        return done

    return run


@pytest.fixture
def boatclub(tmp_path: Path) -> Path:
    """Return a copy of the bundled example that the test may change."""
    return Path(
        shutil.copytree(
            bundled("examples") / "boatclub",
            tmp_path / "boatclub",
            ignore=shutil.ignore_patterns("__pycache__"),
        )
    )
