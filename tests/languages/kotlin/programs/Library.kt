package club.boatlib

import kotlin.reflect.KClass

/** An invented library: a boat that writes down every name it is asked for. */
class Boat {
    val asked = mutableListOf<String>()

    val devices = Table(this)

    fun motor(name: String): Motor = Motor().also { asked += name }

    infix fun servo(name: String): Servo = Servo().also { asked += name }

    fun <T : Part> fitted(name: String, kind: Class<T>): T = made(kind).also { asked += name }

    fun <T : Part> fitted(kind: KClass<T>, name: String, size: Int = 0): T =
        fitted(name, kind.java).also { it.size = size }

    inline fun <reified T : Part> get(name: String): T = fitted(name, T::class.java)

    inline fun <reified T : Part> find(name: String, check: T.() -> Boolean): T? =
        get<T>(name).takeIf { it.check() }

    fun has(name: String): Boolean = asked.add(name)

    fun level(name: String): Int = name.length.also { asked += name }

    fun expects(vararg names: String) {
        asked += names
    }

    private fun <T> made(kind: Class<T>): T = kind.getDeclaredConstructor().newInstance()
}

/** What is fitted, by name. */
class Table(private val boat: Boat) {
    operator fun get(name: String): Part? = Part().also { boat.asked += name }
}

open class Part {
    var size = 0
}

class Motor : Part() {
    var power = 0.0
    fun stop() = 0
}

class Servo : Part() {
    var angle = 0
}

/** What measures; it looks itself up. */
open class Sensor(boat: Boat, val name: String) {
    init {
        boat.asked += name
    }

    fun read() = name.length
}

/** Says which device fills a property. */
@Target(AnnotationTarget.FIELD)
@Retention(AnnotationRetention.RUNTIME)
annotation class Fitted(val name: String)

/** Fills what is annotated, as libraries do. */
fun fill(boat: Boat, target: Any) {
    for (field in target.javaClass.declaredFields) {
        field.getAnnotation(Fitted::class.java)?.let { boat.asked += it.name }
    }
}

fun Boat.motor(name: String, setUp: Motor.() -> Unit): Motor = motor(name).apply(setUp)
