"""Every page that a hostile text reaches, put together as one file without our policy, in a real browser: nothing runs."""

import sys
from pathlib import Path

import pytest

pytestmark = pytest.mark.browser
sys.path.insert(0, str(Path(__file__).parents[1] / "display"))
from hostile_help import TEXTS, WAYS  # noqa: E402

RUNS = {kind: text for kind, text in TEXTS.items() if "bad" in text}
EVENTS = """() => {
  for (const element of document.querySelectorAll('*'))
    for (const kind of ['mouseover', 'mouseenter', 'focus', 'error', 'load', 'click', 'toggle'])
      if (!(kind === 'click' && element.closest('a, button, form'))) element.dispatchEvent(new Event(kind));
  return [typeof window.bad, document.querySelectorAll('*').length];
}"""


def everything(folder, monkeypatch):
    """HTML of each way with each text that is taken, and how many there are."""
    parts = []
    for kind, text in RUNS.items():
        work = folder / kind.replace(" ", "_")
        for number, way in enumerate(WAYS.values()):
            place = work / str(number)
            place.mkdir(parents=True)
            monkeypatch.chdir(place)
            try:
                parts.append(way(text, place))
            except (ValueError, OSError) as problem:
                assert "\n" not in str(problem)
    return parts


def test_no_script_of_a_text_runs_and_nothing_is_asked_for(page, tmp_path, monkeypatch):
    parts = everything(tmp_path, monkeypatch)
    assert len(RUNS) >= 7 and len(parts) > len(RUNS) * 20
    file = tmp_path / "all.html"
    file.write_text('<!DOCTYPE html><meta charset="utf-8"><body>' + "<hr>".join(parts), encoding="utf-8")
    page.goto(file.as_uri())
    page.wait_for_timeout(300)  # what an image's error would start
    kind, elements = page.evaluate(EVENTS)
    page.wait_for_timeout(300)
    assert kind == page.evaluate("typeof window.bad") == "undefined" and elements > 1000
    assert page.outside == [file.as_uri()]


@pytest.mark.parametrize("kind", ["script", "single quote", "end of a style"])
def test_this_browser_would_run_them(kind, page, tmp_path):
    """The same texts unescaped do run: the test above can fail."""
    file = tmp_path / "bad.html"
    file.write_text(f"<!DOCTYPE html><p title='{RUNS[kind]}'>{RUNS[kind]}", encoding="utf-8")
    page.goto(file.as_uri())
    page.wait_for_timeout(200)
    assert page.evaluate("typeof window.bad") == "number"
