"""A running lab and a page in Chromium that remembers every address asked for outside this computer."""

import importlib.util
import os
import shutil
from urllib.parse import urlsplit

import pytest
from lab_server import lab_server, write_notebook

QUIET = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


@pytest.fixture(scope="session")
def lab(tmp_path_factory):
    """`bowlcore open` on a folder with the lessons and one small page."""
    folder = tmp_path_factory.mktemp("work")
    write_notebook(folder / "99_small.ipynb", ("markdown", "# Small"))
    with lab_server(folder, tmp_path_factory.mktemp("jupyter")) as running:
        yield running


@pytest.fixture(scope="session")
def chromium(need):
    program = shutil.which("chromium") or shutil.which("chromium-browser") or shutil.which("google-chrome")
    need(program, "needs the browser Chromium")
    need(importlib.util.find_spec("playwright"), "needs the extra 'browser' of this package")
    from playwright.sync_api import sync_playwright

    as_root = hasattr(os, "geteuid") and os.geteuid() == 0
    with sync_playwright() as playwright:
        arguments = [*QUIET, "--no-sandbox"] if as_root else QUIET
        browser = playwright.chromium.launch(executable_path=program, args=arguments)
        yield browser
        browser.close()


@pytest.fixture
def page(chromium):
    """An empty page the size of a laptop's screen; page.outside lists the addresses that left this computer."""
    context = chromium.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.outside = []

    def remember(request):
        parts = urlsplit(request.url)
        if parts.scheme not in ("data", "blob") and parts.hostname not in ("127.0.0.1", "localhost"):
            page.outside.append(request.url)

    page.on("request", remember)
    page.on("websocket", remember)
    yield page
    context.close()
