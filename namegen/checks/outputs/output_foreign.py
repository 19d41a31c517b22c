"""``output-foreign``: a file that namegen did not make stands where an output is to go."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="output-foreign",
    severity=Severity.ERROR,
    scope="file",
    what="A file that namegen did not make stands where the settings want an output.",
    why="It may be somebody's program or notes. What namegen did not make, it neither changes nor "
    "deletes, so the output is not there.",
    example=Example(
        flagged="to: code/heron/main.py      # the students' program",
        mended="to: code/heron/devices.py",
    ),
    repair="None by itself: name another path in `to`, or move the file away.",
)
