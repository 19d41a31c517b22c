"""Edits of a YAML text: exact spans only, each other byte stays.

A replaced text keeps its quotes; a plain one gets quotes when the new text
needs them. Read the edited text again before writing it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from namegen.loading.document import document
from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode
from namegen.model.places import Edit, Place

_PLAIN = re.compile(r"[^\W_](?:\w|[ ./-](?=\w))*")
_READ_AS_NOTHING = frozenset({"null", "Null", "NULL"})
_ESCAPES = {'"': '\\"', "\\": "\\\\", "\n": "\\n", "\t": "\\t", "\r": "\\r"}


def rename_device(data: bytes, path: str, old: str, new: str) -> tuple[Edit, ...]:
    """Return the edits that give a device another name wherever this one file names it.

    That is among devices, setups, accepted findings and ``drop``. The file may
    be a manifest or one that manifests include. A file that does not name the
    device, or that cannot be read as YAML, gives no edits.
    """
    root, _ = document(data, path)
    if root is None:
        return ()
    named = [node for node in _device_names(root) if node.value == old]
    return tuple(_replaced(node, new) for node in named)


def retire_name(data: bytes, path: str, device: str, former: str) -> tuple[Edit, ...]:
    """Return the edits that put a name first among a device's former names.

    The device's own name, which it had before, is no former name any more. No
    edits when this file does not describe the device.
    """
    root, _ = document(data, path)
    devices = root.value("devices") if root else None
    entry = devices.fields.get(device) if isinstance(devices, GroupNode) else None
    if entry is None:
        return ()
    body = entry.value
    if isinstance(body, GroupNode) and body.fields:
        return _first_of(body.value("formerly"), body, former, device)
    if isinstance(body, GroupNode):
        return (_insertion(body, body.start + 1, f"formerly: [{spelled(former)}]"),)
    if isinstance(body, TextNode) and body.cleared:
        return (Edit(body.place, f"{_gap(body)}{{formerly: [{spelled(former)}]}}"),)
    return ()


def former_places(data: bytes, path: str) -> tuple[Place, ...]:
    """Return where the former names of devices stand in a manifest."""
    root, _ = document(data, path)
    devices = root.value("devices") if root else None
    entries = devices.fields.values() if isinstance(devices, GroupNode) else ()
    bodies = [entry.value for entry in entries if isinstance(entry.value, GroupNode)]
    return tuple(item.place for body in bodies for item in _items(body.value("formerly")))


def replace_value(data: bytes, path: str, place: Place, text: str) -> Edit:
    """Return the edit that makes the single value or key at ``place`` read as ``text``.

    Raises:
        LookupError: no single value stands at exactly this place.

    """
    root, _ = document(data, path)
    for node in _texts(root) if root else ():
        if node.place == place:
            return _replaced(node, text)
    raise LookupError(f"no single value stands at {place}")


def _device_names(root: GroupNode) -> Iterator[TextNode]:
    """Yield each text of a file that names a device."""
    yield from _keys(root.value("devices"))
    yield from _items(root.value("drop"))
    setups = root.value("setups")
    for entry in setups.fields.values() if isinstance(setups, GroupNode) else ():
        if isinstance(entry.value, GroupNode):
            yield from _items(entry.value.value("only"))
            yield from _items(entry.value.value("without"))
            yield from _keys(entry.value.value("change"))
    accepted = root.value("accept")
    for item in accepted.items if isinstance(accepted, ListNode) else ():
        if isinstance(item, GroupNode):
            yield from _items(item.value("device"))


def _keys(node: Node | None) -> list[TextNode]:
    return [entry.key for entry in node.fields.values()] if isinstance(node, GroupNode) else []


def _items(node: Node | None) -> list[TextNode]:
    """Return the texts of a list, or the one text that stands in its place."""
    items = node.items if isinstance(node, ListNode) else [node]
    return [item for item in items if isinstance(item, TextNode)]


def _texts(node: Node) -> Iterator[TextNode]:
    """Yield every single value and key of a tree."""
    if isinstance(node, TextNode):
        yield node
    elif isinstance(node, ListNode):
        for item in node.items:
            yield from _texts(item)
    else:
        for key, value in node.fields.values():
            yield key
            yield from _texts(value)


def _replaced(node: TextNode, text: str) -> Edit:
    if node.style in {"|", ">"}:
        written = node.source.text[node.start : node.end]
        ends = written[len(written.rstrip("\r\n")) :]
        return Edit(node.place, spelled(text, '"') + ends)
    return Edit(node.place, _gap(node) + spelled(text, node.style))


def _gap(node: TextNode) -> str:
    """Return the blank that a value needs where nothing stood right after the colon."""
    before = node.source.text[node.start - 1 : node.start]
    return " " if node.start == node.end and before in {":", "-"} else ""


def spelled(text: str, style: str = "") -> str:
    """Return a text as YAML, in quotes of the given style where it can be."""
    if not style and _PLAIN.fullmatch(text) and text not in _READ_AS_NOTHING:
        return text
    if style == "'" and text.isprintable():
        return "'" + text.replace("'", "''") + "'"
    return '"' + "".join(_escaped(sign) for sign in text) + '"'


def _escaped(sign: str) -> str:
    if sign in _ESCAPES:
        return _ESCAPES[sign]
    if sign.isprintable():
        return sign
    code = ord(sign)
    return (
        f"\\x{code:02X}"
        if code < 0x100
        else f"\\u{code:04X}"
        if code < 0x10000
        else f"\\U{code:08X}"
    )


def _first_of(formerly: Node | None, body: GroupNode, former: str, own: str) -> tuple[Edit, ...]:
    """Return the edits that put a name first in ``formerly``; ``own``, if it is there, goes."""
    if formerly is None:
        return (_added_field(body, former),)
    items = _items(formerly)
    names = [item.value for item in items]
    if own not in names:
        return (_added_item(formerly, former),)
    wanted = [former, *(name for name in names if name != own)]
    moved = zip(items, wanted, strict=False)
    return tuple(_replaced(item, name) for item, name in moved if item.value != name)


def _added_item(formerly: Node, former: str) -> Edit:
    """Return the edit that puts a name before those in ``formerly``."""
    name = spelled(former)
    if isinstance(formerly, TextNode):
        if formerly.cleared:
            return Edit(formerly.place, f"{_gap(formerly)}[{name}]")
        return Edit(formerly.place, f"[{name}, {spelled(formerly.value)}]")
    if not isinstance(formerly, ListNode) or not formerly.items:
        return _insertion(formerly, formerly.start + 1, name)
    first = formerly.items[0]
    if formerly.flow:
        return _insertion(formerly, first.start, f"{name}, ")
    return _insertion(formerly, first.start, f"{name}{_line_start(formerly)}- ")


def _added_field(body: GroupNode, former: str) -> Edit:
    """Return the edit that gives a device the field ``formerly``, last where that is simple."""
    field = f"formerly: [{spelled(former)}]"
    entries = list(body.fields.values())
    first, last = entries[0].key, entries[-1].value
    if body.flow:
        return _insertion(body, first.start, f"{field}, ")
    if isinstance(last, TextNode) and last.style not in {"|", ">"}:
        end = last.end + len(last.source.rest_of_line(last.end))
        return _insertion(body, end, _line_start(body) + field)
    return _insertion(body, first.start, field + _line_start(body))


def _line_start(node: Node) -> str:
    """Return a line end as the file writes it, and the blanks up to the column of a node."""
    end = "\r\n" if "\r\n" in node.source.text else "\n"
    return end + " " * (node.place.column - 1)


def _insertion(node: Node, index: int, text: str) -> Edit:
    return Edit(node.source.place(index, index), text)
