from __future__ import annotations

import pytest

from namegen.loading.loaded import Loaded
from namegen.loading.settings import read_settings
from namegen.model.workspaces import LookupRule, Settings


def reading(text: str) -> Loaded[Settings]:
    return read_settings(text.encode(), "namegen.yaml")


def lookup(text: str) -> Loaded[Settings]:
    return reading(f"robots: a.yaml\nlookups:\n  - {{{text}}}\n")


def test_reads_every_field_of_the_demo(documents, shown):
    loaded = reading(documents["workspace"])
    assert loaded.faults == ()
    settings = loaded.value
    assert settings.robots == ("robots/*.yaml",)
    assert (settings.catalogue, settings.templates) == ("catalogue.yaml", "my-templates")
    assert (settings.names.style, settings.names.longest) == ("camelCase", 24)
    motor, fitted = settings.lookups
    assert (motor.shape, motor.called, motor.kind, motor.name_at) == (
        "call",
        "motor",
        "motor",
        (0,),
    )
    assert (fitted.on, fitted.kind_at, fitted.kinds) == (
        "boat",
        1,
        {"Motor": "motor", "Servo": "servo"},
    )
    assert [(one.path, one.robots) for one in settings.code] == [
        ("code/heron", ("heron",)),
        ("code/common", ("heron", "kingfisher")),
    ]
    python, java = settings.build
    assert (python.target, python.to, python.robots) == (
        "python-constants",
        "code/{robot}/devices.py",
        (),
    )
    assert (java.robots, java.options) == (("heron",), {"package": "club.boats"})
    assert shown(java.places["with.package"]) == "club.boats"
    assert shown(settings.code[0].places["robots.heron"]) == "heron"
    assert shown(fitted.places["kinds.Servo"]) == "servo"


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("new: Motor", LookupRule("new", "Motor")),
        ("annotation: Device, name_key: name", LookupRule("annotation", "Device", name_key="name")),
        ("subscript: motors, kind: motor", LookupRule("subscript", "motors", kind="motor")),
        ("call: all, name_at: rest", LookupRule("call", "all", name_at="rest")),
        ("call: pair, name_at: [0, 1]", LookupRule("call", "pair", name_at=(0, 1))),
        (
            "call: get, kind_by: type-argument, kinds: {Motor: motor}, languages: java",
            LookupRule(
                "call",
                "get",
                kind_by="type-argument",
                kinds={"Motor": "motor"},
                languages=("java",),
            ),
        ),
    ],
)
def test_lookups(text, rule):
    loaded = lookup(text)
    assert loaded.faults == ()
    found = loaded.value.lookups[0]
    assert str(found.places[""]) == "namegen.yaml:3:5"
    assert LookupRule(**{**fields(found), "places": {}}) == rule


def fields(rule: LookupRule) -> dict[str, object]:
    return {name: getattr(rule, name) for name in LookupRule.__struct_fields__}


@pytest.mark.parametrize(
    ("text", "kind", "words"),
    [
        ("on: boat", "missing-field", "has none of them"),
        ("call: a, new: b", "wrong-value", "has `call` and `new`"),
        ("call: a, kind: b, kind_at: 1", "wrong-value", "`kind` and `kind_at` both say"),
        ("call: a, name_at: first", "wrong-value", "`0` is the first one"),
        ("call: a, name_at: []", "wrong-value", "Write `0`"),
        ("call: a, kind_by: guess", "wrong-value", "`type-argument`, `declared-type`"),
        ("call: a, nameat: 1", "unknown-field", "`name_at`"),
    ],
)
def test_lookups_that_cannot_work(text, kind, words, only):
    fault = only(lookup(text))
    assert fault.kind == kind
    assert words in fault.message


@pytest.mark.parametrize(
    ("text", "kind", "words"),
    [
        ("catalogue: c.yaml", "missing-field", "`robots: [robots/*.yaml]`"),
        ("robots: a\ncode: [{path: x}]", "missing-field", "`robots: [ROBOT]`"),
        ("robots: a\nbuild: [{target: x}]", "missing-field", '`to: "code/{robot}/devices.py"`'),
        ("robots: a\nbuild: [{target: x, to: {robot}}]", "wrong-value", '"{robot}"'),
        ("robots: a\nnames: {style: camelcase}", "wrong-value", "`camelCase`"),
        ("robots: a\nnames: {longest: many}", "wrong-value", "whole number"),
        ("robots: a\nlookup: []", "unknown-field", "`lookups`"),
        ("robots: a\ncode: {path: x}", "wrong-value", "A list belongs here"),
    ],
)
def test_mistakes(text, kind, words, only):
    fault = only(reading(text + "\n"))
    assert fault.kind == kind
    assert words in fault.message


def test_options_of_a_target_keep_their_types():
    text = 'robots: a\nbuild: [{target: x, to: y, with: {a: 8, b: true, c: "8", d: 1.10}}]\n'
    assert reading(text).value.build[0].options == {"a": 8, "b": True, "c": "8", "d": "1.10"}


def test_faults_of_one_entry_leave_the_others():
    loaded = reading("robots: a\nlookups: [{on: x}, {call: motor}]\nbuild: [{to: x}]\n")
    assert [rule.called for rule in loaded.value.lookups] == ["motor"]
    assert loaded.value.build == ()
    assert len(loaded.faults) == 2


def test_options_of_a_target_may_be_lists_and_mappings():
    text = (
        "robots: a\nbuild: [{target: t, to: x, with: {imports: [import a, 7], "
        "look_up: {motor: 'boat.motor({name})', '*': true}}}]"
    )
    assert reading(text).value.build[0].options == {
        "imports": ("import a", "7"),
        "look_up": {"motor": "boat.motor({name})", "*": "true"},
    }


def test_an_option_with_braces_wants_quotes():
    text = "robots: a\nbuild: [{target: t, to: x, with: {look_up: {motor: {name}}}}]"
    (fault,) = reading(text).faults
    assert 'Put quotes around the text: "{name}"' in fault.message
