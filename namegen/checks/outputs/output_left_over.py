"""``output-left-over``: a generated file that nothing asks for any more."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="output-left-over",
    severity=Severity.WARNING,
    scope="file",
    what="An earlier build wrote the file, and no manifest and no line of the settings asks for it "
    "now.",
    why="It says names and ports that nobody keeps right any more, and code may still import it.",
    example=Example(
        flagged="code/heron/old_devices.py, written by an earlier build",
        mended="code/heron/devices.py alone, as the settings ask for it",
    ),
    repair="`namegen build --tidy` deletes it; one that was edited by hand since is kept.",
)
