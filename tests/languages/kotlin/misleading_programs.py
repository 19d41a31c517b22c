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
}
