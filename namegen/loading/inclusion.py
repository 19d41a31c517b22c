"""Merges a manifest with the files that it includes, field by field."""

from __future__ import annotations

import posixpath
import re
from collections.abc import Callable

from namegen.errors import UnusableInput
from namegen.loading.document import document
from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode
from namegen.loading.wordings import nearest
from namegen.model.findings import Fault

MOST_FILES = 64
"""Most readings of included files for one manifest."""

_DRIVE = re.compile(r"[A-Za-z]:")


class Inclusion:
    """One manifest with all that it includes.

    ``tree`` is the merged group, or None when the manifest itself has no
    fields. ``complete`` is False when a file was left out, so that what is
    missing proves nothing. ``sources`` are the files read, the manifest last.

    Raises:
        UnusableInput: the manifest itself cannot be read.

    """

    def __init__(self, path: str, read: Callable[[str], bytes]) -> None:
        self.faults: list[Fault] = []
        self.sources: list[str] = []
        self.complete = True
        self._read = read
        self._files = 0
        self.tree = self._file(path, read(path), ())

    def _file(self, path: str, data: bytes, above: tuple[str, ...]) -> GroupNode | None:
        root, faults = document(data, path)
        self.faults += faults
        if root is None:
            self.complete = False
            return None
        included = self._texts(root, "includes")
        dropped = self._texts(root, "drop")
        merged = GroupNode(root.source, root.start, root.start, flow=False)
        for node in included:
            below = self._included(path, node, (*above, path))
            merged = merge(merged, below) if below else merged
        for node in dropped:
            self._drop(merged, node)
        if path in self.sources:
            self.sources.remove(path)
        self.sources.append(path)
        return merge(merged, root) if included else root

    def _texts(self, root: GroupNode, name: str) -> list[TextNode]:
        """Take a field that holds texts out of a file's group."""
        found = root.fields.pop(name, None)
        if found is None or (isinstance(found.value, TextNode) and found.value.cleared):
            return []
        nodes = found.value.items if isinstance(found.value, ListNode) else [found.value]
        texts = [node for node in nodes if isinstance(node, TextNode)]
        for node in nodes:
            if not isinstance(node, TextNode):
                message = f"`{name}` is a list of texts, such as `{name}: [{_EXAMPLES[name]}]`."
                self._fault("wrong-value", message, node)
        return texts

    def _included(self, path: str, node: TextNode, above: tuple[str, ...]) -> GroupNode | None:
        self._files += 1
        target = posixpath.normpath(posixpath.join(posixpath.dirname(path), node.value))
        refused = self._refusal(node.value, target, above)
        if refused:
            self._fault("wrong-value", refused, node)
            self.complete = False
            return None
        try:
            data = self._read(target)
        except UnusableInput as error:
            remedy = error.remedy or "Paths start at the folder of the file they stand in"
            message = f"`{target}` {error.what.rstrip('.')}. {remedy[:1].upper()}{remedy[1:]}."
            self._fault("wrong-value", message, node)
            self.complete = False
            return None
        return self._file(target, data, above)

    def _refusal(self, typed: str, target: str, above: tuple[str, ...]) -> str | None:
        """Return why a file is not included, or None when it may be."""
        why = None
        if not typed.strip() or "\0" in typed:
            why = f"The path of a file is missing here, such as `{_EXAMPLES['includes']}`."
        elif "\\" in typed:
            why = f"Write paths with `/`: `{typed.replace(chr(92), '/')}`."
        elif typed.startswith("/") or _DRIVE.match(typed):
            why = f"Write the path from this file's folder on, such as `{_EXAMPLES['includes']}`."
        elif target == ".." or target.startswith("../"):
            why = "This path leads out of the workspace. Included files lie inside it."
        elif target in above:
            chain = " -> ".join((*above[above.index(target) :], target))
            why = f"These files include each other: {chain}. Take one `includes` out."
            if target == above[-1]:
                why = "This file includes itself. Take it out of `includes`."
        elif self._files > MOST_FILES:
            why = f"More than {MOST_FILES} files are included. Put them together in fewer files."
        return why

    def _drop(self, merged: GroupNode, node: TextNode) -> None:
        devices = merged.value("devices")
        known = devices.fields if isinstance(devices, GroupNode) else {}
        if node.value in known:
            del known[node.value]
        elif self.complete:
            close = nearest(node.value, known)
            hint = f"Did you mean `{close}`?" if close else "Take it out of `drop`."
            message = f"The included files have no device `{node.value}`. {hint}"
            self._fault("no-such-device", message, node, close)

    def _fault(self, kind: str, message: str, node: Node, expected: str | None = None) -> None:
        found = node.value if isinstance(node, TextNode) else None
        self.faults.append(Fault(kind, message, node.place, found, expected))


_EXAMPLES = {"includes": "../FOLDER/FILE.yaml", "drop": "DEVICE"}


def merge(base: GroupNode, over: GroupNode) -> GroupNode:
    """Return the fields of both; where both have one, groups merge and else ``over`` wins.

    A cleared value takes the field away. A group's key stays where it stood first.
    """
    fields = dict(base.fields)
    for name, added in over.fields.items():
        before = fields.get(name)
        if before is None:
            fields[name] = added
        elif isinstance(added.value, TextNode) and added.value.cleared:
            del fields[name]
        elif isinstance(before.value, GroupNode) and isinstance(added.value, GroupNode):
            fields[name] = before._replace(value=merge(before.value, added.value))
        else:
            fields[name] = added
    spoilt = base.spoilt | over.spoilt
    return GroupNode(over.source, over.start, over.end, over.flow, fields, spoilt)
