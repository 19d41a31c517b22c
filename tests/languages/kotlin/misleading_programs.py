"""Small programs in which a name is another one than it looks, each a file.

None of the names that they look up may be told.
"""

from __future__ import annotations

UNSURE = {
    "a function that fills": """
        fun fill(l: MutableList<String>) { l[0] = "x" }
        fun run() { val n = mutableListOf("bow"); fill(n)
          for (s in n) motor(s) }""",
    "a function that fills what it gets by a name": """
        fun fill(k: Int, l: MutableList<String>) { l[0] = "x" }
        fun run() { val n = mutableListOf("bow"); fill(l = n, k = 2)
          for (s in n) motor(s) }""",
    "an element of an element": """
        val A = arrayOf(arrayOf("bow"))
        fun run() { A[0][0] = "x"; for (r in A) for (s in r) motor(s) }""",
    "an array in an array": """
        val A = arrayOf("bow")
        val B = arrayOf(A)
        fun run() { B[0][0] = "x"; for (s in A) motor(s) }""",
    "a lambda for each array": """
        fun run() { val n = arrayOf(arrayOf("bow")); n.forEach { it[0] = "x" }
          for (r in n) for (s in r) motor(s) }""",
    "a loop over arrays": """
        fun run() { val n = arrayOf(arrayOf("bow")); for (r in n) r[0] = "x"
          for (r in n) for (s in r) motor(s) }""",
    "a lambda with another name": """
        fun run() { val n = arrayOf("bow"); n.let { m -> m[0] = "x" }
          for (s in n) motor(s) }""",
    "a lambda on a list": """
        fun run() { val n = arrayOf("bow"); n.apply { this[0] = "x" }
          for (s in n) motor(s) }""",
    "a function on a list that assigns": """
        fun MutableList<String>.spoil() { this[0] = "x" }
        fun run() { val n = mutableListOf("bow"); n.spoil()
          for (s in n) motor(s) }""",
    "a function on a list that adds": """
        fun MutableList<String>.spoil() { add("x") }
        fun run() { val n = mutableListOf("bow"); n.spoil()
          for (s in n) motor(s) }""",
    "a function that gives a list": """
        val n = mutableListOf("bow")
        fun give() = n
        fun run() { give()[0] = "x"; for (s in n) motor(s) }""",
    "a function that returns a list": """
        val n = mutableListOf("bow")
        fun give(): MutableList<String> { return n }
        fun run() { val m = give(); m[0] = "x"
          for (s in n) motor(s) }""",
    "a getter": """
        val n = mutableListOf("bow")
        val m get() = n
        fun run() { m[0] = "x"
          for (s in n) motor(s) }""",
    "an object that keeps it as a property": """
        class H(val kept: MutableList<String>) { fun change() { kept[0] = "x" } }
        fun run() { val n = mutableListOf("bow"); H(n).change()
          for (s in n) motor(s) }""",
    "an object that keeps it": """
        class H(k: MutableList<String>) { val kept = k
          fun change() { kept[0] = "x" } }
        fun run() { val n = mutableListOf("bow"); H(n).change()
          for (s in n) motor(s) }""",
    "another name that gets more": """
        fun run() { val n = mutableListOf("bow"); val m = n; m += "x"
          for (s in n) motor(s) }""",
    "brackets": """
        fun run() { val n = mutableListOf("bow"); (n)[0] = "x"
          for (s in n) motor(s) }""",
    "a choice": """
        fun run() { val n = mutableListOf("bow"); val k = mutableListOf("b")
          val m = if (k.size == 1) n else k; m[0] = "x"
          for (s in n) motor(s) }""",
    "a choice of several": """
        fun run() { val n = mutableListOf("bow")
          val m = when { n.size > 7 -> mutableListOf(); else -> { n } }; m[0] = "x"
          for (s in n) motor(s) }""",
    "a choice where there is none": """
        fun run() { val n = mutableListOf("bow"); val k: MutableList<String>? = null
          val m = k ?: n; m[0] = "x"
          for (s in n) motor(s) }""",
    "a cast": """
        fun run() { val n: List<String> = mutableListOf("bow")
          (n as MutableList<String>)[0] = "x"; for (s in n) motor(s) }""",
    "an iterator": """
        fun run() { val n = mutableListOf("bow"); val i = n.listIterator(); i.next()
          i.set("x"); for (s in n) motor(s) }""",
    "a list with more behind a lambda": """
        fun run() { val n = mutableListOf("bow"); n.also { }.add("x")
          for (s in n) motor(s) }""",
    "a view": """
        fun run() { val n = arrayOf("bow"); val m = n.asList() as MutableList<String>
          m[0] = "x"
          for (s in n) motor(s) }""",
    "a part": """
        fun run() { val n = arrayOf(arrayOf("bow")); val (m) = n; m[0] = "x"
          for (r in n) for (s in r) motor(s) }""",
    "another name that is made late": """
        val n = mutableListOf("bow")
        val m by lazy { n }
        fun run() { m[0] = "x"
          for (s in n) motor(s) }""",
    "a list put into a list": """
        fun run() { val n = mutableListOf("bow")
          val all = mutableListOf<MutableList<String>>(); all.add(n); all[0][0] = "x"
          for (s in n) motor(s) }""",
    "a list assigned into a list": """
        fun run() { val n = mutableListOf("bow")
          val all = mutableListOf(mutableListOf("b")); all[0] = n; all[0][0] = "x"
          for (s in n) motor(s) }""",
    "a function that takes several lists": """
        fun v(vararg l: MutableList<String>) { l[0][0] = "x" }
        fun run() { val n = mutableListOf("bow"); v(n)
          for (s in n) motor(s) }""",
    "a second constructor that keeps it": """
        class H { val kept: MutableList<String>
          constructor(k: MutableList<String>) { kept = k }; fun change() { kept[0] = "x" } }
        fun run() { val n = mutableListOf("bow"); H(n).change()
          for (s in n) motor(s) }""",
    "a lambda on anything": """
        class Lib { val name = "x" }
        val name = "bow"
        fun <T> on(t: T, f: T.() -> Unit) { t.f() }
        fun run() { on(Lib()) { motor(name) } }""",
    "a lambda on anything in a class": """
        class Lib { val name = "x" }
        class Own { val name = "bow"
        fun <T> on(t: T, f: T.() -> Unit) { t.f() }
        fun run() { on(Lib()) { motor(name) } } }
        fun run() { Own().run() }""",
    "apply on an element": """
        class Lib { val name = "x" }
        val libs = listOf(Lib())
        val name = "bow"
        fun run() { libs[0].apply { motor(name) } }""",
    "run on what a call gives": """
        class Lib { val name = "x"; fun more() = this }
        val name = "bow"
        fun run() { Lib().more().run { motor(name) } }""",
    "a change by a parameter": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        fun set(other: Part) { other.n = "x" }
        fun run() { val p = Part(); set(p); p.go() }""",
    "a change by the name of a class above": """
        open class Part { var n = "bow" }
        class Upper : Part() { fun go() { motor(n) } }
        fun run() { val u = Upper(); val p: Part = u; p.n = "x"; u.go() }""",
    "a change by the name of a class below": """
        open class Part { var n = "bow"; fun go() { motor(n) } }
        class Upper : Part()
        fun run() { val u = Upper(); u.n = "x"; u.go() }""",
    "a change by super": """
        open class Part { open var n = "bow"; fun go() { motor(n) } }
        class Upper : Part() { fun set() { super.n = "x" } }
        fun run() { val u = Upper(); u.set(); u.go() }""",
    "a change in an object with a body": """
        open class Part { var n = "bow"; open fun go() { motor(n) } }
        fun run() { val p = object : Part() { override fun go() { n = "x"; super.go() } }
          p.go() }""",
    "a change by what a function gives": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        val part = Part()
        fun part() = part
        fun run() { part().n = "x"; part.go() }""",
    "a change by an element": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        fun run() { val p = arrayOf(Part()); p[0].n = "x"; p[0].go() }""",
    "a change by a cast": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        fun run() { val o: Any = Part(); (o as Part).n = "x"; o.go() }""",
    "a change by what is of any class": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        fun set(o: Any) { if (o is Part) o.n = "x" }
        fun run() { val p = Part(); set(p); p.go() }""",
    "a change by a parameter of a class": """
        open class Part { var n = "bow"; fun go() { motor(n) } }
        fun <T : Part> set(o: T) { o.n = "x" }
        fun run() { val p = Part(); set(p); p.go() }""",
    "a change by an interface": """
        interface Named { var n: String }
        class Part : Named { override var n = "bow"; fun go() { motor(n) } }
        fun set(o: Named) { o.n = "x" }
        fun run() { val p = Part(); set(p); p.go() }""",
    "a change in apply": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        fun run() { val p = Part().apply { n = "x" }; p.go() }""",
    "a change of a companion's name": """
        class Part { companion object { var n = "bow"; fun go() { motor(n) } } }
        fun run() { Part.n = "x"; Part.go() }""",
    "a change of an object's name": """
        object Names { var n = "bow" }
        fun run() { Names.n = "x"; motor(Names.n) }""",
    "a change of a receiver's own variable": """
        class Lamp { var n = "lamp" }
        class Part { var n = "bow"; fun go() { motor(n) } }
        class Deck { val one = Part() }
        fun run() { val one = Lamp(); val d = Deck(); with(d) { this.one.n = "x" }; one.n = "y";
          d.one.go() }""",
    "a lambda in a variable": """
        fun run() { val f = { l: MutableList<String> -> l[0] = "x" };
          val n = mutableListOf("bow"); f(n); for (s in n) motor(s) }""",
    "a function in a variable": """
        val f = fun(l: MutableList<String>) { l.add("x") }
        fun run() { val n = mutableListOf("bow"); f(n); for (s in n) motor(s) }""",
    "a function that hands on to a lambda": """
        fun on(l: MutableList<String>, f: (MutableList<String>) -> Unit) = f(l)
        fun run() { val n = mutableListOf("bow"); on(n) { it[0] = "x" }; for (s in n) motor(s) }""",
    "a copy of a list that has it": """
        fun run() { val n = listOf(mutableListOf("bow")); n.toList()[0][0] = "x";
          for (r in n) for (s in r) motor(s) }""",
    "a pair": """
        fun run() { val n = mutableListOf("bow"); val p = Pair(n, 2); p.first[0] = "x";
          for (s in n) motor(s) }""",
    "a pair with to": """
        fun run() { val n = mutableListOf("bow"); val p = n to 2; p.first[0] = "x";
          for (s in n) motor(s) }""",
    "a table": """
        fun run() { val n = mutableListOf("bow"); val p = mapOf("k" to n); p["k"]!![0] = "x";
          for (s in n) motor(s) }""",
    "a data class taken apart": """
        data class D(val l: MutableList<String>)
        fun run() { val n = mutableListOf("bow"); val (l) = D(n); l[0] = "x";
          for (s in n) motor(s) }""",
    "a function that is handed on": """
        fun fill(l: MutableList<String>) { l[0] = "x" }
        fun run() { val n = mutableListOf("bow"); n.let(::fill); for (s in n) motor(s) }""",
    "with a list": """
        fun run() { val n = mutableListOf("bow"); with(n) { this[0] = "x" };
          for (s in n) motor(s) }""",
    "a default that is filled": """
        val n = mutableListOf("bow")
        fun fill(l: MutableList<String> = n) { l[0] = "x" }
        fun run() { fill(); for (s in n) motor(s) }""",
    "a function between words": """
        infix fun MutableList<String>.put(s: String) { add(s) }
        fun run() { val n = mutableListOf("bow"); n put "x"; for (s in n) motor(s) }""",
    "a function between words the other way": """
        infix fun String.into(l: MutableList<String>) { l.add(this) }
        fun run() { val n = mutableListOf("bow"); "x" into n; for (s in n) motor(s) }""",
    "a list that is taken if": """
        fun run() { val n = mutableListOf("bow"); n.takeIf { true }!!.add("x");
          for (s in n) motor(s) }""",
    "a class by delegation": """
        class P(m: MutableList<String>) : MutableList<String> by m
        fun run() { val n = mutableListOf("bow"); P(n).add("x"); for (s in n) motor(s) }""",
    "a constructor that changes more": """
        class K(var n: String) { constructor(i: Int, m: String) : this(m) { n = "x" } }
        fun run() { val k = K(1, "bow"); motor(k.n) }""",
    "a constructor that hands on more": """
        class K(val n: String) { constructor(i: Int, n: String) : this(n + "x") }
        fun run() { val k = K(1, "bow"); motor(k.n) }""",
    "a property that init makes": """
        class K(n: String) { val m: String
        init { m = n + "x" } }
        fun run() { val k = K("bow"); motor(k.m) }""",
    "an object that a companion makes": """
        class K private constructor(val n: String) { companion object {
          operator fun invoke(n: String) = K(n + "x") } }
        fun run() { val k = K("bow"); motor(k.n) }""",
    "a change by the object around": """
        class P { var name = "bow"; inner class I { fun set() { this@P.name = "x" } }; fun go() {
          motor(name) } }
        fun run() { val p = P(); p.I().set(); p.go() }""",
    "a change by the object itself": """
        class P { var name = "bow"; fun me() = this; fun go() { motor(name) } }
        fun run() { val p = P(); p.me().name = "x"; p.go() }""",
    "a change by a name that is made late": """
        class P { var name = "bow"; fun go() { motor(name) } }
        lateinit var p: P
        fun run() { p = P(); p.name = "x"; p.go() }""",
    "a change by a name in a block": """
        class P { var name = "bow"; fun go() { motor(name) } }
        class Q { var name = "q" }
        val p = Q()
        fun run() { val q = P(); run { val p = q; p.name = "x" }; q.go() }""",
    "a change by a name of a receiver": """
        class P { var name = "bow"; fun go() { motor(name) } }
        class Q { var name = "q"; val r = Q2() }
        class Q2 { val p = P() }
        val p = Q()
        fun run() { val q = Q2(); with(q) { p.name = "x" }; q.p.go() }""",
    "a change of what is overridden": """
        open class B { open var name = "b" }
        class P : B() { override var name = "bow"; fun go() { motor(name) } }
        fun set(b: B) { b.name = "x" }
        fun run() { val q = P(); set(q); q.go() }""",
    "a change by another name of the class": """
        class P { var name = "bow"; fun go() { motor(name) } }
        typealias R = P
        fun set(b: R) { b.name = "x" }
        fun run() { val q = P(); set(q); q.go() }""",
    "a change of what a function like a class makes": """
        class P { var name = "bow"; fun go() { motor(name) } }
        class Q { var name = "q" }
        fun Q(i: Int) = P()
        fun run() { val q = Q(2); q.name = "x"; q.go() }""",
    "a change in back-ticks": """
        class P { var `name` = "bow"; fun go() { motor(name) } }
        fun run() { val q = P(); q.`name` = "x"; q.go() }""",
}
