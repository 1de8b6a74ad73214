"""A page as a PDF, made by a browser that is at hand anyway; without one the page is printed from the browser by a person."""

import os
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

from bowlcore.whole_file import write_whole

HOW_TO_PRINT = (
    "Open it with a double click and choose Print in the browser's menu: the same paper, 100 %, without headers and "
    "footers."
)
_NAMES = (
    "chromium",
    "chromium-browser",
    "google-chrome",
    "google-chrome-stable",
    "chrome",
    "microsoft-edge",
    "microsoft-edge-stable",
    "msedge",
)
_ON_WINDOWS = (
    "Google/Chrome/Application/chrome.exe",
    "Microsoft/Edge/Application/msedge.exe",
    "Chromium/Application/chrome.exe",
)
_ON_MAC = ("Google Chrome", "Microsoft Edge", "Chromium")
_LIMIT_S = 120
_QUIET = (
    "--headless",
    "--disable-gpu",
    "--no-first-run",
    "--no-default-browser-check",
    "--disable-extensions",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-pdf-header-footer",
    "--print-to-pdf-no-header",  # what older browsers call it
)


def find_browser() -> str | None:
    """A browser that can print to PDF without a window: on the path or in its usual place; None if there is none."""
    for name in _NAMES:
        if found := shutil.which(name):
            return found
    return next((str(place) for place in _usual_places() if place.is_file()), None)


def _usual_places():
    if sys.platform == "darwin":
        return [Path("/Applications") / f"{name}.app" / "Contents" / "MacOS" / name for name in _ON_MAC]
    roots = [
        os.environ[key]
        for key in ("PROGRAMFILES", "PROGRAMFILES(X86)", "LOCALAPPDATA")
        if os.environ.get(key)
    ]
    return [Path(root) / place for root in roots for place in _ON_WINDOWS]


def print_pdf(page: Path, pdf: Path, browser: str) -> None:
    """Print a file of HTML, all its pages in one go.

    Parameters
    ----------
    page, pdf : Path
        What is read and what is written.
    browser : str
        As `find_browser` says.

    Raises
    ------
    OSError
        In one sentence, when no PDF came of it; an older one stays as it was.
    """
    with tempfile.TemporaryDirectory(prefix="bowlcore-", ignore_cleanup_errors=True) as temporary:
        made = Path(temporary) / "page.pdf"
        command = [
            browser,
            *_QUIET,
            f"--user-data-dir={Path(temporary) / 'profile'}",
            f"--print-to-pdf={made}",
        ]
        if hasattr(os, "geteuid") and os.geteuid() == 0:
            command.append("--no-sandbox")
        try:
            subprocess.run(
                [*command, page.absolute().as_uri()], capture_output=True, timeout=_LIMIT_S, check=False
            )
            content = made.read_bytes()
        except (OSError, subprocess.TimeoutExpired):
            content = b""
        if not content.startswith(b"%PDF"):
            raise OSError(f"{Path(browser).name} did not make a PDF of {page.name}")
        write_whole(pdf, content)
