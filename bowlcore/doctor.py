"""Checks the installation: one line for each thing, and what to type when it is not well."""

import socket
import sys
import tempfile
import webbrowser
from importlib import import_module, metadata
from importlib.util import find_spec
from pathlib import Path

from bowlcore import work_folder
from bowlcore.called import called
from bowlcore.locate import data_folder, workbooks_folder
from bowlcore.show import NEEDS

CLIP = {"av": "av>=16", "anywidget": "anywidget>=0.9.14", "PIL": "pillow>=10"}  # module: what is installed
_CLIP_NEEDS = " ".join(f'"{wanted}"' for wanted in CLIP.values())
_INSTALL_AGAIN = "Install the workbook again, the way its README says."


def run_checks() -> int:
    """Print one line for each check; returns the exit code, 1 if any of them failed."""
    failed = 0
    for check, remedy in CHECKS:
        try:
            print(f"ok      {check()}", flush=True)
        except Exception as problem:  # whatever a broken installation throws is what this is for
            failed += 1
            print(f"not ok  {problem or type(problem).__name__}\n        {remedy}", flush=True)
    print(
        f"All is well. Type: {called()} open" if not failed else f"{failed} not ok: see what to type above."
    )
    return 1 if failed else 0


def python_version() -> str:
    return "Python {}.{}.{}".format(*sys.version_info)


def package(name: str):
    def check() -> str:
        try:
            import_module(name)
            return f"{name} {metadata.version(name)}"
        except Exception as problem:
            raise RuntimeError(f"{name} cannot be loaded: {problem}") from None

    return check


def shipped_files() -> str:
    patterns = len(list(data_folder().glob("patterns/*.csv")))
    lessons = len(list(workbooks_folder().glob("*.ipynb")))
    if not patterns or not lessons:
        raise RuntimeError(f"{patterns} oil patterns and {lessons} lessons found, and both are needed")
    return f"{patterns} oil patterns and {lessons} lessons found"


def own_folder() -> str:
    folder = work_folder.default_folder()
    work_folder.check(folder)
    nearest: Path = folder if folder.exists() else folder.parent
    try:
        with tempfile.TemporaryFile(dir=nearest):
            pass
    except OSError as problem:
        raise RuntimeError(f"your copies cannot be kept in {folder}: {problem.strerror}") from None
    return f"your copies are kept in {folder}"


def one_shot() -> str:
    try:
        from bowlcore import OiledLane, Release, load_pattern, simulate

        path = simulate(Release(17, 300, 45, 13, 17, 13), OiledLane(load_pattern("house")))
    except Exception as problem:
        raise RuntimeError(f"a trial shot could not be computed: {problem}") from None
    if not 1 <= path.entry_board <= 39:
        raise RuntimeError(f"a trial shot reaches the pins at board {path.entry_board:g}, not from 1 to 39")
    return f"a trial shot reaches the pins at about board {path.entry_board:.0f}"


def browser() -> str:
    """Not having one that opens by itself is well: the address is printed."""
    try:
        webbrowser.get()
    except webbrowser.Error:
        return "no browser opens by itself here: copy the address that is printed into one"
    return "the lessons open in your browser"


def showing() -> str:
    """Not having it is well: only `bowlcore show` needs it."""
    if find_spec("voila") is None:
        return f'the lessons can be opened, not shown to a group; for that: "{sys.executable}" -m pip install "{NEEDS}"'
    return f"voila {metadata.version('voila')}: the lessons can be shown to a group"


def clips() -> str:
    """Not having them is well: only clicks on a clip need them."""
    if any(find_spec(module) is None for module in CLIP):
        return f'releases can be measured by eye, not on a clip; for that: "{sys.executable}" -m pip install {_CLIP_NEEDS}'
    return f"av {metadata.version('av')}: releases can be measured on a clip"


def loopback() -> str:
    try:
        with socket.create_server(("127.0.0.1", 0)) as server:
            socket.create_connection(server.getsockname(), timeout=5).close()
    except OSError as problem:
        raise RuntimeError(f"programs here cannot talk to each other: {problem.strerror}") from None
    return "the lessons can be reached on this computer, and only from it"


PACKAGES = ("numpy", "pandas", "scipy", "matplotlib", "ipywidgets", "jupyterlab")
CHECKS = [
    (python_version, _INSTALL_AGAIN),
    *((package(name), f'Type: "{sys.executable}" -m pip install --upgrade {name}') for name in PACKAGES),
    (shipped_files, _INSTALL_AGAIN),
    (own_folder, f"Name another folder. Type: {called()} open FOLDER"),
    (one_shot, _INSTALL_AGAIN),
    (showing, f'Type: "{sys.executable}" -m pip install --upgrade "{NEEDS}"'),
    (clips, f'Type: "{sys.executable}" -m pip install --upgrade {_CLIP_NEEDS}'),
    (browser, _INSTALL_AGAIN),
    (loopback, "Let Python through the firewall of this computer, for this computer only."),
]
