"""The record of outputs, ``namegen.outputs.json``: what namegen last wrote, by hash.

It is committed beside the outputs, so that anybody's checkout can tell an output
that is behind the manifest from one that was edited by hand.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Mapping

from msgspec import Struct
from msgspec.structs import replace

from namegen.errors import UnusableInput
from namegen.operations.files import Folder

RECORD_FILE = "namegen.outputs.json"
FORMAT = "namegen-outputs/1"


class Entry(Struct, frozen=True):
    """One output. ``replacing`` is the hash it had before, while a build is under way.

    It is noted before the output is touched: a build that is killed then leaves
    files that are each known to be namegen's, old or new.
    """

    target: str
    robot: str | None
    sha256: str
    replacing: str | None = None

    def made(self, text_hash: str) -> bool:
        """Whether a file with this hash is one that namegen wrote."""
        return text_hash in {self.sha256, self.replacing}


def text_hash(data: bytes) -> str:
    """Return the SHA-256 of a file's bytes with its line ends normalised to LF.

    Version control may check files out with other line ends; that is no edit.
    """
    return hashlib.sha256(normalised(data)).hexdigest()


def normalised(data: bytes) -> bytes:
    """Return the bytes with every line end written as LF."""
    return data.replace(b"\r\n", b"\n").replace(b"\r", b"\n")


def read_record(folder: Folder) -> dict[str, Entry]:
    """Return the recorded outputs by path; empty when there is no record yet.

    Raises:
        UnusableInput: the record was damaged.
    """
    if not folder.exists(RECORD_FILE):
        return {}
    try:
        content = json.loads(folder.read(RECORD_FILE))
        if content["format"] != FORMAT:
            raise KeyError(content["format"])
        return {path: Entry(**entry) for path, entry in content["outputs"].items()}
    except (ValueError, KeyError, TypeError, AttributeError) as error:
        raise UnusableInput(
            "the record of outputs cannot be read",
            where=RECORD_FILE,
            remedy="restore it from version control; or delete it and run "
            "`namegen build --force`, which overwrites outputs that were edited by hand",
        ) from error


def record_bytes(entries: Mapping[str, Entry]) -> bytes:
    """Return the record as it is written: one stable form, so that it merges well."""
    outputs = {
        path: {
            key: value
            for key in ("target", "robot", "sha256", "replacing")
            if (value := getattr(entry, key)) is not None or key == "robot"
        }
        for path, entry in sorted(entries.items())
    }
    content = {"format": FORMAT, "outputs": outputs}
    return (json.dumps(content, indent=2, ensure_ascii=False) + "\n").encode()


def settled(entries: Mapping[str, Entry]) -> dict[str, Entry]:
    """Return the record without the marks of a build under way."""
    return {path: replace(entry, replacing=None) for path, entry in entries.items()}
