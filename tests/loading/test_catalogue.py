from __future__ import annotations

import pytest

from namegen.loading.catalogue import NO_CATALOGUE, read_catalogue
from namegen.loading.loaded import Loaded
from namegen.model.boards import KINDS, PORT_TYPES, Catalogue


def reading(text: str) -> Loaded[Catalogue]:
    return read_catalogue(text.encode(), "catalogue.yaml")


def test_reads_every_field_of_the_demo(catalogue, shown):
    board = catalogue.boards["harbour"]
    assert board.ports["motor"] == ("1", "2", "3")
    assert board.ports["analog"] == ("A", "B", "C")
    assert board.built_in == {"compass": "imu"}
    assert (board.fuse_amps, board.port_amps, board.port_volts) == (
        15,
        {"motor": 7},
        {"digital": 3.3},
    )
    part = catalogue.parts["thruster-b"]
    assert (part.kind, part.volts, part.rated_amps, part.stall_amps) == ("motor", 12, 2.2, 6)
    assert (part.gear, part.encoder_cycles, part.decoding, part.encoder_on) == (27, 12, 4, "motor")
    assert catalogue.rules.allowed_parts == ("thruster-b",)
    assert catalogue.rules.at_most == {"motor": 5, "servo": 7}
    assert catalogue.port_types["lin"].shared
    assert (catalogue.kinds["distance"].ports, catalogue.kinds["distance"].address) == (
        ("i2c",),
        0x3A,
    )
    assert shown(part.places["stall_amps"]) == "6.0"
    assert shown(catalogue.rules.places["at_most.servo"]) == "7"
    assert shown(board.places[""]) == "harbour"


def test_built_in_kinds_and_port_types_stay(catalogue):
    assert set(PORT_TYPES) < set(catalogue.port_types)
    assert {**catalogue.kinds, "distance": KINDS["distance"]} == dict(KINDS)
    assert NO_CATALOGUE.kinds == KINDS and NO_CATALOGUE.path is None


def test_a_redefined_kind_keeps_its_ports_unless_it_names_some():
    kinds = reading("kinds: {imu: {address: 0x28}, gripper: {}}\n").value.kinds
    assert (kinds["imu"].ports, kinds["imu"].address) == (KINDS["imu"].ports, 0x28)
    assert kinds["gripper"].ports == ()


def test_built_in_devices_may_occupy_an_address():
    board = reading(
        "boards: {h: {ports: {i2c: 1-2}, built_in: {compass: {kind: imu, bus: i2c 1, "
        "address: 0x28}, gyro: {kind: imu}}}}\n"
    ).value.boards["h"]
    assert board.built_in == {"compass": "imu", "gyro": "imu"}
    assert board.built_in_addresses == {"compass": ("1", 0x28)}


def test_servo_figures():
    part = reading("parts: {s: {pulse_us: [620, 2380], degrees: 270, port: servo}}\n").value.parts
    assert (part["s"].pulse_us, part["s"].degrees, part["s"].ports) == (
        (620, 2380),
        270,
        ("servo",),
    )


@pytest.mark.parametrize(
    ("text", "kind", "words"),
    [
        ("boards: {h: {ports: {motor: 3}}}", "wrong-value", "`1-3` or `0-2`"),
        ("boards: {h: {ports: {moto: 1-3}}}", "wrong-value", "Did you mean `motor`?"),
        ("boards: {h: {ports: {motor: }}}", "wrong-value", "printed on the board"),
        ("boards: {h: {port_amps: {motor: 7}}}", "wrong-value", "`ports: {motor: 1-3}`"),
        ("boards: {h: {ports: {servo: 1-3}, port_volts: {srevo: 5}}}", "wrong-value", "`servo`?"),
        ("boards: {h: {ports: {big motor: 1-3}}}", "wrong-value", "`big-motor`"),
        ("boards: {h: {built_in: {tilt left: imu}}}", "wrong-value", "`tilt-left`"),
        ("port_types: {big motor: {}}", "wrong-value", "`big-motor`"),
        ("boards: {h: {built_in: {c: imuu}}}", "wrong-value", "Did you mean `imu`?"),
        ("boards: {h: {built_in: {c: {}}}}", "missing-field", "`kind: imu`"),
        (
            "boards: {h: {ports: {i2c: 1-2}, built_in: {c: {kind: imu, bus: i2c 3, address: 4}}}}",
            "wrong-value",
            "no port `i2c 3`. It has `i2c 1`, `i2c 2`",
        ),
        (
            "boards: {h: {ports: {i2c: 1-2}, built_in: {c: {kind: imu, bus: i2c 1}}}}",
            "missing-field",
            "`address: 0x28`",
        ),
        (
            "boards: {h: {ports: {can: 1-2}, built_in: {c: {kind: imu, bus: can 1, address: 4}}}}",
            "wrong-value",
            "Leave `bus` and `address` out",
        ),
        (
            "boards: {h: {ports: {i2c: [A]}, built_in: {c: {kind: imu, address: 4}}}}",
            "missing-field",
            "`bus: i2c A`",
        ),
        (
            "boards: {h: {ports: {i2c: [A]}, built_in: {c: {kind: imu, bus: i2c, address: 4}}}}",
            "wrong-value",
            "`i2c 1`",
        ),
        ("parts: {p: {kind: pump, port: servo}}", "wrong-value", "`kinds: {pump: {port: servo}}`"),
        ("parts: {p: {kind: pump}}", "wrong-value", "imu, position. A kind of your own"),
        ("kinds: {x: {port: annalog}}", "wrong-value", "Did you mean `analog`?"),
        ("kinds: {x: {port: lin}}", "wrong-value", "`port_types: {lin: {}}`"),
        ("parts: {p: {kind: motr}}", "wrong-value", "Did you mean `motor`?"),
        ("parts: {p: {volts: 12V}}", "wrong-value", "`12`"),
        ("parts: {p: {gear: -2}}", "wrong-value", "negative"),
        ("parts: {p: {encoder_on: wheel}}", "wrong-value", "`motor`, `output`"),
        ("parts: {p: {stall: 3}}", "unknown-field", "`stall_amps`"),
        ("rules: {at_most: {moter: 5}}", "wrong-value", "Did you mean `motor`?"),
        ("rules: {at_most: {motor: 5.5}}", "wrong-value", "whole number"),
        ("port_types: {lin: {shared: yes}}", "wrong-value", "`true`"),
    ],
)
def test_mistakes(text, kind, words, only):
    fault = only(reading(text + "\n"))
    assert fault.kind == kind
    assert words in fault.message


def test_an_empty_catalogue_is_a_catalogue():
    loaded = reading("# nothing yet\n")
    assert loaded.faults == ()
    assert loaded.value.kinds == KINDS
