"""The two commands of the README are the commands that there are."""

import importlib.util
import os
import re
import subprocess
import sys

import pytest

from tests.house.project import ROOT

COMMAND = re.compile(r"^\s*(?:python3|python|py) (resources[/\\]start\.py.*?)\s*$", re.MULTILINE)


@pytest.fixture
def start():
    spec = importlib.util.spec_from_file_location("start", ROOT / "resources" / "start.py")
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def told() -> set[tuple[str, ...]]:
    """The words after start.py in each command of the README."""
    text = (ROOT / "README.md").read_text("utf-8")
    return {tuple(line.split()[1:]) for line in COMMAND.findall(text)}


def test_the_readme_tells_both_commands_and_no_other():
    assert told() == {(), ("test",)}


def test_the_commands_of_the_readme_are_known_to_the_start_script(start):
    assert {words[0] if words else "run" for words in told()} == set(start.VERBS)


def test_continuous_integration_calls_the_test_command_of_the_readme():
    path = ROOT / ".ci" / "run"
    assert "python3 resources/start.py test" in (ROOT / "README.md").read_text("utf-8")
    assert path.read_text("utf-8").splitlines()[-1] == "exec python3 resources/start.py test"
    assert os.access(path, os.X_OK)


def test_help_is_given_by_the_system_python_without_set_up():
    command = [sys.executable, "-I", "-S", str(ROOT / "resources" / "start.py"), "--help"]
    done = subprocess.run(command, capture_output=True, text=True, check=True)
    assert "resources/start.py test" in done.stdout


@pytest.mark.parametrize("words", [["tests"], ["run", "fast"], ["--tset"]])
def test_a_word_that_is_not_known_is_wrong_use(start, capsys, words):
    assert start.main(words) == 2
    assert " ".join(words) in capsys.readouterr().out


def test_only_what_is_missing_is_installed(start):
    present = {"libgl1", "libegl1", "libglib2.0-0"}
    assert start.missing(("libgl1", "xvfb", "libglib2.0-0"), present) == ["xvfb"]


def test_nothing_is_installed_where_all_is_there(start, monkeypatch):
    asked = []
    monkeypatch.setattr(start.shutil, "which", lambda name: name)
    monkeypatch.setattr(start, "installed", lambda: {"xvfb", "python3-venv"})
    monkeypatch.setattr(start, "call", lambda *given, **_: asked.append(given) or 0)
    start.system_packages(("xvfb",))
    assert asked == []


def test_without_the_right_to_install_the_one_command_is_named(start, monkeypatch):
    monkeypatch.setattr(start.shutil, "which", lambda name: name)
    monkeypatch.setattr(start, "installed", lambda: {"xvfb"})
    monkeypatch.setattr(start, "may_install", lambda: None)
    with pytest.raises(start.Stop, match=r"sudo apt-get install .*poppler-utils$"):
        start.system_packages(("xvfb", "poppler-utils"))


def test_the_browser_is_installed_where_there_is_none(start, monkeypatch):
    there, asked = set(), []

    def install(wanted):
        asked.append(wanted)
        there.update(wanted)

    monkeypatch.delenv("INSPECTOR_CHROMIUM", raising=False)
    monkeypatch.setattr(start.shutil, "which", lambda name: name if name in there else None)
    monkeypatch.setattr(start, "system_packages", install)
    assert start.browser()
    assert start.browser()
    assert asked == [("chromium",)]


def test_a_machine_without_a_browser_is_told_plainly_and_the_tests_go_on(start, monkeypatch, capsys):
    def refuse(wanted):
        raise start.Stop(f"Run this: sudo apt-get install {' '.join(wanted)}")

    monkeypatch.delenv("INSPECTOR_CHROMIUM", raising=False)
    monkeypatch.setattr(start.shutil, "which", lambda name: None)
    monkeypatch.setattr(start, "system_packages", refuse)
    monkeypatch.setattr(start, "ready", lambda *_, **__: "python")
    monkeypatch.setattr(start, "tee", lambda command, env: (0, "7 passed"))
    assert start.test([]) == 0
    out = capsys.readouterr().out
    assert "sudo apt-get install chromium" in out
    assert "the journey of the phone will fail" in out


def test_a_checkout_that_cannot_be_written_is_one_clear_sentence(start, tmp_path):
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(start.Stop, match="cannot be made"):
        start.make(tmp_path / "file" / "folder")


def test_an_empty_home_is_no_home(start, monkeypatch):
    monkeypatch.setenv("HOME", "")
    monkeypatch.setenv("PYTHONPATH", "elsewhere")
    assert "HOME" not in start.surroundings()
    assert "PYTHONPATH" not in start.surroundings()


def test_the_exit_code_and_the_last_line_of_a_command_are_kept(start, capfd):
    code = "print('one'); print('2 passed'); print(); raise SystemExit(3)"
    assert start.tee([sys.executable, "-c", code], dict(os.environ)) == (3, "2 passed")
    assert "one" in capfd.readouterr().out


@pytest.mark.parametrize(
    ("codes", "result", "verdict"),
    [
        ([0, 0, 0, 0], 0, "All steps passed."),
        ([0, 1, 0, 0], 1, "FAILED: types (mypy)"),
        ([1, 0, 0, 5], 1, "FAILED: style (ruff), tests (pytest)"),
    ],
)
def test_any_failed_step_fails_the_whole(start, monkeypatch, capsys, codes, result, verdict):
    left, ran = list(codes), []
    monkeypatch.setattr(start, "ready", lambda *_, **__: "python")
    monkeypatch.setattr(start, "browser", lambda: True)
    monkeypatch.setattr(
        start, "tee", lambda command, env: ran.append(command) or (left.pop(0), "7 passed")
    )
    assert start.test(["-k", "walk"]) == result
    out = capsys.readouterr().out.splitlines()
    assert out[-2:] == [verdict, "7 passed"]
    assert ran[-1][-2:] == ["-k", "walk"]
