from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from msgspec.structs import replace

from namegen.loading.catalogue import NO_CATALOGUE
from namegen.loading.edits import former_places, rename_device, replace_value, retire_name
from namegen.loading.manifest import read_manifest
from namegen.model.manifests import Manifest
from namegen.model.places import Edit, Place

PATH = "heron.yaml"
TEXT = """\
robot: heron
controllers: {bridge: {board: harbour}}
devices:
  bow:   # the bow
    kind: motor
    port: bridge motor 1
    does: Pushes
    formerly: [front]
  'stern': {kind: servo, port: bridge servo 1, note: "bow"}
  "lamp":
    kind: lamp
    port: undecided
setups:
  all: everything
  wet: {only: ["bow", 'stern'], change: {bow: {port: bridge motor 2}}}
  dry:
    without:
      - bow
selected: wet
accept:
  - {finding: port-undecided, because: later, device: lamp}
"""
NAMES = st.text(st.characters(codec="utf-8", exclude_characters="\0"), min_size=1, max_size=12)


def edited(text: str, *edits: Edit) -> str:
    """Return the text with edits made, by lines and columns."""
    lines = text.split("\n")
    starts = [sum(len(line) + 1 for line in lines[:number]) for number in range(len(lines))]
    for edit in sorted(edits, key=lambda one: one.place, reverse=True):
        place = edit.place
        start = starts[place.line - 1] + place.column - 1
        end = starts[place.end_line - 1] + place.end_column - 1
        text = text[:start] + edit.text + text[end:]
    return text


def manifest(text: str) -> Manifest:
    loaded = read_manifest(PATH, lambda _: text.encode(), NO_CATALOGUE)
    assert loaded.faults == ()
    assert loaded.value is not None
    return loaded.value


def bare(robot: Manifest) -> Manifest:
    """Return a manifest without its places, which edits move."""
    return replace(
        robot,
        places={},
        controllers={k: replace(v, places={}) for k, v in robot.controllers.items()},
        devices={k: replace(v, places={}) for k, v in robot.devices.items()},
        accepts=tuple(replace(one, places={}) for one in robot.accepts),
        setups={
            k: replace(
                v,
                places={},
                change={d: replace(c, places={}) for d, c in v.change.items()},
            )
            for k, v in robot.setups.items()
        },
    )


def renamed(robot: Manifest, old: str, new: str) -> Manifest:
    """Return the manifest as renaming one device should leave it."""

    def now(name: str) -> str:
        return new if name == old else name

    return replace(
        robot,
        devices={now(k): replace(v, name=now(k)) for k, v in robot.devices.items()},
        setups={
            k: replace(
                v,
                only=None if v.only is None else tuple(map(now, v.only)),
                without=tuple(map(now, v.without)),
                change={now(d): c for d, c in v.change.items()},
            )
            for k, v in robot.setups.items()
        },
        accepts=tuple(replace(one, device=one.device and now(one.device)) for one in robot.accepts),
    )


@given(st.sampled_from(["bow", "stern", "lamp"]), NAMES)
def test_renaming_changes_that_name_and_nothing_else(old, new):
    before = manifest(TEXT)
    if new in before.devices or new == "<<":
        return
    after = edited(TEXT, *rename_device(TEXT.encode(), PATH, old, new))
    assert bare(manifest(after)) == bare(renamed(before, old, new))


def test_a_plain_name_stays_plain_and_quotes_stay():
    after = edited(TEXT, *rename_device(TEXT.encode(), PATH, "bow", "bowJet"))
    changed = [line for line in after.split("\n") if line not in TEXT.split("\n")]
    assert changed == [
        "  bowJet:   # the bow",
        """  wet: {only: ["bowJet", 'stern'], change: {bowJet: {port: bridge motor 2}}}""",
        "      - bowJet",
    ]
    assert rename_device(TEXT.encode(), PATH, "none", "x") == ()


@given(NAMES)
def test_a_replaced_value_reads_as_the_new_text(new):
    place = manifest(TEXT).devices["bow"].place("does")
    after = edited(TEXT, replace_value(TEXT.encode(), PATH, place, new))
    assert manifest(after).devices["bow"].does == new


@pytest.mark.parametrize(
    "written", ["old", "'old'", '"old"', "|\n      old\n", ">-\n      old", ""]
)
def test_a_value_in_any_style_can_be_replaced(written):
    text = f"robot: heron\ndevices:\n  bow:\n    note: {written}\n    kind: motor\n    port: a b\n"
    place = manifest(text).devices["bow"].place("note")
    after = edited(text, replace_value(text.encode(), PATH, place, "it's: new"))
    assert manifest(after).devices["bow"].note == "it's: new"
    assert manifest(after).devices["bow"].kind == "motor"


def test_only_exact_places_are_replaced():
    with pytest.raises(LookupError):
        replace_value(TEXT.encode(), PATH, Place(PATH, 4, 3, 4, 5), "x")


@pytest.mark.parametrize(
    ("body", "former"),
    [
        ("\n    kind: motor\n    port: a b\n", ()),
        ("\n    kind: motor\n    port: a b  # comment\n", ()),
        ("\n    kind: motor\n    port: a b", ()),
        ("\n    kind: motor\n    port:\n      - a b\n", ()),
        ("\n    kind: motor\n    port: a b\n    note: |\n      text\n", ()),
        (" {kind: motor, port: a b}\n", ()),
        ("\n    kind: motor\n    port: a b\n    formerly: first\n", ("first",)),
        ("\n    kind: motor\n    port: a b\n    formerly: [first, older]\n", ("first", "older")),
        ("\n    kind: motor\n    port: a b\n    formerly:\n      - first\n", ("first",)),
        (
            "\n    formerly:\n    - first\n    - older\n    kind: imu\n    port: a b\n",
            ("first", "older"),
        ),
        ("\n    kind: motor\n    port: a b\n    formerly: []\n", ()),
        ("\n    kind: motor\n    port: a b\n    formerly:\n", ()),
    ],
)
@pytest.mark.parametrize("name", ["last", "it's: so"])
def test_a_retired_name_comes_first_among_the_former_ones(body, former, name):
    text = f"robot: heron\ndevices:\n  bow:{body}"
    before = manifest(text)
    after = manifest(edited(text, *retire_name(text.encode(), PATH, "bow", name)))
    devices = {"bow": replace(before.devices["bow"], formerly=(name, *former))}
    assert bare(after) == bare(replace(before, devices=devices))


def test_a_file_without_the_device_retires_nothing():
    assert retire_name(TEXT.encode(), PATH, "none", "x") == ()


@pytest.mark.parametrize(
    ("formerly", "after"),
    [
        ("bow", "last"),
        ("[bow]", "[last]"),
        ("[first, 'bow', older]", "[last, 'first', older]"),
        ("[first, older, bow]  # three", "[last, first, older]  # three"),
        ("\n      - first\n      - bow", "\n      - last\n      - first"),
    ],
)
def test_a_device_that_gets_its_old_name_back_has_it_no_more_among_the_former_ones(formerly, after):
    text = f"robot: heron\ndevices:\n  bow:\n    formerly: {formerly}\n    kind: motor\n"
    edits = retire_name(text.encode(), PATH, "bow", "last")
    assert edited(text, *edits) == text.replace(f"formerly: {formerly}", f"formerly: {after}")


def test_former_names_are_told_by_place():
    text = "devices:\n  bow: {formerly: [a, b]}\n  aft:\n    formerly: c\n  mid:\n"
    places = former_places(text.encode(), PATH)
    assert [(place.line, place.column) for place in places] == [(2, 20), (2, 23), (4, 15)]
