"""What a name of a Java file stands for, told by the look-up that it reaches."""

from __future__ import annotations

import pytest

from tests.languages.asking import Code, java

HANDED_ON = "[what it runs over is not known: it may be changed through another name]"
ALTERED = "[what it runs over is not known: an element of it may be changed]"
FOLLOWED = [
    ('static final String N = "bow"; void f() { motor(N); }', ["bow"]),
    ('static final String N = "bow"; void f() { motor(this.N); motor(Main.N); }', ["bow", "bow"]),
    ('static final String S = "bow", N = S + "T"; void f() { motor(N); }', ["bowT"]),
    ('void f() { String n = "bow"; motor(n); }', ["bow"]),
    ('void f() { var n = ("bow"); motor(n); }', ["bow"]),
    ('void f() { String n; n = "bow"; motor(n); }', ["bow"]),
    ('void f() { { String n = "a"; motor(n); } { String n = "b"; motor(n); } }', ["a", "b"]),
    ('String n = "a"; void f() { String n = "b"; motor(n); motor(this.n); }', ["b", "a"]),
    ('String n; Main() { this.n = "bow"; } void f() { motor(n); }', ["bow"]),
    ('void f() { motor("bow" + (\'T\' + "h")); }', ["bowTh"]),
    ('void f() { for (String n : List.of("a", "b")) motor(n); }', ["a", "b"]),
    ('String[] all = {"a", "b"}; void f() { for (var n : all) motor(n); }', ["a", "b"]),
    ('String[] all = {"a", "b"}; void f() { motor(all); }', ["a", "b"]),
    ('static class K { static final String N = "bow"; } void f() { motor(K.N); }', ["bow"]),
    ('static class K { String n = "bow"; } K k = new K(); void f() { motor(k.n); }', ["bow"]),
    (
        'interface I { String N = "bow"; } class K implements I { } void f() { motor(K.N); }',
        ["bow"],
    ),
    ('class B { String n = "bow"; } class K extends B { void f() { motor(n); } }', ["bow"]),
    ('class K extends Unread { void f() { motor(N); } } String N = "bow";', ["bow"]),
    (
        'enum E { BOW("bow"); final String id; E(String s) { id = s; } }'
        " void f() { motor(E.BOW.id); }",
        ["bow"],
    ),
    (
        'enum E { BOW(1, "bow"); String id; E(int i, String id) { this.id = id; }'
        " String getId() { return this.id; } } void f() { motor(E.BOW.getId()); }",
        ["bow"],
    ),
    ('static String n() { return "bow"; } void f() { motor(n()); }', ["bow"]),
    ('void f() { Runnable r = () -> { String n = "a"; motor(n); }; }', ["a"]),
    ('void f() { Object o = new Object() { String n = "a"; void g() { motor(n); } }; }', ["a"]),
    ('void f() { String n; motor(n = "bow"); }', ["bow"]),
    (
        'class B { String n = "b"; } String n = "a";'
        " void f() { new B() { void g() { motor(n); motor(this.n); } }; }",
        ["b"] * 2,
    ),
    (
        'String n = "a"; void f() { new Unread() { void g() { motor(n); } }; }',
        ["a"],
    ),
    (
        'class B { String n = "a"; void f() { motor(n); } } class K { String n; { n = "b"; } }',
        ["a"],
    ),
    (
        'class B { String n = "a"; void f() { motor(n); } }'
        ' class K extends B { void g() { String n; n = "b"; } }',
        ["a"],
    ),
    ('class B { final String n = "a"; void f(K k) { k.n = "b"; motor(n); } }', ["a"]),
    ('String[] all = {"a"}; void f() { tell(all, all[0], all.length); motor(all); }', ["a"]),
    (
        'String[] all = {"a"}; String[] get() { this.my = all; return all; }'
        " Object o = motor(all);",
        ["a"],
    ),
    ('String[] all = {"a"}; void f() { String[] my = all; for (var n : my) motor(n); }', ["a"]),
    (
        'void f() { for (String n : List.of("a")) motor(n); String n = "b"; motor(n); }',
        ["a", "b"],
    ),
    # not known
    (
        'String n() { return "bow"; } void f() { motor(n()); }',
        ["[it is made at run time by `n()`]"],
    ),
    ('void f() { String n = "a"; n = "b"; motor(n); }', ["[`n` is assigned more than once]"]),
    ('void f() { String n = "a"; n += "b"; motor(n); }', ["[`n` is assigned more than once]"]),
    (
        'String n = "a"; void f() { motor(n); String n = "b"; }',
        ["[the word is another name further up in the block]"],
    ),
    ('void f() { boat.n = 1; n(); this.n = 2; String n = "a"; motor(n); }', ["a"]),
    *(
        (
            'class B { String n = "a"; void f() { motor(n); } } static String n;'
            f" class K extends B {{ void g(B b) {{ {change} }} }}",
            ["[`n` is assigned more than once]"],
        )
        for change in ('n = "b";', 'this.n = "b";', 'super.n = "b";', 'b.n = "b";', 'n += "b";')
    ),
    (
        'class B { String n = "a"; void f() { motor(n); } Object o = new B() { { n = "b"; } }; }',
        ["[`n` is assigned more than once]"],
    ),
    *(
        (
            f'String[] all = {{"a"}}; void f(Main m) {{ {change} for (var n : all) motor(n); }}',
            [why],
        )
        for change, why in (
            ('String[] other = all; other[0] = "b";', HANDED_ON),
            ('Arrays.fill(all, "b");', ALTERED),
            ('m.all[0] = "b";', ALTERED),
            ('names = all; this.names[0] = "b";', HANDED_ON),
            ('Collections.addAll(all, "b");', ALTERED),
        )
    ),
    ('void f() { for (String n : List.of("a")) motor(n); }', ["a"]),
    (
        'String[] all = {"a"}; void f() { all[0] = x; for (var n : all) motor(n); }',
        ["[what it runs over is not known: an element of it may be changed]"],
    ),
    (
        'static String n = "a"; void f() { Main.n = "b"; motor(n); }',
        ["[`n` is assigned more than once]"],
    ),
    ("String n = n; void f() { motor(n); }", ["[`n` is defined by itself]"]),
    ("void f() { motor(n); }", ["[`n` is not defined in code that was read]"]),
    ("void f(String n) { motor(n); }", ["[it is a parameter of `f`]"]),
    ("void f() { g(n -> motor(n)); }", ["[it is a parameter]"]),
    ("void f() { g((n, m) -> motor(m)); }", ["[it is a parameter]"]),
    ("void f() { if (o instanceof String n) motor(n); }", ["[it is matched at run time]"]),
    ("void f() { motor(names[0]); }", ["[it is taken out of a table]"]),
    ('void f() { motor(make("a")); }', ["[it is made at run time by `make()`]"]),
    ('void f() { motor("a" + 1); }', ["[it is a number, not text]"]),
    ("void f() { motor(boat.name()); }", ["[it is made at run time by `name()`]"]),
    ("void f() { motor(null); }", ["[it is null]"]),
    ("enum E { BOW } void f() { motor(E.BOW); }", ["[an enum constant is not text itself]"]),
]


@pytest.mark.parametrize(("code", "names"), FOLLOWED)
def test_names_are_followed(code, names):
    assert java(f"class Main {{ {code} }}") == names


@pytest.mark.parametrize(
    ("head", "body"),
    [
        ("class A", "void f() { new Act<Object>() { public void g() { motor(N); } }; }"),
        ("class A extends B", "void f() { new Act<Object>() { public void g() { motor(N); } }; }"),
        ("class A extends D", "class K extends B { void f() { motor(N); } }"),
        ("class A", "class K extends D { void f() { motor(N); } }"),
        ("class A", "class K extends Unread { void f() { motor(N); } }"),
    ],
)
def test_a_base_of_the_package_that_lacks_a_name_hides_none_further_out(head, body):
    code = Code(
        {
            "a/A.java": f'package a; {head} {{ static final String N = "a"; {body} }}',
            "a/Act.java": "package a; public interface Act<T> { T run(); }",
            "a/B.java": "package a; class B { }",
            "a/D.java": "package a; class D extends B { }",
        }
    )
    assert code.answers("a/A.java") == ["a"]


def test_a_member_of_a_parameter_is_not_the_parameter():
    code = Code({"A.java": "class A { void f(B b) { motor(b.name); } }"})
    assert [one.parameter for one in code.sites("A.java")] == [None]
