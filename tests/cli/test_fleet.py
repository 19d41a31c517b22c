"""``namegen fleet`` as it is seen: one table, or several where the screen is narrow."""

from __future__ import annotations

from pathlib import Path


def table(namegen, folder: Path, columns: int) -> list[list[str]]:
    """Return the tables of the command's output, as lines."""
    done = namegen("fleet", cwd=folder, columns=columns)
    assert done.returncode == 0 and done.stderr == ""
    blocks = done.stdout.split("\n\n")
    return [block.splitlines() for block in blocks if "sheet mark" in block]


def test_robots_stand_side_by_side(namegen, boatclub: Path):
    (lines,) = table(namegen, boatclub, 100)
    assert lines[0].split() == ["dipper", "heron", "kingfisher"]
    rudder = next(line for line in lines if line.startswith("rudder"))
    for robot, port in zip(lines[0].split(), ("8", "7", "7"), strict=True):
        assert rudder[lines[0].index(robot) :].startswith(f"stern servo {port}")


def test_what_does_not_fit_comes_in_the_next_table(namegen, boatclub: Path):
    tables = table(namegen, boatclub, 40)
    assert [lines[0].split() for lines in tables] == [["dipper"], ["heron"], ["kingfisher"]]
    assert all(len(line) <= 40 for lines in tables for line in lines)
    assert len({len(lines) for lines in tables}) == 1


def test_other_forms_have_the_findings_alone(namegen, boatclub: Path):
    done = namegen("fleet", "--report", "lines", cwd=boatclub)
    assert [line.split(": ")[1] for line in done.stdout.splitlines()] == ["note", "note"]
