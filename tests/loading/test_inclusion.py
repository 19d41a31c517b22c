from __future__ import annotations

import pytest

from namegen.loading.inclusion import MOST_FILES

HULL = "devices:\n  rudder: {kind: servo, port: bridge servo 1, note: starboard}\n"


def test_fields_merge_one_by_one_and_keep_the_place_that_set_them(read):
    own = (
        "robot: heron\nincludes: [../shared/hull.yaml]\ndevices:\n  rudder: {port: stern servo 2}\n"
    )
    loaded = read({"robots/heron.yaml": own, "shared/hull.yaml": HULL})
    assert loaded.faults == ()
    rudder = loaded.value.devices["rudder"]
    assert (rudder.kind, str(rudder.ports[0]), rudder.note) == (
        "servo",
        "stern servo 2",
        "starboard",
    )
    assert str(rudder.place("port")) == "robots/heron.yaml:4:18"
    assert str(rudder.place("kind")) == "shared/hull.yaml:2:18"
    assert str(rudder.place()) == "shared/hull.yaml:2:3"


def test_later_includes_win_and_lists_replace(read):
    files = {
        "heron.yaml": "robot: heron\nincludes: [a.yaml, b.yaml]\n",
        "a.yaml": "title: A\ndevices: {bow: {kind: motor, port: x motor 1, formerly: [p, q]}}\n",
        "b.yaml": "title: B\ndevices: {bow: {formerly: r}}\n",
    }
    robot = read(files, path="heron.yaml").value
    assert robot.title == "B"
    assert robot.devices["bow"].formerly == ("r",)
    assert robot.sources == ("a.yaml", "b.yaml", "heron.yaml")


@pytest.mark.parametrize("cleared", ["null", "~", ""])
def test_a_cleared_value_takes_the_included_one_away(read, cleared):
    own = f"robot: heron\nincludes: hull.yaml\ndevices:\n  rudder:\n    note: {cleared}\n"
    robot = read({"heron.yaml": own, "hull.yaml": HULL}, path="heron.yaml").value
    assert robot.devices["rudder"].note == ""
    assert robot.devices["rudder"].kind == "servo"


def test_quotes_make_a_text_of_null(read):
    own = 'robot: heron\nincludes: hull.yaml\ndevices:\n  rudder:\n    note: "null"\n'
    robot = read({"heron.yaml": own, "hull.yaml": HULL}, path="heron.yaml").value
    assert robot.devices["rudder"].note == "null"


def test_drop_leaves_an_included_device_out(read):
    own = "robot: heron\nincludes: hull.yaml\ndrop: [rudder]\n"
    loaded = read({"heron.yaml": own, "hull.yaml": HULL}, path="heron.yaml")
    assert loaded.faults == ()
    assert loaded.value.devices == {}


def test_drop_of_an_unknown_device_names_the_nearest(read, only):
    own = "robot: heron\nincludes: hull.yaml\ndrop: [rudderr]\n"
    fault = only(read({"heron.yaml": own, "hull.yaml": HULL}, path="heron.yaml"))
    assert (fault.kind, fault.expected) == ("no-such-device", "rudder")
    assert str(fault.place) == "heron.yaml:3:8"


def test_faults_of_an_included_file_stand_in_that_file(read, only):
    files = {
        "heron.yaml": "robot: heron\nincludes: hull.yaml\n",
        "hull.yaml": "devices:\n  rudder: {kind: servo, prot: bridge servo 1}\n",
    }
    fault = only(read(files, path="heron.yaml"))
    assert (fault.kind, str(fault.place)) == ("unknown-field", "hull.yaml:2:25")


@pytest.mark.parametrize(
    ("written", "words"),
    [
        ("missing.yaml", "`robots/missing.yaml` cannot be read: no such file. Paths start at"),
        ("../../elsewhere.yaml", "leads out of the workspace"),
        ("/etc/hull.yaml", "from this file's folder on"),
        ("C:/hull.yaml", "from this file's folder on"),
        (r"..\shared\hull.yaml", "`../shared/hull.yaml`"),
        ('""', "path of a file is missing"),
        ("heron.yaml", "includes itself"),
    ],
)
def test_an_include_that_cannot_be_followed_is_a_fault_at_its_place(read, only, written, words):
    loaded = read({"robots/heron.yaml": f"robot: heron\nincludes:\n  - {written}\n"})
    fault = only(loaded)
    assert loaded.value is None
    assert (fault.kind, fault.place.line, fault.place.column) == ("wrong-value", 3, 5)
    assert words in fault.message


def test_files_that_include_each_other_are_named_in_order(read, only):
    files = {
        "heron.yaml": "robot: heron\nincludes: a.yaml\n",
        "a.yaml": "includes: b.yaml\n",
        "b.yaml": "includes: a.yaml\n",
    }
    fault = only(read(files, path="heron.yaml"))
    assert fault.place.path == "b.yaml"
    assert "a.yaml -> b.yaml -> a.yaml" in fault.message


def test_one_file_may_be_included_on_two_ways(read):
    files = {
        "heron.yaml": "robot: heron\nincludes: [a.yaml, b.yaml]\n",
        "a.yaml": "includes: hull.yaml\n",
        "b.yaml": "includes: hull.yaml\n",
        "hull.yaml": HULL,
    }
    loaded = read(files, path="heron.yaml")
    assert loaded.faults == ()
    assert loaded.value.sources == ("a.yaml", "hull.yaml", "b.yaml", "heron.yaml")


def test_includes_that_double_at_each_step_come_to_an_end(read):
    files = {f"{n}.yaml": f"includes: [{n + 1}.yaml, {n + 1}.yaml]\n" for n in range(1, 30)}
    files |= {"0.yaml": "robot: heron\nincludes: 1.yaml\n", "30.yaml": HULL}
    loaded = read(files, path="0.yaml")
    assert loaded.value is None
    assert any(f"More than {MOST_FILES} files" in fault.message for fault in loaded.faults)


def test_includes_and_drop_hold_texts_only(read):
    loaded = read("robot: heron\nincludes: {a: b}\ndrop: [[c]]\n")
    assert [fault.kind for fault in loaded.faults] == ["wrong-value", "wrong-value"]


def test_what_a_broken_include_would_have_given_is_not_missed(read):
    files = {
        "heron.yaml": "robot: heron\nincludes: hull.yaml\ndevices: {rudder: {note: x}}\n",
        "hull.yaml": "devices: [\n",
    }
    loaded = read(files, path="heron.yaml")
    assert loaded.value is None
    assert [fault.kind for fault in loaded.faults] == ["bad-yaml"]
