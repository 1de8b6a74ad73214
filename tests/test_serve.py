"""What `open` and `show` have in common: one server, its address said once, the browser opened only when wanted."""

import sys
import threading

import pytest

from bowlcore import serve

SERVER = [
    sys.executable,
    "-c",
    "import os, time; print(os.environ['JUPYTER_TOKEN'], flush=True); time.sleep(0.5)",
]


@pytest.fixture
def opened(monkeypatch):
    """Addresses that a browser was sent to; nobody's signals are touched."""
    addresses = []
    monkeypatch.setattr(serve.webbrowser, "open", addresses.append)
    monkeypatch.setattr(serve.signal, "signal", lambda *_: None)
    return addresses


def port_once_it_speaks(temporary):
    return 1234 if (temporary / "server.log").read_text().strip() else None


@pytest.mark.parametrize("browser", [True, False])
def test_the_browser_is_opened_only_when_wanted(browser, opened, tmp_path, capsys):
    assert serve.until_ctrl_c(lambda _: SERVER, port_once_it_speaks, "/first", tmp_path, browser) == 0
    for thread in threading.enumerate():
        if thread is not threading.current_thread() and thread.daemon:
            thread.join(1)
    said = capsys.readouterr().out
    [address] = [line.strip() for line in said.splitlines() if "http" in line]
    assert address.startswith("http://127.0.0.1:1234/first?token=")
    assert opened == ([address] if browser else [])


def test_each_start_has_a_token_of_its_own_and_leaves_nothing(opened, tmp_path):
    seen = []

    def port(temporary):
        seen.append((temporary, (temporary / "server.log").read_text().strip()))
        return 1 if seen[-1][1] else None

    for _ in range(2):
        assert serve.until_ctrl_c(lambda _: SERVER, port, "/", tmp_path, False) == 0
    folders, tokens = zip(*[pair for pair in seen if pair[1]], strict=True)
    assert len(set(tokens)) == 2 and all(len(token) == 32 for token in tokens)
    assert not any(folder.exists() for folder in folders)


def test_a_server_that_falls_over_later_is_a_failure(opened, tmp_path):
    broken = [sys.executable, "-c", "import time; print(1, flush=True); time.sleep(0.5); raise SystemExit(3)"]
    assert serve.until_ctrl_c(lambda _: broken, port_once_it_speaks, "/", tmp_path, False) == 1
