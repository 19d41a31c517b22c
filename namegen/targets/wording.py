"""How a message for an author of templates calls the values that a template sees."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from namegen.targets import template_model as shown
from namegen.targets.unescaped import Unescaped
from namegen.text.terminal import printable

_LONGEST = 100
"""So many letters of a line are shown."""

_NAMES: Mapping[type, str] = {
    shown.Alias: "an alias",
    shown.BuiltIn: "a built_in",
    shown.Controller: "a controller",
    shown.Device: "a device",
    shown.Difference: "a difference",
    shown.Kind: "a kind",
    shown.Number: "a number of a device",
    shown.Port: "a port",
    shown.PortGroup: "a group of ports",
    shown.Robot: "a robot",
    shown.Setup: "a setup",
    Unescaped: "text of the manifest",
    type(None): "none",
    bool: "true or false",
    dict: "a mapping",
    float: "a number",
    int: "a number",
    list: "a list",
    str: "a text",
    tuple: "a list",
}


_CALLED = {sort.__name__: called for sort, called in _NAMES.items()}


class Sayings(Struct, frozen=True):
    """What is wrong, as the end of a sentence, and what to do about it, as whole sentences."""

    what: str
    remedy: str = ""


def excerpt(text: str, line: int) -> str:
    """Return a line of a text as it is written, with its number; nothing where there is none."""
    lines = text.split("\n")
    if line > len(lines):
        return ""
    return f"{line:>3} | {printable(lines[line - 1].strip()[:_LONGEST])}"


def kind_of(value: object) -> str:
    """Return what a value is, as ``namegen explain target`` calls it, with its article."""
    return called(type(value).__name__)


def called(type_name: str) -> str:
    """Return what a value of a type is called, with its article."""
    return _CALLED.get(type_name) or "a value of the template's own"
