"""Characters beyond the first 65,536 as the two halves by which some languages write them."""

from __future__ import annotations


def joined(text: str) -> str:
    r"""Return the text with pairs of surrogates as the one character they stand for.

    >>> joined("\ud83d\udea4") == "\U0001f6a4"
    True
    """
    if not any("\ud800" <= character <= "\udfff" for character in text):
        return text
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "surrogatepass")


def escaped(character: str) -> str:
    r"""Return a character as escapes with four digits, two of them where it has two halves.

    >>> escaped("\t"), escaped("\U0001f6a4")
    ('\\u0009', '\\ud83d\\udea4')
    """
    units = character.encode("utf-16-be", "surrogatepass")
    return "".join(f"\\u{units[i]:02x}{units[i + 1]:02x}" for i in range(0, len(units), 2))
