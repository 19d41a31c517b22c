"""``idle-acceptance``: what is accepted is not found any more."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from namegen.checks import kind, where_judged
from namegen.checks.acceptance import covers
from namegen.checks.wording import listed, quoted, to_write
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.manifests import Acceptance, Manifest
from namegen.model.places import Place

KIND = FindingKind(
    name="idle-acceptance",
    severity=Severity.NOTE,
    scope="text",
    what="A manifest, or the file of accepted findings, accepts what is not found any more.",
    why="It has done its work. Left where it is, it would hide the next finding of its kind.",
    example=Example(
        flagged="devices:\n  spareLamp: {kind: lamp, port: bridge digital 1}\n"
        "accept:\n  - {finding: port-undecided, because: the lamp comes in May}\n",
        mended="devices:\n  spareLamp: {kind: lamp, port: bridge digital 1}\n",
    ),
    repair="None by itself: take the entry out. `namegen audit --accept` takes what is gone out "
    "of the file of accepted findings.",
)


def idle(findings: Sequence[Finding], manifest: Manifest, where: str) -> Iterator[Finding]:
    """Yield a note for each acceptance that covers none of the findings.

    ``findings`` are all of a robot that are judged there: from the ``manifest``
    or from its ``code``. What cannot be accepted at all is another kind's business.
    """
    for acceptance in manifest.accepts:
        found = kind(acceptance.kind)
        unknown = acceptance.device is not None and acceptance.device not in manifest.devices
        if found is None or found.severity is Severity.ERROR or unknown:
            continue
        judged = where_judged(acceptance.kind)
        if judged == "look-up" and where == "manifest":
            yield _finding(acceptance, manifest, _elsewhere(acceptance.kind))
        elif judged == where and not any(covers(acceptance, one, manifest) for one in findings):
            of = f" of {quoted(acceptance.device)}" if acceptance.device else ""
            told = f"{quoted(acceptance.kind)}{of} is accepted here and not found any more."
            yield _finding(acceptance, manifest, f"{told} Take this entry out.")


def _elsewhere(name: str) -> str:
    comment = to_write(f"namegen: allow {name} because REASON")
    return (
        f"{quoted(name)} is found in single lines of code, and this entry accepts none of them. "
        f"Take it out; where the code is right, a comment in the line says so: {comment}."
    )


def _finding(acceptance: Acceptance, manifest: Manifest, message: str) -> Finding:
    place = acceptance.places.get("") or manifest.place("accept")
    return KIND.finding(place, message, found=acceptance.kind, robot=manifest.robot)


def gone(rows: Iterable[tuple[str, str, int]], place: Place) -> Finding:
    """Return the note about rows in the file of accepted findings: kind, path, how many."""
    told = [
        f"{name} in {path}" + (f" ({count})" if count > 1 else "") for name, path, count in rows
    ]
    message = (
        f"What is accepted here is not found any more: {listed(told)}. "
        "`namegen audit --accept` takes it out."
    )
    return KIND.finding(place, message)
