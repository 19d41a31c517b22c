from __future__ import annotations

import pytest

from namegen.loading.parsing import parsed


def kinds(text: str) -> list[str]:
    return [fault.kind for fault in parsed(text.encode(), "a.yaml").faults]


@pytest.mark.parametrize(
    ("text", "whole"),
    [
        ("a: motor #1\n", "motor #1"),
        ("a: motor # 1\n", "motor # 1"),
        ("a: motor #1", "motor #1"),
        ("a: Pump #2 left  \n", "Pump #2 left"),
        ("a: #1 pump\n", "#1 pump"),
        ("- bridge motor #1\n", "bridge motor #1"),
        ("a: {b: motor #1}\n", "motor #1"),
        ("a: [b, motor #1, c]\n", "motor #1"),
    ],
)
def test_a_text_cut_by_a_comment_shows_the_whole_text(text, whole):
    faults = parsed(text.encode(), "a.yaml").faults
    assert [fault.kind for fault in faults] == ["cut-by-comment"]
    assert faults[0].expected == whole
    assert f'"{whole}"' in faults[0].message


@pytest.mark.parametrize(
    "text",
    [
        "a: motor # the left one\n",
        "a: motor   #left one\n",
        "a: motor #\n",
        "a: motor # 2 of them\n",
        "a: motor #-----\n",
        "a: motor#1\n",
        "a: 'motor #1'\n",
        'a: "motor" #1\n',
        "a: # comment\n  b: c\n",
        "a:\n  # comment\n  b: c  # 1\n",
        "# 1\na: b\n#2\n",
        "a: |\n  motor #1\n",
    ],
)
def test_comments_stay_silent(text):
    assert kinds(text) == []


def test_a_comma_in_a_number_asks_for_a_point():
    fault = parsed(b"{volts: 12,8}", "a.yaml").faults[0]
    assert "with a point: `12.8`" in fault.message


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("{does: Left, right}", '"Left, right"'),
        ("{kind: motor, does: Left, right, note: x}", '"Left, right"'),
        ("{kind:motor}", "write `kind: motor`"),
    ],
)
def test_a_comma_or_colon_that_braces_read_otherwise(text, words):
    result = parsed(text.encode(), "a.yaml")
    assert [fault.kind for fault in result.faults] == ["wrong-value"]
    assert words in result.faults[0].message


@pytest.mark.parametrize(
    "text", ['{does: "Left, right"}', "{a: b, c: }", "{a: b, c: ~}", "{a}", "{a: {b: c}, d: e}"]
)
def test_ordinary_braces_stay_silent(text):
    assert kinds(text) == []


def test_a_field_glued_to_its_value_is_read_as_meant(read):
    loaded = read("robot: heron\ndevices:\n  bow: {kind:motor, port: bridge motor 1}\n")
    assert len(loaded.faults) == 1
    assert loaded.value.devices["bow"].kind == "motor"


@pytest.mark.parametrize("field", ["does", "kind", "note"])
def test_unquoted_braces_ask_for_quotes(device, field):
    text = f"kind: motor\nport: bridge motor 1\n{field}: {{robot}}"
    faults = device(text.removeprefix("kind: motor\n") if field == "kind" else text).faults
    assert [fault.kind for fault in faults] == ["wrong-value"]
    assert '"{robot}"' in faults[0].message


def test_a_capital_in_a_field_name_names_the_small_one(device, only):
    fault = only(device("Kind: motor\nport: bridge motor 1"))
    assert (fault.kind, fault.found, fault.expected) == ("unknown-field", "Kind", "kind")
    assert "`kind`, in exactly these letters" in fault.message
