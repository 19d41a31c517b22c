"""Repairs: turns what a check says should be done into edits of the files concerned."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.findings import Finding, Fix, Rename
from namegen.model.places import Edit, Place
from namegen.operations.code_reader import Literal
from namegen.operations.files import Folder


def with_fixes(
    findings: Iterable[Finding], literals: Mapping[Place, Literal], folder: Folder
) -> Iterator[Finding]:
    """Yield the findings, each repair worked out to a fix where it can be made."""
    intact: dict[str, bool] = {}
    for finding in findings:
        literal = literals.get(finding.place)
        if not isinstance(finding.repair, Rename) or literal is None:
            yield finding
            continue
        if literal.path not in intact:
            intact[literal.path] = survives(folder, literal.path)
        language = languages.for_path(literal.path)
        text = language.spell(finding.repair.name, literal.text) if language else None
        if text is None or not intact[literal.path]:
            yield finding
            continue
        edit = Edit(finding.place, text)
        yield replace(finding, fix=Fix(finding.repair.safety, (edit,)))


def survives(folder: Folder, path: str) -> bool:
    """Whether the file's bytes come back unchanged from decoding and encoding.

    A file for which they do not is flagged and never rewritten.
    """
    language = languages.for_path(path)
    if language is None:
        return False
    try:
        data = folder.read(path)
        return language.encode(language.decode(data)) == data
    except (UnusableInput, UnicodeError):
        return False
