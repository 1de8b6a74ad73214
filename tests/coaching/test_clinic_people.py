"""People typed one a line, and their pages: every mistake names its line, every text is escaped."""

from html.parser import HTMLParser

import pytest

from bowlcore.coaching import clinic_words as words
from bowlcore.coaching.clinic import plan_clinic
from bowlcore.coaching.clinic_evening import EQUIPMENT, ClinicEvening, read_equipment
from bowlcore.coaching.clinic_page import clinic_body, html_table
from bowlcore.coaching.clinic_people import INVENTED, Person, read_people
from bowlcore.coaching.clinic_told import course_answer
from bowlcore.coaching.lesson_plans import COURSE, LESSONS
from bowlcore.coaching.lesson_titles import numbered
from bowlcore.locate import workbooks_folder

EVENING = ClinicEvening(lanes=2, minutes=90, coaches=3)


def test_a_line_says_who_comes():
    read = read_people(
        "ak , 9-11, LEFT, 8 lb, some\n\n  BN, Adult\nCM, under 9, , ?, \nDR, 12-14, both, 8.5\n"
    )
    assert read == (
        Person("AK", "9-11", "left", 8.0, "some"),
        Person("BN", "adult"),
        Person("CM", "under 9"),
        Person("DR", "12-14", "both", 8.5),
    )


def test_the_invented_group_is_eight_children_and_four_adults():
    group = read_people(INVENTED)
    assert [person.child for person in group].count(True) == 8 and len(group) == 12


@pytest.mark.parametrize(
    "text, said",
    [
        ("AK, 9-11\nBernhard, 9-11", "Line 2: initials must be one to three letters or digits.*'Bernhard'"),
        ("AK", "Line 1: after the initials 'AK' comes an age band: one of under 9, 9-11"),
        ("AK, nine", "Line 1: age band must be one of under 9, .* got 'nine'"),
        ("\n\nAK, 9-11, hook", "Line 3: hand must be one of right, left, both, ramp, got 'hook'"),
        ("AK, 9-11, right, heavy", "Line 1: ball weight must be pounds, such as 8 lb, or empty, got 'heavy'"),
        ("AK, 9-11, right, 3.6 kg", "Line 1: ball weight must be pounds"),
        ("AK, 9-11, right, 17 lb", "Line 1: ball weight must be a number between 4 and 16 lb, got 17"),
        ("AK, 9-11, right, 8 lb, pro", "Line 1: experience must be one of new, some, league, got 'pro'"),
        ("AK, 9-11, right, 8,5 lb, some", "Line 1: a line has five parts.*'some' .write 8.5, not 8,5"),
        ("AK, 9-11\nAK, adult", "AK stands there twice; give one of them a number, such as AK2"),
        ("", "people must be 1 to 48, got 0"),
        ("\n".join(f"A{k}, adult" for k in range(49)), "people must be 1 to 48, got 49"),
        ("<b>, 9-11", "Line 1: initials must be"),
    ],
)
def test_a_mistake_names_the_line_and_the_value(text, said):
    with pytest.raises(ValueError, match=said):
        read_people(text)


def test_what_the_centre_has_is_read_and_no_longer_asked_for():
    assert read_equipment(" Ramp, bumpers,, ") == ("ramp", "bumpers")
    with pytest.raises(ValueError, match="equipment must be one of .* got 'slide'"):
        read_equipment("ramp, slide")
    asked = {key: "; ".join(words.bring(plan_clinic(read_people(INVENTED), with_(key)))) for key in EQUIPMENT}
    for key, text in asked.items():
        assert f"the centre has: {EQUIPMENT[key]}" in text
    assert "ask for: a screen" in asked["ramp"] and "a ramp, seats" not in asked["ramp"]


def with_(*equipment):
    return ClinicEvening(lanes=2, minutes=90, coaches=3, equipment=equipment)


class _Text(HTMLParser):
    """Text of the cells of each table, and every tag there is."""

    def __init__(self, html):
        super().__init__()
        self.tags, self.tables, self.scopes = [], [], []
        self.feed(html)

    def handle_starttag(self, tag, attributes):
        self.tags.append(tag)
        if tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("td", "th"):
            self.tables[-1][-1].append("")
            self.scopes += [dict(attributes).get("scope")] if tag == "th" else []

    def handle_data(self, data):
        if self.tags[-1:] and self.tags[-1] in ("td", "th"):
            self.tables[-1][-1][-1] += data


def test_the_printed_page_says_who_bowls_when_without_anybody_in_two_places():
    """Read from the HTML alone: times follow each other, groups take turns, each person is on one lane of one group."""
    plan = plan_clinic(read_people(INVENTED), EVENING)
    page = _Text(clinic_body(plan))
    times, who, loads = page.tables
    spans = [row[0].split(" to ") for row in times[1:]]
    assert spans[0][0] == "17:00" and spans[-1][1] == "18:30"
    assert all(before[1] == after[0] for before, after in zip(spans, spans[1:], strict=False))
    groups = {row[0]: " ".join(row[1:-1]).split() for row in who[1:]}
    everyone = sorted(name for names in groups.values() for name in names)
    assert everyone == sorted(person.initials for person in plan.people)
    for row in times[1:]:
        bowling = row[2].removeprefix("group ").split(",")[0]
        if bowling:
            assert row[3] == f"group {'AB'.replace(bowling, '')}" and row[2].endswith(", 4 balls each")
        else:
            assert row[3] == "everyone"
    assert loads[0] == ["child", "AK", "BN", "CM", "DR", "EL", "FT", "GH", "HS"]
    assert loads[2][4] == "44 kg" and loads[3][4] == "36 kg"  # 12 x 8 lb; 80 lb
    assert set(page.scopes) == {"col", "row"}


def test_safety_has_its_minutes_and_its_cautions():
    page = clinic_body(plan_clinic(read_people(INVENTED), EVENING))
    for said in (
        "<b>17:00</b> dry soles",
        "<b>17:20, 17:30, 17:40, 17:50, 18:00, 18:10</b> balls down",
        "Pain, numbness or tingling?",
        "two adults",
        "common practice, no source",
        "consent",
        "Local rules, the centre and licensed practice decide",
        "two hands",
    ):
        assert said in page, said


def test_what_people_typed_cannot_become_a_page():
    assert "<script" not in html_table([{"<script>": '"><script>'}], "<script>", row_heads=("<script>",))
    with pytest.raises(ValueError):
        Person('"><script>', "9-11")


@pytest.mark.parametrize("number", LESSONS)
def test_each_lesson_of_a_plan_is_there_and_every_word_of_it_is_filled_in(number):
    lesson = LESSONS[number]
    assert list(workbooks_folder().glob(f"{number}_*.ipynb"))
    assert all(text for name, text in lesson._asdict().items() if name not in ("needs", "caution"))
    assert len(lesson.rubric) == len(set(lesson.rubric)) == 4
    assert set(lesson.needs) <= set(EQUIPMENT)


def test_a_page_a_week_with_all_that_a_volunteer_needs():
    told = course_answer(8, 0, lanes=2, minutes=90, coaches=3)
    assert len(told.pages) == len(COURSE) == 6
    for (title, body), number in zip(told.pages, COURSE, strict=True):
        assert numbered(number) in title
        for part in ("Aim", "Talk", "Guess", "Drill", "Game with pins", "Print and bring", "Goes home", "Exit question",
                     "Safety, at its minute", "Each child lifts"):  # fmt: skip
            assert f"<b>{part}.</b>" in body
        levels = _Text(body).tables[-1][0]
        assert [level[0] for level in levels] == list("0123")
