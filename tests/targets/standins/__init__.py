"""Invented students' libraries that the bindings are run on, and how they are looked up in."""

PYTHON = {
    "through": "boat",
    "through_type": "Boat",
    "imports": ("from boatlib import Boat, Drive, Hinge, NotFitted, Part",),
    "types": {"motor": "Drive", "servo": "Hinge", "*": "Part"},
    "look_up": {"motor": "boat.motor({name})", "*": "boat.fitted({name}, {type})"},
    "missing": "NotFitted",
}
JAVA = {
    "through": "boat",
    "through_type": "Boat",
    "types": {"motor": "Boat.Drive", "servo": "Boat.Hinge", "*": "Boat.Part"},
    "look_up": {"motor": "boat.motor({name})", "*": "boat.fitted({name}, {type}.class)"},
    "missing": "Boat.NotFitted",
}
KOTLIN = {
    "through": "boat",
    "through_type": "Boat",
    "imports": tuple(
        f"club.boatlib.{name}" for name in ("Boat", "Drive", "Hinge", "NotFitted", "Part")
    ),
    "types": {"motor": "Drive", "servo": "Hinge", "*": "Part"},
    "look_up": {"motor": "boat.motor({name})", "*": "boat.fitted<{type}>({name})"},
    "missing": ("NotFitted",),
}
CPP = {
    "through": "boat",
    "through_type": "boatlib::Boat&",
    "includes": ("boatlib.h",),
    "types": {"motor": "boatlib::Drive", "servo": "boatlib::Hinge", "*": "boatlib::Part"},
    "look_up": {"motor": "&boat.motor({name})", "*": "&boat.fitted<{type}>({name})"},
    "missing": ("boatlib::NotFitted",),
}
OPTIONS = {
    "python-bindings": PYTHON,
    "java-bindings": JAVA,
    "kotlin-bindings": KOTLIN,
    "cpp-bindings": CPP,
}
