"""Milliseconds from a key press on a panel's first control to the new picture, in a real browser.

All panels of all lessons: python tests/benchmarks/key_to_picture.py [presses] [open or show] [lesson ...]
Prints median and 95 % of each panel and writes them, with the machine, into key_to_picture.csv beside itself,
where the rows of other lessons and of the other view stay.
"""

import csv
import platform
import shutil
import sys
import tempfile
from contextlib import contextmanager
from pathlib import Path

import numpy as np
from processor import processor

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

# Times each key from its event to the first frame after the picture, or where it stays the same the words, changed.
_WATCH = """panel => {
  window.took = [];
  let pressed = null;
  panel.addEventListener('keydown', () => { pressed = performance.now(); }, true);
  const watch = new MutationObserver(() => {
    if (pressed === null) return;
    const from = pressed;
    pressed = null;
    requestAnimationFrame(() => window.took.push(performance.now() - from));
  });
  for (const place of panel.querySelectorAll('.bm-picture, .bm-told')) watch.observe(place, {childList: true, subtree: true});
}"""
_PAUSE_MS, _LONGEST_MS = 250, 6000
COLUMNS = ["lesson", "panel", "control", "presses", "median_ms", "most_95_ms", "view", "machine", "python"]


@contextmanager
def browser_on(command):
    """A page, and where to find a lesson, after `bowlcore open` or `bowlcore show`."""
    from lab_server import lab_server
    from playwright.sync_api import sync_playwright

    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        work, settings = Path(folder, "work"), Path(folder, "settings")
        work.mkdir()
        with lab_server(work, settings, command) as lab:
            browser = playwright.chromium.launch(
                executable_path=shutil.which("chromium"), args=["--no-sandbox", "--disable-gpu"]
            )
            yield browser.new_page(viewport={"width": 1280, "height": 800}), lab
            browser.close()


def timed(page, panel, presses) -> list[float]:
    """One figure a key press [ms] on the panel's first control; fewer where a press changed nothing."""
    panel.scroll_into_view_if_needed()
    panel.evaluate(_WATCH)
    control = panel.locator(".noUi-handle:visible, select:visible").first
    forth, back = (
        ("ArrowDown", "ArrowUp")
        if control.evaluate("one => one.tagName") == "SELECT"
        else ("ArrowRight", "ArrowLeft")
    )
    control.focus()
    steps = 2 if forth == "ArrowDown" else 20
    for i in range(presses):
        had = page.evaluate("took.length")
        page.keyboard.press(forth if i % (2 * steps) < steps else back)
        for _ in range(_LONGEST_MS // 50):
            page.wait_for_timeout(50)
            if page.evaluate("took.length") > had:
                break
        page.wait_for_timeout(_PAUSE_MS)
    return page.evaluate("took")


def measure(presses=60, command="open"):
    """One figure a key press [ms] in the path lab."""
    with browser_on(command) as (page, lab):
        page.goto(lab.address("04_shape_the_path.ipynb"))
        page.locator(".bowlcore-ran").wait_for(timeout=60_000)
        page.wait_for_timeout(2000)
        return timed(page, page.locator(".bm-panel", has_text="Let it go"), presses)


def every_panel(presses, command, lessons):
    """Rows as in COLUMNS."""
    with browser_on(command) as (page, lab):
        for name in lessons:
            page.goto(lab.address(name))
            page.locator(".bowlcore-ran").wait_for(timeout=90_000)
            page.wait_for_timeout(2000)
            live = page.locator(".noUi-handle:visible, select:visible")
            for panel in page.locator(".bm-panel:visible", has=live).all():
                called = panel.locator(".bm-line").first
                if not called.count():
                    continue
                what = called.text_content().partition("(")[0].removeprefix("bowlcore.")
                first = panel.locator(".widget-label:visible").first.inner_text()
                took = timed(page, panel, presses)
                if took:
                    middle, most = np.percentile(took, [50, 95])
                    yield [name[:2], what, first, len(took), f"{middle:.0f}", f"{most:.0f}", command]


def main():
    from lesson_page import LESSONS

    words = sys.argv[1:]
    presses = int(words.pop(0)) if words and words[0].isdigit() else 20
    command = words.pop(0) if words and words[0] in ("open", "show") else "open"
    lessons = [name for name in LESSONS if not words or name.startswith(tuple(words))]
    measured = []
    try:
        for row in every_panel(presses, command, lessons):
            print(
                f"{row[0]}  {row[1]:28s} {row[2]:28s} {row[3]:3d}  {row[4]:>5s} {row[5]:>5s} ms", flush=True
            )
            measured.append([*row, processor(), platform.python_version()])
    finally:  # stopped half-way, what was measured stays
        write_down(measured)


def write_down(measured):
    """Put rows in the place of those of the same lesson and view."""
    file = Path(__file__).with_suffix(".csv")
    again = {(row[0], row[6]) for row in measured}
    with file.open(newline="", encoding="utf-8") as before:
        kept = [row for row in list(csv.reader(before))[1:] if (row[0], row[6]) not in again]
    with file.open("w", newline="", encoding="utf-8") as after:
        rows = sorted(kept + measured, key=lambda row: (row[6], row[0]))
        csv.writer(after, lineterminator="\n").writerows([COLUMNS, *rows])


if __name__ == "__main__":
    main()
