"""The examples in the docstrings of the motion core are true."""

import doctest
from importlib import import_module
from pathlib import Path

import pytest

import bowlcore.motion

MODULES = sorted(
    path.stem for path in Path(bowlcore.motion.__file__).parent.glob("*.py") if path.stem != "__init__"
)


@pytest.mark.parametrize("name", MODULES)
def test_examples(name):
    assert doctest.testmod(import_module(f"bowlcore.motion.{name}")).failed == 0


def test_there_are_examples():
    tried = [doctest.testmod(import_module(f"bowlcore.motion.{name}")).attempted for name in MODULES]
    assert sum(tried) >= 4
