"""Options that name a package, a namespace, a type or a variable hold no reserved word."""

from __future__ import annotations

import pytest

from namegen.errors import UnusableTarget
from namegen.targets.schemes import naming_schemes
from targets.boats import HERON, robot
from targets.standins import CPP, JAVA, KOTLIN, OPTIONS, PYTHON
from targets.test_java_constants import compile_all


@pytest.mark.parametrize(
    ("target", "option", "given", "why"),
    [
        ("java-constants", "package", "club.new", '"new" is a keyword of Java'),
        ("java-constants", "package", "club.true", '"true" is a literal of Java'),
        ("java-constants", "class", "record", "does not allow as the name of a type"),
        ("java-constants", "class", "String", "the generated file uses itself"),
        ("java-bindings", "class", "Search", "a word that the generated code needs itself"),
        ("java-bindings", "through", "switch", '"switch" is a keyword of Java'),
        ("kotlin-constants", "package", "club.fun", '"fun" is a hard keyword of Kotlin'),
        ("kotlin-constants", "object", "List", "the generated file uses itself"),
        ("kotlin-bindings", "class", "Seen", "a word that the generated code needs itself"),
        ("kotlin-bindings", "through", "object", '"object" is a hard keyword of Kotlin'),
        ("cpp-constants", "namespace", "club::long", '"long" is a keyword of C++'),
        ("cpp-constants", "namespace", "std", "the generated file uses itself"),
        ("cpp-constants", "namespace", "unix", "a macro that many compilers define unasked"),
        ("cpp-bindings", "through", "new", '"new" is a keyword of C++'),
        ("python-constants", "kinds_from", "shared.class", '"class" is a keyword of Python'),
        ("python-bindings", "through", "with", '"with" is a keyword of Python'),
    ],
)
def test_a_reserved_word_is_refused_with_its_reason_and_the_remedy(
    make, target, option, given, why
):
    with pytest.raises(UnusableTarget) as caught:
        make(target, path="out/Heron.txt", **{**OPTIONS.get(target, {}), option: given})
    assert caught.value.where == f"target {target}, option {option}"
    assert caught.value.what.startswith(f"{given!r} cannot be used: ")
    assert why in caught.value.what
    assert caught.value.remedy


@pytest.mark.parametrize(
    ("target", "option"),
    [("java-constants", "class"), ("kotlin-constants", "object"), ("cpp-constants", "namespace")],
)
def test_a_file_named_by_a_reserved_word_wants_the_option(make, target, option):
    with pytest.raises(UnusableTarget, match=f"option {option}: 'do' cannot be used"):
        make(target, path="out/do.txt")
    assert "Bow" in make(target, path="out/do.txt", **{option: "Bow"})


@pytest.mark.parametrize(
    ("target", "given"),
    [("java-constants", {"package": "club._"}), ("kotlin-constants", {"object": "__"}),
     ("java-constants", {"class": "Bøw"}), ("cpp-constants", {"namespace": "two__marks"})],
)  # fmt: skip
def test_what_a_compiler_keeps_for_itself_is_refused(make, target, given):
    with pytest.raises(UnusableTarget, match="cannot be used"):
        make(target, path="out/Heron.txt", **given)


def test_soft_words_of_java_are_taken_where_javac_takes_them(make, tool, tmp_path):
    soft = naming_schemes()["java"].soft
    assert soft == {"permits", "record", "sealed", "var", "yield"}
    for word in soft:
        look_up = {"*": word + ".find({name}, {type}.class)"}
        types = {"*": "club.Boat.Part"}
        given = {"package": f"club.{word}", "through": word, "through_type": "club.Boat"}
        given |= {"class": f"Start{word}", "types": types, "look_up": look_up}
        text = make("java-bindings", HERON, f"Start{word}.java", **given)
        (tmp_path / f"Start{word}.java").write_text(text)
    (tmp_path / "Boat.java").write_text(
        "package club;\npublic final class Boat {\n  public static class Part {}\n"
        "  public <T> T find(String name, Class<T> sort) {\n    return null;\n  }\n}\n"
    )
    compile_all(tool("javac"), "17", tmp_path)


def test_soft_words_of_python_are_taken_where_python_takes_them(make):
    soft = naming_schemes()["python"].soft
    assert soft == {"case", "match", "type"}
    for word in soft:
        compile(make("python-constants", kinds_from=f"club.{word}"), "devices.py", "exec")
        look_up = {"*": word + ".fitted({name}, {type})"}
        text = make("python-bindings", **{**PYTHON, "through": word, "look_up": look_up})
        compile(text, "start_up.py", "exec")


@pytest.mark.parametrize(
    ("target", "options"),
    [("java-bindings", JAVA), ("kotlin-bindings", KOTLIN), ("cpp-bindings", CPP)],
)
def test_a_word_that_only_holds_a_reserved_one_is_free(make, target, options):
    given = {**options, "through": "news", "look_up": {"*": "news.find({name})"}}
    assert "news.find" in make(target, HERON, "out/Heron.txt", **given)
    assert make(target, robot(), "out/Heron.txt", **given)
