"""``output-edited``: a generated file was edited by hand."""

from __future__ import annotations

from namegen.model.findings import Example, FindingKind, Severity

KIND = FindingKind(
    name="output-edited",
    severity=Severity.ERROR,
    scope="file",
    what="A generated file is neither what the manifest gives now nor what namegen wrote last.",
    why="What was changed in it is in no manifest: the sheet, the other programs and the next "
    "build know nothing of it.",
    example=Example(
        flagged='RUDDER: Final = ServoName("rudder2")  # new servo',
        mended='RUDDER: Final = ServoName("rudder")',
    ),
    repair="None by itself: put the change into the manifest; `namegen build --force` then "
    "overwrites the file.",
)
