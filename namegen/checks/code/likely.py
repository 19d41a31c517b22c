"""What a name that is no device was probably meant to be."""

from __future__ import annotations

from functools import lru_cache

from namegen.model.manifests import Device
from namegen.model.views import NameQuestion
from namegen.text.likeness import Candidate, Suggestion, suggest


def suggestion(question: NameQuestion) -> Suggestion:
    """Return the device that was surely meant, or the near ones; cached for each text."""
    devices = question.robot.devices
    kinds = tuple([device.kind for device in devices.values()])
    return _suggestion(question.text, tuple(devices), kinds, question.asked)


@lru_cache(maxsize=4096)
def _suggestion(
    text: str, names: tuple[str, ...], kinds: tuple[str, ...], asked: str | None
) -> Suggestion:
    return suggest(text, tuple(map(Candidate, names, kinds)), asked)


def old_name(question: NameQuestion) -> str | None:
    """Return the former name that was surely meant, where no present name is about as near."""
    robot = question.robot
    old = {name: owners for name, owners in robot.retired.items() if name not in robot.devices}
    if not old:
        return None
    kinds = [device.kind for device in robot.devices.values()]
    kinds += [owners[0].kind for owners in old.values()]
    best = _suggestion(question.text, (*robot.devices, *old), tuple(kinds), None).best
    return best if best in old else None


def rivals(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names are near the text though none is surely meant."""
    return tuple(question.robot.devices[name] for name in suggestion(question).rivals)
