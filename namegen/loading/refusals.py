"""What YAML allows and namegen does not read, and limits that keep hostile files cheap."""

from __future__ import annotations

from namegen.loading.nodes import FieldNode, Node
from namegen.loading.sources import Source
from namegen.model.findings import Fault
from namegen.model.places import Related

DEEPEST = 32
"""Most levels of groups and lists inside each other."""

MOST_VALUES = 10_000
"""Most values in one file; keeps hostile input from taking seconds."""

_QUOTE = "put quotes around the text"


def _refused(source: Source, start: int, end: int, message: str) -> Fault:
    return Fault("bad-yaml", message, source.place(start, end))


def second_document(source: Source, at: int) -> Fault:
    """Return the fault of a ``---`` below a document."""
    message = (
        "A second YAML document starts here (`---`). One file holds one document: "
        "delete this line, or move what follows to a file of its own."
    )
    return _refused(source, at, at + 3, message)


def alias(source: Source, start: int, end: int, name: str) -> Fault:
    """Return the fault of ``*name``."""
    message = (
        f"`*{name}` repeats a value from elsewhere, which namegen does not read. "
        f"Write the value out; if it is a text that starts with `*`, {_QUOTE}."
    )
    return _refused(source, start, end, message)


def anchor_or_tag(source: Source, start: int, end: int, sign: str) -> Fault:
    """Return the fault of ``&name`` or ``!tag`` before a value."""
    word = source.text[start:end].split(None, 1)
    shown = word[0] if word else sign
    use = "marks a value for repetition" if sign == "&" else "sets the type of a value"
    message = (
        f"`{shown}` {use}, which namegen does not read. Delete it; if it is part of a text, "
        f"{_QUOTE}."
    )
    return _refused(source, start, start + len(shown), message)


def too_deep(source: Source, at: int) -> Fault:
    """Return the fault of one level too many."""
    message = (
        f"More than {DEEPEST} levels inside each other; namegen's files need five. Look "
        "for brackets that are opened and never closed."
    )
    return _refused(source, at, at + 1, message)


def brackets_for_a_name(source: Source, at: int) -> Fault:
    """Return the fault of a list or group where a field's name belongs."""
    message = (
        "Brackets stand where the name of a field belongs. Leave them out; if they are part of "
        f"a text, {_QUOTE}."
    )
    return _refused(source, at, at + 1, message)


def too_many(node: Node) -> Fault:
    """Return the fault of one value too many."""
    message = (
        f"More than {MOST_VALUES:,} values in one file. Split it: shared parts can stand in "
        "files of their own and be named in `includes`."
    )
    return _refused(node.source, node.start, node.start, message)


def merge_key(field: FieldNode) -> Fault:
    """Return the fault of ``<<``."""
    message = (
        "`<<` takes over the fields of another group, which namegen does not read. "
        "Write the fields out, or put them into a file that `includes` names."
    )
    return Fault("bad-yaml", message, field.key.place)


def duplicate(field: FieldNode, first: FieldNode) -> Fault:
    """Return the fault of a field that its group has already."""
    name = field.key.value
    message = (
        f"`{name}` stands here for the second time in one group. "
        "Rename one of the two or delete it."
    )
    related = (Related(first.key.place, "first written here"),)
    return Fault("duplicate-key", message, field.key.place, found=name, related=related)
