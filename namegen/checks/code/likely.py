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


def rivals(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names are near the text though none is surely meant."""
    return tuple(question.robot.devices[name] for name in suggestion(question).rivals)
