package club.boats

import club.boatlib.*
import club.boats.names.BOW_THRUSTER
import club.boats.names.Names
import club.boats.names.STERN_THRUSTER as AFT
import club.boats.names.Winch

/** Skims the pond; one line like `motor("notAName")` in a comment is no look-up. */
class Skim(private val boat: Boat, private val speed: Double = 0.4) {
    private val bow: Motor by lazy { boat.motor(BOW_THRUSTER) }
    private val stern by lazy(LazyThreadSafetyMode.NONE) { boat.get<Motor>(AFT) }
    private lateinit var rudder: Servo
    private var winch: Motor? = null

    init { rudder = boat servo Names.RUDDER }

    val tired: Boolean get() = bow.power < speed && stern.power > (speed / 2)

    fun run(turns: Int = 3): Int {
        winch = boat.motor(Winch.NET.id) { power = speed }
        boat.motor(Winch.ANCHOR.title())
        var done = 0
        loop@ for (turn in 1..turns) {
            when {
                turn == 2 -> { rudder.angle = 10; continue@loop }
                turn in 5..9 || tired -> break@loop
                else -> rudder.angle = -10
            }
            done++
        }
        if (done < turns) bow.power = -speed else stern.power = speed
        return done
    }

    override fun toString() = "Skim at ${"%.1f".format(speed)}, ${winch?.power ?: "no winch"} \"$speed\""
}

fun skim(boat: Boat) = Skim(boat).run { run(); print(""); tired; toString().length }
