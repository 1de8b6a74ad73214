"""Panels in tests raise what they would otherwise show, and start in trade units for the right hand."""

import pytest

from bowlcore.display.panel import Panel
from bowlcore.display.settings import SETTINGS


@pytest.fixture(autouse=True)
def strict_panels(monkeypatch):
    monkeypatch.setattr(Panel, "strict", True)
    yield
    SETTINGS.metric, SETTINGS.hand = False, "right"
