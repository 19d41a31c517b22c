"""What a name that is no device was probably meant to be."""

from __future__ import annotations

from namegen.model.manifests import Device
from namegen.model.views import NameQuestion
from namegen.text.likeness import Candidate, Suggestion, suggest


def suggestion(question: NameQuestion) -> Suggestion:
    """Return the device that was surely meant, or the near ones; cached for each text."""
    known = [Candidate(device.name, device.kind) for device in question.robot.devices.values()]
    return suggest(question.text, known, question.asked)


def rivals(question: NameQuestion) -> tuple[Device, ...]:
    """Return the devices whose names are near the text though none is surely meant."""
    return tuple(question.robot.devices[name] for name in suggestion(question).rivals)
