"""Whatever the bytes of a chart are: no traceback, and files that can be read."""

from __future__ import annotations

import io
import random
from pathlib import Path

import pytest

from namegen.errors import UnusableInput
from namegen.loading.catalogue import read_catalogue
from namegen.loading.manifest import read_manifest
from namegen.operations.chart import files_of, read

PAPERS = [path.read_bytes() for path in sorted(Path(__file__).with_name("papers").glob("*.csv"))]
PIECES = [
    b",", b";", b"\t", b"|", b'"', b'""', b"\n", b"\r", b"\0", b"\xff\xfe", b"\xef\xbb\xbf",
    b"\xed\xa0\x80", b"=1+1", b"Robot: x", b"Total", b"-", b"1.0", b"0/1", b"bridge M1", b"M1/M2",
]  # fmt: skip


def workbook() -> bytes:
    """Return a workbook with merged cells, a formula and two sheets."""
    openpyxl = pytest.importorskip("openpyxl")
    made = openpyxl.Workbook()
    for sheet in (made.active, made.create_sheet("stern")):
        for row in (["Controller", "Port", "Name", "Kind"], ["bridge", "M1", "a", "motor"],
                    [None, '="M"&2', "b", "motor"]):  # fmt: skip
            sheet.append(row)
        sheet.merge_cells("A2:A3")
    held = io.BytesIO()
    made.save(held)
    return held.getvalue()


def mutated(data: bytes, chance: random.Random) -> bytes:
    """Return bytes with a few pieces changed, taken out or put in."""
    for _ in range(chance.randint(1, 5)):
        start = chance.randrange(len(data) + 1)
        end = min(len(data), start + chance.randint(0, 30))
        piece = chance.choice(
            [b"", data[start:end] * 2, chance.choice(PIECES), chance.randbytes(1)]
        )
        data = data[:start] + piece + data[end:]
    return data


def made_of(data: bytes, folder: Path, name: str) -> dict[str, bytes]:
    """Return the files made from a chart's bytes; none where it is refused."""
    path = folder / name
    path.write_bytes(data)
    try:
        return files_of(read(path, (), ()).chart, name)
    except UnusableInput as refused:
        assert refused.remedy
        return {}


def check(files: dict[str, bytes]) -> None:
    """Assert that the files are read without a fault."""
    if not files:
        return
    catalogue = read_catalogue(files["catalogue.yaml"], "catalogue.yaml")
    assert catalogue.value is not None and catalogue.faults == ()
    for name, text in files.items():
        if name.startswith("robots/"):
            loaded = read_manifest(name, lambda _, data=text: data, catalogue.value)
            assert loaded.value is not None and loaded.faults == (), text.decode()


@pytest.mark.parametrize("seed", range(150))
def test_mutated_charts(seed: int, tmp_path: Path):
    chance = random.Random(seed)
    check(made_of(mutated(chance.choice(PAPERS), chance), tmp_path, "boat.csv"))


@pytest.mark.parametrize("seed", range(50))
def test_mutated_workbooks(seed: int, tmp_path: Path):
    check(made_of(mutated(workbook(), random.Random(seed)), tmp_path, "boat.xlsx"))
