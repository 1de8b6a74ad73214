"""What a test needs and this computer may lack: skipped, or failed when BOWLCORE_ALL_TESTS=1 asks for all tests."""

import os

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
