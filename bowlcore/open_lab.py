"""Opens the lessons: a JupyterLab of our own settings, on this computer only, until Ctrl-C.

The settings, the extension that runs a lesson when it opens, and its style lie in bowlcore/lab. They are
handed over in the environment of that one server, so a person's own Jupyter stays as it is.
"""

import json
import os
import secrets
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path
from urllib.parse import quote

from bowlcore import work_folder

_LAB = Path(__file__).with_name("lab")
_START_LIMIT_S = 120  # a first start on a slow, virus-scanned laptop


def open_lab(folder: Path | None = None, page: str = "", browser: bool = True) -> int:
    """Fill the work folder, serve it until Ctrl-C, and return the exit code."""
    folder = (folder or work_folder.default_folder()).expanduser().absolute()
    for line in work_folder.fill(folder):
        print(line)
    name = find_page(folder, page)
    # The operating system ends a program in several ways; each should end the server too.
    for way in ("SIGTERM", "SIGHUP"):
        if hasattr(signal, way):
            signal.signal(getattr(signal, way), signal.default_int_handler)
    with tempfile.TemporaryDirectory(prefix="bowlcore-", ignore_cleanup_errors=True) as temporary:
        return _serve(folder, name, browser, Path(temporary))


def find_page(folder: Path, page: str = "") -> str:
    """File name of the first notebook in `folder` whose name begins with `page`."""
    names = [notebook.name for notebook in sorted(folder.glob("*.ipynb"), key=lambda found: found.stem)]
    if not names:
        raise ValueError(f"There is no lesson in {folder}; type: bowlcore doctor")
    for name in names:
        if name.startswith(page):
            return name
    raise ValueError(f"No lesson begins with {page}; they go from {names[0][:2]} to {names[-1][:2]}")


def server_command(folder: Path, name: str, browser: bool, temporary: Path) -> list[str]:
    """The command that starts the server."""
    command = [
        sys.executable,
        "-m",
        "jupyterlab",
        "--ip=127.0.0.1",
        f"--ServerApp.root_dir={folder}",
        f"--LabApp.default_url=/doc/tree/{quote(name)}",
        # Fresh each time: a page left open another day is not opened and run again.
        f"--LabApp.workspaces_dir={temporary}",
        # Ctrl-C means stop, without a question.
        "--ServerApp.answer_yes=True",
        # Browsers in a sandbox cannot read the file that Jupyter would hand them in place of the address.
        "--ServerApp.use_redirect_file=False",
        # Each page opened has a Python of its own; those whose page was closed end after half an hour.
        "--MappingKernelManager.cull_idle_timeout=1800",
        "--MappingKernelManager.cull_interval=300",
    ]
    if not browser:
        command.append("--no-browser")
    if hasattr(os, "geteuid") and os.geteuid() == 0:
        command.append("--allow-root")
    return command


def server_environment(token: str, temporary: Path) -> dict[str, str]:
    """This process's environment, with our settings in front of the person's own.

    The token goes here because other people on the computer can read a command line.
    """
    environment = dict(os.environ, JUPYTER_TOKEN=token, JUPYTER_RUNTIME_DIR=str(temporary))
    for variable, ours in (("JUPYTER_PATH", _LAB / "share"), ("JUPYTER_CONFIG_PATH", _LAB / "config")):
        theirs = os.environ.get(variable)
        environment[variable] = os.pathsep.join([str(ours), theirs] if theirs else [str(ours)])
    return environment


def _serve(folder: Path, name: str, browser: bool, temporary: Path) -> int:
    token = secrets.token_hex(16)
    log = temporary / "server.log"  # its messages are for programmers
    with log.open("wb") as messages:
        server = subprocess.Popen(
            server_command(folder, name, browser, temporary),
            env=server_environment(token, temporary),
            stdin=subprocess.DEVNULL,
            stdout=messages,
            stderr=messages,
        )
    try:
        port = _wait_for_port(server, temporary)
        if port is None:
            last = log.read_text(errors="replace").strip().rpartition("\n")[2]
            raise OSError(f"The lessons could not be started ({last}); type: bowlcore doctor")
        address = f"http://127.0.0.1:{port}/doc/tree/{quote(name)}?token={token}"
        print(f"Your lessons are kept in {folder}")
        if browser:
            print("Your browser opens them; if it does not, copy this address into it:")
        else:
            print("Copy this address into a browser:")
        print(f"  {address}")
        print("Leave this window open while you work; close with Ctrl-C.", flush=True)
        return 0 if server.wait() == 0 else 1
    except KeyboardInterrupt:
        return 0
    finally:
        signal.signal(signal.SIGINT, signal.SIG_IGN)  # a second, impatient Ctrl-C changes nothing
        server.terminate()
        try:
            server.wait(10)
        except subprocess.TimeoutExpired:
            server.kill()


def _wait_for_port(server: subprocess.Popen, temporary: Path) -> int | None:
    """The port the server took, the next free one if 8888 is busy; None if it stopped or never came up."""
    end = time.monotonic() + _START_LIMIT_S
    while server.poll() is None and time.monotonic() < end:
        for found in temporary.glob("jpserver-*.json"):
            try:
                return json.loads(found.read_text())["port"]
            except ValueError:
                pass  # still being written
        time.sleep(0.1)
    return None
