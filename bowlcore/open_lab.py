"""Opens the lessons: a JupyterLab of our own settings, on this computer only, until Ctrl-C.

The settings, the extension that runs a lesson when it opens, and its style lie in bowlcore/lab.
"""

import json
import os
import sys
from pathlib import Path
from urllib.parse import quote

from bowlcore import serve
from bowlcore.called import called


def open_lab(folder: Path | None = None, lesson: str = "", browser: bool = True) -> int:
    """Fill the work folder, serve it until Ctrl-C, and return the exit code."""
    folder = serve.ready_folder(folder)
    name = find_lesson(folder, lesson)
    return serve.until_ctrl_c(
        lambda temporary: server_command(folder, name, temporary),
        _port,
        f"/doc/tree/{quote(name)}",
        folder,
        browser,
    )


def find_lesson(folder: Path, lesson: str = "") -> str:
    """File name of the first notebook in `folder` whose name begins with `lesson`; 4 is 04."""
    names = [notebook.name for notebook in sorted(folder.glob("*.ipynb"), key=lambda found: found.stem)]
    if not names:
        raise ValueError(f"There is no lesson in {folder}; type: {called()} doctor")
    number = lesson.zfill(2) if lesson.isdecimal() else lesson
    for name in names:
        if name.startswith(number):
            return name
    raise ValueError(f"No lesson begins with {lesson}; they go from {names[0][:2]} to {names[-1][:2]}")


def server_command(folder: Path, name: str, temporary: Path) -> list[str]:
    """The command that starts the server."""
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--ip=127.0.0.1",
        "--no-browser",
        f"--ServerApp.root_dir={folder}",
        f"--LabApp.default_url=/doc/tree/{quote(name)}",
        # Fresh each time: a page left open another day is not opened and run again.
        f"--LabApp.workspaces_dir={temporary}",
        # Ctrl-C means stop, without a question.
        "--ServerApp.answer_yes=True",
        *(f"--MappingKernelManager.{name}={value}" for name, value in serve.CULLING.items()),
    ]
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        command.append("--allow-root")
    return command


def _port(temporary: Path) -> int | None:
    """The port the server took: the next free one if 8888 is busy."""
    for found in temporary.glob("jpserver-*.json"):
        try:
            return json.loads(found.read_text())["port"]
        except ValueError:
            pass  # still being written
    return None
