"""Languages are found by walking their folder, and loaded only when a file needs one."""

from __future__ import annotations

import subprocess
import sys

import pytest

from namegen import languages


@pytest.mark.parametrize(
    ("path", "name"),
    [
        ("code/a.py", "python"),
        ("a.PYW", "python"),
        ("a.pyi", "python"),
        ("A.java", "java"),
        ("a/B.kt", "kotlin"),
        ("build.gradle.kts", "kotlin"),
        *(
            (f"src/a.{end}", "cpp")
            for end in ("cpp", "cc", "cxx", "hpp", "hh", "hxx", "h", "ino", "CPP")
        ),
    ],
)
def test_extension_tells_the_language(path, name):
    language = languages.for_path(path)
    assert language is not None
    assert language.name == name


@pytest.mark.parametrize("path", ["README.md", "Makefile", "java", ".py/x", "a.py.txt", ""])
def test_other_files_have_none(path):
    assert languages.for_path(path) is None


def test_unknown_language_is_a_key_error():
    with pytest.raises(KeyError):
        languages.named("latin")


def test_looking_at_extensions_loads_no_parser():
    code = (
        "import sys; from namegen import languages; languages.for_path('a.md');"
        "sys.exit(any(m.startswith(('tree_sitter', 'libcst')) for m in sys.modules))"
    )
    assert subprocess.run([sys.executable, "-c", code], check=False).returncode == 0
