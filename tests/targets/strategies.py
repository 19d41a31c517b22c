"""Manifests with hostile text in every place where a person may type, for hypothesis."""

from __future__ import annotations

from hypothesis import HealthCheck, Phase, given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from namegen.model.manifests import Battery, Change, Device, Manifest, Port, Setup
from targets.boats import robot

SNIPPETS = (
    '"', "'", '"""', "'''", "\\", "\\\\", "\\u0041", "\\N{BULLET}", "\\", "*/", "/*", "//", "/**",
    "{{ robot }}", "{% raw %}", "{#", "${name}", "$x", "%s", "{0}", "??/", "??'", "\n", "\r\n",
    "\r", "\t", "\u2028", "\u2029", "\x85", "\x0b", "\x1b[31m", "\x7f", "\u202e", "\u2066",
    "\u200b", "\ufeff", "\u00a0", "é", "e\u0301", "ß", "שלום", "مرحبا", "船", "\U0001f6a4",
    "\U0001f469\u200d\U0001f680", "\U0010ffff", "\uffff", "=1+1", "+1", "-1", "@SUM(1)", "'=", "|",
    "\\|", "`", "``", "<b>", "</code>", "<!--", "-->", "&amp;", "&#124;", "@see", "{@code x}",
    "#", "# ", "*bold*", "_it_", "[a](b)", "![a](b)", "~~no~~", "http://x.example", ",", ";",
    " ", "  ", "bow", "Thruster", "x" * 200, "null", "true", "0x10", "a.b.", "!", "- ", ": ", "? ",
)  # fmt: skip


def hostile(min_size: int = 0) -> st.SearchStrategy[str]:
    """Return any text without lone surrogates and NUL, which no YAML file can hold."""
    letters = st.characters(exclude_categories=["Cs"], exclude_characters="\0")
    piece = st.one_of(st.sampled_from(SNIPPETS), st.text(letters, max_size=4))
    text = st.lists(piece, min_size=min_size, max_size=3).map("".join)
    return text.filter(lambda one: len(one) >= min_size)


PORTS = st.one_of(
    st.builds(
        Port,
        st.sampled_from(["bridge", "stern"]),
        st.sampled_from(["motor", "servo", "digital", "i2c"]),
        st.sampled_from(["1", "2", "3", "A"]),
    ),
    st.builds(Port, hostile(1), hostile(1), st.none() | hostile(1)),
)


@st.composite
def devices(draw: st.DrawFn, index: int) -> Device:
    """Return a device whose name is hostile and whose identifiers are sound: ``D0``, ``kD0``."""
    identifier = f"D{index}"
    return Device(
        name=draw(hostile(1)) + draw(st.sampled_from(["", str(index)])),
        kind=draw(st.sampled_from(["motor", "servo", "switch", "net-winch"])),
        ports=tuple(draw(st.lists(PORTS, max_size=2))),
        part=draw(st.none() | st.sampled_from(["thruster-b", "hinge-q"]) | hostile(1)),
        address=draw(st.none() | st.integers(0, 0x3FF)),
        does=draw(hostile()),
        expect=draw(hostile()),
        note=draw(hostile()),
        reversed=draw(st.booleans()),
        optional=draw(st.booleans()),
        formerly=(*draw(st.lists(hostile(1), max_size=2)), f"former{index}"),
        travel_mm=draw(st.none() | st.floats(1e-320, 1e300)),
        identifiers={
            "python": identifier,
            "java": identifier,
            "kotlin": identifier,
            "cpp": f"k{identifier}",
        },
    )


@st.composite
def manifests(draw: st.DrawFn) -> Manifest:
    """Return a robot with hostile text everywhere."""
    made = [draw(devices(index)) for index in range(draw(st.integers(0, 3)))]
    unique = list({one.name: one for one in made}.values())
    setups = {}
    selected = None
    if draw(st.booleans()):
        left_out = tuple(one.name for one in unique if draw(st.booleans()))
        change = {one.name: Change(ports=(draw(PORTS),)) for one in unique[:1]}
        selected, other = draw(hostile(1)), draw(hostile(1))
        setups = {other: Setup(other, without=left_out, change=change), selected: Setup(selected)}
    return replace(
        robot(*unique, name=draw(hostile(1)), setups=setups, selected=selected),
        battery=draw(st.none() | st.builds(Battery, volts=st.floats(1e-9, 1e30))),
        title=draw(hostile()),
        revision=draw(hostile()),
    )


def batch(size: int) -> list[Manifest]:
    """Return as many different manifests as a compiler is to be given in one go."""
    made: list[Manifest] = []

    @settings(
        max_examples=size,
        deadline=None,
        database=None,
        phases=[Phase.generate],
        suppress_health_check=list(HealthCheck),
    )
    @given(manifests())
    def collect(manifest: Manifest) -> None:
        made.append(manifest)

    collect()
    return made
