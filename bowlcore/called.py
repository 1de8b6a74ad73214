"""How this program was called: what a person can type again."""

import shutil
import sys
from pathlib import Path


def called() -> str:
    """ "bowlcore" where that is found by its name, or the way there that was typed, such as .venv/bin/bowlcore."""
    program = Path(sys.argv[0])
    if program.name == "__main__.py" and program.parent.name == "bowlcore":
        return f'"{sys.executable}" -m bowlcore'
    if program.stem != "bowlcore" or shutil.which("bowlcore"):
        return "bowlcore"
    return f'"{program}"' if " " in str(program) else str(program)
