"""What a name that is no device was probably meant to be."""

from __future__ import annotations

from functools import lru_cache

from namegen.checks.code.candidates import same_to_any_reader
from namegen.model.manifests import Device, Manifest
from namegen.model.views import NameQuestion
from namegen.text.likeness import Candidate, Suggestion, suggest


def suggestion(question: NameQuestion) -> Suggestion:
    """Return the device that was surely meant, or the near ones; cached for each text."""
    return _present(question.text, question.robot, question.asked)


def _present(text: str, robot: Manifest, asked: str | None) -> Suggestion:
    kinds = tuple([device.kind for device in robot.devices.values()])
    return _suggestion(text, tuple(robot.devices), kinds, asked)


@lru_cache(maxsize=4096)
def _suggestion(
    text: str, names: tuple[str, ...], kinds: tuple[str, ...], asked: str | None
) -> Suggestion:
    return suggest(text, tuple(map(Candidate, names, kinds)), asked)


def slip_of_old_name(text: str, robot: Manifest, asked: str | None = None) -> str | None:
    """Return the former name of which a text is surely a slip, where it is one of no present name.

    It is one where no present name is about as near, whatever kind is ``asked`` for.
    """
    if same_to_any_reader(text, robot) or _present(text, robot, asked).best:
        return None
    old = {name: owners for name, owners in robot.retired.items() if name not in robot.devices}
    if not old:
        return None
    kinds = [device.kind for device in robot.devices.values()]
    kinds += [owners[0].kind for owners in old.values()]
    best = _suggestion(text, (*robot.devices, *old), tuple(kinds), None).best
    return best if best in old else None


def rivals(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names are near the text though none is surely meant."""
    return tuple(question.robot.devices[name] for name in suggestion(question).rivals)
