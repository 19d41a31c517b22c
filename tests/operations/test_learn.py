"""Look-ups are learnt from the names in code, and what is none is not taken for one."""

from __future__ import annotations

from pathlib import Path

import pytest
import yaml

from namegen.errors import UnusableInput
from namegen.operations.audit import audit
from namegen.operations.learn import learn, row
from namegen.operations.workspace import open_workspace
from tests.operations.conftest import lay


def without_lookups(root: Path) -> Path:
    path = root / "namegen.yaml"
    settings = yaml.safe_load(path.read_text(encoding="utf-8"))
    settings.pop("lookups")
    path.write_text(yaml.safe_dump(settings, sort_keys=False), encoding="utf-8")
    return root


def rows(root: Path, *paths: str) -> list[str]:
    return [row(one.rule) for one in learn(open_workspace(root), [root / p for p in paths]).found]


@pytest.fixture
def bare(boats: Path) -> Path:
    (boats / "code/heron/main.py").unlink()
    return without_lookups(boats)


def test_the_look_ups_of_the_example_are_learnt(boatclub: Path):
    assert sorted(rows(without_lookups(boatclub))) == [
        "{call: expects, name_at: rest}",
        "{call: fitted, kind_at: 1, kinds: "
        "{Bearing: imu, Bumper: switch, Drive: motor, Sounder: distance}}",
        "{call: motor, kind: motor}",
        "{call: servo, kind: servo}",
        "{new: Sensor, name_at: 1, name_key: name}",
    ]


def test_what_is_learnt_finds_what_the_lead_wrote_down_by_hand(boatclub: Path):
    """The rows go into namegen.yaml as printed; misspelt names are found as before."""

    def slips() -> set[tuple[str, str | None]]:
        wanted = {"letter-case", "look-alike", "misspelt", "retired-name", "unknown-name"}
        findings = audit(open_workspace(boatclub)).report.findings
        return {(str(one.place), one.found) for one in findings if one.kind in wanted}

    by_hand = slips()
    learnt = rows(without_lookups(boatclub))
    with (boatclub / "namegen.yaml").open("a", encoding="utf-8") as settings:
        settings.write("lookups:\n" + "".join(f"  - {one}\n" for one in learnt))
    assert len(by_hand) > 5
    assert slips() == by_hand


@pytest.mark.parametrize(
    ("name", "code", "row"),
    [
        (
            "a.py",
            'a = boat.get("bowThruster")\nb = boat.get("rudder")\n',
            "{call: get}",
        ),
        (
            "a.py",
            'a = boat.get("bowThruster")\nb = boat.get("rudder")\nc = table.get("colour")\n',
            "{call: get, on: boat}",
        ),
        (
            "a.cpp",
            'auto a = boat->get<Motor>("bowThruster"), b = boat->get<Motor>("sternThruster");\n'
            'auto c = boat->get<Servo>("rudder"); auto d = table.get("colour");\n',
            "{call: get, on: boat, kind_by: type-argument, kinds: {Motor: motor, Servo: servo}}",
        ),
        (
            "a.cpp",
            'auto a = club::motor("bowThruster"), b = club::motor("sternThruster");\n',
            "{call: motor, kind: motor}",
        ),
        (
            "a.cpp",
            'Motor a(boat, "bowThruster");\nlib::Motor b{boat, "sternThruster"};\n',
            "{new: Motor, name_at: 1, kind: motor}",
        ),
        (
            "a.cpp",
            'auto a = std::make_unique<lib::Motor>("bowThruster");\n'
            'auto b = std::make_shared<Motor>("sternThruster"); auto c = Motor{"bowThruster"};\n',
            "{new: Motor, kind: motor}",
        ),
        (
            "a.hpp",
            'auto a = crew->devices["bowThruster"];\nauto b = devices["sternThruster"];\n',
            "{subscript: devices, kind: motor}",
        ),
        (
            "a.py",
            'a = devices["bowThruster"]\nb = devices["sternThruster"]\n',
            "{subscript: devices, kind: motor}",
        ),
        (
            "A.java",
            'class A { M a = new M(boat, "bowThruster"); M b = new M(boat, "sternThruster"); }',
            "{new: M, name_at: 1, kind: motor}",
        ),
        (
            "A.java",
            'class A { @Fitted("bowThruster") M a; @Fitted("rudder") M b; }',
            "{annotation: Fitted}",
        ),
        (
            "A.java",
            'class A { M a = boat.<M>get("bowThruster"); M b = boat.<M>get("frontThruster"); }',
            "{call: get, on: boat, kind: motor}",
        ),
        (
            "a.py",
            'a = motor(\n  boat,\n  name="bowThruster",\n)\n'
            'b = motor(boat, name="sternThruster")\n',
            "{call: motor, name_key: name, kind: motor}",
        ),
    ],
)
def test_shapes(bare: Path, name: str, code: str, row: str):
    (bare / "code/heron" / name).write_text(code)
    found = rows(bare)
    assert found in ([row], [row.replace(", on: boat", "")])
    if "table" in code:
        assert found == [row]


@pytest.mark.parametrize(
    "code",
    [
        'print("rudder")\nprint("bowThruster")\nprint("hello")\nprint("ready")\n',
        'a = boat.servo("rudder")\n',  # one name: it may be there by chance
        '# boat.servo("rudder"), boat.motor("bowThruster")\n',
        'text = "rudder", "bowThruster"\n',
        'a = {"rudder": 1, "bowThruster": 2}\n',
    ],
)
def test_what_is_no_look_up_is_not_told(bare: Path, code: str):
    (bare / "code/heron/a.py").write_text(code)
    assert rows(bare) == []


def test_misspelt_names_do_not_hide_a_look_up_and_are_told(bare: Path):
    lines = [f'a = boat.motor("{name}")' for name in ("bowThruster", "sternThruster") * 2]
    (bare / "code/heron/a.py").write_text("\n".join([*lines, 'b = boat.motor("sternthruster")']))
    (one,) = learn(open_workspace(bare)).found
    assert dict(one.slips) == {"bowThruster": 0, "sternThruster": 0, "sternthruster": 1}
    assert one.names.total() == 5 and not one.others
    assert one.place == "code/heron/a.py:1"


def test_what_the_settings_have_is_said_and_not_told_again(boats: Path):
    lesson = learn(open_workspace(boats))
    assert lesson.found == ()
    assert [rule.called for rule in lesson.known] == ["motor", "servo"]


def test_code_that_the_settings_do_not_name_yet(bare: Path):
    (bare / "other").mkdir()
    (bare / "other/a.py").write_text('boat.motor("bowThruster")\nboat.motor("sternThruster")\n')
    assert rows(bare) == []
    assert rows(bare, "other") == rows(bare, "other/a.py") == ["{call: motor, kind: motor}"]
    with pytest.raises(UnusableInput, match="no such file"):
        rows(bare, "nowhere")


def test_nothing_is_written(bare: Path):
    (bare / "code/heron/a.py").write_text('boat.motor("bowThruster"); boat.motor("sternThruster")')
    before = {path: path.read_bytes() for path in bare.rglob("*") if path.is_file()}
    assert rows(bare)
    assert {path: path.read_bytes() for path in bare.rglob("*") if path.is_file()} == before


def test_what_could_not_be_read_is_told(boats: Path):
    lay(boats, {"robots/dipper.yaml": "robot: ["})
    (boats / "code/heron/old.py").write_bytes(b"# gr\xfcn\n")
    lesson = learn(open_workspace(boats))
    assert (lesson.unread, lesson.lost) == (("code/heron/old.py",), ("robots/dipper.yaml",))
    assert lesson.files == 1


@pytest.mark.parametrize(
    ("name", "code", "row"),
    [
        (
            "a.py",
            'a = hub.take(Drive, "bowThruster")\nb = hub.take(Drive, "sternThruster")\n'
            'c = hub.take(lib.Hinge, "rudder")\n',
            "{call: take, name_at: 1, kind_at: 0, kinds: {Drive: motor, Hinge: servo}}",
        ),
        (
            "A.java",
            'class A { void go() { hub.take(Drive.class, "bowThruster"); '
            'hub.take(Drive.class, "sternThruster"); hub.take(Hinge.class, "rudder"); } }',
            "{call: take, name_at: 1, kind_at: 0, kinds: {Drive: motor, Hinge: servo}}",
        ),
        (
            "A.java",
            'class A { void go() { hub.<Drive>take("bowThruster"); '
            'hub.<Drive>take("sternThruster"); hub.<Hinge>take("rudder"); } }',
            "{call: take, kind_by: type-argument, kinds: {Drive: motor, Hinge: servo}}",
        ),
        (
            "A.java",
            'class A { Drive a = hub.take("bowThruster"); Drive b = hub.take("sternThruster"); '
            'Hinge c = hub.take("rudder"); }',
            "{call: take, kind_by: declared-type, kinds: {Drive: motor, Hinge: servo}}",
        ),
        (  # the same word beside all: it says no kind
            "a.py",
            'a = take(boat, "bowThruster")\nb = take(boat, "rudder")\n',
            "{call: take, name_at: 1}",
        ),
        (  # a word of its own for each name may be anything
            "a.py",
            'a = take(red, "bowThruster")\nb = take(blue, "rudder")\n',
            "{call: take, name_at: 1}",
        ),
        (  # a word that goes with two kinds says none
            "a.py",
            'a = take(Part, "bowThruster")\nb = take(Part, "rudder")\n'
            'c = take(Drive, "sternThruster")\nd = take(Drive, "bowThruster")\n',
            "{call: take, name_at: 1, kind: motor}",
        ),
    ],
)
def test_where_the_code_says_the_kind(bare: Path, name: str, code: str, row: str):
    (bare / "code/heron" / name).write_text(code)
    assert rows(bare) == [row]


def test_a_row_with_kinds_can_be_read_back_and_finds_a_wrong_kind(bare: Path):
    (bare / "code/heron/a.py").write_text(
        'a = take(Drive, "bowThruster")\nb = take(Drive, "sternThruster")\n'
        'c = take(Hinge, "rudder")\n'
    )
    (learnt,) = rows(bare)
    settings = yaml.safe_load((bare / "namegen.yaml").read_text())
    settings["lookups"] = [yaml.safe_load(learnt)]
    (bare / "namegen.yaml").write_text(yaml.safe_dump(settings))
    assert audit(open_workspace(bare)).report.findings == ()
    (bare / "code/heron/b.py").write_text('d = take(Hinge, "bowThruster")\n')
    kinds = [one.kind for one in audit(open_workspace(bare)).report.findings]
    assert kinds == ["wrong-kind"]
