"""The pin deck's tests need the extra ``rack``: absent, they are skipped, or failed when all tests are asked for."""

from importlib import import_module
from importlib.util import find_spec

import pytest


@pytest.fixture
def mujoco(need):
    """The MuJoCo module."""
    need(find_spec("mujoco"), "mujoco is missing: pip install -e '.[rack]'")
    return import_module("mujoco")


@pytest.fixture
def distributed(need):
    """The dask.distributed module."""
    need(find_spec("distributed"), "distributed is missing: pip install -e '.[rack]'")
    return import_module("distributed")
