"""A manifest's text for another robot: the same, without what belongs to the first one alone."""

from __future__ import annotations

from collections.abc import Iterator

from namegen.loading.document import document
from namegen.loading.edits import spelled
from namegen.loading.nodes import GroupNode, Node, TextNode, plain
from namegen.model.places import Edit

OF_ROBOT = frozenset({"title", "revision", "accept"})
OF_ENTRY = {"controllers": frozenset({"dead"}), "devices": frozenset({"formerly", "accept"})}
"""Its people's name and state, its broken ports, its devices' old names, what it accepts."""


def next_edit(data: bytes, path: str, robot: str) -> Edit | None:
    """Return the first edit that is left to make a manifest another robot's, or None.

    Make it, and ask again with the new text: each edit is the smallest that
    leaves the rest as it is, comments and all.
    """
    root, _ = document(data, path)
    if root is None:
        return None
    named = root.value("robot")
    if named is None:
        start = next((field.key.start for field in root.fields.values()), root.start)
        return Edit(root.source.place(start, start), f"robot: {spelled(robot)}\n")
    if isinstance(named, TextNode) and named.value != robot:
        return Edit(named.place, (" " if named.start == named.end else "") + spelled(robot))
    return next((_without(group, name) for group, name in _own(root)), None)


def is_copy(old: bytes, new: bytes, path: str, robot: str) -> bool:
    """Whether the new text says the same as the old, but for what belongs to one robot alone."""
    before, faults = document(old, path)
    after, new_faults = document(new, path)
    if before is None or after is None or len(new_faults) > len(faults):
        return False
    for group, name in list(_own(before)):
        del group.fields[name]
    expected = plain(before)
    assert isinstance(expected, dict)
    return plain(after) == {**expected, "robot": robot}


def _own(root: GroupNode) -> Iterator[tuple[GroupNode, str]]:
    """Yield each field that belongs to this robot alone, as its group and name."""
    yield from ((root, name) for name in root.fields if name in OF_ROBOT)
    for group, names in OF_ENTRY.items():
        entries = root.value(group)
        for entry in entries.fields.values() if isinstance(entries, GroupNode) else ():
            if isinstance(entry.value, GroupNode):
                yield from ((entry.value, name) for name in entry.value.fields if name in names)


def _without(group: GroupNode, name: str) -> Edit:
    """Return the edit that takes a field out of its group."""
    source, text = group.source, group.source.text
    fields = list(group.fields.values())
    index = list(group.fields).index(name)
    field = fields[index]
    if group.flow:
        if index + 1 < len(fields):
            return Edit(source.place(field.key.start, fields[index + 1].key.start), "")
        start = _end(fields[index - 1].value) if index else field.key.start
        return Edit(source.place(start, _end(field.value)), "")
    if len(fields) == 1:
        # Nothing below a name would clear it: the entry of an included file would go.
        return Edit(source.place(field.key.start, _end(field.value)), "{}")
    start = source.start_of_line(field.key.start)
    end = _line_end(text, _end(field.value))
    return Edit(source.place(start, end), "")


def _end(node: Node) -> int:
    """Return where a value ends, line ends below a block text left out."""
    written = node.source.text[node.start : node.end]
    return node.start + len(written.rstrip("\r\n"))


def _line_end(text: str, index: int) -> int:
    """Return where the next line begins."""
    while index < len(text) and text[index] not in "\r\n":
        index += 1
    return index + (2 if text[index : index + 2] == "\r\n" else 1) if index < len(text) else index
