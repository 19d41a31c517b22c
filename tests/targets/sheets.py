"""Reads a setup sheet with a CommonMark parser, as a person sees it."""

from __future__ import annotations

from dataclasses import dataclass, field

from markdown_it import MarkdownIt
from markdown_it.token import Token


@dataclass
class Sheet:
    """Headings, tables and list items of a sheet.

    A table is its rows, the head first, below a heading; so are the items of lists.
    """

    headings: list[tuple[int, str]] = field(default_factory=list)
    tables: list[tuple[str, list[list[str]]]] = field(default_factory=list)
    items: list[tuple[str, str]] = field(default_factory=list)
    strangers: list[str] = field(default_factory=list)
    """Types of tokens that no sheet holds, so that hostile text must have made them."""


BLOCKS = {"heading", "paragraph", "bullet_list", "list_item", "table", "thead", "tbody"}
BLOCKS |= {"tr", "th", "td"}
SPANS = {"text", "code_inline", "text_special", "strong_open", "strong_close"}


def shown(token: Token) -> str:
    """Return what a person reads of inline content."""
    return "".join(child.content for child in token.children or () if child.type != "html_inline")


def read(markdown: str) -> Sheet:
    """Return the sheet's headings and tables."""
    sheet = Sheet()
    tokens = MarkdownIt("commonmark").enable("table").parse(markdown)
    for index, token in enumerate(tokens):
        if token.type == "heading_open":
            sheet.headings.append((int(token.tag[1]), shown(tokens[index + 1])))
        elif token.type == "table_open":
            sheet.tables.append((sheet.headings[-1][1], []))
        elif token.type == "list_item_open":
            sheet.items.append((sheet.headings[-1][1], shown(tokens[index + 2])))
        elif token.type == "tr_open":
            sheet.tables[-1][1].append([])
        elif token.type in ("th_open", "td_open"):
            sheet.tables[-1][1][-1].append(shown(tokens[index + 1]))
        elif token.type == "inline":
            sheet.strangers += [
                child.content or child.type
                for child in token.children or ()
                if child.type not in SPANS and child.content not in ("<code>", "</code>")
            ]
        if token.type != "inline" and token.type.rsplit("_", 1)[0] not in BLOCKS:
            sheet.strangers.append(token.type)
    return sheet
