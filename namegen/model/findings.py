"""A finding: one thing that is wrong, with a place, a kind and perhaps a repair."""

from __future__ import annotations

from collections.abc import Sequence
from enum import Enum
from typing import Literal

from msgspec import Struct, field

from namegen.model.places import Edit, Place, Related


class Severity(str, Enum):
    """How much a finding matters: errors and warnings make the exit code 1."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Safety(str, Enum):
    """Whether a fix may be applied unasked (``--fix``) or only on request."""

    SAFE = "safe"
    SUGGESTED = "suggested"


Scope = Literal["text", "device", "robot", "look-up", "class", "file", "fleet"]


class Rename(Struct, frozen=True):
    """Symbolic repair: the name written at the finding's place becomes ``name``."""

    name: str
    safety: Safety


class UseConstant(Struct, frozen=True):
    """Symbolic repair: the literal becomes a reference to the device's constant."""

    robot: str
    device: str
    safety: Safety = Safety.SUGGESTED


Repair = Rename | UseConstant


class Fix(Struct, frozen=True):
    """A repair worked out to edits. Built by the operations, never by a check."""

    safety: Safety
    edits: tuple[Edit, ...]


class Example(Struct, frozen=True):
    """One case of a finding kind: ``flagged`` is wrong, ``mended`` is the same put right."""

    flagged: str
    mended: str


class FindingKind(Struct, frozen=True):
    """What one kind of finding is, as ``namegen explain`` prints it.

    ``rank`` orders the naming findings of code: a look-up gets at most one of
    them, the first that fits. Kinds outside that order have no rank.
    """

    name: str
    severity: Severity
    scope: Scope
    what: str
    why: str
    example: Example
    repair: str
    rank: int | None = None
    on_request: bool = False
    """Whether findings of this kind are left out of an audit that does not ask for them."""

    def finding(  # noqa: PLR0913 - optional keywords, one per field of Finding
        self,
        place: Place,
        message: str,
        *,
        found: str | None = None,
        expected: str | None = None,
        robot: str | None = None,
        repair: Repair | None = None,
        related: Sequence[Related] = (),
        severity: Severity | None = None,
    ) -> Finding:
        """Return a finding of this kind; ``severity`` only where it differs from the kind's."""
        return Finding(
            kind=self.name,
            severity=severity or self.severity,
            message=message,
            place=place,
            found=found,
            expected=expected,
            robot=robot,
            repair=repair,
            related=tuple(related),
        )


class Finding(Struct, frozen=True):
    """One thing that is wrong.

    ``message`` alone is enough for a student to mend the fault. ``found`` and
    ``expected`` are the text that stands there and the text that should.
    """

    kind: str
    severity: Severity
    message: str
    place: Place
    found: str | None = None
    expected: str | None = None
    robot: str | None = None
    repair: Repair | None = None
    fix: Fix | None = None
    related: tuple[Related, ...] = field(default=())


class Fault(Struct, frozen=True):
    """What loading found wrong in the text of a YAML file, before there is a manifest to judge.

    The kind's file in ``checks/manifest/`` gives it severity and explanation.
    """

    kind: str
    message: str
    place: Place
    found: str | None = None
    expected: str | None = None
    related: tuple[Related, ...] = ()
