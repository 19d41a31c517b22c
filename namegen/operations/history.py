"""History: which files changed since a revision, as git tells it.

A repository is somebody else's data, and its configuration can name programs
that git runs. So only plumbing is called that compares no content, and every
setting through which it could start a program is switched off.
"""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

from namegen.errors import UnusableInput

_SAFE = [
    "git",
    *("-c", "core.fsmonitor=false"),
    *("-c", "core.hooksPath=/dev/null"),
    *("-c", "core.pager=cat"),
    *("-c", "diff.external="),
    *("-c", "submodule.recurse=false"),
    *("-c", "protocol.allow=never"),
    "--no-optional-locks",
    "--literal-pathspecs",
]


def changed_since(root: Path, revision: str) -> set[str]:
    """Return the files below ``root`` that differ from a revision or are new, relative to it.

    Raises:
        UnusableInput: git is missing, this is no repository, or there is no such revision.
    """
    where = f"--since {revision}"
    commit = _git(
        root, where, "rev-parse", "--verify", "--quiet", "--end-of-options", revision + "^{commit}"
    )
    changed = _git(
        root,
        where,
        *("diff-index", "--name-only", "-z", "--relative", "--no-ext-diff", "--no-textconv"),
        *("--ignore-submodules=all", commit.strip(), "--"),
    )
    new = _git(root, where, "ls-files", "-z", "--others", "--exclude-standard")
    return {path for path in (changed + new).split("\0") if path}


def _git(root: Path, where: str, *arguments: str) -> str:
    environment = {key: value for key, value in os.environ.items() if not key.startswith("GIT_")}
    try:
        done = subprocess.run(
            [*_SAFE, *arguments],
            cwd=root,
            env={**environment, "GIT_TERMINAL_PROMPT": "0", "LC_ALL": "C"},
            stdin=subprocess.DEVNULL,
            capture_output=True,
            check=False,
        )
    except OSError as error:
        raise UnusableInput("git is needed for --since and was not found") from error
    if done.returncode:
        said = done.stderr.decode("utf-8", "replace").strip().splitlines()
        raise UnusableInput(
            f"git cannot tell what changed: {said[0] if said else 'there is no such revision'}",
            where=where,
            remedy="give a revision that exists, such as HEAD or main; the workspace must lie in a "
            "git repository",
        )
    return done.stdout.decode("utf-8", "surrogateescape")
