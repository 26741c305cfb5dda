"""How a command speaks: one line of trouble whatever is asked, for every terminal, and with nobody listening."""

import io
import json
import os
import subprocess
import sys

import pytest

from inspector import terminal
from inspector.cli import AMISS, MISUSE, WELL, main
from inspector.demo import put_demo
from inspector.storage.library import Library


@pytest.fixture
def data(tmp_path, monkeypatch):
    folder = tmp_path / "data"
    monkeypatch.setenv("INSPECTOR_DATA", str(folder))
    with Library.open(folder, lambda: "2026-05-16T12:00:00+01:00") as library:
        put_demo(library)
    return folder


def command(*words, **more):
    """The command as a process of its own."""
    return subprocess.run([sys.executable, "-m", "inspector", *map(str, words)], check=False, **more)


@pytest.fixture
def odd(tmp_path):
    """Files that no command can use, by what they are."""
    junk = bytes(range(256)) * 20
    for name in ("junk", "junk.pdf", "junk.json", "junk.zip", "junk.toml"):
        (tmp_path / name).write_bytes(junk)
    for name in ("empty", "empty.pdf", "empty.json", "empty.zip", "empty.toml"):
        (tmp_path / name).touch()
    for name in ("folder", "folder.json", "folder.pdf", "folder.zip"):
        (tmp_path / name).mkdir()
    (tmp_path / "deep.json").write_text("[" * 100_000, "utf-8")
    os.mkfifo(tmp_path / "pipe.pdf")
    (tmp_path / "leads-nowhere.pdf").symlink_to(tmp_path / "nowhere")
    (tmp_path / "in-a-ring.json").symlink_to(tmp_path / "in-a-ring.json")
    return [*sorted(tmp_path.iterdir()), tmp_path / "not-there", tmp_path / "not-there.pdf"]


COMMANDS = (
    ("check",),
    ("judge",),
    ("pack", "--to", "{out}"),
    ("sheet", "--copy", "seller", "--to", "{out}"),
    ("sheet", "--copy", "blank", "--to", "{out}"),
)


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: " ".join(words[:3]))
@pytest.mark.parametrize("form", [[], ["--json"]], ids=["lines", "json"])
def test_whatever_a_command_is_given_it_answers_with_a_sentence(
    odd, tmp_path_factory, monkeypatch, capsys, words, form
):
    monkeypatch.setenv("INSPECTOR_DATA", str(tmp_path_factory.mktemp("data")))
    out = tmp_path_factory.mktemp("out") / "out"
    for path in odd:
        assert main([word.format(out=out) for word in words] + form + [str(path)]) == AMISS
        said, trouble = capsys.readouterr()
        assert "Traceback" not in said + trouble
        assert "program itself failed" not in trouble
        if words[0] == "check":
            assert trouble == ""
            assert path.name in said
        else:
            assert (said, len(trouble.splitlines())) == ("", 1)
        assert not out.exists()


@pytest.mark.parametrize("words", [
    ["judge"], ["judge", ""], ["nonsense"], ["check", " "], ["sheet", "X", "--copy", "bogus", "--to", "x"],
    ["sheet", "X", "--copy", "blank", "--to", "x", "--year", "MCMLIII"], ["read", "brackwater-heron", "frame", ""],
])  # fmt: skip
def test_wrong_use_is_one_line_that_says_where_help_is(words, capsys):
    with pytest.raises(SystemExit) as ended:
        main(words)
    assert ended.value.code == MISUSE
    out, err = capsys.readouterr()
    assert out == ""
    assert len(err.splitlines()) == 1
    assert "--help” tells how it is used." in err


def test_a_number_without_end_is_wrong_use(capsys):
    assert main(["read", "brackwater-heron", "frame", "9" * 101]) == MISUSE
    assert "more than 100 figures" in capsys.readouterr().err


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp437"])
def test_a_terminal_without_our_letters_still_gets_every_line(data, encoding):
    told = command("judge", "DEM01953", capture_output=True, env={**os.environ, "PYTHONIOENCODING": encoding})
    assert (told.returncode, told.stderr) == (WELL, b"")
    assert "Seen:" in told.stdout.decode(encoding)


def test_json_for_a_terminal_without_our_letters_is_the_same_data(data):
    plain = command("judge", "DEM01953", "--json", capture_output=True)
    told = command(
        "judge", "DEM01953", "--json", capture_output=True, env={**os.environ, "PYTHONIOENCODING": "latin-1"}
    )
    assert told.stdout != plain.stdout
    assert json.loads(told.stdout.decode("latin-1")) == json.loads(plain.stdout)


def test_nothing_is_said_where_whoever_listens_has_heard_enough(data):
    reader, writer = os.pipe()
    os.close(reader)
    told = command("judge", "DEM01953", "--json", stdout=writer, stderr=subprocess.PIPE)
    os.close(writer)
    assert (told.returncode, told.stderr) == (AMISS, b"")


def test_an_output_that_takes_no_more_is_one_line(data):
    with open("/dev/full", "wb") as full:  # noqa: PTH123
        told = command("list", stdout=full, stderr=subprocess.PIPE)
    assert told.returncode == AMISS
    assert told.stderr.decode() == "The answer cannot be written: No space left on device. Write it elsewhere.\n"


def test_names_and_words_steer_no_terminal(tmp_path, capsys):
    path = tmp_path / "one\ntwo\x1b[31m.json"
    path.write_text("x", "utf-8")
    assert main(["check", str(path)]) == AMISS
    (line,) = capsys.readouterr().out.splitlines()
    assert "one two[U+001B][31m.json" in line


def test_a_name_in_no_known_letters_is_told(tmp_path, capsys):
    path = tmp_path / os.fsdecode(b"caf\xe9.json")
    path.write_bytes(b"x")
    assert main(["check", str(path), "--json"]) == AMISS
    (name,) = json.loads(capsys.readouterr().out)
    assert name == str(path)


def test_a_fault_of_the_program_itself_is_one_line_with_its_place(monkeypatch, capsys):
    def fails():
        raise KeyError("gone\nastray")

    assert terminal.run(fails) == AMISS
    (line,) = capsys.readouterr().err.splitlines()
    assert "The program itself failed at test_terminal.py line" in line
    assert "KeyError" in line


def test_a_command_that_is_stopped_says_so(capsys):
    def stopped():
        raise KeyboardInterrupt

    assert terminal.run(stopped) == AMISS
    assert capsys.readouterr().err == "Stopped.\n"


@pytest.mark.parametrize("words", [[], ["demo"]])
def test_without_a_screen_the_window_is_refused_in_one_line(tmp_path, words):
    bare = {name: value for name, value in os.environ.items() if name not in terminal.SCREENS}
    told = command(*words, capture_output=True, env={**bare, "INSPECTOR_DATA": str(tmp_path / "data")})
    assert (told.returncode, told.stdout) == (AMISS, b"")
    assert told.stderr.decode().splitlines() == [
        "There is no screen here to open the window on. “inspector --help” names what needs none."
    ]
    assert not (tmp_path / "data").exists()


def test_a_device_is_never_written_over(tmp_path, capsys):
    os.mkfifo(tmp_path / "pipe")
    words = ["sheet", "brackwater-heron", "--copy", "blank", "--to", str(tmp_path / "pipe")]
    assert main(words) == AMISS
    assert "is a device, not a file" in capsys.readouterr().err
    assert (tmp_path / "pipe").is_fifo()


def test_the_help_is_told_in_the_letters_of_the_terminal(monkeypatch):
    out = io.TextIOWrapper(io.BytesIO(), "ascii")
    monkeypatch.setattr(sys, "stdout", out)
    with pytest.raises(SystemExit) as ended:
        main(["check", "--help"])
    assert ended.value.code == WELL
    out.flush()
    assert b"usage: inspector check" in out.buffer.getvalue()
