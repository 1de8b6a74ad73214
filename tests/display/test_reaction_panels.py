"""The reading, changes and case panels: phrases fill the controls, the list is kept, hostile text is only text."""

import re
from xml.etree import ElementTree

import pytest

from bowlcore.coaching import case_told, changes_told
from bowlcore.coaching.bowler import load_bowlers
from bowlcore.coaching.path_lab import lane_of
from bowlcore.coaching.phrases import PHRASES
from bowlcore.coaching.reaction_told import readings_of
from bowlcore.coaching.seen import Seen
from bowlcore.display.cases import case_panel
from bowlcore.display.changes import changes_panel
from bowlcore.display.controls import Words
from bowlcore.display.reaction import reaction_panel
from bowlcore.display.reaction_figure import NAMES, moving
from bowlcore.display.settings import SETTINGS

SKIDS = Seen("light", "still skidding", target_hit=True)
HOSTILE = ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>', "&lt;b&gt; ${x} {{x}}", "光のボール𝔣𝔩𝔞𝔱",
           "=HYPERLINK(1)", "x" * 500, "\u202etfel", "?!"]  # fmt: skip


def press(panel, label):
    buttons = panel.widget.children[4].children
    next(button for button in buttons if button.description == label).click()


def say(panel, text):
    """Type into the phrase box, as a person does."""
    panel.controls["phrase"].widget.value = text


def test_a_phrase_fills_the_controls():
    panel = reaction_panel()
    say(panel, "it stood up, flat ten")
    assert (panel.values["finish"], panel.values["leave"]) == ("stood up", (10,))
    assert "It rolled too early" in panel.sentence and "From 1 ball" in panel.sentence
    assert "keeps" not in panel.sentence
    say(panel, "I hit my mark")
    assert panel.values["target_hit"] is True and panel.values["finish"] == "stood up"
    assert "This ball keeps as well: stood up, 10 stands." in panel.sentence
    say(panel, "it quit, high")
    assert "This ball keeps as well: target hit, 10 stands." in panel.sentence
    press(panel, "Note this ball")
    say(panel, "light")
    assert "keeps" not in panel.sentence, "the next ball begins empty"
    assert reaction_panel(phrase="it stood up").values["finish"] == "stood up"
    assert reaction_panel().set(phrase="tight").values["hit"] == "light"


@pytest.mark.parametrize("phrase", PHRASES, ids=lambda phrase: phrase.say)
def test_every_phrase_of_the_book_fits_the_controls(phrase):
    panel = reaction_panel()
    say(panel, phrase.say)
    assert panel.message.value == "" and phrase.say in panel.sentence.replace("&quot;", '"')
    for name, value in phrase.seen.told.items():
        assert panel.values[name] == value


@pytest.mark.parametrize("text", HOSTILE)
def test_unknown_and_hostile_text_is_shown_as_text_and_kept(text):
    panel = reaction_panel(hit="light")
    before = panel.sentence
    say(panel, text)
    assert panel.controls["phrase"].widget.value == text, "what was typed is lost"
    assert "phrase" in panel.message.value and panel.sentence == before
    for html in (
        panel.message.value,
        panel.picture.value,
        panel.result.value,
        panel._table.value,
        panel._line.value,
    ):
        assert "<script" not in html and "<img" not in html and "onerror=alert(1)>" not in html
    ElementTree.fromstring(panel.message.value)  # one well-formed piece, whatever was typed
    say(panel, "flush")
    assert panel.message.value == "" and panel.values["hit"] == "flush"


def test_unknown_phrases_name_the_nearest():
    panel = reaction_panel()
    say(panel, "hooked")
    assert "the phrase book does not know" in panel.message.value and "nearest:" in panel.message.value
    with pytest.raises(ValueError, match="the phrase book does not know"):
        panel.set(phrase="zzz qqq")
    with pytest.raises(ValueError, match="phrase must be text, got int"):
        panel.set(phrase=3)


def test_words_that_contradict_each_other_are_one_sentence():
    panel = reaction_panel()
    say(panel, "flush and light")
    assert "hit cannot be both" in panel.message.value


def test_a_phrase_of_the_other_hand_is_mirrored():
    SETTINGS.hand = "left"
    panel = reaction_panel()
    say(panel, "flat 7")
    assert panel.values["leave"] == (10,), "the controls keep a right-hander's names"
    assert "7 stands" in panel.picture.value


def test_noting_taking_back_and_clearing():
    panel = reaction_panel().set(hit="light", lane="left")
    press(panel, "Note this ball")
    assert panel.values["hit"] == "not seen" and panel.values["lane"] == "left", (
        "the lane stays for the next ball"
    )
    assert panel.memory["noted"] == (Seen(hit="light", lane="left"),)
    press(panel, "Note this ball")  # nothing on the controls
    assert len(panel.memory["noted"]) == 1
    panel.set(finish="still skidding")
    assert "from 2 balls" in panel.sentence and "now: still skidding" in panel.picture.value
    press(panel, "Note this ball")
    press(panel, "Take the last one back")
    assert "from 1 ball" in panel.sentence
    panel.set(bowler="spinner")
    press(panel, "Clear the list")
    assert "No ball is noted yet" in panel.sentence and panel.values["bowler"] == "spinner"
    panel.reset()
    assert panel.sentence == reaction_panel().sentence


def test_the_next_ball_is_said_first_in_bold_and_once():
    for noted in ((), [SKIDS, SKIDS], [Seen(leave=(10,))]):
        panel = reaction_panel(noted=noted)
        for html in (panel.result.value, panel.still()):
            lead = re.search(r'<p class="bm-sentence".*?><strong class="bm-lead">(.*?)</strong>', html)[1]
            assert lead.startswith("Next ball: ") and html.count("Next ball: ") == 1 + html.count(
                "aria-label"
            )
        assert panel.sentence.startswith("Next ball: ")


def test_bars_and_paths_are_the_answer():
    panel = reaction_panel(noted=[SKIDS, SKIDS])
    told = readings_of(load_bowlers()["league one-hander"], lane_of("house"), [SKIDS, SKIDS])[0]
    weights = {cause.name: 10 * cause.weight for cause in told.causes}
    for name, bar in zip(NAMES, moving().bars[0].bars, strict=True):
        assert bar.get_xdata()[1] == pytest.approx(weights[name])
    assert moving().supposed[0].get_ydata()[-1] == pytest.approx(told.supposed.board[-1])
    assert "distance from the foul line" in panel.picture.value


def test_one_lane_said_and_another_not_is_a_sentence_and_the_panel_lives_on():
    panel = reaction_panel(noted=[Seen(hit="light", lane="left"), Seen(hit="high", lane="right")])
    panel.set(hit="high")
    assert "either every delivery says its lane" in panel.message.value
    panel.set(lane="right")
    assert panel.message.value == "" and "Right lane, from 2 balls" in panel.sentence


def test_changes_wait_to_be_asked_and_take_the_list_over():
    reading = reaction_panel(noted=[SKIDS, SKIDS], bowler="left-hander")
    panel = changes_panel(reading)
    assert "press 'What can I change?'" in panel.sentence and panel._drawn.rows == []
    press(panel, "What can I change?")
    assert panel.sentence.startswith("Taking 'skids too far' for true")
    alone = changes_panel(noted=[SKIDS, SKIDS], bowler="left-hander")
    assert panel.sentence == alone.sentence and panel._drawn.rows == alone._drawn.rows
    assert panel._table.value.count("<tr>") == len(panel._drawn.rows) + 1


def test_cannot_tell_shows_the_next_step_and_no_change():
    panel = changes_panel(noted=[Seen(leave=(10,))])
    assert "No change is advised" in panel.sentence and len(panel._drawn.rows) == 1
    assert panel.message.value == ""
    panel.set(suppose=changes_told.SUPPOSED[2])
    assert "Supposing" in panel.sentence and len(panel._drawn.rows) > 1


def test_bad_starting_values_are_refused():
    for make, given, said in (
        (reaction_panel, {"hit": "soft"}, "hit must be one of"),
        (reaction_panel, {"tilt": 1}, "no control 'tilt'"),
        (changes_panel, {"bowler": "nobody"}, "bowler must be one of"),
        (changes_panel, {"suppose": "bad luck"}, "suppose must be one of"),
        (case_panel, {"number": 9}, "number must be one of"),
    ):
        with pytest.raises(ValueError, match=said):
            make(**given)


def test_a_case_keeps_its_secret_until_the_truth_is_shown():
    panel = case_panel().set(number=4)
    assert "truth" not in panel.picture.value.split("</title>")[0] and "The truth" not in panel.sentence
    press(panel, "Throw the test ball")
    assert "Test balls:" in panel.sentence and "test: " in panel.picture.value
    press(panel, "Show the truth")
    assert (
        "The truth: The lane was a quarter looser" in panel.sentence
        and "dashes: the truth" in panel.picture.value
    )
    panel.set(number=5)
    assert "The truth" not in panel.sentence and "Test balls" not in panel.sentence, "each case keeps its own"
    panel.set(number=4)
    assert "The truth" in panel.sentence
    panel.reset()
    assert panel.sentence == case_panel().sentence


def test_the_left_handers_case_is_drawn_from_his_side():
    assert "board from the left" in case_panel(number=3).picture.value


@pytest.mark.parametrize("number", range(1, 9))
def test_every_change_can_be_tried_in_every_case(number):
    panel = case_panel(number=number)
    press(panel, "Show the truth")
    said = {panel.set(change=change).sentence for change in case_told.CHOICES}
    assert len(said) == len(case_told.CHOICES) and not re.search(r"\bnan\b", " ".join(said))


def test_the_word_box_asks_before_it_takes():
    heard, asked = [], []

    def check(text):
        if "bad" in text:
            raise ValueError("that is not in the book")

    control = Words("said", "Said", check, "good", then=asked.append)
    control.on_change(lambda: heard.append(control.value), heard.append)
    control.widget.value = "good"
    control.widget.value = "bad"
    assert control.value == "good" and control.widget.value == "bad"
    assert heard == ["", "good", "that is not in the book"] and asked == ["good"]
    control.put("")
    assert control.widget.value == "" and heard[-1] == "" and control.ends == ("", "good")
