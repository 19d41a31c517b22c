"""Ports as people write them: ``bridge motor 1``, ``M1``, ``bridge: motor-1``, ``I2C 1 0x3A``."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping

from msgspec import Struct
from msgspec.structs import replace

from namegen.model.boards import PORT_TYPES
from namegen.model.manifests import Port

TYPE_WORDS: Mapping[str, str] = {
    **{name: name for name in PORT_TYPES},
    **{f"{name}s": name for name in PORT_TYPES},
    **{"mot": "motor", "srv": "servo", "dig": "digital", "dio": "digital", "analogue": "analog"},
    **{"iic": "i2c", "i²c": "i2c", "uart": "serial", "ser": "serial", "enc": "encoder"},
}
"""Word in small letters -> port type. Common practice, no source."""

_FILLERS = frozenset(
    {"port", "ports", "no", "nr", "number", "num", "channel", "ch", "pin", "socket", "slot"}
    | {"on", "at", "of", "the", "to", "in", "input", "output", "out", "bus", "addr", "address"}
    | {"i/o", "io"}
)
_NO_CONTROLLER = frozenset(
    {"or", "maybe", "perhaps", "see", "not", "no", "broken", "dead", "defect", "defective", "old"}
    | {"new", "spare", "also", "with", "without", "for", "by", "if", "then", "and", "later", "now"}
)
"""Words that people write beside a port and that name no board. Common practice, no source."""
_UNSETTLED = frozenset(
    {"", "?", "??", "-", "--", "\u2013", "\u2014", "tbd", "tba", "undecided", "open", "not yet"}
    | {"n/a", "none", "nowhere", "unplugged", "not connected", "not assigned", "unassigned"}
)
_BUILT_IN = frozenset({"built in", "builtin", "on board", "onboard", "internal", "inside"})
_ADDRESS = re.compile(r"(?<!\w)@?\s*(0x[0-9a-f]{1,3})(?!\w)", re.IGNORECASE)
_BARE_ADDRESS = re.compile(r"(?:@|\baddr(?:ess)?\b)[\s.:=]*([0-9a-f]{1,3})\b", re.IGNORECASE)
_IN_OUT = re.compile(r"\bI/O\b", re.IGNORECASE)
_SEVERAL = re.compile(r"\s*[,;+&\n]\s*|\s+and\s+", re.IGNORECASE)
QUOTES = '"\u201c\u201d\u201e\u2018\u2019\u00ab\u00bb'
_TOKEN = re.compile(rf"[^\s/:()\[\]@#|>{QUOTES}]+")
_NUMBERED = re.compile(r"(i2c|[^\W\d]+)[-_.]?(\d{1,3}|[A-Za-z]\d?)?", re.IGNORECASE)
_TYPED = re.compile(r"(\d{1,3})\.0")
"""A whole number as some spreadsheets write it out."""
_BOTH = re.compile(r"(?<![^\W\d_])([^\W\d_]?)(\d{1,3})\s*/\s*\1?(\d{1,3})$")
_RANGE = re.compile(r"(?<![\w-])([^\W\d_]?)(\d{1,3})\s*[-\u2013]\s*\1?(\d{1,3})$")
_DATE = re.compile(
    r"\d{4}-\d\d-\d\d( .*)?|\d{1,2}[-./ ](jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
    r"|(jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*[-./ ]\d{1,2}",
    re.IGNORECASE,
)
_LABEL = re.compile(r"[A-Za-z]?\d{1,3}[A-Za-z]?|[A-Za-z]")


class Hint(Struct, frozen=True):
    """What the other columns of a row say about its port. Empty where they say nothing.

    ``types`` are the port types that the device's ``kind`` can be plugged into;
    ``controllers`` are known in this chart, in small letters.
    """

    controller: str = ""
    type: str = ""
    label: str = ""
    types: tuple[str, ...] = ()
    controllers: Collection[str] = ()
    kind: str = ""


class Reading(Struct, frozen=True):
    """The ports in a cell (a controller that nothing says is ``""``), or why there are none."""

    ports: tuple[Port, ...] = ()
    address: int | None = None
    doubt: str = ""


def read_ports(cell: str, hint: Hint) -> Reading:
    """Return the ports that a cell means. No ports and no doubt: they are undecided."""
    cell = _IN_OUT.sub("", cell)
    found = _ADDRESS.search(cell)
    address = int(found[1], 16) if found else None
    text = cell[: found.start()] + " " + cell[found.end() :] if found else cell
    bare = _BARE_ADDRESS.search(text)
    if bare and bare[1].isdecimal():
        meant = f"0x{bare[1]}, or 0x{int(bare[1]):02X}"
        return Reading(doubt=f'the address "{bare[1]}" may be hexadecimal or decimal: {meant}')
    if bare:
        address = int(bare[1], 16)
        text = text[: bare.start()] + " " + text[bare.end() :]
    hint = replace(hint, label=_TYPED.sub(r"\1", hint.label.strip()))
    if _unsettled(text) and (not hint.label or _unsettled(hint.label)):
        return Reading(address=address)
    doubt = _spoilt(text) or _spoilt(hint.label)
    if doubt:
        return Reading(doubt=doubt)
    if _plain(text) in _BUILT_IN and hint.controller and hint.kind:
        return Reading((Port(hint.controller, hint.kind),), address)
    text = _both(_whole(text), hint)
    ports: list[Port] = []
    for one in _pieces(text):
        port = _one(one, hint)
        if isinstance(port, str):
            return Reading(doubt=port)
        ports.append(port)
        hint = replace(hint, controller=port.controller, type=hint.type or port.type)
    return Reading(tuple(ports), address)


def type_of(text: str) -> str | None:
    """Return the port type that a cell names alone, such as ``Motor port``; or None."""
    words = [word for word in re.split(r"[\s_-]+", text.casefold()) if word not in _FILLERS]
    if len(words) != 1:
        return None
    return TYPE_WORDS.get(words[0]) or _of_letter(words[0], ())


def _plain(text: str) -> str:
    return " ".join(text.casefold().replace("-", " ").split())


def _unsettled(text: str) -> bool:
    return " ".join(text.casefold().split()) in _UNSETTLED


def _spoilt(text: str) -> str:
    """Return what a spreadsheet has made of a cell, or the empty text."""
    if _DATE.fullmatch(text.strip()):
        return f'a spreadsheet has made a date of it, "{text.strip()}"'
    if text.startswith("="):
        return "it is a formula, and the file does not hold its value"
    return ""


def _whole(text: str) -> str:
    """Return a text with ``1.0`` as the 1 that was typed."""
    stripped = text.strip()
    return _TYPED.sub(r"\1", stripped) if _TYPED.fullmatch(stripped) else text


def _both(text: str, hint: Hint) -> str:
    """Return ``D0/D1`` and ``digital 6-7`` as two ports, where they can be nothing else."""
    text = _BOTH.sub(r"\1\2, \1\3", text.strip())
    found = _RANGE.search(text)
    if found is None or int(found[3]) != int(found[2]) + 1:
        return text
    before = [word.casefold() for word in _TOKEN.findall(text[: found.start()])]
    sure = found[1] or (before and before[-1] in TYPE_WORDS) or (hint.type and hint.controller)
    return text[: found.start()] + f"{found[1]}{found[2]}, {found[1]}{found[3]}" if sure else text


def _one(text: str, hint: Hint) -> Port | str:
    """Return one port, or what is not sure about it."""
    tokens = [token for token in _TOKEN.findall(text) if token.casefold() not in _FILLERS]
    tokens = [part for token in tokens if _says(token) for part in _parts(token)]
    apart = len(tokens) > 1 and tokens[-1].isdecimal() and not hint.type
    if apart and _of_letter(tokens[-2].casefold(), hint.types):  # `D 4` is D4
        tokens[-2:] = ["".join(tokens[-2:])]
    found = _typed(tokens, hint.types) or (_typed(tokens, (hint.type,)) if hint.type else None)
    if found is not None:
        at, kind, label = found
        before, after = tokens[:at], tokens[at + 1 :]
        if label is None and after and _LABEL.fullmatch(after[0]):
            label, after = after[0], after[1:]
        return _port(before or after, kind, label or hint.label, hint, bool(before and after))
    if hint.type or len(hint.types) == 1:
        kind = hint.type or hint.types[0]
        label = hint.label
        if not label and tokens:
            label, tokens = tokens[-1], tokens[:-1]
        return _port(tokens, kind, label, hint)
    if len(tokens) == 2 and tokens[0].casefold() in hint.controllers and tokens[1].isalpha():
        return Port(tokens[0], tokens[1])  # built in
    return "its port type is not sure"


def _pieces(text: str) -> list[str]:
    """Return the ports of a cell; in ``bridge, motor 1`` the first word belongs to the second."""
    first, *rest = _SEVERAL.split(text.strip(" \t,;+&"))
    if rest and not any(_names_port(word) for word in re.split(r"[\s-]+", first)):
        return [f"{first} {rest[0]}", *rest[1:]]
    return [first, *rest]


def _names_port(word: str) -> bool:
    """Whether a word may say a port's type or label."""
    return word.casefold() in TYPE_WORDS or any(map(str.isdigit, word)) or len(word) == 1


def _says(token: str) -> bool:
    return any(char.isalnum() for char in token)


def _parts(token: str) -> list[str]:
    """Return the pieces of ``bridge-motor-1``; a word without a port type stays whole."""
    pieces = [piece for piece in re.split(r"[-_.]", token) if piece]
    if any(piece.casefold() in TYPE_WORDS or _numbered(piece) for piece in pieces):
        return [piece for piece in pieces if piece.casefold() not in _FILLERS]
    return [token]


def _numbered(token: str) -> tuple[str, str] | None:
    """Return the letters and the label of ``M1``, ``motor1`` or ``i2c1``."""
    found = _NUMBERED.fullmatch(token)
    if found is None or not found[2] or not found[2][0].isdigit():
        return None
    letters = found[1].casefold()
    return (letters, found[2]) if letters in TYPE_WORDS or len(letters) == 1 else None


def _typed(tokens: list[str], types: tuple[str, ...]) -> tuple[int, str, str | None] | None:
    """Return where the port type stands, which it is and a label that hangs on it.

    A whole word outranks a letter, so that in ``C1 motor 2`` the controller is C1.
    """
    for at, token in enumerate(tokens):
        if token.casefold() in TYPE_WORDS:
            return at, TYPE_WORDS[token.casefold()], None
    shorts = [(at, *short) for at, token in enumerate(tokens) if (short := _numbered(token))]
    for at, letters, label in shorts:
        if letters in TYPE_WORDS:
            return at, TYPE_WORDS[letters], label
    for at, letters, label in reversed(shorts):
        kind = _of_letter(letters, types)
        if kind:
            return at, kind, label
    return None


def _of_letter(letter: str, types: tuple[str, ...]) -> str | None:
    """Return the one port type with this first letter, among those that the kind permits."""
    if len(letter) != 1:
        return None
    fit = [name for name in PORT_TYPES if name[0] == letter and (not types or name in types)]
    return fit[0] if len(fit) == 1 else None


def _port(words: list[str], kind: str, label: str, hint: Hint, torn: bool = False) -> Port | str:
    if torn:
        return "more words stand there than controller, port type and label"
    odd = [word for word in words if word.casefold() in _NO_CONTROLLER or word.isdecimal()]
    if odd or any("?" in word for word in words):
        return f'"{" ".join(words)}" names no controller'
    if not label:
        return "the label of its port is missing"
    if not _LABEL.fullmatch(label):
        return f'"{label}" is no label of a port'
    return Port("-".join(words) or hint.controller, kind, label)
