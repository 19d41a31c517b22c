"""``outdated-number``: code has a device's number written out, and the manifest says another."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence

from namegen.checks.code.wording import quoted
from namegen.model.findings import Example, Finding, FindingKind, Severity
from namegen.model.places import Related
from namegen.model.views import CodeView, Figure, TypedNumber
from namegen.text.words import letters

KIND = FindingKind(
    name="outdated-number",
    severity=Severity.WARNING,
    scope="file",
    what=(
        "A variable, field, constant, argument or key bears the name of one of a device's "
        "numbers, in any case style, and is given a number other than the one that follows from "
        "the manifest. A number that is rounded or cut is right; so is what any setup gives. A "
        "name without the device's, such as counts_per_output_turn alone, may hold any number: "
        "a chain, a linkage or a limit that the manifest does not know can lie between."
    ),
    why=(
        "A number that was copied into code stays as it is when a gear, an encoder, a servo or "
        "the battery changes. The robot then drives too far or not far enough, and nothing says "
        "why."
    ),
    example=Example(
        flagged="BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN = 216",
        mended="COUNTS = Numbers.BOW_THRUSTER_COUNTS_PER_OUTPUT_TURN",
    ),
    repair="None: the number in the code or the figures in the catalogue can be the wrong ones.",
)

_CLOSE = 1e-9
"""Relative difference that is no more than the arithmetic's own."""

_MARK = re.compile(r"^(?:k(?=[A-Z])|m_)")
"""What a constant or a member may begin with, besides its name. Common practice, no source."""


def check(view: CodeView) -> Iterator[Finding]:
    """Yield each number that bears a figure's name and has none of the values it may have."""
    known = _by_letters(view.figures) if view.numbers else {}
    for number in view.numbers:
        figures = known.get(letters(_MARK.sub("", number.name)), ())
        if figures and number.value and not any(_says(number, one) for one in figures):
            yield _finding(view, number, figures[0])


def _says(number: TypedNumber, figure: Figure) -> bool:
    """Whether a number is the right one, rounded or cut to as many digits as it has."""
    right = figure.number.value
    close = _CLOSE * abs(right)
    if abs(number.value - right) <= close:
        return True
    return number.value - number.unit / 2 - close <= right < number.value + number.unit - close


def _finding(view: CodeView, number: TypedNumber, figure: Figure) -> Finding:
    device, right = figure.device, said(figure.number.value)
    constant = figure.constants.get(number.language)
    use = f"Use the generated constant {quoted(constant)}" if constant else f"Write {right}"
    return KIND.finding(
        number.place,
        f"{quoted(number.name)} is {said(number.value)} here, but {right} follows from the "
        f"manifest of {quoted(view.robot.robot)} for {quoted(device.name)} "
        f"({figure.number.formula}). {use}; or correct the part's figures if the code is right.",
        found=number.text,
        expected=right,
        robot=view.robot.robot,
        related=[Related(device.place("part"), "it follows from this part")],
    )


def said(value: float) -> str:
    """Return a number as a person writes it: at most six digits behind the whole ones."""
    return f"{value:.6f}".rstrip("0").rstrip(".") if abs(value) >= 1e-3 else repr(value)


def _by_letters(figures: Sequence[Figure]) -> Mapping[str, Sequence[Figure]]:
    """Return the figures by the letters of the names that code may give them."""
    table: dict[str, list[Figure]] = defaultdict(list)
    for figure in figures:
        names = {figure.device.name, *figure.device.identifiers.values()}
        for key in {letters(f"{name}_{figure.number.name}") for name in names}:
            table[key].append(figure)
    return table
