"""Words that the catalogue does not declare: kinds and port types."""

from __future__ import annotations

from collections.abc import Iterable

from namegen.loading.wordings import nearest
from namegen.model.findings import Fault
from namegen.model.places import Place


def unknown_kind(
    kind: str, place: Place, known: Iterable[str], port_type: str | None = None
) -> Fault:
    """Return the fault of a kind that is not declared; ``port_type`` is where it is plugged in."""
    inside = f"port: {port_type}" if port_type else ""
    declare = f"A kind of your own is declared in the catalogue: `kinds: {{{kind}: {{{inside}}}}}`."
    return _unknown(kind, place, "no kind that namegen knows", known, declare)


def unknown_port_type(word: str, place: Place, known: Iterable[str]) -> Fault:
    """Return the fault of a port type that is not declared."""
    declare = (
        "A port type of your own is declared in the catalogue: "
        f"`port_types: {{{'-'.join(word.split())}: {{}}}}`."
    )
    return _unknown(word, place, "no port type that namegen knows", known, declare)


def no_such_ports(word: str, place: Place, known: Iterable[str]) -> Fault:
    """Return the fault of a figure for ports that a board does not have."""
    declare = f"List their labels: `ports: {{{word}: 1-3}}`, or take this figure out."
    return _unknown(word, place, "none of the `ports` of this board", known, declare)


def _unknown(word: str, place: Place, what: str, words: Iterable[str], declare: str) -> Fault:
    known = list(words)
    close = nearest(word, known)
    if close:
        hint = f"Did you mean `{close}`?"
    else:
        hint = f"There are: {', '.join(known)}. {declare}" if known else declare
    return Fault("wrong-value", f"`{word}` is {what}. {hint}", place, word, close)
