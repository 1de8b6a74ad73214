"""A running lab and a page in Chromium that remembers every address asked for outside this computer."""

import importlib.util
import os
import shutil

import pytest
from browser_page import new_page
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
    """An empty page of its own."""
    with new_page(chromium) as page:
        yield page
