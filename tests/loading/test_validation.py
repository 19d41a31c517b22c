from __future__ import annotations

import pytest

from namegen.loading.catalogue import read_catalogue
from namegen.loading.loaded import MOST_FAULTS


def spots(loaded) -> list[tuple[str, int, int]]:
    return [(fault.kind, fault.place.line, fault.place.column) for fault in loaded.faults]


def test_all_faults_come_in_one_run_each_at_its_place(read):
    loaded = read(
        "robot: heron\n"
        "colour: green\n"
        "battery: {volts: 12 V, fuse_amps: 15}\n"
        "devices:\n"
        "  bow:\n"
        "    kind: motr\n"
        "    port: bridge\n"
        "    optional: yes\n"
        "    formerly: [ok, {a: b}, fine]\n"
        "  stern: bridge motor 2\n"
        "accept:\n"
        "  - finding: port-taken\n"
    )
    assert spots(loaded) == [
        ("unknown-field", 2, 1),
        ("wrong-value", 3, 18),
        ("wrong-value", 6, 11),
        ("wrong-value", 7, 11),
        ("wrong-value", 8, 15),
        ("wrong-value", 9, 20),
        ("wrong-value", 10, 10),
        ("missing-field", 12, 5),
    ]
    robot = loaded.value
    assert robot.battery.volts is None and robot.battery.fuse_amps == 15
    assert robot.devices["bow"].formerly == ("ok", "fine")
    assert list(robot.devices) == ["bow", "stern"]
    assert robot.accepts == ()


@pytest.mark.parametrize(
    ("field", "meant"),
    [
        ("prot", "port"),
        ("PORT", "port"),
        ("fromerly", "formerly"),
        ("adress", "address"),
        ("travel", "travel_mm"),
        ("Travel-MM", "travel_mm"),
    ],
)
def test_an_unknown_field_names_the_nearest(device, field, meant):
    faults = device(f"kind: motor\nport: bridge motor 1\n{field}: 1").faults
    assert [(fault.kind, fault.found, fault.expected) for fault in faults] == [
        ("unknown-field", field, meant)
    ]
    assert f"`{meant}`" in faults[0].message


def test_a_field_with_a_slip_is_read_as_the_one_that_was_meant(read):
    loaded = read(
        "robot: heron\n"
        "controler: {bridge: {Board: harbour}}\n"
        "device:\n"
        "  bow: {knid: motr, PORT: bridge motor 1, reverse: yes,\n"
        "    accept: [{Finding: x, because: y}]}\n"
    )
    assert [(fault.kind, fault.expected or fault.found) for fault in loaded.faults] == [
        ("unknown-field", "controllers"),
        ("unknown-field", "board"),
        ("unknown-field", "devices"),
        ("unknown-field", "kind"),
        ("wrong-value", "motor"),
        ("unknown-field", "port"),
        ("unknown-field", "reversed"),
        ("wrong-value", "yes"),
        ("unknown-field", "finding"),
    ]
    robot = loaded.value
    assert robot.controllers["bridge"].board == "harbour"
    assert str(robot.devices["bow"].ports[0]) == "bridge motor 1"
    assert [one.kind for one in robot.accepts] == ["x"]


def test_a_field_that_stands_there_already_takes_in_what_it_lacks(read, only):
    loaded = read(
        "robot: heron\n"
        "devices: {a: {kind: lamp, port: b c 1}}\n"
        "Devices: {a: {}, d: {kind: lamp, port: b c 2}}\n"
    )
    assert only(loaded).expected == "devices"
    assert [str(one.ports[0]) for one in loaded.value.devices.values()] == ["b c 1", "b c 2"]


@pytest.mark.parametrize(
    ("field", "meant"), [("type", "kind"), ("description", "does"), ("inverted", "reversed")]
)
def test_a_general_word_for_a_field_names_it_and_is_not_read(device, only, field, meant):
    fields = {"kind": "motor", "does": "x", "reversed": "true", "port": "bridge motor 1"}
    lines = [f"{field if name == meant else name}: {value}" for name, value in fields.items()]
    fault = only(device("\n".join(lines)))
    assert f"Did you mean `{meant}`?" in fault.message


def test_a_field_of_another_group_of_the_same_file_is_no_slip(only):
    fault = only(read_catalogue(b"ports: {motor: 1-3}\n", "catalogue.yaml"))
    assert "`ports` is a field of a board, not of a catalogue" in fault.message
    assert fault.expected is None


def test_a_field_of_another_file_says_so(only):
    fault = only(read_catalogue(b"robot: heron\n", "catalogue.yaml"))
    assert "a manifest, which is another file" in fault.message


def test_names_in_the_first_column_are_sent_below_the_empty_field_above(read):
    loaded = read("robot: heron\ndevices:\nbow:\n  kind: motor\nstern:\n  kind: motor\n")
    assert all("If it belongs to `devices`" in fault.message for fault in loaded.faults)
    assert [fault.found for fault in loaded.faults] == ["bow", "stern"]


@pytest.mark.parametrize(
    "text",
    ["bow: *x", "bow: {kind: *x, port: b c 1}", "bow: {<<: {kind: motor}, port: b c 1}"],
)
def test_what_cannot_be_read_is_not_missing(read, only, text):
    assert only(read(f"robot: heron\ndevices:\n  {text}\n")).kind == "bad-yaml"


def test_examples_are_the_users_own_where_they_are_known(read, catalogue):
    text = "controllers: {front: {board: harbour}, rear: }\ndevices: {bow: {kind: motor}}\n"
    messages = [fault.message for fault in read(text, "robots/wren.yaml", catalogue).faults]
    for example in ("`robot: wren`", "`port: front motor 1`", "`board: harbour`"):
        assert any(example in message for message in messages), messages
    lone = [fault.message for fault in read("robot: wren\ndevices: {bow: {kind: motor}}\n").faults]
    assert "`port: CONTROLLER TYPE LABEL`" in lone[0]


def test_a_field_that_belongs_elsewhere_says_where(read, only):
    fault = only(read("robot: heron\nport: bridge motor 1\n"))
    assert "`port` is a field of a device" in fault.message
    assert fault.expected is None


def test_a_field_unlike_any_other_lists_those_there_are(read, only):
    fault = only(read("robot: heron\nzzz: 1\n"))
    assert "`robot`, `title`" in fault.message


def test_fields_indented_too_little_are_one_mistake(read):
    loaded = read("robot: heron\ndevices:\n  bow:\n  kind: motor\n  port: bridge motor 1\n")
    assert spots(loaded) == [("wrong-value", 4, 9), ("wrong-value", 5, 9)]
    assert "two blanks to the right" in loaded.faults[0].message
    assert list(loaded.value.devices) == ["bow"]


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("devices: [bow]", "Names with a colon belong here, not a list"),
        ("devices: bow", "Names with a colon belong here"),
        ("accept: {a: b}", "A list belongs here: start each entry with `- `"),
        ("accept: a", "A list belongs here"),
        ("battery: 12", "The fields of the battery belong here, but a single text"),
        ("controllers: {bridge: [a]}", "The fields of a controller belong here, but a list stands"),
        ("controllers: {bridge: }", "`bridge` has no `board`"),
    ],
)
def test_groups_lists_and_texts_in_each_others_place(read, only, text, words):
    assert words in only(read(f"robot: heron\n{text}\n")).message


@pytest.mark.parametrize("text", ["", "\n", "# nothing yet\n", "---\n", "null\n"])
def test_a_file_that_says_nothing_misses_its_robot(read, only, text):
    assert only(read(text)).kind == "missing-field"


@pytest.mark.parametrize("text", ["hello", "- a\n- b\n", "12"])
def test_a_file_without_fields_cannot_be_judged(read, only, text):
    loaded = read(text)
    assert loaded.value is None
    assert only(loaded).kind == "wrong-value"


def test_every_optional_field_may_be_cleared(device):
    fields = "part does expect note address reversed optional formerly identifiers travel_mm accept"
    cleared = "\n".join(f"{field}:" for field in fields.split())
    loaded = device(f"kind: motor\nport: bridge motor 1\n{cleared}")
    assert loaded.faults == ()
    assert loaded.value.devices["bow"].formerly == ()


def test_more_faults_than_anybody_reads_are_counted(read):
    lines = "".join(f"field{number}: x\n" for number in range(3 * MOST_FAULTS))
    faults = read(f"robot: heron\n{lines}").faults
    assert len(faults) == MOST_FAULTS
    assert f"{2 * MOST_FAULTS + 1} more faults" in faults[-1].message
