"""The page of claims lists what the tests say they check, no more and no less."""

import ast
import re
from pathlib import Path

import claims
import pytest

TESTS = Path(__file__).parent


def marked():
    """(text, file::function) of every test marked as the check of a claim."""
    found = set()
    for path in TESTS.rglob("test_*.py"):
        for node in ast.parse(path.read_text(encoding="utf-8")).body:
            for mark in getattr(node, "decorator_list", []):
                if isinstance(mark, ast.Call) and ast.unparse(mark.func) == "pytest.mark.claim":
                    check = f"tests/{path.relative_to(TESTS).as_posix()}::{node.name}"
                    found.add((re.sub(r"\s+", " ", mark.args[0].value).replace("|", "/"), check))
    return found


def listed():
    rows = re.findall(
        r"^\| (.+?) \| .+ \| `(\S+?)` \|$", (TESTS / "claims.md").read_text(encoding="utf-8"), re.M
    )
    return set(rows)


def test_every_claim_is_on_the_page():
    assert marked() - listed() == set(), "see the head of tests/claims.md"
    assert listed() - marked() == set()


def test_of_several_cases_the_worst_figure_is_told():
    figures = [
        ["off by", 0.01, "ft", "0.1", False],
        ["off by", 0.02, "ft", "0.1", False],
        ["share", 0.9, "", "", True],
    ]
    assert claims.worst([*figures, ["share", 0.8, "", "", True]]) == [
        "off by 0.02 ft (asked: 0.1)",
        "share 0.8",
    ]


@pytest.mark.parametrize(
    "value, told",
    [(0, "0"), (3e-5, "0.00003"), (1234, "1230"), (-0.5, "-0.5"), (1e-12, "less than 0.00000001")],
)
def test_a_figure_is_a_plain_number(value, told):
    assert claims.plain(value) == told


def test_a_bar_in_a_claim_does_not_break_the_table():
    claim = claims.Claim("a | b", "nobody", "own", "tests/motion/test_x.py::test_y")
    assert "| a / b | true in every case tried | nobody | `tests/motion/test_x.py::test_y` |" in claims.page(
        {claim: []}
    )


@pytest.mark.parametrize("kind", ["", "hearsay"])
def test_a_claim_of_no_kind_is_refused(kind):
    class Item:
        nodeid = "tests/test_x.py::test_y"

        @staticmethod
        def get_closest_marker(name):
            return pytest.mark.claim("a", against="b", kind=kind).mark

    with pytest.raises(ValueError, match="kind of claim must be one of published"):
        claims.claim_of(Item)
