"""Cases of each manifest kind: a file in ``cases`` holds what must be flagged and what must pass.

A case begins with ``=== flag: title`` or ``=== pass: title``. A flagged case
gives exactly one finding, of the file's kind, and a passing one none. Words
before the colon change that: ``x2`` so many findings; ``others`` allows findings
of other kinds; ``rules`` judges with a list of allowed parts; ``no-catalogue``
and ``any-style`` without a catalogue and without rules for names.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest

from namegen.model.workspaces import NameRules

CASES = sorted(Path(__file__).parent.glob("cases/*.txt"))


@dataclass(frozen=True)
class Case:
    kind: str
    flags: bool
    options: tuple[str, ...]
    title: str
    text: str

    @property
    def count(self) -> int:
        counts = [int(one[1:]) for one in self.options if one[0] == "x"]
        return counts[0] if counts else int(self.flags)

    def judged(self, judged) -> list:
        names = {"names": NameRules()} if "any-style" in self.options else {}
        return judged(
            self.text,
            rules="rules" in self.options,
            catalogue="no-catalogue" not in self.options,
            **names,
        )


def cases() -> list[Case]:
    found = []
    for path in CASES:
        for block in path.read_text(encoding="utf-8").split("=== ")[1:]:
            head, text = block.split("\n", 1)
            words, title = head.split(": ", 1)
            flag, *options = words.split()
            assert flag in {"flag", "pass"}
            found.append(Case(path.stem, flag == "flag", tuple(options), title, text))
    return found


@pytest.mark.parametrize("case", cases(), ids=lambda case: f"{case.kind}: {case.title}")
def test_case(case, judged):
    found = case.judged(judged)
    if "others" in case.options:
        found = [one for one in found if one.kind == case.kind]
    assert [one.kind for one in found] == [case.kind] * case.count, found
    for one in found:
        assert one.place.path == "robots/heron.yaml"


def test_every_message_as_a_student_reads_it(judged, snapshot):
    lines = []
    for case in cases():
        if case.flags:
            lines.append(f"# {case.kind}: {case.title}")
            for one in case.judged(judged):
                if one.kind == case.kind:
                    severity = getattr(one, "severity", None)
                    lines.append(f"{one.place} {severity.value if severity else 'fault'}:")
                    lines.append(f"  {one.message}")
                    lines += [f"  at {also.place}: {also.message}" for also in one.related]
    assert "\n".join(lines) == snapshot
