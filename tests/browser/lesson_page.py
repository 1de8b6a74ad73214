"""What is asked of a lesson in the lab and in the show view alike: both pages carry the same panels."""

from pathlib import Path

from bowlcore.locate import workbooks_folder

WAIT_MS = 90_000
LESSONS = sorted(path.name for path in workbooks_folder().glob("*.ipynb"))
SCREENS = Path(__file__).parent / "screens"  # git ignores it
CONTROLS = ".noUi-handle:visible, select:visible"
OUTPUT = ".jp-OutputArea-output"
# These panels wait for something that is typed or agreed to before their first control has anything to change.
WAITING = ("Note your balls", "A clip shows a person", "Type the first row")
OUTPUT_GONE_WRONG = (
    "[data-mime-type='application/vnd.jupyter.error']:visible, "
    "[data-mime-type='application/vnd.jupyter.stderr']:visible"
)
# Everything in these places that the Tab key reaches, in the order of the page; of a group of circles only one.
_STOPS = """places => {
  const kinds = 'a[href], button, input, select, textarea, summary, [tabindex]';
  const reached = one => one.getClientRects().length && !one.disabled && one.tabIndex >= 0;
  const first = one => one.type !== 'radio' || one === document.querySelector(`input[name="${one.name}"]`);
  window.stops = places.flatMap(place => [...place.querySelectorAll(kinds)].filter(reached).filter(first));
  return window.stops.length;
}"""
# Text that is cut off: wider than its box, which does not scroll, or beyond the screen with nothing around it that scrolls.
_CUT = """places => {
  const scrolls = one => one && (['auto', 'scroll'].includes(getComputedStyle(one).overflowX) || scrolls(one.parentElement));
  const hides = one => ['hidden', 'clip'].includes(getComputedStyle(one).overflowX);
  const wide = one => hides(one) && one.clientWidth && one.scrollWidth > one.clientWidth + 1;
  const tall = one => getComputedStyle(one).overflowY === 'hidden' && one.scrollHeight > one.clientHeight + 2
    && one.matches('.widget-label, button');
  const pen = document.createElement('canvas').getContext('2d');
  const list = one => {  // a list with a line that is longer than its box, less the arrow
    if (!one.matches('select')) return false;
    pen.font = getComputedStyle(one).font;
    return [...one.options].some(line => pen.measureText(line.text).width + 20 > one.clientWidth);
  };
  const beyond = one => one.getBoundingClientRect().right > innerWidth + 1 && !scrolls(one.parentElement);
  const seen = [...document.querySelectorAll('.bm-panel *, .bm-question *')].filter(one => one.getClientRects().length);
  return seen.filter(one => !one.closest('svg') && (wide(one) || tall(one) || list(one) || beyond(one)))
    .map(one => one.outerHTML.slice(0, 150));
}"""
_READ_OUT = """() => [...document.querySelectorAll('.bm-told .bm-sentence')].filter(one => one.getClientRects().length)
  .every(one => one.closest('.bm-told').getAttribute('role') === 'status')"""
_MOVES = """() => [...document.querySelectorAll('.bm-panel *, .bm-question *')].filter(one => {
  const style = getComputedStyle(one);
  return style.animationName !== 'none' || style.transitionDuration.split(', ').some(time => parseFloat(time) > 0);
}).map(one => one.className.toString())"""
# Borders of controls that do not stand out from the white page: WCAG 2.2, 1.4.11 and its relative luminance (from memory).
_PALE = """() => {
  const light = value => value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  const luminance = colour => colour.match(/[\\d.]+/g).slice(0, 3).map(part => light(part / 255))
    .reduce((sum, part, i) => sum + part * [0.2126, 0.7152, 0.0722][i], 0);
  const seen = [...document.querySelectorAll('.noUi-handle, .bm-panel input[type=number], .bm-panel select')]
    .filter(one => one.getClientRects().length);
  return seen.filter(one => 1.05 / (luminance(getComputedStyle(one).borderTopColor) + 0.05) < 3)
    .map(one => one.className + ' ' + getComputedStyle(one).borderTopColor);
}"""


def opened(page, address):
    """Open a lesson and wait until it has run; returns the text of the page as it was sent."""
    page.faults = []
    page.on("console", lambda message: page.faults.append(message.text) if message.type == "error" else None)
    source = page.goto(address).text()
    page.locator(".bowlcore-ran").wait_for(timeout=WAIT_MS)
    return source


def live_panels(page):
    """The panels with a control."""
    return page.locator(".bm-panel:visible", has=page.locator(CONTROLS)).all()


def answers(page, panel):
    """Whether the panel says something else when its first control is moved by the keyboard.

    In its sentence or, where the result is a page to print, in its picture.
    """

    def said():
        return panel.locator(".bm-told, .bm-picture:has(p)").all_inner_texts()

    before = said()
    control = panel.locator(CONTROLS).first
    key = "ArrowDown" if control.evaluate("one => one.tagName") == "SELECT" else "ArrowRight"
    control.focus()
    for wait_ms in (
        *[1000] * 7,
        20_000,
    ):  # a small step may be too small for rounded words; some panels take a second
        page.keyboard.press(key)
        for _ in range(wait_ms // 100):
            page.wait_for_timeout(100)
            if said() != before:
                return True
    return False


def every_panel_answers(page):
    """The first control of each panel, moved by the keyboard, changes its sentence; every slider has a name."""
    panels = live_panels(page)
    assert panels
    for panel in panels:
        said = panel.locator(".bm-sentence").first.inner_text()
        assert said.startswith(WAITING) or answers(page, panel), said
    for handle in page.locator(".noUi-handle:visible").all():
        assert handle.get_attribute("aria-label"), "a handle has no name"
    assert page.evaluate(_PALE) == []
    page.wait_for_function(_READ_OUT, timeout=5000)  # the page's script looks at it a moment later


def stops_out_of_order(page):
    """Walk through the panels with the Tab key: what is passed over, or comes in another order than on the page."""
    count = page.locator(OUTPUT).evaluate_all(_STOPS)
    page.evaluate("stops[0].focus()")
    at = []
    for _ in range(2 * count + 40):
        at.append(
            page.evaluate(
                "document.activeElement === document.body ? -2 : stops.indexOf(document.activeElement)"
            )
        )
        if at[-1] == -2 or count - 1 in at:
            break
        page.keyboard.press("Tab")
    reached = [stop for stop in at if stop >= 0]  # between them lie the links of the text
    assert count > 3 and reached == sorted(reached), reached
    missed = sorted(set(range(count)) - set(reached))
    return [page.evaluate("n => stops[n].outerHTML.slice(0, 150)", stop) for stop in missed]


def cut_off_when_narrow(page):
    """What is lost at 200 % (a screen half as wide) and on a phone of 360 pixels."""
    unfold(page)
    lost = []
    for width in 640, 360:
        page.set_viewport_size({"width": width, "height": 720})
        page.wait_for_timeout(500)
        assert page.evaluate("document.documentElement.scrollWidth") == width
        lost += [f"{width}: {one}" for one in page.evaluate(_CUT)]
    page.set_viewport_size({"width": 1280, "height": 800})
    page.wait_for_timeout(500)
    return lost


def moves_all_the_same(page):
    """What moves on the page of somebody who asked the computer for no motion; a probe moves for everyone else."""
    page.locator(".bm-panel:visible").first.evaluate(
        "panel => panel.insertAdjacentHTML('beforeend', '<p class=probe style=\"transition: all 1s\"></p>')"
    )
    page.emulate_media(reduced_motion="reduce")
    found = page.evaluate(_MOVES)
    page.emulate_media(reduced_motion="no-preference")
    assert "probe" in page.evaluate(_MOVES)
    page.locator(".probe").evaluate("probe => probe.remove()")
    return found


def keep_screen(page, view, name):
    """A screenshot to look at."""
    SCREENS.mkdir(exist_ok=True)
    page.screenshot(path=SCREENS / f"{view}_{name[:2]}.png", full_page=True)


def unfold(page):
    """Open every fold of every panel."""
    closed = "button.widget-toggle-button:not(.mod-active)"
    for fold in page.locator(f".bm-panel:visible {closed}", has_text="…").all()[::-1]:  # each leaves the list
        fold.click()


def serious_for_axe(page, **where):
    """What axe finds that keeps somebody out."""
    from axe_playwright_python.sync_playwright import Axe

    found = Axe().run(page, **where).response["violations"]
    return [
        f"{v['id']}: {v['nodes'][0]['html'][:200]}" for v in found if v["impact"] in ("serious", "critical")
    ]
