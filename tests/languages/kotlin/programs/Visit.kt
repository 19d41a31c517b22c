#!/usr/bin/env kotlin
package club.boats

import club.boatlib.Boat
import club.boatlib.Fitted
import club.boatlib.Motor
import club.boatlib.Part
import club.boatlib.Servo
import club.boatlib.fill

abstract class Visit<in B : Boat> {
    abstract fun go(boat: B): Int

    protected open fun `comes back`(): Boolean = true
}

class Harbour(vararg val stops: String) : Visit<Boat>() {
    @Fitted("harbourLamp") lateinit var lamp: Part
    @field:Fitted(name = "fogHorn")
    private val horn: Part? = null

    private val crew: Map<String, List<Int>> = hashMapOf<String, List<Int>>()

    override fun go(boat: Boat): Int {
        fill(boat, this)
        val (first, second) = boat.motor("pump") to (boat.devices["scupper"] as Part?)
        val speeds = arrayOf<Double>(0.1, 0.2)
        var turns = 0
        do {
            turns += if (speeds[turns] < 0.2 || first.power > (speeds.size)) 1 else 2
        } while (turns < 2 && `comes back`())
        val check = fun(part: Part?): Boolean { return part != null && crew.isEmpty() }
        try {
            check(second) && check(boat.fitted("anchor", Servo::class.java))
        } catch (lost: IllegalStateException) {
            boat.motor("neverAsked")
        } finally {
            boat.get<Motor>("finallyPump")
        }
        return stops.size shl 1
    }

    companion object Plan : () -> Harbour { override fun invoke() = Harbour("a", *arrayOf("b", "c")) }
}

interface Counted { val count: Int; fun next(): Int = count + 1 }

inline class Knots(val value: Int) : Comparable<Knots> {
    override operator fun compareTo(other: Knots) = value - other.value
}

fun visit(boat: Boat): Int {
    val counted = object : Counted { override val count = 0x1F }
    val fast = Knots(5) > Knots(counted.next()); val slow = !fast
    return Harbour().go(boat) + (if (slow) 1 else 0)
}
