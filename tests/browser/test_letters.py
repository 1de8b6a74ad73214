"""Pictures on a narrow page: letters are drawn larger there, none is cut by its picture or lies on another."""

import pytest

from bowlcore.display.a_lane_that_changes import a_lane_that_changes_panel
from bowlcore.display.cases import case_panel
from bowlcore.display.changes import changes_panel
from bowlcore.display.miss_room import miss_room_panel
from bowlcore.display.path_lab import path_lab_panel
from bowlcore.display.published_shot import published_shot_panel
from bowlcore.display.reaction import reaction_panel
from bowlcore.display.style import CSS
from bowlcore.display.two_faces import two_faces_panel

pytestmark = pytest.mark.browser
MAKERS = [path_lab_panel, miss_room_panel, reaction_panel, changes_panel, case_panel, two_faces_panel]
MAKERS += [a_lane_that_changes_panel, published_shot_panel]
MEASURED = """svg => {
  const frame = svg.getBoundingClientRect(), texts = [...svg.querySelectorAll('text')].filter(e => e.textContent.trim());
  const boxes = texts.map(e => [e.textContent.trim(), e.getBoundingClientRect()]).filter(([, box]) => box.width > 0);
  const cut = boxes.filter(([, box]) => box.right > frame.right + 1 || box.left < frame.left - 1).map(([text]) => text);
  const over = boxes.flatMap(([one, a], i) => boxes.slice(i + 1).filter(([, b]) => {
    const w = Math.min(a.right, b.right) - Math.max(a.left, b.left);
    const h = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
    return w > 2 && h > 2 && w * h > 0.08 * Math.min(a.width * a.height, b.width * b.height);
  }).map(([other]) => [one, other]));
  const sizes = texts.map(e => e.getScreenCTM().a * parseFloat(getComputedStyle(e).fontSize)).filter(size => size > 0);
  return [cut, over, sizes.sort((a, b) => a - b)];
}"""


@pytest.mark.parametrize("make", MAKERS)
@pytest.mark.parametrize(("wide_px", "usual_px"), [(700, 9.0), (1100, 11.9)])
def test_letters_can_be_read_and_have_room(page, make, wide_px, usual_px):
    """Usual: what half of the letters have at least. 12 px is their own size, at 1104 px."""
    inside = f'<div class="bm-panel"><div class="bm-picture">{make().picture.value}</div></div>'
    page.set_content(f'<body style="margin: 10px; width: {wide_px}px">{CSS}{inside}</body>')
    cut, over, sizes = page.locator("svg").evaluate(MEASURED)
    assert (cut, over) == ([], [])
    assert sizes[len(sizes) // 2] >= usual_px and sizes[0] >= 0.8 * usual_px
