@file:Suppress("unused")

package club.boats.names

/* Names typed by hand, in the ways that people have; /* comments lie within one another */ here. */

const val BOW_THRUSTER = "bowThruster"
private const val STERN = "stern"
const val STERN_THRUSTER: String = STERN + "Thruster"

object Names {
    const val RUDDER = "rudder"

    object Sensors { const val HULL = "hullTemp"; const val LEVEL = "bilge${"Level"}" }
}

enum class Winch(val id: String, private val drum: Int = 40) {
    NET("netWinch"),
    ANCHOR(id = "anchorWinch", drum = 25);

    val turns get() = drum * 2
    fun title() = id
}

class Lamps private constructor() {
    companion object {
        @JvmField val BOW = "bowLamp"

        val ALL: List<String> = listOf(BOW, "mastLamp")
    }
}

data class Entry(val name: String, val spare: Boolean = false)

val HATCH = Entry("hatchServo")
