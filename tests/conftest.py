"""What a test needs and this computer may lack, and what the tests claim.

A test that cannot run is skipped, or failed when BOWLCORE_ALL_TESTS=1 asks for all tests.
"""

import json
import os
from importlib import import_module
from importlib.util import find_spec
from pathlib import Path

import claims
import pytest


@pytest.fixture(scope="session")
def all_tests():
    """True if the slow tests are asked for too."""
    return os.environ.get("BOWLCORE_ALL_TESTS") == "1"


@pytest.fixture(scope="session")
def need(all_tests):
    """need(condition, reason): go on only if the condition holds."""

    def need(condition, reason):
        if not condition:
            (pytest.fail if all_tests else pytest.skip)(reason)

    return need


@pytest.fixture
def av(need):
    """The decoder library of the extra `clip`, which brings the page's part of the clip panel as well."""
    need(find_spec("av") and find_spec("anywidget"), "the extra 'clip' is missing: pip install -e '.[clip]'")
    return import_module("av")


@pytest.fixture
def here(tmp_path, monkeypatch):
    """An empty work folder, in which everything is written; no lane of another folder is remembered."""
    from bowlcore.coaching import own_lanes

    work = tmp_path / "work"
    work.mkdir()
    monkeypatch.chdir(work)
    own_lanes._used.clear()
    return work


@pytest.fixture
def log(here):
    """The log of a work folder, with one ball in it."""
    from bowlcore.coaching.practice_log import FILE_NAME
    from bowlcore.coaching.tally_desk import Desk

    Desk().enter("AK: f x")
    return here / FILE_NAME


@pytest.fixture
def shipped(tmp_path, monkeypatch):
    """A folder with one lesson, in the place of those that are shipped."""
    folder = tmp_path / "shipped"
    folder.mkdir()
    (folder / "04_lesson.ipynb").write_text(json.dumps({"cells": []}))
    monkeypatch.setattr("bowlcore.work_folder.workbooks_folder", lambda: folder)
    return folder


@pytest.fixture
def figure(request):
    """figure(what, value, unit, asked=..., least=...): a figure that a claim reaches, for the page of claims."""

    def figure(what, value, unit="", asked="", least=False):
        request.node.user_properties.append(("figure", [what, float(value), unit, asked, least]))

    return figure


def pytest_addoption(parser):
    group = parser.getgroup("claims")
    group.addoption("--claims", action="store_true", help="print the claims of the tests that were run")
    group.addoption("--claims-to", metavar="FILE", help="write them as a page")


@pytest.hookimpl(tryfirst=True)
def pytest_runtest_setup(item):
    claim = claims.claim_of(item)
    if claim:
        item.user_properties.append(("claim", list(claim)))


def pytest_terminal_summary(terminalreporter, config):
    """With several workers each test's report brings its claim and figures here."""
    found = {}
    for report in terminalreporter.stats.get("passed", []):
        told = dict.fromkeys(name for name, _ in report.user_properties)
        if report.when == "call" and "claim" in told:
            [claim] = [claims.Claim._make(of) for name, of in report.user_properties if name == "claim"]
            figures = [of for name, of in report.user_properties if name == "figure"]
            found.setdefault(claim, []).extend(figures)
    if config.getoption("--claims"):
        for claim, figures in found.items():
            terminalreporter.write_line(f"{claim.text}: {'; '.join(claims.worst(figures))} [{claim.against}]")
    if config.getoption("--claims-to"):
        Path(config.getoption("--claims-to")).write_text(claims.page(found), encoding="utf-8")
