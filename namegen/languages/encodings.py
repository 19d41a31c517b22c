"""A file's bytes as text, and the way back without losing a byte."""

from __future__ import annotations

from msgspec import Struct

from namegen.errors import UnusableInput

UTF8_MARK = b"\xef\xbb\xbf"


class Decoded(Struct, frozen=True):
    """A file's text with what is needed to write it again as it was.

    ``text`` has no byte order mark and keeps its line ends; ``mark`` are the
    bytes of the mark, if there was one.
    """

    text: str
    encoding: str
    mark: bytes = b""

    @property
    def utf8(self) -> bytes:
        """The text in UTF-8, for `Language.read`.

        Raises:
            UnusableInput: it holds half a character (a lone surrogate).
        """
        try:
            return self.text.encode("utf-8")
        except UnicodeEncodeError as error:
            raise UnusableInput(
                "it holds half a character, which no UTF-8 text can",
                remedy="write that character anew",
            ) from error

    def encode(self, text: str) -> bytes:
        """Return another text in this file's encoding, with its byte order mark.

        Raises:
            UnusableInput: a character does not exist in the encoding.
        """
        try:
            return self.mark + text.encode(self.encoding)
        except (UnicodeError, LookupError) as error:
            raise UnusableInput(
                f"the new text cannot be written in the file's encoding, {self.encoding}",
                remedy="save the file as UTF-8",
            ) from error

    def survives(self, data: bytes) -> bool:
        """Whether writing the text again gives the same bytes; else the file is not rewritten."""
        try:
            return self.encode(self.text) == data
        except UnusableInput:
            return False


def decode_as(data: bytes, encoding: str, declared: bool = True) -> Decoded:
    """Return bytes decoded strictly; a UTF-8 byte order mark is set aside.

    ``declared`` is False where the file could say its encoding but does not.

    Raises:
        UnusableInput: they are no text in that encoding, or hold a NUL.
    """
    mark = UTF8_MARK if data.startswith(UTF8_MARK) else b""
    if b"\0" in data:
        raise UnusableInput(
            "it holds a NUL byte, so it is no source text",
            remedy="save it as UTF-8, or leave the file out by `exclude` in namegen.yaml",
        )
    try:
        text = data[len(mark) :].decode(encoding)
    except LookupError as error:
        raise UnusableInput(
            f"it declares the encoding {encoding!r}, which is not known",
            remedy="correct the `coding` comment, or save the file as UTF-8",
        ) from error
    except UnicodeError as error:
        raise UnusableInput(
            f"it is not text in {_shown(encoding)} ({_reason(error)})"
            + ("" if declared else ", and its first line declares no other encoding"),
            remedy="save the file as UTF-8"
            + ("" if declared else ", or declare its encoding in its first line"),
        ) from error
    return Decoded(text, encoding, mark)


def decode_older(data: bytes) -> Decoded:
    """Return bytes as UTF-8, or else as Latin-1, which older projects use.

    Raises:
        UnusableInput: they hold a NUL.
    """
    try:
        return decode_as(data, "utf-8")
    except UnusableInput:
        return decode_as(data, "latin-1")


def _reason(error: UnicodeError) -> str:
    if isinstance(error, UnicodeDecodeError):
        return f"{error.reason} at byte {error.start}"
    return str(error)


def _shown(encoding: str) -> str:
    return "UTF-8" if encoding.lower().replace("_", "-") in {"utf-8", "utf8"} else encoding
