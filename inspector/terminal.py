"""How a command speaks: lines that every terminal can show, or JSON; trouble in one line, never a traceback."""

from __future__ import annotations

import argparse
import contextlib
import json
import os
import sys
from pathlib import Path
from typing import TYPE_CHECKING, Any, NoReturn, TextIO

from inspector.texts import Say, tr

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

WELL, AMISS, MISUSE = 0, 1, 2
SCREENS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


class Stop(Exception):
    """The command ends here with one sentence and a code."""

    def __init__(self, sentence: str | Say, code: int = AMISS) -> None:
        super().__init__(tr(sentence) if isinstance(sentence, Say) else sentence)
        self.code = code


class _Unwritten(Exception):
    """The output takes no more; ``why`` is nothing where whoever read it has read enough."""

    def __init__(self, error: OSError) -> None:
        super().__init__()
        self.why = "" if isinstance(error, BrokenPipeError) else error.strerror or type(error).__name__


class Parser(argparse.ArgumentParser):
    """Says in one line how a command was used wrongly."""

    def error(self, message: str) -> NoReturn:
        """Ends with 2 and one line."""
        complain(tr("{command}: {what}. “{command} --help” tells how it is used.", command=self.prog, what=message))
        raise SystemExit(MISUSE)

    def print_help(self, file: Any = None) -> None:
        """The help in letters that the terminal has."""
        tell(self.format_help().splitlines())


def a_word(text: str) -> str:
    """What was typed, unless it is nothing."""
    if not text.strip():
        raise argparse.ArgumentTypeError(tr("a name is needed, and nothing was given"))
    return text


def a_path(text: str) -> Path:
    """The path that was typed, unless it is nothing."""
    return Path(a_word(text))


def need_screen() -> None:
    """Raises Stop where no window can open."""
    if sys.platform.startswith("linux") and not any(os.environ.get(name) for name in SCREENS):
        raise Stop(tr("There is no screen here to open the window on. “inspector --help” names what needs none."))


def tell(lines: Iterable[str]) -> None:
    """The lines stand on the output, each as one line whatever is in it."""
    _answer("".join(f"{_one_line(line)}\n" for line in lines))


def tell_json(data: Any) -> None:
    """The data stands on the output as JSON; letters that it cannot show are escaped as JSON escapes them."""
    plain = not _encoding(sys.stdout).replace("-", "").casefold().startswith("utf")
    _answer(json.dumps(data, ensure_ascii=plain, indent=2) + "\n")


def complain(sentence: str) -> None:
    """One line stands where trouble is told."""
    with contextlib.suppress(OSError, ValueError):  # nobody listens there
        _put(sys.stderr, f"{_one_line(sentence)}\n")


def run(act: Callable[[], int]) -> int:
    """What the command does is done and all of it written; gives its code."""
    try:
        return _done(act)
    except _Unwritten as unwritten:
        _write_no_more()
        if unwritten.why:
            complain(tr("The answer cannot be written: {why}. Write it elsewhere.", why=unwritten.why))
        return AMISS


def _done(act: Callable[[], int]) -> int:
    from inspector.storage.trouble import StorageTrouble

    try:
        return act()
    except _Unwritten:
        raise
    except Stop as stop:
        complain(str(stop))
        return stop.code
    except StorageTrouble as trouble:
        complain(tr(trouble.said))
    except KeyboardInterrupt:
        complain(tr("Stopped."))
    except Exception as error:  # a fault of the program itself is told as such, in one line
        complain(tr("The program itself failed at {place}: {what}. Please report it.", place=_place(error),
                    what=f"{type(error).__name__} {error}"))  # fmt: skip
    return AMISS


def _place(error: BaseException) -> str:
    """File and line where it failed."""
    at = error.__traceback__
    while at is not None and at.tb_next is not None:
        at = at.tb_next
    return f"{Path(at.tb_frame.f_code.co_filename).name} line {at.tb_lineno}" if at is not None else "?"


def _one_line(text: str) -> str:
    """The text without anything that would steer a terminal or begin another line."""
    from inspector.sheet.text import shown

    return shown(text.replace("\n", " ").replace("\r", " "))


def _answer(text: str) -> None:
    """The text is written whole; raises _Unwritten."""
    try:
        _put(sys.stdout, text)
        if sys.stdout is not None:
            sys.stdout.flush()
    except OSError as error:
        raise _Unwritten(error) from error


def _encoding(stream: TextIO | None) -> str:
    return getattr(stream, "encoding", None) or "utf-8"


def _put(stream: TextIO | None, text: str) -> None:
    if stream is not None:
        encoding = _encoding(stream)
        stream.write(text.encode(encoding, "backslashreplace").decode(encoding))


def _write_no_more() -> None:
    """What is left to be written goes nowhere, so that the interpreter does not fail over it at its end."""
    with contextlib.suppress(OSError, ValueError, AttributeError):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
