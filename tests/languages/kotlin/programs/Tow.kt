package club.boats

import club.boatlib.Boat
import club.boatlib.Motor
import club.boatlib.Part
import club.boatlib.Sensor
import club.boatlib.Servo
import club.boatlib.motor
import club.boats.names.*
import kotlin.properties.Delegates

typealias Step = (Boat) -> Unit

sealed class Order { object Stop : Order(); data class Go(val name: String) : Order() }

class HullTemp(boat: Boat) : Sensor(boat, Names.Sensors.HULL)

private var log by Delegates.observable("") { _, old, new -> if (old.length > new.length) error("lost") }

fun tow(boat: Boat?) {
    val known = boat ?: return
    for (name in Lamps.ALL) known.fitted(name, Part::class.java)
    listOf("leftFloat", "rightFloat").forEach { known.get<Servo>(it) }
    with(known) {
        motor("towMotor").power = 0.5
        fitted(Motor::class, "capstan", 3)
        if (!has("gate") || 3 > -level("well") && !known.has("lock")) tell() else -level("shoal")
        fitted(Servo::class, size = 2, name = "towHook")
    }
    known.apply { expects("bumpBow", "bumpStern"); get<Part>(Names.Sensors.LEVEL) }
        .also { it.devices["compass"]!!.size = 4 }
    val steps = mapOf<String, Step>("hatch" to { b -> b.get<Servo>(HATCH.name); Unit }, "none" to { _ -> Unit })
    steps.getValue("hatch")(known)
    HullTemp(known).read()
    object : Sensor(known, "bilgeTemp") { val twice = read() * 2 }.twice
    log = """
        towed by "${Names.RUDDER}", $steps
        not by motor("mistake")
    """.trimIndent()
    val found = known.find<Motor>("spareMotor") { size < 1 && power <= 0.0 }?.stop() ?: -1
    val side = if (found < 0) "port" else "starboard"
    known.motor("${side}Float${'$'}")
    fun Boat.lamp(number: Int) = get<Part>("lamp" + 'A' + ("s"))
    known.lamp(number = 2)
    tell(Order.Stop, Order.Go("x"))
}

private fun tell(vararg orders: Order): Int = orders.map(::weight).filter { it > 0 }.sum()

private fun weight(order: Order) = when (order) { is Order.Go -> order.name.length; Order.Stop -> 0 }
