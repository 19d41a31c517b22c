"""Repairs: turns what a check says should be done into edits of the files concerned."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from msgspec.structs import replace

from namegen import languages
from namegen.errors import UnusableInput
from namegen.languages import Language
from namegen.model.facts import Respelling
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
        path = finding.place.path
        language = languages.for_path(path) if isinstance(finding.repair, Rename) else None
        respelling = respelling_of(finding, literals, language) if language else None
        if respelling is None or language is None or not isinstance(finding.repair, Rename):
            yield finding
            continue
        if path not in intact:
            intact[path] = survives(folder, path, language)
        if not intact[path]:
            yield finding
            continue
        edit = Edit(finding.place, respelling.spelling)
        yield replace(finding, fix=Fix(finding.repair.safety, (edit,)))


def respelling_of(
    finding: Finding, literals: Mapping[Place, Literal], language: Language
) -> Respelling | None:
    """Return how the finding's literal is to be written, or None when it cannot be."""
    literal = literals.get(finding.place)
    if not isinstance(finding.repair, Rename) or literal is None:
        return None
    spelling = language.spell(finding.repair.name, literal.text)
    if spelling is None:
        return None
    return Respelling(literal.text, spelling, finding.repair.name)


def survives(folder: Folder, path: str, language: Language) -> bool:
    """Whether the file's bytes come back unchanged from decoding and encoding.

    A file for which they do not is flagged and never rewritten.
    """
    try:
        data = folder.read(path)
        return language.decode(data).survives(data)
    except UnusableInput:
        return False
