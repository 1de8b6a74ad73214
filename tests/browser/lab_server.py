"""`bowlcore open` as a person starts it, on folders of its own, for the browser tests."""

import json
import os
import signal
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple
from urllib.parse import quote


class Lab(NamedTuple):
    """A running server: the folder it serves, and where."""

    folder: Path
    first_address: str

    def address(self, name: str) -> str:
        """Where to open one notebook of the folder."""
        start, token = self.first_address.split("/doc/tree/")[0], self.first_address.partition("?")[2]
        return f"{start}/doc/tree/{quote(name)}?{token}"


@contextmanager
def lab_server(folder: Path, settings: Path):
    """Start a server on `folder`, keeping Jupyter's own files in `settings`; ended as by Ctrl-C."""
    own = {f"JUPYTER_{kind}_DIR": str(settings / kind.lower()) for kind in ("CONFIG", "DATA")}
    command = [sys.executable, "-m", "bowlcore", "open", str(folder), "--no-browser"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=dict(os.environ, **own)) as process:
        try:
            addresses = (line.strip() for line in process.stdout if "http://" in line)
            yield Lab(folder, next(addresses))
        finally:
            process.send_signal(signal.SIGINT)
    assert process.returncode == 0


def write_notebook(path: Path, *cells: tuple[str, str], lesson: bool = True) -> None:
    """A small notebook; each cell is ("markdown" or "code", source)."""
    made = []
    for number, (kind, source) in enumerate(cells):
        cell = {"cell_type": kind, "id": f"cell{number}", "source": source, "metadata": {}}
        if kind == "code":
            cell |= {"outputs": [], "execution_count": None, "metadata": {"jupyter": {"source_hidden": True}}}
        made.append(cell)
    kernel = {"name": "python3", "display_name": "Python 3", "language": "python"}
    metadata = {"kernelspec": kernel, "bowlcore": {"run_on_open": lesson}}
    path.write_text(json.dumps({"cells": made, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5}))
