"""What a check is given to look at: a robot, a name in code, a robot's whole code."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from msgspec import Struct, field

from namegen.model.boards import Board, Catalogue
from namegen.model.derived import DerivedNumber
from namegen.model.facts import LookupSite
from namegen.model.identifiers import NamingScheme
from namegen.model.manifests import Device, Manifest
from namegen.model.places import Place
from namegen.model.workspaces import NameRules


class RobotView(Struct, frozen=True):
    """One robot for the checks of ``checks/manifest/``.

    ``schemes`` are the languages that the workspace generates for this robot.
    """

    manifest: Manifest
    catalogue: Catalogue
    names: NameRules
    schemes: tuple[NamingScheme, ...] = ()

    def board(self, controller: str) -> Board | None:
        """Return the board of a controller, or None when either is unknown."""
        found = self.manifest.controllers.get(controller)
        return self.catalogue.boards.get(found.board) if found else None


class ResolvedLookup(Struct, frozen=True):
    """A look-up with the text that it gets, followed through constants and files.

    ``text`` is None when it is not known; ``why`` then completes "because ...".
    ``place`` is the literal's text without quotes, in whichever file it stands,
    or the whole expression where the name is put together from pieces;
    ``literal`` tells the two apart: only a literal can be rewritten.
    ``at`` is the whole look-up in the file that holds it.
    """

    site: LookupSite
    at: Place
    place: Place
    text: str | None
    why: str | None = None
    literal: bool = False
    language: str = ""
    output: str | None = None
    """The generated file that the name comes from, if it is one of namegen's constants."""
    lacking: bool = False
    """Whether ``why`` is that a file has no constant of this name."""
    is_key: bool = False
    """Whether the text is a key of a table, which other code may use too."""

    @property
    def kind(self) -> str | None:
        """The device kind that the program asks for, where the look-up says it."""
        return self.site.kind


class NameQuestion(Struct, frozen=True):
    """Is this text a device of this robot, for the naming checks of ``checks/code/``."""

    lookup: ResolvedLookup
    text: str
    robot: Manifest
    setup: str | None
    """The setup the code is for; None: any setup of the robot."""
    fleet: Sequence[Manifest]

    @property
    def devices(self) -> tuple[Device, ...]:
        """The devices that the code may look up."""
        if self.setup is None:
            return tuple(self.robot.devices.values())
        return self.robot.devices_in(self.setup)

    @property
    def asked(self) -> str | None:
        """The kind that the look-up asks for, where it says one."""
        return self.lookup.kind


class TypedNumber(Struct, frozen=True):
    """A number that code writes out and gives a name; ``place`` is the number.

    It says the value to within ``unit``, one step of its last digit.
    """

    name: str
    text: str
    value: float
    unit: float
    place: Place
    language: str


class Figure(Struct, frozen=True):
    """A number that follows from the manifest; ``constants`` are its names, by language built."""

    device: Device
    number: DerivedNumber
    constants: Mapping[str, str] = field(default_factory=dict)


class CodeView(Struct, frozen=True):
    """All code of one robot, for the checks that look at more than one look-up.

    ``complete`` is False when a file was unreadable or a name not known, so that
    silence about a device proves nothing. ``mentioned`` are the devices whose
    generated constant the code refers to. ``numbers`` are those in the code whose
    names may be those of ``figures``.
    """

    robot: Manifest
    setup: str | None
    lookups: Sequence[ResolvedLookup]
    mentioned: frozenset[str]
    complete: bool
    numbers: Sequence[TypedNumber] = ()
    figures: Sequence[Figure] = ()


class FleetView(Struct, frozen=True):
    """Robots that are meant to be alike, for the checks of ``checks/fleet/``."""

    robots: Sequence[Manifest]


class Side(Struct, frozen=True):
    """One of the two things that are compared: a manifest, or an as-found list.

    ``devices`` are those of the setup that is compared. ``known`` are the fields
    that this side says of a device: a list read off a machine may hold names alone.
    """

    label: str
    devices: Sequence[Device]
    known: frozenset[str]
    manifest: Manifest | None = None
    printed: bool = False
    """Whether a program may have printed the list, with kinds and ports that it was built with."""


class Pair(Struct, frozen=True):
    """One device, or controller, as both sides have it.

    ``before`` names controllers as the other side does, so that a renamed
    controller moves no device.
    """

    before: Device
    after: Device


class ComparisonView(Struct, frozen=True):
    """Two sides with what belongs together, for the checks of ``checks/comparison/``.

    ``fits`` is another setup of the manifest that a list read off a machine agrees with.
    """

    before: Side
    after: Side
    pairs: Sequence[Pair]
    missing: Sequence[Device]
    extra: Sequence[Device]
    fits: str | None = None
    setup: str | None = None

    @property
    def two_manifests(self) -> bool:
        """Whether neither side was read off a machine."""
        return self.before.manifest is not None and self.after.manifest is not None

    def both_say(self, name: str) -> bool:
        """Whether both sides say this field of a device, so that it can be compared."""
        return name in self.before.known and name in self.after.known
