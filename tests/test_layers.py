"""Arrows point one way: display, coaching, rack, motion, downwards only; read from the source text."""

import ast
import subprocess
import sys
from pathlib import Path

import pytest

import bowlcore

PACKAGE = Path(bowlcore.__file__).parent
LAYERS = ["display", "coaching", "rack", "motion"]  # from the top
SHARED = {"locate", "whole_file"}  # outside the layers, for all of them
DRAWING = {"matplotlib", "ipywidgets", "IPython", "anywidget"}
HEAVY = {"numpy", "pandas", "scipy", "matplotlib", "ipywidgets", "IPython", "jupyterlab", "notebook"}
HEAVY |= {"av", "anywidget"}


def imports_of(path):
    """(dotted name, line, inside a function) of every import, relative ones made absolute."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    inside = {
        id(node)
        for outer in ast.walk(tree)
        if isinstance(outer, ast.FunctionDef | ast.AsyncFunctionDef)
        for node in ast.walk(outer)
    }
    here = ["bowlcore", *path.relative_to(PACKAGE).with_suffix("").parts]
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            for name in node.names:
                yield name.name, node.lineno, id(node) in inside
        elif isinstance(node, ast.ImportFrom):
            stem = (
                ".".join([*here[: -node.level], *([node.module] if node.module else [])])
                if node.level
                else node.module
            )
            for name in node.names:
                yield f"{stem}.{name.name}", node.lineno, id(node) in inside


def files(layer):
    return sorted((PACKAGE / layer).rglob("*.py"))


def layer_of(dotted):
    parts = dotted.split(".")
    return parts[1] if parts[0] == "bowlcore" and len(parts) > 1 else None


@pytest.mark.parametrize("layer", LAYERS)
def test_a_layer_imports_only_itself_and_those_below(layer):
    allowed = set(LAYERS[LAYERS.index(layer) :]) | SHARED
    wrong = [
        f"{path.name}:{line} imports {name}"
        for path in files(layer)
        for name, line, _ in imports_of(path)
        if layer_of(name) and layer_of(name) not in allowed
    ]
    assert not wrong
    assert files(layer)


def test_public_names_of_the_package_are_imported_by_no_layer():
    # `from bowlcore import X` would hide which layer X comes from
    wrong = [
        f"{path.name}:{line} imports {name}"
        for layer in LAYERS
        for path in files(layer)
        for name, line, _ in imports_of(path)
        if name == "bowlcore" or (layer_of(name) and layer_of(name) not in {*LAYERS, *SHARED})
    ]
    assert not wrong


def test_motion_needs_only_numpy_pandas_and_the_standard_library():
    for path in files("motion"):
        for name, line, inside in imports_of(path):
            top = name.split(".")[0]
            assert top in {"bowlcore", "numpy", "pandas"} | sys.stdlib_module_names, (
                f"{path.name}:{line} {name}"
            )
            if top == "pandas":
                assert inside, f"{path.name}:{line}: pandas is imported inside functions"


def test_rack_and_coaching_need_no_drawing():
    for layer in ("rack", "coaching", "motion"):
        for path in files(layer):
            for name, line, _ in imports_of(path):
                assert name.split(".")[0] not in DRAWING, f"{path.name}:{line} {name}"


def test_only_display_draws():
    wrong = [
        f"{path.relative_to(PACKAGE)}:{line} imports {name}"
        for path in sorted(PACKAGE.rglob("*.py"))
        if path.relative_to(PACKAGE).parts[0] != "display"
        for name, line, inside in imports_of(path)
        if name.split(".")[0] in DRAWING and not inside
    ]
    assert not wrong


def test_pyplot_is_used_nowhere():
    for path in sorted(PACKAGE.rglob("*.py")):
        for name, line, _ in imports_of(path):
            assert not name.startswith("matplotlib.pyplot"), f"{path.name}:{line}"


def test_the_check_itself_sees_a_wrong_arrow(tmp_path, monkeypatch):
    (tmp_path / "motion").mkdir()
    (tmp_path / "motion" / "bad.py").write_text(
        "def f():\n    from bowlcore.display import x\n    from ..rack import y\n"
    )
    monkeypatch.setattr(sys.modules[__name__], "PACKAGE", tmp_path)
    found = [layer_of(name) for name, _, _ in imports_of(tmp_path / "motion" / "bad.py")]
    assert found == ["display", "rack"]


def loaded_after(code):
    done = subprocess.run(
        [sys.executable, "-c", f"{code}\nimport sys; print(*sorted(m.split('.')[0] for m in sys.modules))"],
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    return set(done.stdout.split())


def test_import_bowlcore_loads_nothing_heavy():
    assert not loaded_after("import bowlcore") & HEAVY


def test_one_shot_loads_numpy_alone():
    code = (
        "from bowlcore import Release, ZonedLane, simulate\n"
        "simulate(Release(17, 300, 45, 13, 17, 13), ZonedLane([(60, 0.1)]))"
    )
    assert loaded_after(code) & HEAVY == {"numpy"}
