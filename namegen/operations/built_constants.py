"""The generated constants of a robot's devices, as they were built: where each one stands."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import PurePosixPath

from msgspec import Struct

from namegen import languages
from namegen.languages import Language
from namegen.model.facts import Path
from namegen.model.manifests import Manifest
from namegen.operations.record import read_record
from namegen.operations.schemes import schemes_by_robot
from namegen.operations.workspace import Workspace


class BuiltConstant(Struct, frozen=True):
    """Where the constant of a device stands: the generated file, and the way to it inside."""

    file: str
    text: bytes
    words: Path


def built_constants(
    workspace: Workspace, manifest: Manifest, language: Language
) -> Mapping[str, BuiltConstant]:
    """Return the built constant of each device that has one in the language.

    Raises:
        UnusableInput: a file that was built cannot be read.
    """
    schemes = schemes_by_robot(workspace).get(manifest.robot, ())
    scheme = next((one for one in schemes if one.language == language.name), None)
    found: dict[str, BuiltConstant] = {}
    for file, entry in read_record(workspace.folder).items():
        if scheme is None or entry.robot != manifest.robot or languages.for_path(file) != language:
            continue
        text = language.decode(workspace.folder.read(file)).utf8
        reading = language.read(text, ())
        for device in manifest.devices.values():
            inside = (scheme.type_name(device.kind), scheme.constant(device))
            for before in ((), (PurePosixPath(file).stem,), *reading.spaces):
                words = (*before, *inside)
                if reading.definitions(words):
                    found.setdefault(device.name, BuiltConstant(file, text, words))
    return found
