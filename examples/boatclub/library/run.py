"""Run a boat's program at the desk: python library/run.py code/heron/skim.py."""

import runpy
import sys
from pathlib import Path

FOLDER = Path(__file__).resolve().parent


def main() -> None:
    """Put the library and the shared code where the program finds them, then run it."""
    del sys.argv[0]  # the program sees its own name and what stands behind it
    program = Path(sys.argv[0]).resolve()
    sys.path[:1] = [
        str(program.parent),
        str(FOLDER / "python"),
        str(FOLDER.parent / "code" / "common"),
    ]
    runpy.run_path(str(program), run_name="__main__")


if __name__ == "__main__":
    main()
