"""What a test needs and this computer may lack: skipped, or failed when BOWLCORE_ALL_TESTS=1 asks for all tests."""

import os
from importlib import import_module
from importlib.util import find_spec

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
