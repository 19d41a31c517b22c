from __future__ import annotations

import codecs

import pytest
import yaml
from hypothesis import given
from hypothesis import strategies as st

from namegen.loading.nodes import GroupNode, ListNode, Node, TextNode
from namegen.loading.parsing import parsed
from namegen.loading.refusals import DEEPEST

TEXTS = st.text(st.characters(codec="utf-8", exclude_categories=["Cs", "Cc"]), max_size=12)
TREES = st.recursive(
    TEXTS,
    lambda below: st.lists(below, max_size=4) | st.dictionaries(TEXTS, below, max_size=4),
    max_leaves=12,
)


def as_text(node: Node | None) -> object:
    """Return the tree with each single value as text."""
    if isinstance(node, ListNode):
        return [as_text(item) for item in node.items]
    if isinstance(node, GroupNode):
        return {name: as_text(field.value) for name, field in node.fields.items()}
    return None if node is None else node.value


def single_values(node: Node | None) -> list[TextNode]:
    if isinstance(node, ListNode):
        return [one for item in node.items for one in single_values(item)]
    if isinstance(node, GroupNode):
        return [one for key, value in node.fields.values() for one in [key, *single_values(value)]]
    return [node] if node else []


@given(TREES, st.booleans(), st.sampled_from([None, "'", '"', "|"]))
def test_reads_what_pyyaml_writes_and_reads(tree, flow, style):
    # Checked against PyYAML's own loader without type guessing (BaseLoader).
    text = yaml.dump(tree, default_flow_style=flow, default_style=style, allow_unicode=True)
    expected = yaml.load(text, Loader=yaml.BaseLoader)
    result = parsed(text.encode(), "a.yaml")
    faults = {fault.kind for fault in result.faults}
    if "!" in text and "bad-yaml" in faults:
        return  # PyYAML tags some block texts; tags are refused
    assert faults <= {"cut-by-comment"}
    assert as_text(result.root) == expected


@given(TREES, st.sampled_from(["\n", "\r\n", "\r"]))
def test_each_place_read_alone_gives_the_same_value(tree, line_end):
    text = yaml.dump(tree, default_style='"', allow_unicode=True, width=10**6, line_break=line_end)
    lines = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    for node in single_values(parsed(text.encode(), "a.yaml").root):
        place = node.place
        assert place.line == place.end_line
        piece = lines[place.line - 1][place.column - 1 : place.end_column - 1]
        assert yaml.load(piece, Loader=yaml.BaseLoader) == node.value


def test_a_byte_order_mark_moves_no_place():
    text = "robot: heron\n"
    plain = parsed(text.encode(), "a").root
    marked = parsed(codecs.BOM_UTF8 + text.encode(), "a").root
    assert [one.place for one in single_values(plain)] == [
        one.place for one in single_values(marked)
    ]


def test_columns_count_code_points():
    root = parsed("{a: 🚣🚣, b: c}".encode(), "a").root
    assert [one.place.column for one in single_values(root)] == [2, 5, 9, 12]


@pytest.mark.parametrize(
    "typed", ["no", "on", "12:30", "010", "1.10", "1_000", "2026-01-01", "1e3"]
)
def test_texts_stay_as_typed(device, typed):
    loaded = device(f"kind: motor\nport: bridge motor 1\nnote: {typed}")
    assert loaded.faults == ()
    assert loaded.value.devices["bow"].note == typed


@pytest.mark.parametrize(
    ("text", "line", "column", "words"),
    [
        ("a: &x b\n", 1, 4, "`&x` marks a value for repetition"),
        ("a: *x\n", 1, 4, "`*x` repeats a value"),
        ("a: !!int 3\n", 1, 4, "`!!int` sets the type"),
        ("a: !x {b: c}\n", 1, 4, "`!x` sets the type"),
        ("<<: {b: c}\n", 1, 1, "`<<` takes over"),
        ("a: b\n---\nc: d\n", 2, 1, "second YAML document"),
        ("? {a: b}\n: c\n", 1, 3, "where the name of a field belongs"),
        ("a:\n\tb: c\n", 2, 1, "indented with a tab"),
        ("a: 'b\n", 1, 4, "`a: 'b'`"),
        ('a: "b\n\nc: d\n', 1, 4, '`a: "b"`'),
        ("a: \"b'\n", 1, 4, '`a: "b"`'),
        ('a: "b\nc: d\ne: "f"\n', 1, 4, "closed only in line 3"),
        ('{a: "b,\n c: "d"}\n', 1, 5, "closed only in line 2"),
        ("a: [b, c\n", 1, 4, "list in [ ] that starts here is not closed"),
        ("a: [b\nc: d\n", 1, 4, "missing before line 2"),
        ("a: {b: c\n", 1, 4, "missing up to the end of the file"),
        ("a: {b: c d: e}\n", 1, 11, "missing before this place"),
        ("a: {b: c}}\n", 1, 10, "One `}` too many"),
        ("a: {robot}/devices.py\n", 1, 11, "starts with `{` needs quotes"),
        ("a: b: c\n", 1, 5, '`a: "b: c"`'),
        ("a:b\nc: d\n", 1, 1, "write `a: b`"),
        ("a: b\nc:d\n", 2, 1, "write `c: d`"),
        ("a = b\nc: d\n", 1, 1, "write `a: b`"),
        ("a b\n\n# c: d\ne: f\n", 1, 1, "A line without a colon"),
        ("a: b\nc\n", 2, 1, "A line without a colon"),
        ("a: b\nmotor #1: c\n", 2, 1, "quotes around the name before the colon"),
        ('a: "b" c\n', 1, 8, "`a: '\"b\" c'`"),
        ("a: 'b's c'\n", 1, 7, '`a: "b\'s c"`'),
        ("a: b\n c: d\n", 2, 2, "indented further than the line above"),
        ("a:\n  b: c\n d: e\n", 3, 2, "not in one column"),
        ("  a: b\n c: d\n", 2, 2, "not in one column"),
        ("a: @b\n", 1, 4, '`a: "@b"`'),
        ("a: *.b\n", 1, 4, '`a: "*.b"`'),
        ("a: [*.b]\n", 1, 5, 'put quotes around the whole text: `"*.b"`.'),
        ("a: %b\n", 1, 4, "cannot start with `%`"),
        ('a: "C:\\dir"\n', 1, 7, "single quotes"),
        ("a: - b\n", 1, 4, "Start the list on the next line"),
        ("a: [b, }\n", 1, 8, "not closed by its own sort"),
        ("a: {\n", 2, 1, "not closed by its own sort"),
        ("- a\nb: c\n", 2, 1, "among list items"),
        ("a: b\n- c\n", 2, 1, "among fields"),
        ("a: b\x07\n", 1, 5, "code 0x07"),
        ("a: b\0c\n", 1, 5, "code 0x00"),
        ("%YAML 1.3\n---\na: b\n", 1, 1, "Delete this `%YAML` line"),
    ],
)
def test_what_yaml_allows_no_one_gives_a_fault_with_advice(text, line, column, words):
    result = parsed(text.encode(), "a.yaml")
    assert [fault.kind for fault in result.faults] == ["bad-yaml"]
    fault = result.faults[0]
    assert words in fault.message
    assert (fault.place.line, fault.place.column) == (line, column)


@pytest.mark.parametrize(
    ("data", "words"),
    [
        ("a: b".encode("utf-16"), "UTF-16"),
        ("a: b".encode("utf-16-le"), "UTF-16"),
        ("a: b".encode("utf-32"), "UTF-32"),
        ("a: b\nc: Größe".encode("latin-1"), "not UTF-8 from here on"),
        (b"a: \xed\xa0\x80", "not UTF-8 from here on"),
        (b"a: b\n" * 250_000, "at most 1,048,576"),
    ],
)
def test_bytes_that_are_no_text_give_one_fault(data, words):
    result = parsed(data, "a.yaml")
    assert result.root is None
    assert [fault.kind for fault in result.faults] == ["bad-yaml"]
    assert words in result.faults[0].message


def test_the_place_of_a_wrong_byte_is_where_the_text_ends():
    place = parsed("a: b\nc: Größe".encode("latin-1"), "a").faults[0].place
    assert (place.line, place.column) == (2, 6)


def test_a_name_twice_shows_both(device, only):
    fault = only(device("kind: motor\nport: bridge motor 1\nkind: servo"))
    assert (fault.kind, fault.place.line, fault.found) == ("duplicate-key", 6, "kind")
    assert [(one.place.line, one.message) for one in fault.related] == [(4, "first written here")]


@pytest.mark.parametrize(("depth", "fits"), [(DEEPEST, True), (DEEPEST + 1, False)])
def test_depth_has_a_limit(depth, fits):
    result = parsed(b"[" * depth + b"a" + b"]" * depth, "a")
    assert (result.root is not None) is fits
    assert (result.faults == []) is fits


def test_a_first_document_mark_is_no_second_document():
    assert parsed(b"---\na: b\n", "a").faults == []
