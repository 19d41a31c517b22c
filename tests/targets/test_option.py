"""Options of several texts and options by kind: what a template sees, and what is refused."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableTarget
from namegen.targets.option import ByKind, Option, Terms
from namegen.targets.unescaped import Unescaped

WORDS = {"robot": "heron"}
KINDS = ("motor", "servo")
PLAIN = "[ -~]+"


def setting(type_: str, given: object, **more: object) -> object:
    option = Option("look_up", type_, "How it is looked up.", **more)
    return option.setting(given, "target trial", Terms(WORDS, KINDS))


def test_texts_are_a_tuple_and_one_text_may_stand_alone():
    assert setting("texts", ("import a", "from {robot} import b"), pattern=PLAIN) == (
        "import a",
        "from heron import b",
    )
    assert setting("texts", "import a", pattern=PLAIN) == ("import a",)


def test_a_kind_has_its_own_text_or_that_of_every_other():
    found = setting("by-kind", {"motor": "m({name})", "*": "any"}, pattern=PLAIN)
    assert isinstance(found, ByKind)
    assert found["motor"] == "m({name})"
    assert found[Unescaped("servo")] == "any"


def test_texts_without_a_pattern_want_an_escape():
    assert isinstance(setting("texts", ("a",))[0], Unescaped)
    assert isinstance(setting("by-kind", {"motor": "a"})["motor"], Unescaped)


def test_a_kind_without_a_text_is_named():
    found = setting("by-kind", {"motor": "m"}, pattern=PLAIN)
    with pytest.raises(UnusableTarget, match='look_up says nothing for the kind "servo"'):
        found["servo"]


@pytest.mark.parametrize(
    ("type_", "given", "complaint"),
    [
        ("by-kind", {"moter": "m"}, 'there is no kind "moter"\n  Did you mean "motor"?'),
        ("by-kind", "m({name})", "'m({name})' is no mapping: write a text for each kind"),
        ("by-kind", ("m",), "is no mapping"),
        ("by-kind", {"motor": "a\nb"}, "'a\\nb' cannot be used"),
        ("texts", {"motor": "m"}, "is no list of texts"),
        ("texts", ("a", "\x1b"), "'\\x1b' cannot be used"),
        ("text", ("a",), "is not a text"),
        ("by-kind", None, "must be given under `with:`"),
    ],
)
def test_what_cannot_be_used(type_, given, complaint):
    with pytest.raises(UnusableTarget) as caught:
        setting(type_, given, pattern=PLAIN)
    assert str(caught.value).startswith("target trial, option look_up: ")
    assert complaint in str(caught.value)
