"""A page for a phone says and draws what the panel itself does, and can do nothing else."""

import base64
import hashlib
import json
import re
from functools import lru_cache
from html import unescape
from xml.etree import ElementTree

import pytest

from bowlcore.coaching.change_words import SAFE_HAND
from bowlcore.coaching.lesson_titles import TITLES
from bowlcore.display import phone_lessons, phone_page
from bowlcore.display.controls import Choice, Number, Words
from bowlcore.display.did_it_help import luck_or_better_panel
from bowlcore.display.first_shot import first_shot_panel
from bowlcore.display.panel import Drawn, Panel
from bowlcore.display.picture import LAYER, narrow, svg
from bowlcore.display.settings import SETTINGS, shown_in

GRIDS = [
    (first_shot_panel, {"speed_mph": (15, 17), "pattern": ("house", "flat")}),
    (luck_or_better_panel, {"good_before": (2, 5), "missed_after": (0, 4)}),
]
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def packed(page):
    return json.loads(re.search(r'<script type="application/json" id="drawn">(.*?)</script>', page)[1])


def rows(page):
    """The cells of the table of all settings."""
    found = re.findall(r"<tr>(.*?)</tr>", page)[1:]
    return [[unescape(cell) for cell in re.findall(r"<td>(.*?)</td>", row)] for row in found]


def elements(inside):
    """Name, text and attributes of everything in a picture, without the names of things."""
    root = ElementTree.fromstring(f'<svg xmlns:xlink="http://www.w3.org/1999/xlink">{inside}</svg>')
    for one in root.iter():
        kept = {key: re.sub(r"#[\w-]+", "#", text) for key, text in one.attrib.items() if key != "id"}
        yield one.tag, (one.text or "").strip(), kept


def assert_same_picture(one, other):
    one, other = list(elements(one)), list(elements(other))
    assert len(one) == len(other)
    for (tag, text, looks), (tag_2, text_2, looks_2) in zip(one, other, strict=True):
        assert (tag, text, looks.keys()) == (tag_2, text_2, looks_2.keys())
        for key, value in looks.items():
            assert NUMBER.sub("n", value).split() == NUMBER.sub("n", looks_2[key]).split()
            numbers, numbers_2 = (map(float, NUMBER.findall(text)) for text in (value, looks_2[key]))
            if "base64" not in value:
                assert list(numbers) == pytest.approx(list(numbers_2), abs=0.0051)


@lru_cache(maxsize=2)
def page_of(number):
    """The page of one of the grids, made once."""
    make, grid = GRIDS[number]
    return phone_page.phone_page(make(), grid, width_in=6)


@pytest.mark.claim(
    "A page for phones says and draws at every setting what the lesson itself does",
    against="the panel of the lesson",
    kind="own",
)
@pytest.mark.parametrize("number", range(len(GRIDS)))
def test_every_setting_is_what_the_panel_itself_shows(number):
    (make, grid), page = GRIDS[number], page_of(number)
    told, data = rows(page), packed(page)
    (first, firsts), (second, seconds) = grid.items()
    each = [{first: one, second: other} for one in firsts for other in seconds]
    assert len(told) == len(data["pictures"]) == len(each)
    for values, row, (box, alt, lead, *layers) in zip(each, told, data["pictures"], strict=True):
        with narrow(6):
            panel = make(**values)
            drawn = panel._drawn.svg
        assert row[-1] == panel.sentence and data["words"][lead] == panel._drawn.lead
        assert row[:-1] == [panel.controls[name].told(value) for name, value in values.items()]
        assert unescape(re.search('aria-label="([^"]*)"', drawn)[1]) == panel.sentence + data["words"][alt]
        assert f'viewBox="{data["words"][box]}"' in drawn
        inside = "".join(
            f"{LAYER}{''.join(data['pieces'][piece] for piece in data['layers'][i])}</g>" for i in layers
        )
        assert_same_picture(inside, re.match(r"<svg[^>]*>(.*)</svg>", drawn, re.S)[1])


def test_a_picture_is_narrow_in_all_its_layers_and_wide_again_afterwards():
    wide = first_shot_panel().picture.value
    with narrow(4):
        slim = first_shot_panel().picture.value
    left, _, width, _ = map(float, re.search('viewBox="([^"]+)"', slim)[1].split())
    across = [float(x) for x in re.findall(r'<text [^>]*\bx="(-?[\d.]+)', slim)]
    assert len(across) > 10 and left < min(across) and max(across) < left + width < 4.9 * 72
    assert re.sub(r"b\d+-", "", first_shot_panel().picture.value) == re.sub(r"b\d+-", "", wide)


def test_what_pictures_share_is_stored_once():
    data = packed(page_of(0))
    backgrounds = {picture[3] for picture in data["pictures"]}
    assert (
        len(backgrounds) == 2 and len(data["layers"]) == 2 + 4
    )  # one for each pattern, one for each setting
    assert len(set(data["pieces"])) == len(data["pieces"])
    assert sum("base64" in piece for piece in data["pieces"]) == 2
    names = re.findall(
        r'id="([^"]+)"',
        "".join(data["pieces"][piece] for i in data["pictures"][0][3:] for piece in data["layers"][i]),
    )
    assert len(names) == len(set(names))


def test_the_same_settings_give_the_same_file():
    make, grid = GRIDS[0]
    assert phone_page.phone_page(make(), grid, width_in=6) == page_of(0)


def test_it_begins_where_the_panel_stands_and_leaves_it_there():
    panel = first_shot_panel(speed_mph=16.3, rev_rate_rpm=350)
    before = panel.values, re.sub(r"b\d+-", "", panel.picture.value)
    page = phone_page.phone_page(panel, {"speed_mph": (15, 17)})
    assert [row[0] for row in rows(page)] == ["15", "16.3", "17"]
    assert 'max="2" step="1" value="1" aria-valuetext="16.3"' in page and "Rev rate, rpm: 350" in page
    assert re.sub("<[^>]+>", "", re.search(r'aria-live="polite">(.*?)</p>', page)[1]) == panel.sentence
    panel.redraw()
    assert (panel.values, re.sub(r"b\d+-", "", panel.picture.value)) == before


def test_metric_pages_hold_what_a_metric_screen_can_show():
    with shown_in(True, "left"):
        page = phone_page.phone_page(first_shot_panel(), {"speed_mph": (15, 17)})
        panel = first_shot_panel()
        for told, sentence in rows(page):
            panel.controls["speed_mph"].box.value = float(told)
            assert panel.sentence == sentence and " m" in sentence
    assert "Ball speed, km/h" in page and "board from the left" in page
    assert (SETTINGS.metric, SETTINGS.hand) == (False, "right")


def test_without_steps_the_first_two_controls_are_moved():
    panel = small_panel()
    assert [row[:2] for row in rows(phone_page.phone_page(panel))] == [
        [str(number), one] for number in range(0, 11) for one in ("a", "b<")
    ]


def small_panel(draw=None):
    """A panel of a number, a list and a box of words."""

    def say(number, one, name, metric, hand):
        return Drawn(svg(["<g/>"], 1, 1, f"{name} {number:g}"), f"{name} {number:g} {one}", [])

    controls = [
        Number("number", "A <number>", "units", 0, 10, 1, 5),
        Choice("one", "One of", ["a", "b<"], "a"),
        Words("name", "Name", lambda text: None, "AK", "</script><script>alert(1)</script><!--"),
    ]
    return Panel("small_panel", draw or say, controls)


def test_what_people_typed_stays_text():
    page = phone_page.phone_page(small_panel(), title="<b>mine</b>", about="<i>", cautions=["<u>"])
    assert page.count("<script") == 2 and page.count("</script>") == 2 and "<!--" not in page
    assert "<b>mine" not in page and "<i>" not in page and "<u>" not in page and "b&lt;" in page
    assert rows(page)[0][-1] == "</script><script>alert(1)</script><!-- 0 a"


@pytest.mark.claim(
    "A page for phones fetches nothing and runs no other script than its own",
    against="the text of the page",
    kind="own",
)
def test_only_our_script_runs_and_nothing_is_fetched():
    page = phone_page.phone_page(small_panel())
    policy, script = (
        re.search('Policy" content="([^"]+)"', page)[1],
        re.search("<script>(.*?)</script>", page, re.S)[1],
    )
    digest = base64.b64encode(hashlib.sha256(script.encode()).digest()).decode()
    assert f"script-src 'sha256-{digest}'" in policy and policy.startswith("default-src 'none'")
    assert not re.search(r"https?://|\bsrc=|fetch\(|eval", page)
    assert len(script.splitlines()) < 50


def test_where_the_panel_only_says_a_sentence_so_does_the_page():
    def draw(number, one, name, metric, hand):
        if number > 5:
            raise ValueError("number is too large")
        return Drawn(svg(["<g/>"], 1, 1, "alt"), "well", [])

    page = phone_page.phone_page(small_panel(draw), {"number": (5, 6)})
    data = packed(page)
    assert [row[-1] for row in rows(page)] == ["well", "number is too large"]
    assert [len(picture) for picture in data["pictures"]] == [4, 3]
    assert data["words"][data["pictures"][1][0]] == ""


@pytest.mark.parametrize(
    "controls, told",
    [
        ({"tilt": (1,)}, "this panel has no control 'tilt'; it has number, one, name"),
        ({"number": (1, 11)}, "number must be between 0 and 10 units, got 11"),
        ({"number": ("x",)}, "number must be between 0 and 10 units, got 'x'"),
        ({"one": ("c",)}, "one must be one of a, b<, got 'c'"),
        ({"number": [i / 100 for i in range(900)]}, "a page for phones has at most 400 settings, got 900"),
        ({}, "a page for phones needs a control to move, got none"),
    ],
)
def test_what_cannot_be_is_one_sentence(controls, told):
    with pytest.raises(ValueError, match=re.escape(told)):
        phone_page.phone_page(small_panel(), controls)


def test_too_large_a_page_is_refused(monkeypatch):
    monkeypatch.setattr(phone_page, "MOST_BYTES", 5000)
    with pytest.raises(ValueError, match=r"at most 0.005 MB, got 0.0: give fewer steps"):
        phone_page.phone_page(small_panel())


def test_where_the_hand_is_moved_its_caution_stands():
    controls = [Number(name, name, "", 0, 10, 1, 5) for name in ("speed_mph", "axis_tilt_deg")]
    panel = Panel("a_panel", lambda **values: Drawn("", "well", []), controls)
    pages = [phone_page.phone_page(panel, {name: (5,)}) for name in panel.controls]
    assert [SAFE_HAND in page for page in pages] == [False, True]


def test_one_call_writes_it_beside_the_lessons_under_a_free_name(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    panel = small_panel()
    assert panel.phone_page() == f"In the folder phone of your lessons: small.html. {phone_page.HOW_TO_GIVE}"
    panel.phone_page(title="again")
    assert sorted(path.name for path in (tmp_path / "phone").iterdir()) == ["small (2).html", "small.html"]


def test_a_named_file_is_replaced_only_if_it_was_made_here(tmp_path):
    mine, strange = tmp_path / "mine.html", tmp_path / "strange.html"
    strange.write_text("something else")
    panel = small_panel()
    for _ in range(2):
        assert panel.phone_page(mine).startswith("mine.html. Send it")
    with pytest.raises(OSError, match="was not made by this program"):
        panel.phone_page(strange)
    with pytest.raises(ValueError, match="a page for phones ends in .html, got 'a.pdf'"):
        panel.phone_page(tmp_path / "a.pdf")
    assert strange.read_text() == "something else"


def test_each_lesson_has_a_page_or_a_sentence_and_its_own_caution(monkeypatch):
    monkeypatch.setattr(Panel, "redraw", lambda panel: None)
    lessons = phone_lessons.phone_lessons()
    assert sorted([*lessons, *phone_lessons.WITHOUT]) == list(TITLES)
    for number, lesson in lessons.items():
        moved = phone_page._moved(lesson.make(), lesson.controls)
        assert 2 <= len(moved) <= 3
        title, caution = phone_lessons._told_in(number)
        assert title.startswith(TITLES[number]) and not re.search(r"[*\[\]]", caution)
        assert re.search("[Pp]ain, numbness or tingling|Nobody touches the oil", caution)
