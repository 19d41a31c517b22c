"""YAML text -> tree with places, by the events of PyYAML's C loader."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, NoReturn

import yaml
from msgspec import Struct, field

from namegen.loading import refusals
from namegen.loading.nodes import FieldNode, GroupNode, ListNode, Node, TextNode
from namegen.loading.refusals import DEEPEST, MOST_VALUES
from namegen.loading.sources import Source, decoded
from namegen.loading.syntax import explained, unclosed
from namegen.loading.traps import colon_without_blank, comma_in_text, cut_by_comment
from namegen.model.findings import Fault


class Parsed(Struct):
    """The tree of a text, or None when there is none, and what was wrong with the YAML."""

    root: Node | None
    faults: list[Fault] = field(default_factory=list)


class _TooMuch(Exception):
    """Reading on would serve nobody; the fault is already noted."""


def parsed(data: bytes, path: str) -> Parsed:
    """Return the tree of a YAML file; never raises for any content."""
    source = decoded(data, path)
    if isinstance(source, Fault):
        return Parsed(None, [source])
    builder = _Builder(source)
    try:
        builder.take_all(yaml.CSafeLoader(source.text))
    except yaml.YAMLError as error:
        fault = explained(error, source, builder.last)
        if not _follows(error, fault, builder.faults):
            builder.faults.append(fault)
        return Parsed(None, builder.faults)
    except _TooMuch:
        pass
    return Parsed(builder.whole, builder.faults)


def _follows(error: yaml.YAMLError, fault: Fault, told: list[Fault]) -> bool:
    """Whether an error of the YAML reader only follows from a fault that is told already.

    A text cut inside brackets hides the closing one; the words after an alias or
    a tag that was meant as text stand where nothing belongs.
    """
    if unclosed(error) and any(one.kind == "cut-by-comment" for one in told):
        return True
    return any(one.kind == "bad-yaml" and one.place.line == fault.place.line for one in told)


def _span(event: yaml.Event) -> tuple[int, int]:
    """Return where an event starts and ends, in code points."""
    assert event.start_mark is not None
    assert event.end_mark is not None
    return event.start_mark.index, event.end_mark.index


class _Builder:
    """Builds the tree; one step for each event."""

    def __init__(self, source: Source) -> None:
        self.root: Node | None = None
        self.faults: list[Fault] = []
        self.last: TextNode | None = None
        """The single value that was read last."""
        self._source = source
        self._open: list[GroupNode | ListNode] = []
        self._keys: list[TextNode | None] = []
        """For each open group the key that waits for its value."""
        self._values = 0
        self._documents = 0
        self._comments = "#" in source.text
        self._steps: dict[type, Callable[[Any], None]] = {
            yaml.ScalarEvent: self._scalar,
            yaml.MappingStartEvent: self._start,
            yaml.SequenceStartEvent: self._start,
            yaml.MappingEndEvent: self._end,
            yaml.SequenceEndEvent: self._end,
            yaml.AliasEvent: self._alias,
            yaml.DocumentStartEvent: self._document,
        }

    @property
    def whole(self) -> Node | None:
        """The tree, or None when reading stopped in the middle of it."""
        return None if self._open else self.root

    def take_all(self, loader: yaml.CSafeLoader) -> None:
        """Take every event. Asking the loader itself costs half of what `yaml.parse` does."""
        steps, next_event = self._steps, loader.get_event
        try:
            while True:
                event = next_event()
                kind = type(event)
                if kind in steps:
                    steps[kind](event)
                elif kind is yaml.StreamEndEvent:
                    return
        finally:
            loader.dispose()

    def _stop(self, fault: Fault) -> NoReturn:
        self.faults.append(fault)
        raise _TooMuch

    def _document(self, event: yaml.Event) -> None:
        self._documents += 1
        if self._documents == 2:
            self._stop(refusals.second_document(self._source, _span(event)[0]))

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        start, end = _span(event)
        if event.anchor or event.tag:
            self._decorated(event)
        self.last = TextNode(self._source, start, end, event.value, event.style or "")
        self._place(self.last)

    def _alias(self, event: yaml.AliasEvent) -> None:
        start, end = _span(event)
        self.faults.append(refusals.alias(self._source, start, end, event.anchor or ""))
        self._place(TextNode(self._source, start, end, "", spoilt=frozenset({""})))

    def _decorated(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> None:
        """Note the fault of an anchor or tag."""
        sign = "&" if event.anchor else "!"
        self.faults.append(refusals.anchor_or_tag(self._source, *_span(event), sign))

    def _start(self, event: yaml.CollectionStartEvent) -> None:
        if event.anchor or event.tag:
            self._decorated(event)
        start, end = _span(event)
        made = GroupNode if type(event) is yaml.MappingStartEvent else ListNode
        if len(self._open) >= DEEPEST:
            self._stop(refusals.too_deep(self._source, start))
        if self._open and isinstance(self._open[-1], GroupNode) and self._keys[-1] is None:
            self._stop(refusals.brackets_for_a_name(self._source, start))
        node = made(self._source, start, end, bool(event.flow_style))
        self._place(node)
        self._open.append(node)
        self._keys.append(None)

    def _end(self, event: yaml.CollectionEndEvent) -> None:
        node = self._open.pop()
        self._keys.pop()
        if node.flow:
            node.end = _span(event)[1]
        elif isinstance(node, ListNode):
            node.end = node.items[-1].end
        elif node.fields:
            node.end = next(reversed(node.fields.values())).value.end

    def _place(self, node: Node) -> None:
        """Put a finished text, or a list or group that starts, where it belongs."""
        self._values += 1
        if self._values > MOST_VALUES:
            self._stop(refusals.too_many(node))
        above = self._open[-1] if self._open else None
        if above is None:
            self.root = node
        elif isinstance(above, ListNode):
            above.items.append(node)
            self._look_for_cut(node, above)
        elif self._keys[-1] is None:
            assert isinstance(node, TextNode)
            self._keys[-1] = node
        else:
            key, self._keys[-1] = self._keys[-1], None
            self._field(above, FieldNode(key, node))
            self._look_for_cut(node, above)

    def _look_for_cut(self, node: Node, above: GroupNode | ListNode) -> None:
        """Note when a comment cut the rest of a plain text off."""
        if self._comments and isinstance(node, TextNode) and not node.style:
            cut = cut_by_comment(node, above.flow)
            if cut is not None:
                self.faults.append(cut)

    def _field(self, group: GroupNode, typed: FieldNode) -> None:
        """Put a field into its group, unless it is no field or a second one of its name."""
        added = self._as_meant(group, typed) if group.flow else typed
        if added is None:
            return
        key = added.key
        if key.value == "<<" and not key.style:
            self.faults.append(refusals.merge_key(added))
            group.spoilt |= {""}
            return
        if added.value.spoilt:
            group.spoilt |= {key.value}
        first = group.fields.setdefault(key.value, added)
        if first is not added:
            self.faults.append(refusals.duplicate(added, first))

    def _as_meant(self, group: GroupNode, typed: FieldNode) -> FieldNode | None:
        """Return a field inside braces as it was meant, or None when it is part of a text."""
        meant = colon_without_blank(typed)
        if meant is not None:
            fault, typed = meant
            self.faults.append(fault)
            return typed
        comma = comma_in_text(group, typed)
        if comma is None:
            return typed
        self.faults.append(comma)
        return None
