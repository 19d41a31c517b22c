"""A robot's name that cannot be the name of a folder or a file everywhere."""

from __future__ import annotations

import re

from namegen.checks.wording import quoted, to_write
from namegen.model.views import RobotView
from namegen.text.lookalikes import invisible

_FORBIDDEN = re.compile(r"[\s\\/:*?\"<>|\x00-\x1f\x7f]")
_DEVICES = re.compile(r"(?:con|prn|aux|nul|com\d|lpt\d)(?:\..*)?", re.IGNORECASE)
"""Names that Windows keeps for itself. Source: Microsoft, "Naming Files, Paths, and Namespaces"."""


def refused(view: RobotView) -> tuple[str, str] | None:
    """Return the message for a robot's name that makes no file name, and a name that does."""
    name = view.manifest.robot
    bad = _FORBIDDEN.search(name)
    unseen = invisible(name)
    if bad:
        sign = "a blank" if bad[0].isspace() else quoted(bad[0])
        reason = f"has {sign} at letter {bad.start() + 1}"
    elif unseen:
        reason = f"has an invisible character at letter {unseen[0][0] + 1}"
    elif name[:1] in {".", "-"}:
        reason = f"begins with {quoted(name[:1])}"
    elif name.endswith("."):
        reason = 'ends with "."'
    elif _DEVICES.fullmatch(name):
        reason = "is kept by Windows for itself"
    else:
        return None
    plain = _plain(name)
    message = (
        f"The robot's name {quoted(name)} {reason}. Files and folders are named after the robot: "
        f"write {to_write(f'robot: {plain}')}, and what else people should read as `title`."
    )
    return message, plain


def _plain(name: str) -> str:
    hidden = {at for at, _ in invisible(name)}
    seen = "".join(sign for at, sign in enumerate(name) if at not in hidden)
    plain = _FORBIDDEN.sub("-", " ".join(seen.split())).strip("-.")
    return f"{plain}-robot" if _DEVICES.fullmatch(plain) else plain or "robot"
