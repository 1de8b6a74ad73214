"""Runs a server for the lessons, on this computer only, until Ctrl-C: what `open` and `show` have in common.

Our settings lie in bowlcore/lab. They are handed over in the environment of that one server, so a person's
own Jupyter stays as it is.
"""

import os
import secrets
import signal
import subprocess
import tempfile
import threading
import time
import webbrowser
from pathlib import Path

from bowlcore import work_folder
from bowlcore.called import called

LAB = Path(__file__).with_name("lab")
_ENDINGS = [getattr(signal, way) for way in ("SIGINT", "SIGTERM", "SIGHUP") if hasattr(signal, way)]
_START_LIMIT_S = 120  # a first start on a slow, virus-scanned laptop

# Each page opened has a Python of its own; those whose page was closed and could not say so end after half an hour.
CULLING = {"cull_idle_timeout": 1800, "cull_interval": 300}  # [s]


def ready_folder(folder: Path | None) -> Path:
    """The work folder, its lessons brought up to date; prints what a person should know."""
    folder = (folder or work_folder.default_folder()).expanduser().absolute()
    for line in work_folder.fill(folder):
        print(line)
    return folder


def environment(token: str, temporary: Path) -> dict[str, str]:
    """This process's environment, with our settings in front of the person's own.

    The token goes here because other people on the computer can read a command line.
    """
    ours = dict(os.environ, JUPYTER_TOKEN=token, JUPYTER_RUNTIME_DIR=str(temporary))
    for variable, place in (("JUPYTER_PATH", LAB / "share"), ("JUPYTER_CONFIG_PATH", LAB / "config")):
        theirs = os.environ.get(variable)
        ours[variable] = os.pathsep.join([str(place), theirs] if theirs else [str(place)])
    return ours


def until_ctrl_c(command, port_of, page: str, folder: Path, browser: bool) -> int:
    """Run a server, say where it is, open the browser there, and return the exit code when it has ended.

    Parameters
    ----------
    command : callable
        command(temporary) is the command that starts it; `temporary` is a folder that goes when it ends.
    port_of : callable
        port_of(temporary) is the port it took, or None while that is not known; `server.log` there holds
        what it said.
    page : str
        The page to open, as in its address.

    Raises
    ------
    OSError
        In one sentence, if it does not start.
    """
    # The operating system ends a program in several ways; each should end the server too.
    for way in _ENDINGS:
        signal.signal(way, signal.default_int_handler)
    with tempfile.TemporaryDirectory(prefix="bowlcore-", ignore_cleanup_errors=True) as temporary:
        return _serve(command, port_of, page, folder, browser, Path(temporary))


def _serve(command, port_of, page, folder, browser, temporary) -> int:
    token = secrets.token_hex(16)
    log = temporary / "server.log"  # its messages are for programmers
    with log.open("wb") as messages:
        server = subprocess.Popen(
            command(temporary),
            env=environment(token, temporary),
            stdin=subprocess.DEVNULL,
            stdout=messages,
            stderr=messages,
            start_new_session=True,  # Ctrl-C reaches this process alone, which then ends the server once
        )
    print("Starting: up to half a minute …", flush=True)
    try:
        port = _wait_for(server, lambda: port_of(temporary))
        if port is None:
            last = log.read_text(errors="replace").strip().rpartition("\n")[2]
            raise OSError(f"The lessons could not be started ({last}); type: {called()} doctor")
        address = f"http://127.0.0.1:{port}{page}?token={token}"
        print(f"Your lessons are kept in {folder}")
        if browser:
            print("Your browser opens them; if it does not, copy this address into it:")
            threading.Thread(target=webbrowser.open, args=[address], daemon=True).start()
        else:
            print("Copy this address into a browser:")
        print(f"  {address}")
        print("Leave this window open while you work; close with Ctrl-C.", flush=True)
        return 0 if server.wait() == 0 else 1
    except KeyboardInterrupt:
        return 0
    finally:
        for way in _ENDINGS:
            signal.signal(way, signal.SIG_IGN)  # a second, impatient Ctrl-C changes nothing
        server.terminate()
        try:
            server.wait(10)
        except subprocess.TimeoutExpired:
            server.kill()


def _wait_for(server: subprocess.Popen, port) -> int | None:
    """The port the server took; None if it stopped or never came up."""
    end = time.monotonic() + _START_LIMIT_S
    while server.poll() is None and time.monotonic() < end:
        if (found := port()) is not None:
            return found
        time.sleep(0.1)
    return None
