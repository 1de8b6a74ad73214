"""A class on a hub: two learners on this computer, each with a live lesson, neither in the other's folder.

Never in CI: it needs `pip install jupyterhub playwright psutil` and `npm install configurable-http-proxy`, and says
so if they are missing. Run it with `python -m pytest -n0 -m setup -s tests/hub`; it prints what a learner takes.
"""

import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from importlib.util import find_spec
from pathlib import Path
from urllib.request import urlopen

import pytest

pytestmark = pytest.mark.setup
HERE = Path(__file__).parent
PROXY = os.environ.get("BOWLCORE_HUB_PROXY") or shutil.which("configurable-http-proxy")
WAIT_MS = 120_000


@pytest.fixture(scope="module")
def hub(tmp_path_factory):
    """(process, address, folder of the learners)"""
    for package in ("jupyterhub", "playwright", "psutil"):
        if find_spec(package) is None:
            pytest.skip(f"needs the package {package}")
    if PROXY is None:
        pytest.skip("needs the program configurable-http-proxy (npm), or its place in BOWLCORE_HUB_PROXY")
    root, port = tmp_path_factory.mktemp("learners"), _three_free_ports()
    environment = os.environ | {
        "BOWLCORE_HUB_ROOT": str(root),
        "BOWLCORE_HUB_PORT": str(port),
        "BOWLCORE_HUB_PROXY": PROXY,
    }
    command = [sys.executable, "-m", "jupyterhub", "-f", str(HERE / "jupyterhub_config.py")]
    with (root / "hub.log").open("wb") as log:
        process = subprocess.Popen(command, cwd=root, env=environment, stdout=log, stderr=log)
        try:
            _wait_until_up(f"http://127.0.0.1:{port}/hub/login", process, root / "hub.log")
            yield process, f"http://127.0.0.1:{port}", root
        finally:
            process.send_signal(signal.SIGINT)
            process.wait(30)


def _three_free_ports():
    """The first of three ports in a row that nobody uses."""
    for port in range(18000, 19000, 3):
        with socket.socket() as one, socket.socket() as two, socket.socket() as three:
            try:
                for offset, taken in enumerate((one, two, three)):
                    taken.bind(("127.0.0.1", port + offset))
                return port
            except OSError:
                pass
    pytest.skip("no free ports")


def _wait_until_up(address, process, log):
    for _ in range(120):
        assert process.poll() is None, log.read_text(errors="replace")[-2000:]
        try:
            return urlopen(address, timeout=2)
        except OSError:
            time.sleep(0.5)
    pytest.fail(log.read_text(errors="replace")[-2000:])


@pytest.fixture(scope="module")
def chromium(hub):
    from playwright.sync_api import sync_playwright

    arguments = ["--disable-gpu", "--no-sandbox", "--disable-background-networking"]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=shutil.which("chromium"), args=arguments)
        yield browser
        browser.close()


@pytest.fixture(scope="module")
def learners(hub, chromium):
    """Two learners, each in a browser of one's own, lesson 00 open and run."""
    pages = {}
    for name in ("learner1", "learner2"):
        page = chromium.new_context(viewport={"width": 1280, "height": 800}).new_page()
        page.goto(f"{hub[1]}/hub/login")
        page.fill("#username_input", name)
        page.fill("#password_input", "any")
        page.click("#login_submit")
        page.locator(".bm-panel .bm-sentence").first.wait_for(timeout=WAIT_MS)
        pages[name] = page
    return pages


def test_each_has_a_live_lesson(learners):
    for page in learners.values():
        sentence = page.locator(".bm-panel .bm-sentence").first
        before = sentence.inner_text()
        page.locator(".bm-panel .noUi-handle").first.focus()
        for _ in range(4):
            page.keyboard.press("ArrowRight")
        page.wait_for_function(
            "before => document.querySelector('.bm-panel .bm-sentence').innerText !== before", arg=before
        )


def test_each_has_a_folder_of_ones_own(hub, learners):
    for name in learners:
        folders = [
            path for path in (hub[2] / name).iterdir() if path.is_dir() and not path.name.startswith(".")
        ]
        assert [path.name for path in folders] == ["Ball Motion Workbook"]
        assert len(list(folders[0].glob("*.ipynb"))) == 13


def test_nobody_reads_over_the_hub_what_another_has(hub, learners):
    here, there = f"{hub[1]}/user/learner2/api/contents", f"{hub[1]}/user/learner1/api/contents"
    own = learners["learner2"].context.request.get(here)
    other = learners["learner2"].context.request.get(there)
    assert own.ok and "00_start_here" in own.text()
    assert not other.ok and "00_start_here" not in other.text()


def test_what_a_learner_takes(hub, learners):
    import psutil

    servers = [
        p
        for p in psutil.Process(hub[0].pid).children(recursive=True)
        if "jupyterhub.singleuser" in " ".join(p.cmdline())
    ]
    servers = [server for server in servers if server.parent().pid == hub[0].pid]
    assert len(servers) == 2
    for server in servers:
        tree = [server, *server.children(recursive=True)]
        mb = [process.memory_info().rss / 1e6 for process in tree]
        seconds = sum(sum(process.cpu_times()[:2]) for process in tree)
        print(
            f"server {mb[0]:.0f} MB, Python of the lesson {sum(mb[1:]):.0f} MB, {seconds:.0f} s of processor time so far"
        )
        assert sum(mb) < 1000
