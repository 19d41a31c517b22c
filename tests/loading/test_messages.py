"""Every message about the text of a YAML file, as a student reads it in the report.

A file in ``messages`` holds wrong texts of one of the three documents, each
below a line ``=== title``. ``bare`` before the title leaves out the robot and the
controllers that a manifest gets otherwise; ``<TAB>`` stands for a tab.
Each is verified within a workspace that is right in all else, so that a
message which follows from another is seen as well.
"""

from __future__ import annotations

import codecs
from collections.abc import Iterator, Mapping
from pathlib import Path

import pytest

from namegen import checks, reports
from namegen.errors import NamegenError
from namegen.loading.refusals import DEEPEST, MOST_VALUES
from namegen.loading.sources import LARGEST
from namegen.operations.verify import verify
from namegen.operations.workspace import open_workspace

PATHS = {
    "manifest": "robots/otter.yaml",
    "catalogue": "catalogue.yaml",
    "settings": "namegen.yaml",
}
HEAD = {
    "robot:": "robot: otter\n",
    "controllers:": "controllers:\n  front: {board: pondBoard}\n  rear: {board: pondBoard}\n",
}
SOUND = {
    "namegen.yaml": "robots: [robots/*.yaml]\ncatalogue: catalogue.yaml\n",
    "catalogue.yaml": """\
boards:
  pondBoard:
    ports: {motor: 1-3, servo: 1-5, digital: 1-6, i2c: 1-2}
  deckBoard:
    ports: {motor: 1-2}
    built_in: {tilt: imu}
parts:
  rope: {volts: 12}
""",
    "robots/otter.yaml": "robot: otter\n",
    "shared/hull.yaml": "devices:\n  spareLamp: {kind: lamp, port: front digital 6}\n",
}
BYTES = {
    "saved as UTF-16": "robot: otter\n".encode("utf-16"),
    "saved as UTF-16 without a mark": "robot: otter\n".encode("utf-16-le"),
    "saved as UTF-32": codecs.BOM_UTF32_LE + "robot: otter\n".encode("utf-32-le"),
    "saved in another encoding": "robot: otter\ntitle: Fischötter\n".encode("latin-1"),
    "a zero byte": b"robot: otter\ntitle: Ot\0ter\n",
    "a control character": b"robot: otter\ntitle: \x1b[1mOtter\n",
    "too big": b"robot: otter\n".ljust(LARGEST + 1, b"#"),
    "too deep": b"robot: otter\ntitle: " + b"[" * (DEEPEST + 1) + b"]" * (DEEPEST + 1) + b"\n",
    "too many values": b"robot: otter\ntitle: [" + b"a," * MOST_VALUES + b"]\n",
}


def cases(document: str) -> Iterator[tuple[str, bytes]]:
    """Yield title and text of each case of a document."""
    text = (Path(__file__).parent / f"messages/{document}.txt").read_text(encoding="utf-8")
    for block in text.split("=== ")[1:]:
        title, body = block.split("\n", 1)
        body = body.replace("<TAB>", "\t")
        if document == "manifest" and not title.startswith("bare: "):
            body = "".join(HEAD.values()) + body
        yield title.removeprefix("bare: "), body.encode()
    if document == "manifest":
        yield from BYTES.items()


def told(root: Path, files: Mapping[str, bytes]) -> str:
    """Return what ``namegen verify`` shows of a workspace."""
    for path, data in files.items():
        (root / path).parent.mkdir(parents=True, exist_ok=True)
        (root / path).write_bytes(data)
    try:
        space = open_workspace(root)
        report = verify(space)
    except NamegenError as error:
        return f"namegen: {error}\n"
    return reports.renderer("text")(report, space.source, checks.kinds())


@pytest.mark.parametrize("document", PATHS)
def test_every_message_as_a_student_reads_it(tmp_path: Path, document: str, snapshot):
    sound = {path: text.encode() for path, text in SOUND.items()}
    pages = []
    for title, data in cases(document):
        page = told(tmp_path, {**sound, PATHS[document]: data})
        pages.append(f"# {title}\n\n{page}")
    assert "\n\n".join(pages).replace(str(tmp_path), "WORKSPACE") == snapshot
