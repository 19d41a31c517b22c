"""Small programs whose names can be told, each a file: all must be told."""

from __future__ import annotations

SURE = {
    "with what a function gives": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        val name = "bow"
        fun run() { with(lib()) { motor(name) } }""",
    "a lambda of a type": """
        class Lib { val name = "x" }
        val name = "bow"
        val f: Lib.() -> Unit = { motor(name) }
        fun run() { Lib().f() }""",
    "a type by another name": """
        class Lib { val name = "x" }
        typealias Use = Lib.() -> Unit
        val name = "bow"
        val f: Use = { motor(name) }
        fun run() { Lib().f() }""",
    "a parameter's type by another name": """
        class Lib { val name = "x" }
        typealias Use = Lib.() -> Unit
        val name = "bow"
        fun on(f: Use) = Lib().f()
        fun run() { on { motor(name) } }""",
    "a class by another name": """
        class Lib { val name = "x" }
        typealias L = Lib
        val name = "bow"
        fun run() { with(L()) { motor(name) } }""",
    "a lambda in brackets": """
        class Lib { val name = "x" }
        val name = "bow"
        fun on(f: Lib.() -> Unit) = Lib().f()
        fun run() { on({ motor(name) }) }""",
    "a lambda by name": """
        class Lib { val name = "x" }
        val name = "bow"
        fun on(f: Lib.() -> Unit, k: Int) = Lib().f()
        fun run() { on(k = 2, f = { motor(name) }) }""",
    "a lambda that is returned": """
        class Lib { val name = "x" }
        val name = "bow"
        fun make(): Lib.() -> Unit = { motor(name) }
        fun run() { val f = make(); Lib().f() }""",
    "a local name before a receiver's": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        fun run() { val name = "bow"; with(lib()) { motor(name) } }""",
    "a local name in a lambda": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        fun run() { with(lib()) { val name = "bow"; motor(name) } }""",
    "a receiver's name before a member's": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        class Own { val name = "bow"
          fun run() { with(lib()) { motor(name) } } }
        fun run() { Own().run() }""",
    "an object in a lambda": """
        class Lib { val name = "x" }
        fun run() { val name = "bow"; with(Lib()) { object { val t = "q"
          fun x() { motor(name) } }.x() } }""",
    "a lambda in a lambda": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        fun run() { val name = "bow"
          with(lib()) { listOf(1).forEach { motor(name) } } }""",
    "a text that is built": """
        val name = "bow"
        fun run() { buildString { append(name); motor(name) } }""",
    "a lambda that is only run": """
        val name = "bow"
        fun run() { run { motor(name) } }""",
    "apply on what a function gives": """
        class Lib { val name = "x" }
        fun lib() = Lib()
        val name = "bow"
        fun run() { lib().apply { motor(name) } }""",
    "a lambda on a text": """
        val name = "bow"
        fun run() { "q".apply { motor(name) }; with("q") { motor(name) } }""",
    "a function without a name": """
        class Lib { val name = "x" }
        val name = "bow"
        val f = fun Lib.() { motor(name) }
        fun run() { Lib().f() }""",
    "a lambda in a function on an object": """
        class Lib { val name = "x" }
        val name = "bow"
        fun Lib.go2() { run { motor(name) } }
        fun run() { Lib().go2() }""",
    "a change of another class": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        class Lamp { var n = "lamp" }
        fun set(lamp: Lamp?) { lamp?.n = "x"; lamp!!.n = "y" }
        fun run() { val l = Lamp(); l.n = "x"; set(l); Part().go() }""",
    "a change of another class by a property": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        class Lamp { var n = "lamp" }
        class Deck { val lamp = Lamp(); lateinit var late: Lamp
          fun set() { lamp.n = "x"; this.lamp.n = "y"; late = lamp; late.n = "z" } }
        fun run() { Deck().set(); Part().go() }""",
    "a change of what another class inherits": """
        class Part { var n = "bow"; fun go() { motor(n) } }
        open class Base { var n = "base" }
        class Lamp : Base() { fun set() { n = "x"; super.n = "y"; this.n = "z" } }
        fun run() { Lamp().set(); Part().go() }""",
    "a second constructor": """
        class Part(val n: String, val k: Int) { constructor(n: String) : this(n, 2)
          constructor() : this("stern", 1) }
        fun run() { val a = Part("bow"); motor(a.n); val b = Part()
          motor(b.n); val c = Part("net", 3)
          motor(c.n) }""",
    "a class with several names": """
        class Group(val title: String, vararg val names: String, val k: Int = 2)
        fun run() { val g = Group("bow", "a", "b"); motor(g.title); val h = Group("bow", k = 3)
          motor(h.title) }""",
    "an enum with a second constructor": """
        enum class Side(val n: String) { BOW("bow"), STERN(1, 2);
          constructor(k: Int, m: Int) : this("stern") }
        fun run() { motor(Side.BOW.n); motor(Side.STERN.n) }""",
    "names in an object": """
        object Names { const val BOW = "bow"; val stern = "stern"; object Inner {
          const val NET = "net" } }
        fun run() { motor(Names.BOW); motor(Names.stern); motor(Names.Inner.NET) }""",
    "names in a companion": """
        class Deck { companion object { const val BOW = "bow"; private val STERN = BOW + "x" }
          fun go() { motor(BOW); motor(STERN); motor(Deck.BOW); motor(Companion.BOW) } }
        fun run() { Deck().go() }""",
    "a template": """
        const val SIDE = "bow"
        fun run() { motor("${SIDE}Thruster"); motor("$SIDE"); motor(SIDE + "Thruster" + 'x') }""",
    "a property that init fills": """
        class Deck { private val n: String
          init { n = "bow" }
          fun go() { motor(n) } }
        fun run() { Deck().go() }""",
    "a lazy property": """
        class Deck { val n by lazy { "bow" }; private val m: String by lazy { n }; fun go() {
          motor(m) } }
        fun run() { Deck().go() }""",
    "a property that is made late": """
        class Deck { lateinit var n: String; fun start() { n = "bow" }; fun go() { motor(n) } }
        fun run() { val d = Deck(); d.start(); d.go() }""",
    "a choice of names": """
        fun run() { val port = true; val n = if (port) "bow" else "stern"; motor(n)
          val m = when { port -> "bow"; else -> { "stern" } }
          motor(m) }""",
    "a name or another": """
        fun run() { val n: String? = "bow"; motor(n ?: "bow") }""",
    "a loop over a list": """
        val ALL = listOf("bow", "stern")
        fun run() { for (n in ALL) motor(n); ALL.forEach { motor(it) }
          ALL.forEach { n -> motor(n) } }""",
    "a loop over an array": """
        private val all = arrayOf("bow", "stern")
        fun run() { for (n in all) { motor(n) } }""",
    "each that is mapped": """
        fun run() { val used = listOf("bow", "stern").map { motor(it) }; used.size }""",
    "an enum with a name": """
        enum class Side(val n: String, private val m: String = "net") {
          BOW("bow"), STERN(n = "stern")
          ; fun other() = m }
        fun run() { motor(Side.BOW.n); motor(Side.STERN.n); motor(Side.STERN.other()) }""",
    "a data class": """
        data class Fit(val n: String, val k: Int = 1)
        val BOW = Fit("bow")
        fun run() { motor(BOW.n); val s = Fit(k = 2, n = "stern"); motor(s.n) }""",
    "a sealed class": """
        sealed class Side(val n: String) { object Bow : Side("bow") { const val OWN = "own" } }
        fun run() { motor(Side.Bow.OWN) }""",
    "a function that gives a name": """
        fun bow() = "bow"
        private fun stern(): String { return "stern" }
        fun run() { motor(bow()); val n = stern(); motor(n) }""",
    "a local function": """
        fun run() { val n = "bow"; fun go() { motor(n) }; go() }""",
    "a lambda on a list that is made": """
        const val BOW = "bow"
        fun run() { mutableListOf<String>().apply { add(BOW); motor(BOW) }
          StringBuilder().apply { append(BOW); motor(BOW) } }""",
    "a lambda on an object of the library": """
        const val BOW = "bow"
        val point = java.awt.Point()
        fun run() { point.apply { x = 3; motor(BOW) }; with(point) { motor(BOW) }
          point.let { motor(BOW) }; point.run { motor(BOW) } }""",
    "a lambda on what another lambda gives": """
        class Deck { val side = "stern"; fun lamp() = Deck() }
        const val BOW = "bow"
        fun run() { val d = Deck(); d.lamp().apply { motor(side) }; d.also { it.lamp() }.let {
          motor(BOW) } }""",
    "an interface": """
        interface Named { val n: String; companion object { const val NET = "net" } }
        class Deck : Named { override val n = "bow"; fun go() { motor(n); motor(Named.NET) } }
        fun run() { Deck().go() }""",
    "a name in a try": """
        fun run() { try { val n = "bow"; motor(n) } finally { val n = "stern"
          motor(n) } }""",
    "a generic class": """
        open class Deck<T> { protected val n = "bow"; fun go() { motor(n) } }
        class Upper : Deck<Int>() { fun up() { motor(n) } }
        fun run() { Upper().go(); Upper().up() }""",
    "an inner class": """
        class Deck { private val n = "bow"; inner class Inner { fun go() { motor(n);
          motor(this@Deck.n) } } }
        fun run() { Deck().Inner().go() }""",
    "a text that is not changed": """
        fun run() { val n = "bow"; val used = mutableListOf(n); used.add("x"); used[0] = "y";
          motor(n) }""",
    "a list that is only read": """
        val ALL = mutableListOf("bow", "stern")
        fun count(l: List<String>) = l.size
        fun run() { count(ALL); val used = mutableListOf<String>(); for (n in ALL) used.add(n)
          for (n in ALL) motor(n) }""",
    "a function on another list": """
        fun fill(l: MutableList<String>, from: List<String>) { l.add(from[0]) }
        val ALL = listOf("bow", "stern")
        fun run() { fill(mutableListOf(), ALL); for (n in ALL) motor(n) }""",
    "a name by an alias of a type": """
        class Names { companion object { const val BOW = "bow" } }
        typealias N = Names
        fun run() { motor(Names.BOW) }""",
    "a raw text": """
        fun run() { val n = \"\"\"bow\"\"\"; motor(n) }""",
    "an extension": """
        class Deck { val n = "bow" }
        fun Deck.go() { motor(n); motor(this.n) }
        val Deck.other get() = n
        fun run() { Deck().go() }""",
    "a default": """
        class Deck(val n: String = "bow")
        fun run() { val d = Deck(); motor(d.n); val e = Deck("stern"); motor(e.n) }""",
    "an operator": """
        class Deck { operator fun get(n: String) = n.length; val n = "bow"; fun go() { this["x"];
          motor(n) } }
        fun run() { Deck().go() }""",
}
