"""A parsed file, and finding places in its tree by the words that stand in the text.

Walking a whole tree from Python takes longer than parsing the file. So places
are found by searching the bytes for a word, and only the nodes above that word
are looked at. A long file is parsed in pieces, where its language says how to cut
it: those that hold a word.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterable, Iterator, Sequence
from itertools import groupby
from typing import Protocol

from tree_sitter import Node, Point, Range, Tree

from namegen.errors import UnusableInput
from namegen.model.places import Span

Stack = list[Node]
"""The nodes from the root down to a word. One list is reused: copy what you keep."""

DEEPEST = 1_000
"""Nodes within one another that are looked at. Hand-written code has dozens; a text that
only tests the reader could have any number, and every look-up in it would cost as much."""

_LONE_RETURN = re.compile(rb"\r(?!\n)")
LETTERS = frozenset(
    b"0123456789ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_$" + bytes(range(0x80, 0x100))
)
"""Bytes that continue an identifier; those above ASCII are taken for letters."""
_SPACE = 0x20
_NO_ROW = Point(0, 0)


class TreeParser(Protocol):
    """What makes a tree of a text: tree-sitter's parser, or one that mends the text before.

    The offsets of the tree are those of the text that was given.
    """

    included_ranges: list[Range]
    """What of the text is to be parsed; all of it where there are none."""

    def parse(self, source: bytes, /) -> Tree:
        """Return the tree of a text."""


class Source:
    """The bytes of a file (UTF-8, no byte order mark) with their tree, or a tree for each piece.

    ``joints`` are the offsets where the file may be cut. The pieces with one of the
    ``places`` are parsed at once, others when they are asked about. An error
    in the first ones may come from the cut, so it has the file parsed as a whole.
    """

    __slots__ = ("_deep", "_parser", "_readable", "_roots", "_starts", "data")

    def __init__(
        self,
        data: bytes,
        parser: TreeParser,
        joints: Sequence[int] = (),
        places: Iterable[Span] = (),
    ) -> None:
        self.data = data
        # The grammars take a lone CR for a blank; as LF it ends the line, at the same offset.
        lone = b"\r" in data and _LONE_RETURN.search(data) is not None
        self._readable = _LONE_RETURN.sub(b"\n", data) if lone else data
        self._parser = parser
        self._deep: list[Span] = []
        self._starts = [0, *joints]
        self._roots: dict[int, Node] = {}
        if not joints or self._is_broken(places):
            self._starts = [0]
            self._roots = {0: self._parse(0)}

    @property
    def trees(self) -> Sequence[Node]:
        """The roots of the trees that were made until now."""
        return list(self._roots.values())

    @property
    def root(self) -> Node:
        """The root of the whole file's tree, of a file that was not cut."""
        return self._root(0)

    def _is_broken(self, places: Iterable[Span]) -> bool:
        """Whether a piece with one of the places has an error; parses these pieces."""
        pieces = {self.piece(place.start) for place in places}
        return any(self._root(piece).has_error for piece in pieces)

    def piece(self, offset: int) -> int:
        """Return the number of the piece that an offset lies in."""
        return bisect_right(self._starts, offset) - 1

    def _root(self, piece: int) -> Node:
        """Return the root of a piece's tree; its offsets are those of the file."""
        if piece not in self._roots:
            self._roots[piece] = self._parse(piece)
        return self._roots[piece]

    def _parse(self, piece: int) -> Node:
        if len(self._starts) == 1:
            return self._parser.parse(self._readable).root_node
        start = self._starts[piece]
        end = self._starts[piece + 1] if piece + 1 < len(self._starts) else len(self.data)
        # Nobody asks for the rows of nodes, and counting them for each piece is dear.
        self._parser.included_ranges = [Range(_NO_ROW, _NO_ROW, start, end)]
        try:
            return self._parser.parse(self._readable).root_node
        finally:
            self._parser.included_ranges = []

    def text(self, node: Node | None) -> str:
        """Return the text of a node; empty where there is none."""
        if node is None:
            return ""
        return self.data[node.start_byte : node.end_byte].decode("utf-8", "replace")

    def stacks(self, words: Sequence[str]) -> Iterator[Stack]:
        """Yield the nodes above each place where one of the words is a whole leaf, in order."""
        places = sorted(place for word in words for place in occurrences(self.data, word))
        return self.above(places)

    def above(self, places: Iterable[Span]) -> Iterator[Stack]:
        """Yield the nodes above each place that is a whole leaf; places come in order."""
        for piece, within in groupby(places, key=lambda place: self.piece(place.start)):
            yield from self._descend_in(self._root(piece), within)

    def _descend_in(self, root: Node, places: Iterable[Span]) -> Iterator[Stack]:
        cursor = root.walk()
        stack = [root]
        for place in places:
            offset = place.start
            while len(stack) > 1 and stack[-1].end_byte <= offset:
                stack.pop()
                cursor.goto_parent()
            while len(stack) < DEEPEST and cursor.goto_first_child_for_byte(offset) is not None:
                node = cursor.node
                if node is None or node.start_byte > offset:
                    cursor.goto_parent()
                    break
                stack.append(node)
            leaf = stack[-1]
            if leaf.start_byte == offset and leaf.end_byte == place.end:
                yield stack
            elif len(stack) == DEEPEST and leaf.child_count:
                self._deep.append(place)

    def too_deep(self) -> list[Span]:
        """Return the stretch, if any, in which words searched for lie deeper than is looked."""
        return [Span(min(self._deep).start, max(self._deep).end)] if self._deep else []


def span_of(node: Node) -> Span:
    """Return where a node stands."""
    return Span(node.start_byte, node.end_byte)


def whole_literal(root: Node, inside: Span, literal: str, *, joined: str = "") -> Span:
    """Return the span of a literal with its quotes, from the span of the text between them.

    ``literal`` and ``joined`` are the node types of a literal, and of several that are
    one text because they stand side by side.

    Raises:
        UnusableInput: the text is not one literal by itself.
    """
    node = root.descendant_for_byte_range(inside.start, inside.end)
    while node is not None and node.type != literal:
        node = node.parent
    if node is None or (node.parent is not None and node.parent.type == joined):
        raise UnusableInput("a name is not one literal by itself")
    return span_of(node)


def elements(node: Node | None) -> list[Node]:
    """Return a node's named children without comments; none where there is no node."""
    if node is None:
        return []
    return [child for child in node.named_children if not child.type.endswith("comment")]


def named_child(node: Node, index: int) -> Node | None:
    """Return a named child, or None where there is none, as in ``()`` and ``pass``.

    Asked for one that is not there, tree-sitter raises an error.
    """
    return node.named_child(index) if index < node.named_child_count else None


def field_of(node: Node | None, field: str) -> Node | None:
    """Return what a node has in a field; None where there is no node."""
    return node.child_by_field_name(field) if node is not None else None


def is_field(node: Node, field: str, child: Node) -> bool:
    """Whether a node is what another has in one of its fields."""
    return same(node.child_by_field_name(field), child)


def assigned_to(left: Node, above: Node) -> Node | None:
    """Return what ``above`` assigns to a node with ``=``, if it does just that."""
    operator = above.child_by_field_name("operator")
    plain = operator is not None and operator.type == "="
    return above.child_by_field_name("right") if plain and is_field(above, "left", left) else None


def place_in(listed: Node, child: Node) -> int:
    """Return which of the elements of a node another one is; -1 where it is none of them."""
    return next((at for at, one in enumerate(elements(listed)) if same(one, child)), -1)


def same(one: Node | None, other: Node | None) -> bool:
    """Whether two nodes are one."""
    return one is not None and other is not None and one.id == other.id


def occurrences(data: bytes, word: str) -> Iterator[Span]:
    """Yield where a word stands alone, not as a part of a longer one.

    A plain search and a look at the two neighbours: some thirty times faster
    than a regular expression that says the same.
    """
    wanted = word.encode("utf-8")
    if not wanted:  # a name that the parser only supposes, as after `import motor as`
        return
    start = data.find(wanted)
    while start >= 0:
        end = start + len(wanted)
        before = data[start - 1] if start else _SPACE
        after = data[end] if end < len(data) else _SPACE
        if before not in LETTERS and after not in LETTERS:
            yield Span(start, end)
        start = data.find(wanted, end)
