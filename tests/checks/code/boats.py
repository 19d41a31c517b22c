"""The boats that the tests of code checks judge by, and look-ups read from a line of Python.

The look-ups are found with ``ast``, not with namegen's own reader, so that these tests hold
the checks alone.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator, Sequence
from types import SimpleNamespace

from namegen.checks.naming import judge_lookup
from namegen.model.derived import DerivedNumber
from namegen.model.facts import LookupSite, Text, Unknown
from namegen.model.findings import Finding
from namegen.model.manifests import Device, Manifest, Port, Setup
from namegen.model.places import Place, Span
from namegen.model.views import CodeView, Figure, NameQuestion, ResolvedLookup, TypedNumber
from namegen.model.workspaces import LookupRule
from namegen.text.words import convert

KINDS = {"motor", "servo", "level", "lamp", "switch", "imu", "distance", "gyro", "encoder"}
CODE = "code/heron/main.py"


def device(name: str, kind: str, port: str = "", formerly: Sequence[str] = (), line: int = 1):
    """Return a device whose name stands in the given line of heron's manifest."""
    ports = (Port(*port.split()),) if port else ()
    place = Place("robots/heron.yaml", line, 3, line, 3 + len(name))
    return Device(name, kind, ports, formerly=tuple(formerly), places={"": place})


def manifest(robot: str, devices: Sequence[Device], setups: Sequence[Setup] = ()) -> Manifest:
    """Return a manifest; its devices stand in the robot's own file."""
    path = f"robots/{robot}.yaml"
    moved = {}
    for number, one in enumerate(devices, 6):
        place = Place(path, number, 3, number, 3 + len(one.name))
        moved[one.name] = Device(
            one.name, one.kind, one.ports, formerly=one.formerly, places={"": place}
        )
    return Manifest(path, robot, {}, moved, setups={setup.name: setup for setup in setups})


HERON = manifest(
    "heron",
    [
        device("bowThruster", "motor", "bridge motor 1", ["frontThruster"]),
        device("sternThruster", "motor", "stern motor K"),
        device("netWinch", "motor", "bridge motor 3", ["scoopWinch"]),
        device("rudder", "servo", "stern servo 7"),
        device("hatchServo", "servo", "stern servo 9"),
        device("bilgeLevel", "level", "bridge analog C"),
        device("bumpBow", "switch", "bridge digital 2"),
        device("rangeBow", "distance", "bridge i2c 1"),
        device("heading", "imu", "bridge compass"),
        device("spareLamp", "lamp"),
    ],
    [
        Setup("harvest", places={"": Place("robots/heron.yaml", 20, 3, 20, 10)}),
        Setup(
            "tank-test",
            without=("netWinch", "hatchServo"),
            places={"without": Place("robots/heron.yaml", 22, 14, 22, 36)},
        ),
    ],
)
KINGFISHER = manifest(
    "kingfisher",
    [
        device("bowThruster", "motor", "bridge motor 2"),
        device("flagServo", "servo", "stern servo 8"),
        device("reedCutter", "motor", "bridge motor 1"),
    ],
)
FLEET = (HERON, KINGFISHER)


def lookups(code: str, path: str = CODE) -> list[ResolvedLookup]:
    """Return the look-ups ``boat.<kind>("name")`` of a piece of Python in order.

    A name that is no literal is not known; when it is a parameter the look-up says of which
    function. ``find`` asks for no kind.
    """
    lines = code.split("\n")
    start = SimpleNamespace(path=path, lines=lines, scope=(), holder=None, node=None)
    return list(_walk(ast.parse(code), start))


def _walk(node: ast.AST, at: SimpleNamespace) -> Iterator[ResolvedLookup]:
    if isinstance(node, ast.FunctionDef | ast.ClassDef):
        inside = {"scope": (*at.scope, node.name), "holder": None, "node": node}
        at = SimpleNamespace(**{**vars(at), **inside})
    if isinstance(node, ast.Assign):
        target = node.targets[0]
        holder = target.attr if isinstance(target, ast.Attribute) else ast.unparse(target)
        at = SimpleNamespace(**{**vars(at), "holder": holder})
    called = getattr(getattr(node, "func", None), "attr", None)
    if called in KINDS | {"find"} and node.args:
        yield _lookup(node, called, at)
    for child in ast.iter_child_nodes(node):
        yield from _walk(child, at)


def _lookup(call: ast.Call, called: str, at: SimpleNamespace) -> ResolvedLookup:
    name, kind = call.args[0], called if called in KINDS else None
    whole, inner = _place(call, at), _place(name, at)
    nowhere, text, parameter, filled_by = Span(0, 0), None, None, None
    if isinstance(name, ast.Constant):
        text = name.value
        inner = Place(at.path, inner.line, inner.column + 1, inner.end_line, inner.end_column - 1)
    elif isinstance(name, ast.Name) and isinstance(at.node, ast.FunctionDef):
        given = [a.arg for a in at.node.args.args if a.arg != "self"]
        parameter = at.node.name if name.id in given else None
        filled_by = given.index(name.id) if name.id in given else None
    site = LookupSite(
        rule=LookupRule("call", called, kind=kind),
        name=Text(text, nowhere, '"') if text is not None else Unknown("", nowhere),
        kind=kind,
        span=nowhere,
        scope=at.scope,
        holder=at.holder,
        parameter=parameter,
        parameter_at=filled_by,
    )
    why = None
    if text is None:
        why = f"{name.id} is a parameter" if parameter else "it is put together at run time"
    return ResolvedLookup(
        site, whole, inner, text, why, literal=text is not None, language="python"
    )


def _place(node: ast.expr, at: SimpleNamespace) -> Place:
    """Return where a node stands; ``ast`` counts columns in bytes of UTF-8."""
    first, last = (at.lines[n - 1].encode() for n in (node.lineno, node.end_lineno))
    column = len(first[: node.col_offset].decode()) + 1
    end = len(last[: node.end_col_offset].decode()) + 1
    return Place(at.path, node.lineno, column, node.end_lineno, end)


def lookup(text: str, kind: str | None = None) -> ResolvedLookup:
    """Return the look-up of one name."""
    return lookups(f"boat.{kind or 'find'}({text!r})")[0]


def question(
    text: str,
    kind: str | None = None,
    robot: Manifest = HERON,
    setup: str | None = None,
    fleet: Sequence[Manifest] = FLEET,
) -> NameQuestion:
    """Return the question whether a text is a device of the robot."""
    return NameQuestion(lookup(text, kind), text, robot, setup, fleet)


def judged(
    text: str, kind: str | None = None, robot: Manifest = HERON, setup: str | None = None
) -> Finding | None:
    """Return what the judges say of one name on one robot."""
    asked = question(text, kind, robot, setup, (robot, *FLEET))
    return judge_lookup(asked.lookup, [asked])


def view(
    code: str, robot: Manifest = HERON, *, complete: bool = True, mentioned: Sequence[str] = ()
) -> CodeView:
    """Return a piece of Python as all code of one robot."""
    return CodeView(
        robot, None, lookups(code), frozenset(mentioned), complete, numbers(code), figures(robot)
    )


def figures(robot: Manifest) -> list[Figure]:
    """Return a number of each motor and servo, with a constant that is built for Python."""
    made = {
        "motor": ("counts_per_output_turn", 234.0),
        "servo": ("us_per_degree", 1360 / 146),
    }
    return [
        Figure(
            one,
            DerivedNumber(*made[one.kind], "It is made up.", "maker's data"),
            {"python": convert(f"{one.name}_{made[one.kind][0]}", "UPPER_SNAKE")},
        )
        for one in robot.devices.values()
        if one.kind in made
    ]


def numbers(code: str) -> list[TypedNumber]:
    """Return the numbers that are assigned, or given to keywords, in a piece of Python."""
    at = SimpleNamespace(path=CODE, lines=code.split("\n"))
    found = []
    for node in ast.walk(ast.parse(code)):
        if isinstance(node, ast.Assign | ast.keyword) and isinstance(node.value, ast.Constant):
            text = ast.get_source_segment(code, node.value) or ""
            unit = 10.0 ** -len(text.partition(".")[2])
            name = node.arg if isinstance(node, ast.keyword) else ast.unparse(node.targets[0])
            place = _place(node.value, at)
            if isinstance(node.value.value, int | float):
                found.append(
                    TypedNumber(name, text, float(node.value.value), unit, place, "python")
                )
    return found
