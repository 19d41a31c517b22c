from __future__ import annotations

import pytest

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
        ("reverse", "reversed"),
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
        ("battery: 12", "The battery has fields, but a single text stands here"),
        ("controllers: {bridge: [a]}", "A controller has fields, but a list stands here"),
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
