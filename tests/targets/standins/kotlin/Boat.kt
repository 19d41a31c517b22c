package club.boatlib

/** An invented library: a boat that knows what is fitted to it. */
class Boat(vararg names: String) {
    private val names = names.toList()

    var asked = 0
        private set

    fun motor(name: String): Drive = fitted(name)

    inline fun <reified T : Part> fitted(name: String): T = find(name) ?: throw NotFitted()

    inline fun <reified T : Part> find(name: String): T? = found(name, T::class.java) as T?

    fun found(name: String, sort: Class<*>): Part? {
        asked++
        return if (name !in names) null else when (sort) {
            Drive::class.java -> Drive()
            Hinge::class.java -> Hinge()
            else -> Part()
        }
    }
}

/** Anything fitted to the boat. */
open class Part

/** A motor. */
class Drive : Part() {
    fun works() = true
}

/** A servo. */
class Hinge : Part()

/** There is no such device. */
class NotFitted : RuntimeException()
