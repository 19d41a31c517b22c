"""``output-stale``: a generated file is behind its manifest."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="output-stale",
    severity=Severity.ERROR,
    scope="file",
    what="A generated file is as namegen wrote it, but the manifest, the catalogue or the settings "
    "have changed since.",
    why="Programs and people still go by the old names and ports.",
    example=Example(
        flagged='BOW_THRUSTER: Final = MotorName("frontThruster")',
        mended='BOW_THRUSTER: Final = MotorName("bowThruster")',
    ),
    repair="`namegen build` writes it anew. Nobody's work is lost: the file is as it was generated "
    "last.",
)
