"""Look-ups of the settings: one row -> the rule that it stands for."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from typing import Literal, cast

from msgspec.structs import replace

from namegen.loading.nodes import Node, NodePlaces
from namegen.loading.shapes.workspace import LookupShape
from namegen.model.boards import Places
from namegen.model.findings import Fault
from namegen.model.workspaces import LookupRule, Shape

_WORD = re.compile(r"[^\W\d][\w$]*|[$][\w$]*")
_PARTS = re.compile(r"[\w$]+")


def lookup_rule(shape: LookupShape, node: Node, faults: list[Fault]) -> LookupRule | None:
    """Return the rule of one row, or None with a fault when it does not say what is called."""
    given = [name for name in shape.exactly_one if getattr(shape, name)]
    if len(given) != 1:
        faults.append(_not_one(given, node))
        return None
    says = [name for name in ("kind", "kind_at", "kind_by") if getattr(shape, name) is not None]
    if len(says) > 1:
        message = f"{_listed(says)} both say where the kind comes from. Delete all but one."
        faults.append(Fault("wrong-value", message, node.place))
    places = dict(NodePlaces(node))  # rules travel to a second process: no tree with them
    faults += _idle(shape, node, places) if not (shape.kind or says[1:]) else ()
    faults += _no_words(shape, given[0], places)
    return LookupRule(
        shape=cast(Shape, given[0]),
        called=getattr(shape, given[0]),
        on=shape.on,
        name_at=_positions(shape),
        name_key=shape.name_key,
        kind=shape.kind,
        kind_at=shape.kind_at,
        kind_by=shape.kind_by,  # type: ignore[arg-type]
        kinds=shape.kinds or {},
        languages=tuple(shape.languages or ()),
        places=places,
    )


def _idle(shape: LookupShape, node: Node, places: Places) -> Iterator[Fault]:
    """Yield what says the kind by half: such a row would judge no kind, and say nothing of it."""
    says = next((one for one in ("kind_at", "kind_by") if getattr(shape, one) is not None), None)
    if says and not shape.kinds:
        message = (
            f"`{says}` says where the code tells the kind; add what each word there means, such as "
            "`kinds: {Motor: motor}`."
        )
        yield Fault("missing-field", message, places.get(says, node.place))
    elif shape.kinds and not says:
        message = (
            "`kinds` says what words in the code mean; add where they stand, such as `kind_at: 1` "
            "for the second argument."
        )
        yield Fault("missing-field", message, places.get("kinds", node.place))


def _no_words(shape: LookupShape, given: str, places: Places) -> Iterator[Fault]:
    """Yield each field that is to be one word of the code and is not: it would never be found."""
    for field in (given, "on"):
        text = getattr(shape, field)
        if text is None or _WORD.fullmatch(text) or field not in places:
            continue
        *before, last = _PARTS.findall(text) or [""]
        advice = f"Write `{field}: {last}`" if last else "Write the word as it stands in the code"
        if before and field == "call":
            advice += f", and `on: {before[-1]}` where only that receiver counts"
        message = f"One word of the code is expected here, without dots and brackets. {advice}."
        yield Fault("wrong-value", message, places[field], text, last or None)


def with_known_kinds(rule: LookupRule, known: Collection[str]) -> LookupRule:
    """Return the rule without kinds that do not exist, which it keeps under ``unknown``.

    A slip in the row is a finding at the row: right code must not be blamed for it.
    """
    unknown = {f"kinds.{word}": kind for word, kind in rule.kinds.items() if kind not in known}
    kinds = {word: kind for word, kind in rule.kinds.items() if kind in known}
    if rule.kind is None or rule.kind in known:
        return replace(rule, kinds=kinds, unknown=unknown) if unknown else rule
    return replace(rule, kind=None, kinds=kinds, unknown={"kind": rule.kind, **unknown})


def _positions(shape: LookupShape) -> tuple[int, ...] | Literal["rest"]:
    if shape.name_at == "rest":
        return "rest"
    return (0,) if shape.name_at is None else cast(tuple[int, ...], shape.name_at)


def _not_one(given: list[str], node: Node) -> Fault:
    which = f"has {_listed(given)}; delete all but one" if given else "has none of them; add one"
    message = (
        "A look-up has exactly one of `call`, `new`, `annotation` and `subscript`, such as "
        f"`call: motor`. This one {which}."
    )
    return Fault("wrong-value" if given else "missing-field", message, node.place)


def _listed(names: list[str]) -> str:
    return " and ".join(f"`{name}`" for name in names)
