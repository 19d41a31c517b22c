"""Literals of Kotlin as text, with the names that stand in them: ``"${side}Thruster"``."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from tree_sitter import Node

from namegen.languages.expressions import RUN_TIME
from namegen.languages.kotlin.literals import RAW, unescaped, value_of
from namegen.languages.kotlin.mending import is_plain
from namegen.languages.kotlin.scopes import tries
from namegen.languages.scopes import Scope
from namegen.languages.sources import Source, named_child, span_of
from namegen.model.facts import Expression, Join, Ref, Text, Unknown
from namegen.model.places import Span

_NAMED = r"\$(?P<name>[^\W\d]\w*|`[^`\r\n]+`)"
_PIECES = {RAW: re.compile(_NAMED), '"': re.compile(_NAMED + r"|\\.", re.DOTALL)}


def template(
    source: Source, scope: Scope, node: Node, read: Callable[[Node | None], Expression]
) -> Expression:
    """Return a literal as text, put together from its pieces; ``read`` reads those in brackets."""
    whole = source.data[node.start_byte : node.end_byte]
    opening = RAW if node.type == "multiline_string_literal" else '"'
    quote = opening.encode()
    span = Span(node.start_byte + len(quote), node.end_byte - len(quote))
    if not (whole.startswith(quote) and whole.endswith(quote)) or span.end < span.start:
        return Unknown("its quotes are not closed", span_of(node))
    if b"$" not in whole:
        return _text(source, span, opening)
    parts = tuple(_parts(source, scope, node, span, read))
    return parts[0] if len(parts) == 1 and isinstance(parts[0], Text) else Join(parts, span)


def _parts(
    source: Source, scope: Scope, node: Node, span: Span, read: Callable[[Node | None], Expression]
) -> Iterator[Expression]:
    """Yield the pieces of a template; the grammar overlooks ``$name`` between single quotes."""
    opening = RAW if node.type == "multiline_string_literal" else '"'
    done = span.start
    for inner in [one for one in node.named_children if one.type == "interpolation"]:
        yield from _pieces(source, scope, Span(done, inner.start_byte), opening)
        yield read(named_child(inner, 0))
        done = inner.end_byte
    if done < span.end or done == span.start:
        yield from _pieces(source, scope, Span(done, span.end), opening)


def _pieces(source: Source, scope: Scope, span: Span, opening: str) -> Iterator[Expression]:
    """Yield the text and the ``$names`` of a stretch without ``${...}``."""
    text = source.data[span.start : span.end].decode("utf-8", "replace")
    done = span.start
    for match in _PIECES[opening].finditer(text):
        word = match["name"]
        if word is None:
            continue
        word = word.strip("`") if is_plain(word.strip("`").encode()) else word
        start = span.start + len(text[: match.start()].encode())
        here = Span(start, start + len(match[0].encode()))
        if done < start:
            yield _text(source, Span(done, start), opening)
        yield Unknown(RUN_TIME, here) if word == "this" else Ref(tries(scope, (word,)), here)
        done = here.end
    if done < span.end:
        yield _text(source, Span(done, span.end), opening)


def _text(source: Source, span: Span, opening: str) -> Expression:
    """Return a literal, or a stretch of a template, that holds no name."""
    body = source.data[span.start : span.end].decode("utf-8", "replace")
    value = value_of(body, opening) if "$" not in body or opening == RAW else unescaped(body)
    if value is None:
        return Unknown("it holds an escape that is not followed", span)
    return Text(value, span, opening)


def character(source: Source, scope: Scope, node: Node, depth: int) -> Expression:
    """Return a character, which text can be put together with."""
    span = Span(node.start_byte + 1, node.end_byte - 1)
    value = unescaped(source.data[span.start : span.end].decode("utf-8", "replace"))
    if value is None or len(value) != 1:
        return Unknown("it holds an escape that is not followed", span_of(node))
    return Text(value, span, "'")
