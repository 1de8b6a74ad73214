"""The panels of lesson 11: every control does something, mistakes are one sentence, pages are written and never overwritten."""

import re

import pytest
from panels_help import drive

from bowlcore.coaching import printed
from bowlcore.coaching.clinic_people import INVENTED
from bowlcore.display import clinic, course
from bowlcore.display.clinic import clinic_panel
from bowlcore.display.course import course_panel
from bowlcore.display.settings import SETTINGS

PANELS = {clinic_panel: clinic.WRITE, course_panel: course.WRITE}
CASES = [(make, name) for make in PANELS for name in make().controls if name != "paper"]


@pytest.fixture
def folder(tmp_path, monkeypatch):
    """The folder of the lessons, on a computer without a browser that makes a PDF."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr(printed, "find_browser", lambda: None)
    return tmp_path / printed.FOLDER


def press(panel, label):
    def below(widget):
        yield widget
        for child in getattr(widget, "children", ()):
            yield from below(child)

    next(w for w in below(panel.widget) if getattr(w, "description", None) == label).click()
    return panel.sentence


@pytest.mark.parametrize("make, name", CASES)
def test_every_control_changes_the_page_or_says_why_not(make, name):
    moved = False
    for panel in (make(), make(minutes=120, coaches=4) if make is clinic_panel else make(children=12)):
        said = {drive(panel, name, end) + panel.picture.value for end in panel.controls[name].ends}
        assert not any(re.search(r"\bnan\b|\binf\b|None", text) for text in said)
        moved |= len(said) > 1
    assert moved, f"{name} does nothing"  # one group alone never sits at the table, two may not have to wait


@pytest.mark.parametrize("make", PANELS)
def test_the_page_is_shown_with_header_cells_and_on_paper_too(make):
    panel = make()
    for html in (panel.picture.value, panel._repr_mimebundle_()["text/html"]):
        assert 'scope="col"' in html and "17:00 to 17:05" in html and "18:2" in html
    assert panel.message.value == "" and "everyone has" in panel.sentence


def test_a_line_that_cannot_be_read_stays_and_the_page_waits():
    panel = clinic_panel()
    before = panel.picture.value
    typed = INVENTED.replace("9-11, left", "nine, left")
    panel.controls["people"].widget.value = typed
    assert (
        "Line 3: age band must be one of" in panel.message.value and "&#x27;nine&#x27;" in panel.message.value
    )
    assert panel.controls["people"].widget.value == typed and panel.picture.value == before
    drive(panel, "lanes", 3)
    assert "Line 3" in panel.message.value, "the warning is gone while the wrong line stands"
    panel.controls["people"].widget.value = INVENTED
    assert panel.message.value == ""


def test_hostile_text_is_escaped_and_kept():
    panel = clinic_panel()
    for typed in (
        "<script>alert(1)</script>, 9-11",
        'AK, "><img src=x onerror=alert(1)>',
        "AK, 9-11, right, <b>8</b>",
    ):
        panel.controls["people"].widget.value = typed
        assert "Line 1" in panel.message.value and panel.controls["people"].widget.value == typed
        assert not re.search(r"<(script|img|b)\b", panel.message.value)


def test_what_does_not_fit_says_what_would_and_the_panel_lives_on():
    panel = clinic_panel()
    assert "What would: 2 lanes" in drive(panel, "lanes", 1) and panel.picture.value == ""
    assert "everyone has 12 balls" in drive(panel, "lanes", 2)


@pytest.mark.parametrize("make", PANELS)
def test_the_page_is_written_beside_the_lessons_and_nothing_is_overwritten(make, folder):
    panel = make()
    assert not folder.exists()
    said = press(panel, PANELS[make])
    (first,) = folder.iterdir()
    assert first.name in said and "folder printed of your lessons" in said
    text = first.read_text(encoding="utf-8")
    assert "17:00 to 17:05" in text and not re.search(r"https?:|src=|@import|<script", text)
    assert first.name not in drive(panel, "minutes", 100), "it still says that another page was written"
    press(panel, PANELS[make])
    assert len(list(folder.iterdir())) == 2 and first.read_text(encoding="utf-8") == text


def test_paper_is_a_choice_of_the_printed_page(folder):
    press(clinic_panel(paper="Letter"), clinic.WRITE)
    press(clinic_panel(), clinic.WRITE)
    letter, a4 = (
        (folder / name).read_text(encoding="utf-8") for name in ("clinic_05.html", "clinic_05 (2).html")
    )
    assert "size: Letter portrait" in letter and "size: A4 portrait" in a4


def test_a_folder_that_cannot_be_written_is_one_sentence(folder):
    folder.write_text("a file where the folder should be")
    assert "could not be written: the folder printed cannot be made (File exists)" in press(
        clinic_panel(), clinic.WRITE
    )


def test_a_plan_that_does_not_fit_writes_nothing(folder):
    assert "do not fit" in press(clinic_panel(lanes=1), clinic.WRITE) and not folder.exists()


def test_hand_and_units_change_nothing_here():
    panel = clinic_panel()
    before = panel.sentence
    SETTINGS.metric, SETTINGS.hand = True, "left"
    assert panel.sentence == before


@pytest.mark.parametrize("make", PANELS)
def test_back_to_the_start_and_the_settings_line(make):
    panel = make()
    before = panel.sentence
    drive(panel, "minutes", 120)
    assert f"bowlcore.{make.__name__}(minutes=120)" in panel._line.value
    assert make(minutes=120).sentence == panel.sentence
    panel.reset()
    assert panel.sentence == before
