"""What ships is found from a checkout, from an installed wheel and from a frozen program."""

import subprocess
import sys
import zipfile

import pytest

from inspector import resource as module
from inspector.resource import ResourceMissing, resource, sample_profiles
from tests.house.project import ROOT, tracked

FONT = ("fonts", "SourceSansPro-Regular.ttf")


def test_a_checkout_finds_its_own_files():
    assert resource(*FONT) == ROOT / "resources" / "fonts" / FONT[1]
    assert resource() == ROOT / "resources"
    assert sample_profiles() == ROOT / "sample_profiles"


def test_what_is_missing_is_named_with_what_to_do():
    with pytest.raises(ResourceMissing, match=r"resources/fonts/none\.ttf .*install") as caught:
        resource("fonts", "none.ttf")
    assert isinstance(caught.value, FileNotFoundError)


@pytest.mark.parametrize("inside", [(), ("inspector", "_data")])
def test_a_frozen_program_finds_the_bundled_files(tmp_path, monkeypatch, inside):
    font = tmp_path.joinpath(*inside, "resources", *FONT)
    font.parent.mkdir(parents=True)
    font.write_bytes(b"font")
    monkeypatch.setattr(module.sys, "_MEIPASS", str(tmp_path), raising=False)
    assert resource(*FONT) == font


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory):
    """A wheel built from this checkout, unpacked as an installer would."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    (wheel,) = folder.glob("vintage_motorcycle_inspector-*.whl")
    with zipfile.ZipFile(wheel) as packed:
        packed.extractall(folder / "site")
    return folder / "site"


def test_an_installed_wheel_finds_its_files(unpacked):
    code = (
        f"import sys; sys.path[:] = [p for p in sys.path if p != {str(ROOT)!r}];"
        f"sys.path.insert(0, {str(unpacked)!r});"
        "from inspector.resource import resource, sample_profiles;"
        f"print(resource(*{FONT!r})); print(sample_profiles())"
    )
    command = [sys.executable, "-I", "-c", code]
    done = subprocess.run(command, cwd=unpacked, capture_output=True, text=True, check=True)
    data = unpacked / "inspector" / "_data"
    assert done.stdout.splitlines() == [
        str(data.joinpath("resources", *FONT)),
        str(data / "sample_profiles"),
    ]


def test_a_wheel_ships_every_profile_and_resource_and_no_more(unpacked):
    data = unpacked / "inspector" / "_data"
    shipped = {p.relative_to(data).as_posix() for p in data.rglob("*") if p.is_file()}
    kept_back = ("resources/start.py", "resources/pictures/")
    wanted = {
        name
        for name in tracked()
        if name.startswith(("resources/", "sample_profiles/")) and not name.startswith(kept_back)
    }
    assert wanted <= shipped
    assert not [name for name in shipped if name.startswith(kept_back)]
    assert {p.name for p in unpacked.iterdir() if p.is_dir() and "." not in p.name} == {"inspector"}
