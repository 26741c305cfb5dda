"""Where in a TOML text each table, key and list entry stands."""

from __future__ import annotations

import json
import re
from bisect import bisect_left
from contextlib import suppress

from inspector.profile.problem import Where

_GAP = re.compile(r"(?:[ \t\r\n,]++|#[^\n]*+)*+")
_KEY = re.compile(r'[A-Za-z0-9_-]+|"(?:[^"\\\n]|\\.)*"|\'[^\'\n]*\'')
_DOT = re.compile(r"[ \t]*\.[ \t]*")
_EQUALS = re.compile(r"[ \t]*=[ \t]*")
_CLOSE = re.compile(r"[ \t]*\]{1,2}")
_STRING = re.compile(
    r'"""(?:[^"\\]|\\.|"{1,2}(?!"))*"{3,5}'
    r"|'''(?:[^']|'{1,2}(?!'))*'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'",
    re.DOTALL,
)
_PLAIN = re.compile(r"[^,\]}\n#]+")


class Lost(ValueError):
    """The text is not the TOML that it was taken for."""


class Lines:
    """The lines of a text that is valid TOML, by path, as ("station", 2, "item", 0, "years")."""

    def __init__(self, text: str) -> None:
        scan = _Scan(text)
        with suppress(Lost, RecursionError):  # what was found before still points near the place
            scan.run()
        self._lines = scan.lines

    def of(self, where: Where) -> int | None:
        """The line of the path, or of the nearest table around it that the text holds."""
        for end in range(len(where), 0, -1):
            line = self._lines.get(where[:end])
            if line is not None:
                return line
        return None


class _Scan:
    """One pass over the text; ``lines`` fills with the line of every path met."""

    def __init__(self, text: str) -> None:
        self.text = text.replace("\r\n", "\n")
        self.at = 0
        self.lines: dict[Where, int] = {}
        self._last: dict[Where, int] = {}
        self._ends = [found.start() for found in re.finditer("\n", self.text)]

    def run(self) -> None:
        table: Where = ()
        while self._skip():
            if self.text[self.at] == "[":
                table = self._header()
            else:
                self._pair(table)

    def _skip(self) -> bool:
        self.at = self._take(_GAP).end()
        return self.at < len(self.text)

    def _take(self, pattern: re.Pattern[str]) -> re.Match[str]:
        found = pattern.match(self.text, self.at)
        if found is None:
            raise Lost
        self.at = found.end()
        return found

    def _mark(self, where: Where) -> None:
        self.lines.setdefault(where, bisect_left(self._ends, self.at) + 1)

    def _keys(self) -> list[str]:
        keys = [_plain(self._take(_KEY).group())]
        while _DOT.match(self.text, self.at):
            self._take(_DOT)
            keys.append(_plain(self._take(_KEY).group()))
        return keys

    def _header(self) -> Where:
        many = self.text.startswith("[[", self.at)
        start = self.at
        self.at = _after_blanks(self.text, self.at + (2 if many else 1))
        where: Where = ()
        *outer, own = self._keys()
        for key in outer:
            where = (*where, key)
            where = (*where, self._last[where]) if where in self._last else where
        where = (*where, own)
        self._take(_CLOSE)
        end, self.at = self.at, start
        self._mark(where)
        if many:
            self._last[where] = self._last.get(where, -1) + 1
            where = (*where, self._last[where])
            self._mark(where)
        self.at = end
        return where

    def _pair(self, table: Where) -> None:
        start = self.at
        where = (*table, *self._keys())
        end, self.at = self.at, start
        for depth in range(len(table) + 1, len(where) + 1):
            self._mark(where[:depth])
        self.at = end
        self._take(_EQUALS)
        self._value(where)

    def _value(self, where: Where) -> None:
        first = self.text[self.at : self.at + 1]
        if first in ("[", "{"):
            self.at += 1
            (self._list if first == "[" else self._table)(where)
        else:
            self._take(_STRING if first in ('"', "'") else _PLAIN)

    def _list(self, where: Where) -> None:
        index = 0
        while self._skip() and self.text[self.at] != "]":
            self._mark((*where, index))
            self._value((*where, index))
            index += 1
        self.at += 1

    def _table(self, where: Where) -> None:
        while self._skip() and self.text[self.at] != "}":
            self._pair(where)
        self.at += 1


def _after_blanks(text: str, at: int) -> int:
    while at < len(text) and text[at] in " \t":
        at += 1
    return at


def _plain(key: str) -> str:
    """The key without its quotes."""
    if key.startswith("'"):
        return key[1:-1]
    if not key.startswith('"'):
        return key
    try:
        return str(json.loads(key))
    except ValueError:
        return key[1:-1]
