"""Files with thousands of like names are read in time that grows with the file.

What goes through all names of a word for each of them would take twenty seconds and more here.
"""

from __future__ import annotations

import time

import pytest

from tests.languages.asking import java, kotlin

MANY = 2_000
JAVA = {
    "classes that are derived": (
        'class B { String n = "a"; }',
        'class D{0} extends B {{ void go() {{ n = "x"; motor(n); }} }}',
        "",
    ),
    "classes with a name of their own": (
        "class B { }",
        'class D{0} extends B {{ String n; D{0}() {{ n = "x"; }} void go() {{ motor(n); }} }}',
        "",
    ),
    "local names": ("class A {", 'void f{0}() {{ String n = "a"; n = "b"; motor(n); }}', "}"),
    "changes through objects": (
        'class B { String n = "a"; } class A {',
        'void f{0}(B b) {{ b.n = "x"; motor(b.n); }}',
        "}",
    ),
    "methods that hand a list on": (
        "class A {",
        "void f{0}(String[] a) {{ String[] m = a; f{1}(m); for (String s : m) motor(s); }}",
        "}",
    ),
}
KOTLIN = {
    "classes that are derived": (
        'open class B { var n = "a" }',
        'class D{0} : B() {{ fun go() {{ n = "x"; motor(n) }} }}',
        "",
    ),
    "changes through objects": (
        'class B { var n = "a" }',
        'fun f{0}(b: B) {{ b.n = "x"; motor(b.n) }}',
        "",
    ),
    "functions that hand a list on": (
        "class A {",
        "fun f{0}(a: MutableList<String>) {{ val m = a; f{1}(m); for (s in m) motor(s) }}",
        "}",
    ),
}
CASES = [(java, name, *parts) for name, parts in JAVA.items()]
CASES += [(kotlin, name, *parts) for name, parts in KOTLIN.items()]


@pytest.mark.parametrize(("read", "name", "first", "each", "last"), CASES)
def test_many_like_names_are_read_in_time(read, name, first, each, last):
    lines = [each.format(at, at + 1) for at in range(MANY)]
    started = time.process_time()
    assert len(read("\n".join([first, *lines, last, ""]))) >= 2
    assert time.process_time() - started < 8  # each takes half a second
