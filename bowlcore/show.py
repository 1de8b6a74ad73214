"""Shows the lessons to a group: large, without code, each running by itself; on this computer only, until Ctrl-C.

Voila runs and serves them (extra `show`); its pages are our own and lie in bowlcore/lab/share/voila.
"""

import json
import re
import sys
from importlib.util import find_spec
from pathlib import Path
from urllib.parse import quote

from bowlcore import serve
from bowlcore.coaching.glossary import PAGE
from bowlcore.formula_pictures import with_pictures
from bowlcore.locate import workbooks_folder
from bowlcore.open_lab import find_lesson

NEEDS = "voila>=0.5.13,<0.6"


def show(folder: Path | None = None, lesson: str = "", browser: bool = True) -> int:
    """Fill the work folder, show it until Ctrl-C, and return the exit code; without `lesson` at the contents."""
    if find_spec("voila") is None:
        raise OSError(f'One part is missing for showing; type: "{sys.executable}" -m pip install "{NEEDS}"')
    folder = serve.ready_folder(folder)
    name = find_lesson(folder, lesson)
    page = f"/voila/render/{quote(name)}" if lesson else "/"
    return serve.until_ctrl_c(
        lambda temporary: server_command(folder, temporary), _port, page, folder, browser
    )


def lessons(folder: Path) -> list[dict[str, str]]:
    """File name and title of each lesson in `folder`, in the order of the course."""
    found = []
    for path in sorted(folder.glob("*.ipynb"), key=lambda path: path.stem):
        try:
            path.name.encode()  # a name that no address can hold
            about = json.loads(path.read_bytes() if path.is_file() else b"")["metadata"]
            if about["bowlcore"]["run_on_open"]:
                found.append({"name": path.name, "title": _plain(about.get("title", path.stem))})
        except (ValueError, KeyError, TypeError, RecursionError, OSError):
            pass  # no lesson
    return found


def _plain(title) -> str:
    """A title without half signs, which no page can hold."""
    return str(title).encode("utf-8", "replace").decode("utf-8")


def words() -> str:
    """The page of words and formulas as HTML without its title: every lesson carries it, so that links stay on the page."""
    from nbconvert.filters import markdown2html  # comes with Voila

    page = (workbooks_folder() / PAGE).read_text(encoding="utf-8")
    return markdown2html(with_pictures(page.partition("\n")[2]))


def _reach() -> str:
    """The script that the lab carries too."""
    return (serve.LAB / "share/labextensions/ball-motion-page/static/reach.js").read_text(encoding="utf-8")


def server_command(folder: Path, temporary: Path) -> list[str]:
    """The command that starts the server; its settings are written into `temporary`."""
    (temporary / "voila.json").write_text(json.dumps(settings(folder, temporary)), encoding="utf-8")
    return [sys.executable, "-m", "voila", f"--Voila.config_file_paths={temporary}", str(folder)]


def settings(folder: Path, temporary: Path) -> dict[str, dict]:
    """Everything that is set otherwise than Voila would."""
    return {
        "Voila": {
            "ip": "127.0.0.1",
            "open_browser": False,
            "auto_token": True,  # the one in the environment
            "connection_dir_root": str(temporary),
        },
        "VoilaConfiguration": {
            "template": "show",
            "progressive_rendering": True,
            "allow_template_override": "NO",
            "allow_theme_override": "NO",
            # What live panels need. Any other extension on this computer might ask for something from outside.
            "extension_allowlist": [
                "@jupyter-widgets/jupyterlab-manager",
                "@voila-dashboards/widgets-manager8",
                "anywidget",
            ],
            # Reaches the pages of the template, which make the contents and the links from it.
            "extension_config": {"lessons": lessons(folder), "words": words(), "reach": _reach()},
        },
        "MappingKernelManager": serve.CULLING,
    }


def _port(temporary: Path) -> int | None:
    """The port the server took: the next free one if 8866 is busy; its log says so."""
    said = re.search(r"http://127\.0\.0\.1:(\d+)/", (temporary / "server.log").read_text(errors="replace"))
    return int(said[1]) if said else None
