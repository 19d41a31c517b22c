"""Names taken apart once, to be compared with many texts."""

from __future__ import annotations

import re
from collections.abc import Sequence

from msgspec import Struct

from namegen.text.lookalikes import skeleton
from namegen.text.sounds import as_heard
from namegen.text.words import split

_NUMBER = re.compile(r"\d+")


class Candidate(Struct, frozen=True):
    """A name that may have been meant, and what kind of thing it names."""

    name: str
    kind: str | None = None


class Form(Struct, frozen=True):
    """A text taken apart: words and ``key``, all its letters and digits, in lower case."""

    text: str
    words: tuple[str, ...]
    key: str
    numbers: tuple[str, ...]
    look: str
    """Its skeleton without case: equal for texts that look alike."""

    @classmethod
    def of(cls, text: str) -> Form:
        """Take a text apart."""
        words = tuple(word.casefold() for word in split(text))
        key = "".join(words)
        return cls(text, words, key, tuple(_NUMBER.findall(key)), skeleton(text).casefold())

    def rewrites(self, other: Form) -> bool:
        """Whether two texts differ at most in case, separators and look-alike letters."""
        return self.key == other.key or self.look == other.look


class Roster:
    """Candidates ready for many questions; compared by identity, so that answers can be kept."""

    def __init__(self, candidates: Sequence[Candidate]) -> None:
        self.candidates = candidates
        self.forms = [Form.of(candidate.name) for candidate in candidates]
        self.keys = [form.key for form in self.forms]
        self.heard = [as_heard(key) for key in self.keys]
        self.words = frozenset(word for form in self.forms for word in form.words)
