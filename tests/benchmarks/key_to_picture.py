"""Milliseconds from a key press on the rotation slider to the new picture on the screen, in a real browser."""

import shutil
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

# Times each key from its event to the first frame after the picture was replaced.
_WATCH = """panel => {
  window.took = [];
  let pressed = null;
  panel.addEventListener('keydown', () => { pressed = performance.now(); }, true);
  new MutationObserver(() => {
    if (pressed === null) return;
    const from = pressed;
    pressed = null;
    requestAnimationFrame(() => window.took.push(performance.now() - from));
  }).observe(panel.querySelector('.bm-picture'), {childList: true, subtree: true});
}"""


def measure(presses=60, command="open"):
    """One figure a key press [ms], after `bowlcore open` or `bowlcore show`."""
    from lab_server import lab_server
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        work, settings = Path(folder, "work"), Path(folder, "settings")
        work.mkdir()
        with lab_server(work, settings, command) as lab:
            browser = playwright.chromium.launch(
                executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
            )
            page = browser.new_page(viewport={"width": 1280, "height": 800})
            page.goto(lab.address("04_shape_the_path.ipynb"))
            page.locator(".bowlcore-ran").wait_for(timeout=60_000)
            panel = page.locator(".bm-panel", has_text="Let it go")  # the path lab
            panel.scroll_into_view_if_needed()
            page.wait_for_timeout(2000)
            panel.evaluate(_WATCH)
            panel.locator(".noUi-handle").first.focus()
            for i in range(presses):
                page.keyboard.press("ArrowRight" if i % 40 < 20 else "ArrowLeft")
                page.wait_for_timeout(250)
            took = page.evaluate("window.took")
            browser.close()
    return took
