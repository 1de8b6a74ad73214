"""What the tests of files share: a fault as one sentence, what lies in a folder, a disk that refuses."""

import os

import pytest


def one_sentence(action, *given):
    """What an action says when it cannot be done."""
    with pytest.raises((ValueError, OSError)) as caught:
        action(*given)
    said = str(caught.value)
    assert said and "\n" not in said and len(said) < 400 and "[Errno" not in said, said
    return said


def names(folder):
    return sorted(path.name for path in folder.iterdir())


def fail(number):
    def refuse(*_, **__):
        raise OSError(number, os.strerror(number))

    return refuse
