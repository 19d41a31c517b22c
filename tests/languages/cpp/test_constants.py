"""Literals that cannot become constants, or only from the outermost namespace: g++ is asked."""

from __future__ import annotations

import subprocess
from collections.abc import Callable
from pathlib import Path

import pytest

from namegen import languages
from namegen.errors import UnusableInput
from namegen.model.facts import ConstantUse, Surroundings, Text
from namegen.model.places import Span

HEADER = """\
#pragma once
namespace heron { struct Motor { static constexpr char kBow[] = "bow"; }; }
"""
LIBRARY = """\
#include <array>
#include <cstring>
#include <string>
#include <vector>
#include "heron.h"
struct Motor {};
inline Motor motor(const std::string&) { return {}; }
inline Motor motor_at(const char*, int) { return {}; }
"""
WORDS = ("heron", "Motor", "kBow")
LEFT = [
    ("typedef char Name[9]; const Name n = LITERAL;", "array of letters"),
    ("using Name = char[9]; const Name n = LITERAL;", "array of letters"),
    ("using Name = char[9]; const Name all[] = {LITERAL};", "array of letters"),
    ("using Name = char[9]; struct A { Name n = LITERAL; };", "array of letters"),
    ("typedef char Name[9]; typedef Name Other; const Other n{LITERAL};", "array of letters"),
    ("typedef char Letter; const Letter n[] = LITERAL;", "array of letters"),
    ("using Letter = char; const Letter n[] = {LITERAL};", "array of letters"),
    ("const unsigned char n[] = LITERAL;", "array of letters"),
    ("const unsigned char n[] = {LITERAL};", "array of letters"),
    ("struct A { const unsigned char n[4] = LITERAL; };", "array of letters"),
    ("std::array<char, 8> n = {LITERAL};", "array of letters"),
    ("std::array<char, 8> n{LITERAL};", "array of letters"),
    ("std::array<char[8], 2> n{{LITERAL}};", "array of letters"),
    ("auto n = std::array<char, 8>{LITERAL};", "array of letters"),
    ("struct A { char n[9]; int side; }; A a = {LITERAL, 3};", "array of letters"),
    ("struct A { char n[9]; int side; }; A all[] = {{LITERAL, 3}};", "array of letters"),
    ("struct A { int side; char n[9]; }; auto a = A{.n = LITERAL};", "array of letters"),
    ("struct A { int side; char n[9]; }; A* a = new A{3, LITERAL};", "array of letters"),
    ('#define motor(n) motor_at(n "", 0)\nMotor m = motor(LITERAL);', "macro"),
    ('#define at(n) (n "x")\nMotor m = motor(std::string(at(LITERAL)));', "macro"),
    ('#define at(n) (n "x")\nMotor m = motor(std::string(at(1 ? "y" : LITERAL)));', "macro"),
    ("#define heron boat\nMotor m = motor(LITERAL);", "macro"),
    ("#define kBow 3\nMotor m = motor(LITERAL);", "macro"),
]
DONE = [
    "namespace a { namespace heron { int n; } Motor m = motor(LITERAL); }",
    "namespace a::heron { Motor m = motor(LITERAL); }",
    "namespace b { int n; } namespace a { namespace heron = b; Motor m = motor(LITERAL); }",
    "namespace heron { Motor n = {}; } Motor m = motor(LITERAL);",
    "using Text = const char*; const Text n = LITERAL; const Text all[] = {LITERAL};",
    "typedef const char* Text; Text n{LITERAL};",
    "const char (&n)[4] = LITERAL;",
    "const std::string all[] = {LITERAL}; std::array<const char*, 2> two{LITERAL, LITERAL};",
    "struct A { const char* n; char side[2]; }; void f(A) {} Motor m = motor(LITERAL);",
    "struct A { const char* n = LITERAL; }; A a{LITERAL}; A* b = new A{LITERAL};",
    "struct A { char n[9]; A(const char* s) { std::strcpy(n, s); } }; A a(LITERAL);",
    "#define LEFT 3\nMotor m = motor(LITERAL);",
    "std::vector<std::string> all{LITERAL}; auto two = std::array{LITERAL, LITERAL};",
]


def uses(code: bytes) -> list[ConstantUse]:
    found: list[ConstantUse] = []
    at = code.find(b'"bow"')
    while at >= 0:
        text = Text("bow", Span(at + 1, at + 4), '"')
        found.append(ConstantUse(text, WORDS, "heron.h", HEADER.encode()))
        at = code.find(b'"bow"', at + 1)
    return found


@pytest.fixture
def compiles(tmp_path: Path, tool: Callable[[str], str]) -> Callable[[str], bool]:
    (tmp_path / "heron.h").write_text(HEADER)
    (tmp_path / "lib.h").write_text(LIBRARY)

    def answer(code: str) -> bool:
        (tmp_path / "main.cpp").write_text(code)
        command = [tool("g++"), "-std=c++20", "-w", "-fsyntax-only", "-I.", "-include", "lib.h"]
        done = subprocess.run(
            [*command, "main.cpp"], cwd=tmp_path, capture_output=True, check=False
        )
        return done.returncode == 0

    return answer


def changed(code: str) -> str:
    data = code.encode()
    here = Surroundings("main.cpp")
    return languages.named("cpp").use_constants(data, uses(data), here).decode()


@pytest.mark.parametrize(("code", "why"), LEFT)
def test_what_takes_a_literal_alone_is_left(code: str, why: str, compiles: Callable[[str], bool]):
    assert compiles(code.replace("LITERAL", '"bow"'))
    assert not compiles(code.replace("LITERAL", "::heron::Motor::kBow"))
    with pytest.raises(UnusableInput, match=why):
        changed(code.replace("LITERAL", '"bow"'))


@pytest.mark.parametrize("code", DONE)
def test_what_takes_a_constant_gets_it(code: str, compiles: Callable[[str], bool]):
    before = code.replace("LITERAL", '"bow"')
    after = changed(before)
    assert '"bow"' not in after
    assert compiles(before)
    assert compiles(after)
