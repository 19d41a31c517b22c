"""The settings that a target declares and a build entry gives under ``with:``."""

from __future__ import annotations

import difflib
import re
from collections.abc import Collection, Mapping
from typing import Literal

from msgspec import Struct, field

from namegen.errors import UnusableTarget
from namegen.model.identifiers import NamingScheme
from namegen.model.workspaces import OptionValue
from namegen.targets.unescaped import Unescaped, raw

TYPES: Mapping[str, type] = {
    "text": str,
    "boolean": bool,
    "number": int,
    "texts": tuple,
    "by-kind": dict,
}
EVERY_OTHER = "*"
Identifies = Literal["type", "other"]


class ByKind(Struct, frozen=True):
    """A text for each kind, which a template reads with ``options.look_up[device.kind]``."""

    option: str
    texts: Mapping[str, str | Unescaped]

    def has(self, kind: str) -> bool:
        """Whether there is a text for a kind."""
        return kind in self.texts or EVERY_OTHER in self.texts

    def __getitem__(self, kind: object) -> str | Unescaped:
        """Return the text of a kind, or else that of every other kind.

        Raises:
            UnusableTarget: there is neither.
        """
        name = raw(kind)
        if not self.has(name):
            raise UnusableTarget(self.gap(name))
        return self.texts[name if name in self.texts else EVERY_OTHER]

    def gap(self, kind: str) -> str:
        """Return what to say where there is no text for a kind."""
        return (
            f'option {self.option} says nothing for the kind "{kind}". '
            f'Add `{kind}: ...` to it, or `"{EVERY_OTHER}": ...` for every other kind.'
        )


class Terms(Struct, frozen=True):
    """What the texts of one output's options may say.

    ``words`` stand for place holders in braces; ``kinds`` are those that an
    option by kind may name; ``scheme`` has the words that cannot name anything.
    """

    words: Mapping[str, str] = field(default_factory=dict)
    kinds: Collection[str] = ()
    scheme: NamingScheme | None = None


Setting = str | bool | int | Unescaped | tuple[str | Unescaped, ...] | ByKind


class Option(Struct, frozen=True):
    """A setting that a build entry may give under ``with:``.

    ``default`` None means that it must be given. A text with a ``pattern``
    matches it as a whole and is a plain string for the template; one without
    is manifest text and wants an escape. The same holds for each of several
    texts and for the text of each kind. Texts may hold ``{robot}``,
    ``{Robot}`` and ``{stem}``, the output's file name without its ending.
    A text that ``identifies`` something in the target's language, alone or by
    several words such as ``club.boats``, has no reserved word in it.
    """

    name: str
    type: str
    help: str
    default: OptionValue | None = None
    pattern: str | None = None
    identifies: Identifies | None = None

    def fits(self, value: object) -> bool:
        """Whether a value is of the option's type."""
        if type(value) is not TYPES[self.type]:
            return False
        if isinstance(value, dict):
            value = tuple(value.values())
        return not isinstance(value, tuple) or all(isinstance(one, str) for one in value)

    def setting(self, given: OptionValue | None, target: str, terms: Terms) -> Setting:
        """Return what the template sees of a given value, or of the default.

        Raises:
            UnusableTarget: it must be given, is of another type, does not
                match the pattern, has a reserved word of the language, or is
                for a kind that there is not.
        """
        where = f"{target}, option {self.name}"
        value = self.default if given is None else given
        if value is None:
            raise UnusableTarget("must be given under `with:`", where=where, remedy=self.help)
        if self.type == "texts" and isinstance(value, str):
            value = (value,)
        if not self.fits(value):
            raise UnusableTarget(_other_type(value, self.type), where=where, remedy=self.help)
        if isinstance(value, str):
            text = self._text(value, where, terms)
            if self.identifies and terms.scheme and isinstance(text, str):
                self._check_words(text, where, terms.scheme)
            return text
        if isinstance(value, tuple):
            return tuple(self._text(one, where, terms) for one in value)
        if isinstance(value, Mapping):
            _check_kinds(value, terms.kinds, where)
            texts = {kind: self._text(one, where, terms) for kind, one in value.items()}
            return ByKind(self.name, texts)
        return value

    def _text(self, value: str, where: str, terms: Terms) -> str | Unescaped:
        text = re.sub(r"\{(\w+)\}", lambda match: terms.words.get(match[1], match[0]), value)
        if self.pattern is None:
            return Unescaped(text)
        if re.fullmatch(self.pattern, text) is None:
            raise UnusableTarget(f"{text!r} cannot be used", where=where, remedy=self.help)
        return text

    def _check_words(self, text: str, where: str, scheme: NamingScheme) -> None:
        free = frozenset() if self.identifies == "type" else scheme.soft
        for word in re.findall(r"\w+", text):
            if word in scheme.reserved and word not in free:
                raise UnusableTarget(
                    f'{text!r} cannot be used: "{word}" is {scheme.reserved[word]}',
                    where=where,
                    remedy=self.help,
                )


def _other_type(value: object, wanted: str) -> str:
    shown = repr(value)
    if isinstance(value, tuple):
        shown = f"[{', '.join(map(str, value))}]"
    if isinstance(value, dict):
        shown = f"{{{', '.join(f'{key}: {text}' for key, text in value.items())}}}"
    if wanted == "by-kind":
        return f"{shown} is no mapping: write a text for each kind, {{motor: ..., servo: ...}}"
    if wanted == "texts":
        return f"{shown} is no list of texts: write [one, two]"
    ways = {"boolean": ": write true or false", "number": ": write a number, without quotes"}
    return f"{shown} is not a {wanted}{ways.get(wanted, '')}"


def _check_kinds(given: Collection[str], kinds: Collection[str], where: str) -> None:
    for kind in given:
        if kind not in kinds and kind != EVERY_OTHER:
            near = difflib.get_close_matches(kind, kinds, n=1)
            hint = f'Did you mean "{near[0]}"? ' if near else ""
            raise UnusableTarget(
                f'there is no kind "{kind}"',
                where=where,
                remedy=f"{hint}The kinds: {', '.join(sorted(kinds))}.",
            )
