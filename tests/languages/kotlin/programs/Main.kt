import club.boatlib.Boat
import club.boats.skim
import club.boats.tow
import club.boats.visit

fun main() {
    for (run in listOf<(Boat) -> Any>(::skim, ::tow, ::visit)) {
        val boat = Boat()
        run(boat)
        println(boat.asked.sorted().joinToString(" "))
    }
}
