"""Each escape, undone by the reader of its format."""

from __future__ import annotations

import ast
import csv
import io
import json
import re

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st
from markdown_it import MarkdownIt

from namegen.targets.escapes import cpp, java, kotlin, markdown, plain, python
from namegen.targets.escapes import csv as csv_escapes
from namegen.targets.escapes import json as json_escapes
from namegen.targets.escapes import yaml as yaml_escapes
from targets.strategies import hostile

ANY = hostile()


@given(ANY)
def test_plain_line_has_nothing_invisible_in_it(text):
    shown = plain.line(text)
    assert shown.isprintable()
    assert shown == " ".join(shown.split())


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        (" two\r\n lines ", "two lines"),
        ("a\u2028b\u00a0c", "a b c"),
        ("left\u202eright", "left[U+202E]right"),
        ("\x1b[31m", "[U+001B][31m"),
        ("Grüße \U0001f6a4", "Grüße \U0001f6a4"),
    ],
)
def test_plain_line_shows(text, shown):
    assert plain.line(text) == shown


@given(ANY)
def test_python_string(text):
    literal = python.string(text)
    assert literal.isascii()
    assert ast.literal_eval(literal) == text


@given(ANY, ANY)
def test_python_doc(first, second):
    source = f'"""{python.doc(first)} {python.doc(second)}."""'
    assert ast.literal_eval(source) == f"{plain.line(first)} {plain.line(second)}."


@given(ANY)
def test_java_doc_ends_no_comment_and_starts_no_tag(text):
    doc = java.doc(text)
    assert doc.isascii()
    assert not re.search(r"\*/|\\|@|<|>|\n", f"{doc}{doc}")
    entities = {"&amp;": "&", "&lt;": "<", "&gt;": ">"}
    read = re.sub(r"&(?:#(\d+)|\w+);", lambda m: chr(int(m[1])) if m[1] else entities[m[0]], doc)
    assert read == plain.line(text)


@given(ANY)
def test_kotlin_doc_opens_and_ends_no_comment(text):
    doc = kotlin.doc(text)
    assert not re.search(r"\*/|/\*|@|\[|\]", f"*{doc}{doc}/" if doc else "")


@given(ANY)
def test_cpp_comment_joins_no_lines(text):
    comment = cpp.comment(text)
    assert comment.isascii() and comment.isprintable()
    assert "\\" not in comment and "??" not in comment


@given(ANY)
def test_json_value(text):
    written = json_escapes.value(text)
    assert json.loads(written) == text
    assert written.isprintable()


@pytest.mark.parametrize(
    ("value", "written"), [(True, "true"), (None, "null"), (58, "58"), (("a", "b"), '["a", "b"]')]
)
def test_json_value_of_other_things(value, written):
    assert json_escapes.value(value) == written


@given(st.lists(ANY, min_size=2, max_size=4))
def test_csv_cell(texts):
    line = ",".join(map(csv_escapes.cell, texts)) + "\n"
    (row,) = csv.reader(io.StringIO(line, newline=""), strict=True)
    assert [cell.removeprefix("'") for cell in row] == texts
    assert not any(cell.startswith(tuple("=+-@\t\r\n")) for cell in row)


@given(ANY)
def test_yaml_string(text):
    written = yaml_escapes.string(text)
    assert written.isprintable()
    assert yaml.safe_load(f"key: {written}\n") == {"key": text}


@given(ANY, ANY)
def test_yaml_comment(text, value):
    lines = f"key: {yaml_escapes.string(value)} # {yaml_escapes.comment(text)}\n"
    assert yaml.safe_load(lines) == {"key": value}


@given(ANY, ANY)
def test_markdown_text_and_code(text, code):
    source = f"A {markdown.text(text)} b {markdown.code(code)} c"
    tokens = MarkdownIt("commonmark").enable("table").parse(source)
    assert [token.type for token in tokens] == ["paragraph_open", "inline", "paragraph_close"]
    children = tokens[1].children or []
    kinds = {child.type for child in children} - {"text", "text_special", "code_inline"}
    assert kinds <= {"html_inline"}
    shown = "".join(child.content for child in children if child.type != "html_inline")
    assert " ".join(shown.split()) == " ".join(
        f"A {plain.line(text)} b {plain.line(code)} c".split()
    )


@given(ANY)
def test_cpp_and_kotlin_strings_are_ascii_on_one_line(text):
    for literal in (cpp.string(text), kotlin.string(text), java.string(text)):
        assert literal.isascii() and literal.isprintable()
        assert literal[0] == literal[-1] == '"'
    assert "??" not in cpp.string(text)
    assert not re.search(r"(?<!\\)(\\\\)*\$", kotlin.string(text))
