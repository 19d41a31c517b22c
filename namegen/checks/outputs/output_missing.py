"""``output-missing``: a generated file is not there."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="output-missing",
    severity=Severity.ERROR,
    scope="file",
    what='The settings ask for an output under "build", and its file is not there.',
    why="Code that imports it does not start, and nobody has the sheet.",
    example=Example(
        flagged="sheets/heron.html: no such file",
        mended="sheets/heron.html, as namegen build wrote it",
    ),
    repair="`namegen build` writes it.",
)
