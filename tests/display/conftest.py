"""Panels in tests raise what they would otherwise show, and start in trade units for the right hand."""

import pytest
from clip_help import DRAWN, NAME

from bowlcore.coaching.clip_write import write_mp4
from bowlcore.display.clip_panel import clip_panel
from bowlcore.display.panel import Panel
from bowlcore.display.settings import SETTINGS


@pytest.fixture(autouse=True)
def strict_panels(monkeypatch):
    monkeypatch.setattr(Panel, "strict", True)
    yield
    SETTINGS.metric, SETTINGS.hand = False, "right"


@pytest.fixture(scope="session")
def written(tmp_path_factory):
    """A drawn clip as a file, once for all tests."""
    path = tmp_path_factory.mktemp("clip") / NAME
    write_mp4(path, (DRAWN.frame(number) for number in range(48)), 120)
    return path.read_bytes()


@pytest.fixture
def panel_of_clips(av, request, tmp_path, monkeypatch):
    """The clip panel in a folder with one clip, the consent ticked."""
    monkeypatch.chdir(tmp_path)
    (tmp_path / "clips").mkdir()
    (tmp_path / "clips" / NAME).write_bytes(request.getfixturevalue("written"))
    panel = clip_panel()
    panel.consent.value = True
    return panel


@pytest.fixture
def opened(panel_of_clips):
    """The clip panel with that clip open."""
    panel_of_clips.chooser.value = NAME
    return panel_of_clips
