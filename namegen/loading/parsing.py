"""YAML text -> tree with places, by the events of PyYAML's C loader."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Any

import yaml

from namegen.loading.nodes import FieldNode, GroupNode, ListNode, Node, TextNode
from namegen.loading.sources import Source, decoded
from namegen.loading.syntax import explained, unclosed
from namegen.loading.traps import colon_without_blank, comma_in_text, cut_by_comment
from namegen.model.findings import Fault
from namegen.model.places import Related

DEEPEST = 32
"""Most levels of groups and lists inside each other."""

MOST_VALUES = 10_000
"""Most values in one file; keeps hostile input from taking seconds."""


@dataclass(slots=True)
class Parsed:
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

    def _fault(self, kind: str, message: str, start: int, end: int) -> None:
        self.faults.append(Fault(kind, message, self._source.place(start, end)))

    def _document(self, event: yaml.Event) -> None:
        self._documents += 1
        if self._documents == 2:
            at = _span(event)[0]
            message = (
                "A second YAML document starts here (`---`). One file holds one document: "
                "delete this line, or move what follows to a file of its own."
            )
            self._fault("bad-yaml", message, at, at + 3)
            raise _TooMuch

    def _scalar(self, event: yaml.ScalarEvent) -> None:
        start, end = _span(event)
        if event.anchor or event.tag:
            start = self._decorated(event)
        self.last = TextNode(self._source, start, end, event.value, event.style or "")
        self._place(self.last)

    def _alias(self, event: yaml.AliasEvent) -> None:
        start, end = _span(event)
        message = (
            f"`*{event.anchor}` repeats a value from elsewhere, which namegen does not read. "
            "Write the value out; if it is a text that starts with `*`, put quotes around it."
        )
        self._fault("bad-yaml", message, start, end)
        self._place(TextNode(self._source, start, end, "", spoilt=frozenset({""})))

    def _decorated(self, event: yaml.ScalarEvent | yaml.CollectionStartEvent) -> int:
        """Note the fault of an anchor or tag; return where the value itself starts."""
        start, end = _span(event)
        word = self._source.text[start:end].split(None, 1)
        sign = "&" if event.anchor else "!"
        shown = word[0] if word else sign
        use = "marks a value for repetition" if event.anchor else "sets the type of a value"
        message = (
            f"`{shown}` {use}, which namegen does not read. Delete it; if it is part of a text, "
            "put quotes around the text."
        )
        self._fault("bad-yaml", message, start, start + len(shown))
        return start

    def _start(self, event: yaml.CollectionStartEvent) -> None:
        if event.anchor or event.tag:
            self._decorated(event)
        start, end = _span(event)
        made = GroupNode if type(event) is yaml.MappingStartEvent else ListNode
        node = made(self._source, start, end, bool(event.flow_style))
        if len(self._open) >= DEEPEST:
            message = (
                f"More than {DEEPEST} levels inside each other; namegen's files need five. Look "
                "for brackets that are opened and never closed."
            )
            self._fault("bad-yaml", message, start, start + 1)
            raise _TooMuch
        if self._open and isinstance(self._open[-1], GroupNode) and self._keys[-1] is None:
            message = (
                "Brackets stand where the name of a field belongs. Leave them out; "
                "if they are part of a text, put quotes around the text."
            )
            self._fault("bad-yaml", message, start, start + 1)
            raise _TooMuch
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
            message = (
                f"More than {MOST_VALUES:,} values in one file. Split it: shared parts can stand "
                "in files of their own and be named in `includes`."
            )
            self._fault("bad-yaml", message, node.start, node.start)
            raise _TooMuch
        if not self._open:
            self.root = node
            return
        above = self._open[-1]
        if isinstance(above, ListNode):
            above.items.append(node)
        elif self._keys[-1] is None:
            assert isinstance(node, TextNode)
            self._keys[-1] = node
            return
        else:
            key = self._keys[-1]
            self._keys[-1] = None
            self._field(above, FieldNode(key, node))
        if self._comments and isinstance(node, TextNode) and not node.style:
            cut = cut_by_comment(node, above.flow)
            if cut is not None:
                self.faults.append(cut)

    def _field(self, group: GroupNode, added: FieldNode) -> None:
        key = added.key
        if group.flow:
            comma = comma_in_text(group, added)
            meant = colon_without_blank(added)
            if meant is not None:
                fault, added = meant
                key = added.key
                self.faults.append(fault)
            elif comma is not None:
                self.faults.append(comma)
                return
        if key.value == "<<" and not key.style:
            message = (
                "`<<` takes over the fields of another group, which namegen does not read. "
                "Write the fields out, or put them into a file that `includes` names."
            )
            self._fault("bad-yaml", message, key.start, key.end)
            group.spoilt |= {""}
            return
        if added.value.spoilt:
            group.spoilt |= {key.value}
        first = group.fields.get(key.value)
        if first is None:
            group.fields[key.value] = added
            return
        self.faults.append(
            Fault(
                "duplicate-key",
                f"`{key.value}` stands here for the second time in one group. "
                "Rename one of the two or delete it.",
                key.place,
                found=key.value,
                related=(Related(first.key.place, "first written here"),),
            )
        )
