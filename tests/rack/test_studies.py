"""The tuning study: its rows are whole, and a few racks of one played again agree with what is written."""

import importlib.util
from pathlib import Path

import pytest

from bowlcore.rack.deck_params import PARAMETER_SETS

STUDY = Path(__file__).resolve().parent.parent / "studies" / "rack_tuning.py"


@pytest.fixture(scope="module")
def study():
    spec = importlib.util.spec_from_file_location("rack_tuning", STUDY)
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def test_every_set_of_the_model_spread_is_in_the_study(study):
    by_set = {name: [row for row in study.rows() if row["set"] == name] for name in PARAMETER_SETS}
    for name, written in by_set.items():
        assert {study.params_of(row) for row in written} == {PARAMETER_SETS[name]}
        assert {row["stage"] for row in written if row["racks"] == "640"} >= {"final", "report"}


@pytest.mark.claim(
    "In the full study good shots strike and leave the 10-pin about as often as televised finals did; a "
    "fit, no proof",
    against=(
        "televised finals 2005-10, a page on ESPN The Magazine's counts, known second-hand; full study: "
        "python tests/studies/rack_tuning.py"
    ),
    kind="published",
)
def test_the_good_shots_strike_about_as_often_as_televised_finals(study, figure):
    # 61.13 % strikes; of the others 10-pin 25.5 %, 7-10 1.9 %: a page on ESPN The Magazine's counts, second-hand.
    # The bounds are ours; a share has a standard error of 2 (strikes), 3 (10-pin), 1 (7-10) points.
    narrow = [row for row in study.rows() if not row["changed"] and row["mix"] == "narrow"]
    seen = [row for row in narrow if row["stage"] in ("final", "report")]
    assert len(seen) == 3
    for row in seen:
        strike, ten = float(row["strike"]), float(row["10"])
        figure("strikes, highest", strike, "%", asked="67, published 61.1")
        figure("lowest", strike, "%", asked="55", least=True)
        figure("10-pin of the rest, highest", ten, "%", asked="31, published 25.5")
        figure("lowest 10-pin", ten, "%", asked="20", least=True)
        assert 55 < float(row["strike"]) < 67
        assert 20 < float(row["10"]) < 31
        assert float(row["7-10"]) < 3
        assert float(row["10"]) == max(float(row[leave]) for leave in ("10", "7", "8", "9", "4", "4-7"))


@pytest.mark.claim(
    "Other pin models fit the published totals nearly as well: that is the doubt that the lessons show",
    against=(
        "televised finals 2005-10, a page on ESPN The Magazine's counts, known second-hand; full study: "
        "python tests/studies/rack_tuning.py"
    ),
    kind="published",
)
@pytest.mark.parametrize("name", PARAMETER_SETS)
def test_the_sets_of_the_model_spread_fit_the_report_samples_about_as_well(study, name, figure):
    # Root mean square of the misses of strikes, 10-, 7- and 9-pin over their standard errors: a perfect deck has 1,
    # these have 1.1 to 1.5, and the sets that were thrown out 2.0 to 2.9 (our own calculation).
    misses = []
    for row in study.rows():
        if row["set"] == name and row["stage"] in ("final", "report") and row["mix"] == "narrow":
            left = int(row["racks"]) * (1 - float(row["strike"]) / 100)
            for leave, count in (("strike", int(row["racks"])), ("10", left), ("7", left), ("9", left)):
                error = (study.PUBLISHED[leave] * (100 - study.PUBLISHED[leave]) / count) ** 0.5
                misses.append((float(row[leave]) - study.PUBLISHED[leave]) / error)
    figure(
        "misses",
        (sum(m * m for m in misses) / len(misses)) ** 0.5,
        "standard errors",
        asked="1.6; perfect is 1",
    )
    assert (sum(m * m for m in misses) / len(misses)) ** 0.5 < 1.6


@pytest.mark.slow
@pytest.mark.usefixtures("mujoco")
def test_a_few_racks_played_again_agree_with_the_written_row(study):
    [row] = [
        r
        for r in study.rows()
        if r["stage"] == "report" and r["mix"] == "narrow" and r["changed"] == "" and r["ball_seed"] == "23"
    ]
    again = study.figures(study.params_of(row), 23, 77, 640, count=80)["narrow"]
    assert abs(again["strike"] - float(row["strike"])) < 3 * again["strike_se"]
    assert abs(again["10"] - float(row["10"])) < 3 * again["10_se"]
    assert 3 < again["strike_se"] < 8


def test_the_study_prints_every_row_beside_what_is_published(study, capsys):
    assert study.main([]) == 0
    told = capsys.readouterr().out
    assert told.count("(61.13)") == len(study.rows()) >= 60
    assert "3-10: 0.0 to 0.0 %, published 1.3" in told
