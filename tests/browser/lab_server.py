"""`bowlcore open` and `bowlcore show` as a person starts them, on folders of their own, for the browser tests."""

import json
import os
import signal
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path
from typing import NamedTuple
from urllib.parse import quote, urlsplit


class Lab(NamedTuple):
    """A running server: the folder it serves, where it begins, and the process that keeps it."""

    folder: Path
    first_address: str
    pid: int

    def address(self, name: str) -> str:
        """Where to open one notebook of the folder."""
        address = urlsplit(self.first_address)
        place = "/doc/tree/" if address.path.startswith("/doc/tree/") else "/voila/render/"
        return address._replace(path=place + quote(name)).geturl()


@contextmanager
def lab_server(folder: Path, settings: Path, command: str = "open"):
    """Start a server on `folder`, keeping Jupyter's own files in `settings`; ended as by Ctrl-C."""
    own = {f"JUPYTER_{kind}_DIR": str(settings / kind.lower()) for kind in ("CONFIG", "DATA")}
    words = [sys.executable, "-m", "bowlcore", command, str(folder), "--no-browser"]
    with subprocess.Popen(words, stdout=subprocess.PIPE, text=True, env=dict(os.environ, **own)) as process:
        try:
            addresses = (line.strip() for line in process.stdout if "http://" in line)
            yield Lab(folder, next(addresses), process.pid)
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
