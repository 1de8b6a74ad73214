"""Data and lessons are found from a checkout and from a plain install, and are all in the wheel."""

import subprocess
import sys
import sysconfig
import venv
import zipfile
from pathlib import Path

import pytest

from bowlcore import locate

ROOT = Path(__file__).parents[1]
LESSONS = {path.name for kind in ("*.ipynb", "*.md") for path in (ROOT / "workbooks").glob(kind)}


def files(folder):
    return {found.relative_to(folder).as_posix() for found in folder.rglob("*") if found.is_file()}


def test_a_checkout_finds_its_own_folders(monkeypatch):
    monkeypatch.setattr(locate, "_PACKAGE", ROOT / "bowlcore")
    assert locate.data_folder() == ROOT / "data"
    assert locate.workbooks_folder() == ROOT / "workbooks"


def test_an_installed_package_finds_its_packaged_copies(tmp_path, monkeypatch):
    for name in "_data", "_workbooks":
        (tmp_path / "bowlcore" / name).mkdir(parents=True)
    (tmp_path / "data").mkdir()
    monkeypatch.setattr(locate, "_PACKAGE", tmp_path / "bowlcore")
    assert locate.data_folder() == tmp_path / "bowlcore" / "_data"
    assert locate.workbooks_folder() == tmp_path / "bowlcore" / "_workbooks"


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    folder = tmp_path_factory.mktemp("wheel")
    subprocess.run([sys.executable, "-m", "pip", "wheel", "-q", "--no-deps", "-w", folder, ROOT], check=True)
    [built] = folder.glob("bowlcore-*.whl")
    return built


@pytest.mark.slow
def test_the_wheel_holds_everything(wheel):
    with zipfile.ZipFile(wheel) as archive:
        inside = set(archive.namelist())
    assert {f"bowlcore/_data/{name}" for name in files(ROOT / "data")} <= inside
    assert {f"bowlcore/_workbooks/{name}" for name in LESSONS} <= inside
    assert {f"bowlcore/lab/{name}" for name in files(ROOT / "bowlcore" / "lab")} <= inside
    assert "bowlcore/LICENSE" in inside


@pytest.mark.slow
def test_a_plain_install_works_from_another_folder(wheel, tmp_path):
    venv.create(tmp_path / "env", symlinks=sys.platform != "win32")
    bin_folder = tmp_path / "env" / ("Scripts" if sys.platform == "win32" else "bin")
    python = bin_folder / "python"
    install = [
        sys.executable,
        "-m",
        "pip",
        "--python",
        python,
        "install",
        "-q",
        "--no-deps",
        "--no-index",
        wheel,
    ]
    subprocess.run(install, check=True)
    [site] = (tmp_path / "env").rglob("site-packages")
    # The dependencies are those of the Python that runs this test.
    (site / "dependencies.pth").write_text(sysconfig.get_path("purelib"))

    def said(code):
        return subprocess.check_output([python, "-I", "-c", code], text=True, cwd=tmp_path).strip()

    where = (
        "from bowlcore import locate; print(locate.data_folder().parent, locate.workbooks_folder().parent)"
    )
    assert said(where) == f"{site / 'bowlcore'} {site / 'bowlcore'}"

    assert said("from bowlcore.work_folder import *; print(fill(Path('own')))") == "[]"
    assert files(tmp_path / "own") == LESSONS | {".bowlcore.json"}

    assert said("import bowlcore; print(bowlcore.load_pattern('house').length_ft > 30)") == "True"
    assert "bowlcore open" in subprocess.check_output([bin_folder / "bowlcore"], text=True, cwd=tmp_path)


@pytest.mark.setup
def test_a_kit_of_wheels_installs_without_the_network(tmp_path):
    """The two lines of the README for a computer without internet; pip is told to ask nobody."""
    kit, home = tmp_path / "kit", tmp_path / "home"
    home.mkdir()
    subprocess.run([sys.executable, "-m", "pip", "wheel", "-q", "-w", kit, f"{ROOT}[show]"], check=True)
    venv.create(tmp_path / "env", with_pip=True)
    python = tmp_path / "env" / ("Scripts" if sys.platform == "win32" else "bin") / "python"
    alone = {"PATH": "", "HOME": str(home), "PIP_NO_INDEX": "1", "PIP_CONFIG_FILE": "/dev/null"}
    install = [python, "-m", "pip", "install", "-q", "--find-links", kit, "bowlcore[show]"]
    subprocess.run(install, check=True, env=alone, cwd=tmp_path)
    told = subprocess.run(
        [python, "-m", "bowlcore", "doctor"], env=alone, cwd=home, text=True, capture_output=True
    )
    assert "13 lessons found" in told.stdout and "the lessons can be shown to a group" in told.stdout
    print(
        f"{sum(wheel.stat().st_size for wheel in kit.iterdir()) / 1e6:.0f} MB in {len(list(kit.iterdir()))} files"
    )
