"""The README's target from scratch, followed to the letter in an empty folder."""

from __future__ import annotations

import re
import subprocess
from collections.abc import Callable
from pathlib import Path

README = Path(__file__).resolve().parents[2] / "README.md"
BLOCK = re.compile(r"^```\w+\n(.*?)^```$", re.M | re.S)
PATH = re.compile(r"\S+/\S+")


def test_a_target_of_your_own(tmp_path: Path, namegen: Callable[..., subprocess.CompletedProcess]):
    section = README.read_text(encoding="utf-8").partition("## A target of your own\n")[2]
    description, template, settings, made = BLOCK.findall(section.partition("\n## ")[0])

    assert namegen("new", "boats", cwd=tmp_path).returncode == 0
    boats = tmp_path / "boats"
    for text in (description, template):
        path = boats / PATH.search(text)[0]
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)
    with open(boats / "namegen.yaml", "a") as file:
        file.write(settings)

    done = namegen("build", cwd=boats)
    assert done.returncode == 0, done.stdout + done.stderr
    assert (boats / "config/first.ini").read_text() == made
