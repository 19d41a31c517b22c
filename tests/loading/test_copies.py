from __future__ import annotations

import pytest

from namegen.bundled import bundled
from namegen.loading.copies import is_copy, next_edit
from namegen.loading.document import document
from namegen.operations.splicing import splice

PATH = "heron.yaml"


def copy(text: str) -> str:
    """Return a text as the robot wren's."""
    old = text
    while edit := next_edit(text.encode(), PATH, "wren"):
        text = splice(text, [edit])
    assert is_copy(old.encode(), text.encode(), PATH, "wren")
    return text


@pytest.mark.parametrize(
    ("text", "copied"),
    [
        ("robot: heron\n", "robot: wren\n"),
        ("robot:\n", "robot: wren\n"),
        ("# ours\ndevices: {}\n", "# ours\nrobot: wren\ndevices: {}\n"),
        ('robot: "heron"  # the boat\n', "robot: wren  # the boat\n"),
        ("robot: heron\ntitle: Heron # big\nselected: a\n", "robot: wren\nselected: a\n"),
        ("title: |\n  The\n  heron\n\nrobot: heron", "\nrobot: wren"),
        ("robot: heron\ntitle: Heron", "robot: wren\n"),
        (
            "robot: heron\naccept:\n  - {finding: a, because: b}\n  # more\n  - finding: c\n"
            "    because: d\n# end\n",
            "robot: wren\n# end\n",
        ),
        (
            "robot: heron\ndevices:\n  bow:\n    formerly:\n      - a\n    kind: motor # it\n",
            "robot: wren\ndevices:\n  bow:\n    kind: motor # it\n",
        ),
        ("robot: heron\ndevices:\n  bow:\n    formerly: [a] # b\n", None),
        ("robot: heron\ndevices: {bow: {formerly: [a]}}\n", "robot: wren\ndevices: {bow: {}}\n"),
        (
            "robot: heron\n"
            "devices: {a: {formerly: b, kind: c, accept: []}, d: {kind: e, formerly: f}}\n",
            "robot: wren\ndevices: {a: {kind: c}, d: {kind: e}}\n",
        ),
        (
            "robot: heron\ncontrollers: {bridge: {board: a, dead: [servo 2]}}\n",
            "robot: wren\ncontrollers: {bridge: {board: a}}\n",
        ),
    ],
)
@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_what_belongs_to_one_robot_alone_is_left_out(text, copied, end):
    if copied is None:
        copied = "robot: wren\ndevices:\n  bow:\n    {} # b\n"
    made = copy(text.replace("\n", end))
    assert made.replace("\r\n", "\n") == copied


def test_an_emptied_device_is_not_taken_for_one_that_is_left_out():
    text = copy("robot: heron\ndevices:\n  bow: {kind: motor}\n  c:\n    formerly: d\n")
    devices = document(text.encode(), PATH)[0].value("devices")
    assert [len(entry.value.fields) for entry in devices.fields.values()] == [1, 0]


def test_the_example_boat_keeps_its_devices_and_wires():
    text = (bundled("examples") / "boatclub/robots/heron.yaml").read_text(encoding="utf-8")
    copied = copy(text)
    assert "formerly" not in copied and "title" not in copied
    assert copied.count("port:") == text.count("port:")


def test_a_text_that_became_another_is_no_copy():
    old = b"robot: heron\ndevices: {a: {kind: motor}}\n"
    assert not is_copy(old, b"robot: wren\ndevices: {a: {kind: servo}}\n", PATH, "wren")
    assert not is_copy(old, b"robot: wren\ndevices: {a: {kind: motor}\n", PATH, "wren")
