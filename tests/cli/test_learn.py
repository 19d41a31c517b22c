"""``namegen learn`` prints rows that can be copied into namegen.yaml as they are."""

from __future__ import annotations

from pathlib import Path

import yaml


def test_the_output_is_yaml_with_its_evidence_in_comments(namegen, boatclub: Path):
    settings = boatclub / "namegen.yaml"
    text = settings.read_text(encoding="utf-8")
    before, rest = text.split("lookups:")
    settings.write_text(before + "code:" + rest.split("\ncode:")[1], encoding="utf-8")
    done = namegen("learn", cwd=boatclub)
    assert done.returncode == 0 and done.stderr == ""
    rows = yaml.safe_load(done.stdout)["lookups"]
    assert {"call": "motor", "kind": "motor"} in rows
    assert all("    # " in line for line in done.stdout.splitlines() if line.startswith("  - "))
    settings.write_text(settings.read_text(encoding="utf-8") + done.stdout, encoding="utf-8")
    again = namegen("learn", cwd=boatclub)
    assert "nothing more that looks devices up" in again.stdout
    assert namegen("verify", cwd=boatclub).returncode == 0
