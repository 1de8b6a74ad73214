"""The table of sayings: six first, the others when asked for, on screen and on paper."""

from bowlcore.display.rules import rules_panel, rules_table_panel


def test_six_first_and_the_others_behind_a_button():
    shown = rules_table_panel()
    button = shown.children[1]
    assert len(shown.children) == 2 and shown.sentence.startswith("Six sayings, each tried just now")
    assert "Rule of 31" not in shown.still()
    button.value = True
    assert "Rule of 31" in shown.still() and shown.still().count("to whom") == 2
    button.value = False
    assert shown.children[2].layout.display == "none"
    button.value = True
    assert shown.children[2].layout.display == "" and len(shown.children) == 3


def test_three_columns_first_and_the_numbers_behind_a_button_of_their_own():
    shown = rules_table_panel().first
    assert [*shown.first._drawn.rows[0]] == ["saying", "say it?", "to whom"]
    assert "re-aimed: worth" not in shown.still()
    shown.children[1].value = True
    assert len(shown.rest._drawn.rows) == len(shown.first._drawn.rows) and "re-aimed: worth" in shown.still()


def test_on_paper_it_is_a_table():
    bundle = rules_table_panel()._repr_mimebundle_()
    assert "application/vnd.jupyter.widget-view+json" in bundle
    assert "say it?" in bundle["text/html"] and bundle["text/plain"].startswith("Six sayings")


def test_each_saying_can_be_drawn():
    panel = rules_panel()
    for number in panel.controls["number"].ends:
        panel.set(number=number)
        assert panel.message.value == "" and panel.sentence.startswith(f"{number}. ")
        assert "<svg" in panel.picture.value


def test_one_bowler_leaves_only_that_one_in_the_table():
    panel = rules_panel(number=5, bowler="spinner")
    assert {row["bowler"] for row in panel._drawn.rows} == {"spinner"}
    assert "For the spinner: longer skid 3 of 3" in panel.sentence
