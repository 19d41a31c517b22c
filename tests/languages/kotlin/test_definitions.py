"""What a name of a Kotlin file stands for, told by the look-up that it reaches."""

from __future__ import annotations

import pytest

from tests.languages.asking import Code, kotlin

FOLLOWED = [
    ('const val N = "bow"\nfun f() { motor(N) }', ["bow"]),
    ('private val N: String = "bow"\nfun f() { motor(N) }', ["bow"]),
    ('const val S = "bow"\nconst val N = S + "T"\nfun f() { motor(N) }', ["bowT"]),
    ('const val S = "bow"\nconst val N = "${S}T"\nfun f() { motor(N) }', ["bowT"]),
    (
        'const val S = "bow"\nfun f() { motor("${S}T"); motor("$S"); motor("x$S.") }',
        ["bowT", "bow", "xbow."],
    ),
    ('const val S = "bow"\nfun f() { motor("""${S}T"""); motor("""$S""") }', ["bowT", "bow"]),
    ('fun f() { motor("bow" + (\'T\' + "h")) }', ["bowTh"]),
    ('fun f() { motor("a\\u0041\\$b"); motor("$ 5 \\${x}") }', ["aA$b", "$ 5 ${x}"]),
    ('fun f() { val n = "bow"\n motor(n) }', ["bow"]),
    ('fun f() { val n: String\n n = "bow"\n motor(n) }', ["bow"]),
    ('fun f() { val n = ("bow" as String)!!\n motor(n) }', ["bow"]),
    ('fun f() { run { val n = "a"; motor(n) }\n run { val n = "b"; motor(n) } }', ["a", "b"]),
    ('class A { val n = "a"\n fun f() { val n = "b"\n motor(n); motor(this.n) } }', ["b", "a"]),
    ('class A { val n: String\n init { n = "bow" }\n fun f() { motor(n) } }', ["bow"]),
    (
        'class A { val n = "a"\n inner class B { val n = "b"\n fun f() { motor(this@A.n) } } }',
        ["a"],
    ),
    ('class A { val n by lazy { "bow" }\n fun f() { motor(n) } }', ["bow"]),
    ('class A { val n get() = "bow"\n fun f() { motor(n) } }', ["bow"]),
    ('class A { val n: String\n get() { return "bow" }\n fun f() { motor(n) } }', ["bow"]),
    ('object K { const val N = "bow" }\nfun f() { motor(K.N) }', ["bow"]),
    ('object K { object L { const val N = "bow" } }\nfun f() { motor(K.L.N) }', ["bow"]),
    ('class A { companion object { const val N = "bow" }\n fun f() { motor(N) } }', ["bow"]),
    (
        'class A { companion object { const val N = "bow" } }\n'
        "fun f() { motor(A.N); motor(A.Companion.N) }",
        ["bow"] * 2,
    ),
    (
        'class A { companion object Names { const val N = "bow" } }\n'
        "fun f() { motor(A.N); motor(A.Names.N) }",
        ["bow"] * 2,
    ),
    ('class K { val n = "bow" }\nval k = K()\nfun f() { motor(k.n) }', ["bow"]),
    ('class K(val n: String)\nval k = K("bow")\nfun f() { motor(k.n) }', ["bow"]),
    ('class K(val i: Int, val n: String = "bow")\nval k = K(1)\nfun f() { motor(k.n) }', ["bow"]),
    (
        'class K(i: Int, n: String) { val id = n }\nval k = K(n = "bow", i = 1)\n'
        "fun f() { motor(k.id) }",
        ["bow"],
    ),
    ('class B { val n = "bow" }\nclass K : B() { fun f() { motor(n) } }', ["bow"]),
    (
        'interface I { val N: String get() = "a" }\nconst val N = "bow"\n'
        "class K : Unread() { fun f() { motor(N) } }",
        ["bow"],
    ),
    (
        'enum class E(val id: String) { BOW("bow"), STERN("stern") }\nfun f() { motor(E.BOW.id) }',
        ["bow"],
    ),
    (
        'enum class E(val i: Int, id: String) { BOW(1, "bow");\n val title = id\n'
        " fun name() = title }\nfun f() { motor(E.BOW.name()); motor(E.BOW.title) }",
        ["bow"] * 2,
    ),
    ('enum class E(val id: String) { BOW(id = "bow") }\nfun f() { motor(E.BOW.id) }', ["bow"]),
    ('fun n() = "bow"\nfun f() { motor(n()) }', ["bow"]),
    ('fun n(): String { return "bow" }\nfun f() { motor(n()) }', ["bow"]),
    ('fun f() { for (n in listOf("a", "b")) motor(n) }', ["a", "b"]),
    ('val all = arrayOf("a", "b")\nfun f() { for (n in all) motor(n) }', ["a", "b"]),
    (
        'val all = listOf("a", "b")\nfun f() { all.forEach { motor(it) }\n'
        " all.map { n -> motor(n) } }",
        ["a", "b"] * 2,
    ),
    ('fun f() { "bow".let { motor(it) } }', ["bow"]),
    ('typealias K = Names\nobject Names { const val N = "bow" }\nfun f() { motor(K.N) }', ["bow"]),
    ('val o = object : I { val n = "a"\n fun g() { motor(n) } }', ["a"]),
    ('fun f(boat: Boat) { val n = "bow"\n boat.run { motor(n) } }', ["bow"]),
    ('fun f() { val n = "bow"; motor(n) { n -> stop(n) } }', ["bow"]),
    # names of the object that a function or lambda is called on
    (
        'const val n = "a"\nclass K { val n = "b" }\n'
        "fun f() { with(K()) { motor(n); motor(this.n) } }",
        ["b"] * 2,
    ),
    ('const val n = "a"\nclass K { val n = "b" }\nfun f(k: K) { k.apply { motor(n) } }', ["b"]),
    ('const val n = "a"\nclass K { val n = "b" }\nfun f(k: K) { k.run { motor(n) } }', ["b"]),
    (
        'const val n = "a"\nclass K { val n = "b" }\nfun K.go() { motor(n); motor(this.n) }',
        ["b"] * 2,
    ),
    ('const val n = "a"\nclass K { val n = "b" }\nval K.m: Any\n get() = motor(n)', ["b"]),
    ('const val n = "a"\nclass K { val n = "b" }\nval go = fun K.() { motor(n) }', ["b"]),
    (
        'const val n = "a"\nclass K { val n = "b" }\nfun on(go: K.() -> Unit) = K().go()\n'
        "fun f() { on { motor(n) }\n on({ motor(n) }) }",
        ["b"] * 2,
    ),
    (
        'class K { val n = "b" }\nclass A { val n = "a"\n fun f(k: K) { k.run { motor(n) }\n'
        " k.let { motor(n) }\n k.run { motor(this@A.n) } } }",
        ["b", "a", "a"],
    ),
    ('class K { val n = "b" }\nfun f(k: K) { val n = "a"\n k.run { motor(n) } }', ["a"]),
    ('const val n = "a"\nfun f(k: Unread) { k.run { motor(n) } }', ["a"]),
    ('const val n = "a"\nclass K\nfun f(k: K) { k.run { motor(n) } }', ["a"]),
    (
        'open class K { val n = "a" }\nconst val n = "b"\nval k = object : K() {\n'
        " fun f() { motor(n) } }",
        ["a"],
    ),
    ('fun f() { for (n in listOf("a")) motor(n)\n val n = "b"\n motor(n) }', ["a", "b"]),
    ('fun f() { listOf("a").forEach { n -> motor(n) }\n val n = "b"\n motor(n) }', ["a", "b"]),
    # not known
    (
        'enum class W(val id: String) { A("a") }\nfun f() { for (w in W.values()) motor(w.id) }',
        ["[it is made at run time]"],
    ),
    (
        'class K(val n: String) { constructor(i: Int, n: String) : this("c") }\n'
        'val k = K(1, "b")\nfun f() { motor(k.n) }',
        ["c"],
    ),
    (
        'class K(vararg l: String, val n: String = "a")\nval k = K("b", "c")\n'
        "fun f() { motor(k.n) }",
        ["a"],
    ),
    (
        "class K private constructor(val n: String) {\n"
        ' companion object { operator fun invoke(n: String) = K("a") } }\n'
        'val k = K("b")\nfun f() { motor(k.n) }',
        ["[it is made at run time]"],
    ),
    (
        'class K(val n: String = "a")\nval k = K("b", "c")\nfun f() { motor(k.n) }',
        ["[it is made at run time]"],
    ),
    (
        'class K(val n: String = "a", val m: String)\nval k = K(m = "b")\n'
        "fun f() { motor(k.n); motor(k.m) }",
        ["a", "b"],
    ),
    (
        'open class A { open val n = "bow"\n fun f() { motor(n) } }',
        ["[a class that is derived may give another one]"],
    ),
    (
        'interface I { val n get() = "bow"\n fun f() { motor(n) } }',
        ["[a class that is derived may give another one]"],
    ),
    (
        'open class A { open fun n() = "bow"\n fun f() { motor(n()) } }',
        ["[it is made at run time by `n()`]"],
    ),
    ('fun n(i: Int) = "bow"\nfun f() { motor(n(1)) }', ["[it is made at run time by `n()`]"]),
    ('fun f() { var n = "a"\n n = "b"\n motor(n) }', ["[`n` is assigned more than once]"]),
    ('fun f() { var n = "a"\n n += "b"\n motor(n) }', ["[`n` is assigned more than once]"]),
    (
        'class K(var n: String = "a")\nval k = K()\nfun f() { k.n = "b"\n motor(k.n) }',
        ["[it is made at run time]"],
    ),
    (
        'class K { var n = "a"\n fun f() { motor(n) } }\nfun g(k: K) { k.n = "b" }',
        ["[`n` is assigned more than once]"],
    ),
    ('val n = "a"\nfun f() { motor(n) }\nfun g(k: K) { val n = "b"; k.n = "c" }', ["a"]),
    ('class K { val n = "a"\n fun f(b: B) { b.n = "c"\n motor(n) } }', ["a"]),
    ("val n = n\nfun f() { motor(n) }", ["[`n` is defined by itself]"]),
    ("fun f() { motor(n) }", ["[`n` is not defined in code that was read]"]),
    ("fun f(n: String) { motor(n) }", ["[it is a parameter of `f`]"]),
    ('fun f(n: String = "bow") { motor(n) }', ["[it is a parameter of `f`]"]),
    ("class A(val n: String) { fun f() { motor(n) } }", ["[it is a parameter of `A`]"]),
    ("fun f() { g { n -> motor(n) } }", ["[it is a parameter]"]),
    ("fun f() { g { n, m -> motor(m) } }", ["[it is a parameter]"]),
    ("fun f() { g { motor(it) } }", ["[it is a parameter]"]),
    ("fun f() { val (a, b) = g()\n motor(a) }", ["[it is made at run time]"]),
    ("fun f() { motor(names[0]) }", ["[it is taken out of a table]"]),
    ('fun f() { motor(make("a")) }', ["[it is made at run time by `make()`]"]),
    ('fun f() { motor("a".trim()) }', ["[it is made at run time]"]),
    ('fun f() { motor("a" + 1) }', ["[it is a number, not text]"]),
    ('fun f() { motor("a${g(1)}") }', ["[it is made at run time by `g()`]"]),
    ("fun f() { motor(boat.name()) }", ["[it is made at run time by `name()`]"]),
    ("fun f() { motor(null) }", ["[it is null]"]),
    ("enum class E { BOW }\nfun f() { motor(E.BOW) }", ["[an enum entry is not text itself]"]),
    ("val n by boat\nfun f() { motor(n) }", ["[it is made at run time]"]),
    (
        'enum class E(val id: String) { BOW("bow") { } }\nfun f() { motor(E.BOW.id) }',
        ["[it is made at run time]"],
    ),
]


CHANGED = [
    'fun f() { val all = mutableListOf("a")\n all.add("b")\n for (n in all) motor(n) }',
    'fun f() { val all = mutableListOf("a")\n all += "b"\n for (n in all) motor(n) }',
    'fun f() { val all = arrayOf("a")\n all[0] = "b"\n for (n in all) motor(n) }',
    'class A { val l = mutableListOf("a")\n fun f() { this.l.add("b")\n for (n in l) motor(n) } }',
    'object A { var n = "a" }\nfun g() = A.apply { n = "b" }\nfun f() { motor(A.n) }',
    'object A { var n = "a" }\nfun g() = with(A) { this.n = "b" }\nfun f() { motor(A.n) }',
    'class A { var n = "a"\n fun f() { motor(n) } }\nfun A.g() { n = "b" }',
    'class A { var n = "a"\n fun f(l: List<A>) { l.forEach { it.run { n = "b" } }\n motor(n) } }',
    'val n = "a"\nfun f() { motor(n)\n val n = "b"\n tell(n) }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\nclass B : A() { init { n = "b" } }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\nclass B : A() { init { this.n = "b" } }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\nclass B : A() { init { super.n = "b" } }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\nvar n = "c"\n'
    'class B : A() { init { n = "b" } }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\n'
    'val b = object : A() { init { n = "b" } }',
    'val l = arrayListOf("a")\nval m = l\nfun f() { m.add("b")\n for (n in l) motor(n) }',
    'val l = arrayListOf("a")\nfun f() { with(l) { add("b") }\n l.forEach { motor(it) } }',
    'val l = arrayListOf("a")\nfun f() { l.apply { add("b") }\n l.forEach { motor(it) } }',
    'val l = arrayListOf("a")\nfun f() { l.plusAssign("b")\n l.forEach { motor(it) } }',
    'object K { val l = arrayListOf("a") }\nval l = K.l\n'
    'fun f() { l.add("b")\n for (n in l) motor(n) }',
    'class A { val l = arrayListOf("a")\n fun f() { for (n in l) motor(n) } }\n'
    'fun g(a: A) { a.l.add("b") }',
]
NOT_CHANGED = [
    'class A { var n = "a"\n fun f() { motor(n) } }\nclass B { var n = "c"\n init { n = "b" } }',
    'open class A { var n = "a"\n fun f() { motor(n) } }\n'
    'class B : A() { fun g() { var n = "c"\n n = "b" } }',
    'val l = listOf("a")\nval m = l\nfun f() { for (n in l) motor(n) }',
    'val l = arrayListOf("a")\nval m = l\nfun all() = l\nfun f() { for (n in m) motor(n) }',
    'val l = arrayOf("a")\nval t = mapOf(1 to l)\nfun f() { l.fold(0) { a, b -> a }\n motor(l) }',
    'class A { var n = "a"\n fun f() { motor(n) } }\nfun g() { var n = "z"\n run { n = "y" } }',
    'val l = arrayOf("a")\nfun f() { l.forEach { motor(it) }\n tell(*l); tell(l.size, l[0], l) }',
    'fun f() { val n = "a"\n val m = n\n with(boat) { motor(n) }\n tell(m) }',
    'fun f() { boat.n = 1; n(); fit(n = 2); val n = "a"; motor(n) }',
    'fun f() { run { val n = "a"; motor(n) }\n val m = "b" }',
    'fun f() { val all = listOf("a")\n tell(all[0], all.size)\n for (n in all) motor(n) }',
    'fun f() { val all = arrayOf("a")\n table[all[0]] = 1\n for (n in all) motor(n) }',
    'class A { val n = "a"\n fun f() { g { m -> n + m }\n motor(n) } }',
    'fun f() { val n = "a"\n with(boat) { name = n }\n motor(n) }',
]


@pytest.mark.parametrize("code", CHANGED)
def test_what_is_changed_in_place_or_in_a_lambda_is_not_known(code):
    (answer,) = kotlin(code)
    assert answer.startswith("[")


@pytest.mark.parametrize("code", NOT_CHANGED)
def test_what_is_only_read_is_known(code):
    assert kotlin(code) == ["a"]


@pytest.mark.parametrize(("code", "names"), FOLLOWED)
def test_names_are_followed(code, names):
    assert kotlin(code + "\n") == names


NAMES = 'package club.boats\nconst val BOW = "bow"\nobject Names { const val STERN = "stern" }\n'
MAIN = "package club.boats\nfun f() { motor(BOW); motor(Names.STERN) }\n"


@pytest.mark.parametrize(
    ("names", "main", "imports"),
    [
        ("src/club/boats/AnyName.kt", "src/club/boats/Main.kt", ""),
        ("src/AnyName.kt", "src/Main.kt", ""),
        ("src/club/boats/AnyName.kt", "src/club/Main.kt", "club.boats.BOW club.boats.Names"),
        ("src/boats/AnyName.kt", "src/main/Main.kt", "club.boats.*"),
        ("x/src/club/boats/A.kt", "x/src/race/start/Main.kt", "club.boats.BOW club.boats.Names"),
        ("src/club/boats/AnyName.kt", "src/Main.kt", "club.boats.*"),
    ],
)
def test_names_come_from_the_files_of_a_package(names, main, imports):
    """Kotlin documentation, Packages and imports; Coding conventions, Directory structure."""
    package = {"src/club/Main.kt": "club", "src/main/Main.kt": "club.main"}.get(main, "race.start")
    text = MAIN
    if imports:
        lines = "".join(f"import {one}\n" for one in imports.split())
        header = f"package {package}\n" if main != "src/Main.kt" else ""
        text = header + lines + MAIN.partition("\n")[2]
    assert Code({names: NAMES, main: text}).answers(main) == ["bow", "stern"]


def test_members_of_objects_and_other_names_are_imported():
    imports = "import club.boats.Names.STERN\nimport club.boats.BOW as FRONT\n"
    imports += "import club.boats.Names as N\n"
    calls = "motor(STERN); motor(FRONT); motor(N.STERN); motor(BOW)"
    main = f"package race\n{imports}fun f() {{ {calls} }}\n"
    code = Code({"src/club/boats/A.kt": NAMES, "src/race/Main.kt": main})
    assert code.answers("src/race/Main.kt") == [
        "stern",
        "bow",
        "stern",
        "[`BOW` is not defined in code that was read]",
    ]


def test_many_files_of_a_package_that_only_use_a_name_are_no_detour():
    files = {f"src/Use{n}.kt": f"fun f{n}() {{ motor(BOW); motor(LOST) }}\n" for n in range(40)}
    code = Code({**files, "src/Names.kt": 'const val BOW = "bow"\n'})
    lost = "[`LOST` is not defined in code that was read]"
    assert all(code.answers(path) == ["bow", lost] for path in files)


def test_a_member_that_the_object_lacks_is_told():
    use = "fun f() { motor(Names.STERM) }\n"
    code = Code({"src/A.kt": NAMES, "src/B.kt": use, "src/C.kt": "val Other = 1 // Names\n"})
    (one,) = code.resolved("src/B.kt")
    assert one.lacking
    assert one.why == "src/A.kt has no `Names.STERM`; the nearest is `STERN`"


def test_a_member_of_a_parameter_is_not_the_parameter():
    code = Code({"A.kt": "fun f(b: B) { motor(b.name) }"})
    assert [one.parameter for one in code.sites("A.kt")] == [None]
