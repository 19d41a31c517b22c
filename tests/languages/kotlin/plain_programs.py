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
}
