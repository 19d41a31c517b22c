"""A parsed file, and finding places in its tree by the words that stand in the text.

Walking a whole tree from Python takes longer than parsing the file. So places
are found by searching the bytes for a word, and only the nodes above that word
are looked at.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Sequence
from functools import cache

from tree_sitter import Node, Parser, Tree

from namegen.model.places import Span
from namegen.model.workspaces import LookupRule

Stack = list[Node]
"""The nodes from the root down to a word. One list is reused: copy what you keep."""

_LONE_RETURN = re.compile(rb"\r(?!\n)")
_LETTER = rb"[A-Za-z0-9_$\x80-\xff]"


class Source:
    """The bytes of a file (UTF-8, no byte order mark) with their tree."""

    __slots__ = ("data", "root", "tree")

    def __init__(self, data: bytes, parser: Parser) -> None:
        self.data = data
        # The grammars take a lone CR for a blank; as LF it ends the line, at the same offset.
        lone = b"\r" in data and _LONE_RETURN.search(data) is not None
        self.tree: Tree = parser.parse(_LONE_RETURN.sub(b"\n", data) if lone else data)
        self.root: Node = self.tree.root_node

    def text(self, node: Node) -> str:
        """Return the text of a node."""
        return self.data[node.start_byte : node.end_byte].decode("utf-8", "replace")

    def stacks(
        self, words: Sequence[str], start: int = 0, end: int | None = None
    ) -> Iterator[Stack]:
        """Yield the nodes above each occurrence of the words as an identifier."""
        if not words:
            return
        found = _pattern(tuple(words)).finditer(self.data, start, end or len(self.data))
        yield from self._descend(found)

    def keywords(self, word: str) -> Iterator[Stack]:
        """Yield the nodes above each occurrence of a keyword of the language."""
        return self._descend(_pattern((word,)).finditer(self.data))

    def _descend(self, matches: Iterable[re.Match[bytes]]) -> Iterator[Stack]:
        """Yield the nodes above each match that is a whole leaf; matches come in order."""
        cursor = self.root.walk()
        stack = [self.root]
        for match in matches:
            offset = match.start()
            while len(stack) > 1 and stack[-1].end_byte <= offset:
                stack.pop()
                cursor.goto_parent()
            while cursor.goto_first_child_for_byte(offset) is not None:
                node = cursor.node
                if node is None or node.start_byte > offset:
                    cursor.goto_parent()
                    break
                stack.append(node)
            leaf = stack[-1]
            if leaf.start_byte == offset and leaf.end_byte == match.end():
                yield stack

    def unsound(self, simple: frozenset[str], whole: frozenset[str]) -> tuple[Span, ...]:
        """Return what could not be parsed, widened to the simple statement that it lies in.

        ``simple`` are the node types of statements that hold no others, ``whole``
        those of the statements and declarations that do: such a node without an
        error is sound even if the parser lost what is around it.
        """
        spans: list[Span] = []
        pending: list[tuple[Node, Span | None]] = [(self.root, None)]
        while pending:
            node, statement = pending.pop()
            if not node.has_error:
                continue
            if node.type in simple:
                statement = span_of(node)
            elif node.type in whole:
                statement = None
            if node.is_missing or (node.is_error and statement is not None):
                spans.append(statement or span_of(node))
                continue
            for child in node.children:
                if node.is_error and child.type not in simple and child.type not in whole:
                    spans.append(span_of(child))
                else:
                    pending.append((child, statement))
            if node.is_error and not node.child_count:
                spans.append(span_of(node))
        return tuple(_merged(sorted(spans)))


def _merged(spans: Iterable[Span]) -> Iterator[Span]:
    """Yield sorted spans with those that touch or overlap made one."""
    last: Span | None = None
    for span in spans:
        if last is not None and span.start <= last.end:
            last = Span(last.start, max(last.end, span.end))
            continue
        if last is not None:
            yield last
        last = span
    if last is not None:
        yield last


def span_of(node: Node) -> Span:
    """Return where a node stands."""
    return Span(node.start_byte, node.end_byte)


def same(one: Node | None, other: Node | None) -> bool:
    """Whether two nodes are one."""
    return one is not None and other is not None and one.id == other.id


@cache
def _pattern(words: tuple[str, ...]) -> re.Pattern[bytes]:
    either = b"|".join(re.escape(word.encode("utf-8")) for word in words)
    return re.compile(rb"(?<!" + _LETTER + rb")(?:" + either + rb")(?!" + _LETTER + rb")")


def prefilter(rules: Sequence[LookupRule]) -> Callable[[bytes], bool]:
    """Return a test on raw bytes: False when no rule's identifiers all stand in them.

    Non-ASCII identifiers look different in other encodings, so they never rule a file out.
    """
    needs = [[rule.called, *([rule.on] if rule.on else [])] for rule in rules]
    if not all(word.isascii() for words in needs for word in words):
        return lambda _data: True
    wanted = sorted({tuple(word.encode("ascii") for word in words) for words in needs})
    patterns = {word: _pattern((word.decode("ascii"),)) for words in wanted for word in words}

    def holds(data: bytes) -> bool:
        return any(
            all(word in data for word in words)
            and all(patterns[word].search(data) is not None for word in words)
            for words in wanted
        )

    return holds


def rules_for(language: str, rules: Sequence[LookupRule]) -> tuple[LookupRule, ...]:
    """Return the rules that hold for a language."""
    return tuple(rule for rule in rules if not rule.languages or language in rule.languages)
