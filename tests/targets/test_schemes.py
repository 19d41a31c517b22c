"""How languages spell identifiers, held against the languages themselves."""

from __future__ import annotations

import builtins
import keyword
import re
import subprocess
from pathlib import Path

import pytest

from namegen.model.identifiers import NamingScheme
from namegen.targets.schemes import naming_schemes
from targets.boats import device

SCHEMES = naming_schemes()
JUDGE = """\
import javax.lang.model.SourceVersion;

final class Judge {
  public static void main(String[] words) {
    for (String word : words) {
      System.out.println(word + " " + SourceVersion.isName(word, SourceVersion.RELEASE_17));
    }
  }
}
"""


def because(scheme: NamingScheme, *reasons: str) -> list[str]:
    """Return the reserved words whose reason holds one of the texts."""
    found = [w for w, why in scheme.reserved.items() if any(reason in why for reason in reasons)]
    assert found
    return found


def test_four_languages_are_known():
    assert set(SCHEMES) == {"cpp", "java", "kotlin", "python"}


@pytest.mark.parametrize("scheme", SCHEMES.values(), ids=lambda scheme: scheme.language)
def test_every_reserved_word_is_a_text_with_a_reason(scheme: NamingScheme):
    for word, why in scheme.reserved.items():
        assert isinstance(word, str) and re.fullmatch(r"\w+", word)
        assert len(why) > 10


@pytest.mark.parametrize(
    ("language", "constant", "type_name", "field"),
    [
        ("python", "BOW_THRUSTER", "BowThruster", "bow_thruster"),
        ("java", "BOW_THRUSTER", "BowThruster", "bowThruster"),
        ("kotlin", "BOW_THRUSTER", "BowThruster", "bowThruster"),
        ("cpp", "kBowThruster", "BowThruster", "bow_thruster"),
    ],
)
def test_names_in_the_language_s_own_cases(language, constant, type_name, field):
    """The cases of PEP 8 and of the Google style guides for Java and C++ (from memory)."""
    scheme, thruster = SCHEMES[language], device("bowThruster", "motor")
    assert scheme.constant(thruster) == constant
    assert scheme.type_name("bowThruster") == type_name
    assert scheme.field_name(thruster) == field


def test_python_keywords_and_soft_keywords():
    """The keyword module of the running Python."""
    scheme = SCHEMES["python"]
    for word in [*keyword.kwlist, *keyword.softkwlist]:
        assert word in scheme.reserved or not scheme.valid(word), word
    for word in because(scheme, "a keyword of Python"):
        assert keyword.iskeyword(word)


def test_python_builtins_that_a_class_would_hide():
    """The builtins of the running Python."""
    for name in dir(builtins):
        if re.fullmatch(r"[A-Z]\w*", name) and not keyword.iskeyword(name):
            assert name in SCHEMES["python"].reserved, name


def test_what_python_calls_valid_is_an_identifier():
    scheme = SCHEMES["python"]
    for text in ("A", "a1_b", "BOW_THRUSTER2"):
        assert scheme.valid(text) and text.isidentifier()
    for text in ("", "1A", "_A", "BÖG", "A-B", "A B", "A\n", "ﬁ"):
        assert not scheme.valid(text), text


def judged(java: str, folder: Path, words: list[str]) -> dict[str, bool]:
    (folder / "Judge.java").write_text(JUDGE, encoding="ascii")
    done = subprocess.run(
        [java, folder / "Judge.java", *words], capture_output=True, text=True, check=True
    )
    pairs = (line.split(" ") for line in done.stdout.splitlines())
    return {word: verdict == "true" for word, verdict in pairs}


def test_java_words_by_source_version(tool, tmp_path):
    """javax.lang.model.SourceVersion.isName for Java 17."""
    scheme = SCHEMES["java"]
    refused = because(scheme, "a keyword of Java", "a literal of Java")
    ordinary = ["BOW_THRUSTER", "bowThruster", "linux", "object", "Motor2"]
    verdicts = judged(tool("java"), tmp_path, [*refused, *ordinary])
    assert [word for word, valid in verdicts.items() if valid] == ordinary
    assert all(scheme.valid(word) and word not in scheme.reserved for word in ordinary)


def test_java_does_not_allow_these_as_types(tool, tmp_path):
    words = because(SCHEMES["java"], "name of a type")
    for word in words:
        (tmp_path / f"Of{word}.java").write_text(f"class Of{word} {{ static class {word} {{}} }}\n")
    done = subprocess.run(
        [tool("javac"), "--release", "17", "-d", "out", *tmp_path.glob("*.java")],
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert {word for word in words if f"Of{word}.java:1: error" in done.stderr} == set(words)


def accepted(tool: str, folder: Path, flag: str, texts: dict[str, str]) -> set[str]:
    """Return the names of those translation units that g++ accepts."""
    for name, text in texts.items():
        (folder / f"{name}.cc").write_text(text)
    files = [f"{name}.cc" for name in texts]
    done = subprocess.run(
        [tool, flag, "-fsyntax-only", *files], cwd=folder, capture_output=True, text=True,
        check=False,
    )  # fmt: skip
    return {name for name in texts if not re.search(rf"^{name}\.cc:.*error", done.stderr, re.M)}


def test_cpp_words_by_gcc(tool, tmp_path):
    """g++ in C++20 mode: a variable of that name does not compile."""
    words = because(SCHEMES["cpp"], "a keyword of C++", "another spelling")
    texts = {word: f"int {word} = 1;\n" for word in words} | {"bow_thruster": "int bow = 1;\n"}
    assert accepted(tool("g++"), tmp_path, "-std=c++20", texts) == {"bow_thruster"}


def test_cpp_macros_by_gcc(tool, tmp_path):
    """g++ in GNU C++17 mode with the headers that define them."""
    words = because(SCHEMES["cpp"], "unasked", "standard libraries")
    headers = "cassert cerrno climits cmath csetjmp csignal cstdarg cstddef cstdint cstdio cstdlib"
    lines = "".join(f"#include <{header}>\n" for header in headers.split())
    asks = "".join(f"#ifndef {word}\n#error no {word}.\n#endif\n" for word in [*words, "bow"])
    (tmp_path / "macros.cc").write_text(lines + asks)
    done = subprocess.run(
        [tool("g++"), "-std=gnu++17", "-fsyntax-only", "macros.cc"],
        cwd=tmp_path, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert set(re.findall(r"#error no (\w+)\.$", done.stderr, re.M)) == {"bow"}
