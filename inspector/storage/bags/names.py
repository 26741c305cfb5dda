"""Paths inside a bag: how a list writes them, which are refused, and how words become a name that fits anywhere."""

from __future__ import annotations

import re
import unicodedata

from inspector.storage.bags.limits import MOST_NAME, MOST_PART
from inspector.texts import Say, say

# Names that Windows keeps for devices, with any ending (learn.microsoft.com, "Naming Files, Paths, and Namespaces").
DEVICES = frozenset(
    {"con", "prn", "aux", "nul", "conin$", "conout$"}
    | {f"{port}{n}" for port in ("com", "lpt") for n in ("0123456789¹²³")}
)
CONTROL = re.compile(r"[\x00-\x1f\x7f-\x9f]")
UNFIT = re.compile(r'[\x00-\x1f\x7f-\x9f<>:"/\\|?*%]+')
STEERING = re.compile("[\u200e\u200f\u202a-\u202e\u2066-\u2069]")  # they make a name look like another
LONGEST = 80


def encoded(path: str) -> str:
    """The path as a list of a bag writes it: CR, LF and % as their numbers (RFC 8493, 2.1.3)."""
    return path.replace("%", "%25").replace("\r", "%0D").replace("\n", "%0A")


def decoded(path: str, *, old: bool = False) -> str:
    """The path that a list means; before version 1.0 ``%25`` meant itself."""
    meant = {"0D": "\r", "0A": "\n"} if old else {"0D": "\r", "0A": "\n", "25": "%"}
    return re.sub("%(0[AaDd]|25)", lambda found: meant.get(found[1].upper(), found[0]), path)


def refused(name: str) -> Say | None:
    """Why a path in a bag from elsewhere is not accepted, or None."""
    shown = shown_name(name)
    if not name or len(name.encode("utf-8", "surrogatepass")) > MOST_NAME:
        return say('The name "{name}" is empty or too long.', name=shown[:80])
    if name.startswith(("/", "\\")) or re.match(r"[A-Za-z]:", name):
        return say('The name "{name}" begins at the root of a drive.', name=shown)
    if "\\" in name or ":" in name:
        return say('The name "{name}" holds a sign that parts paths on some systems.', name=shown)
    if CONTROL.sub("", name.replace("\r", "").replace("\n", "")) != name.replace("\r", "").replace("\n", ""):
        return say('The name "{name}" holds signs that cannot be seen.', name=shown)
    if STEERING.search(name):
        return say('The name "{name}" holds signs that turn the direction of reading.', name=shown)
    return next((why for part in name.split("/") if (why := _part(part, shown))), None)


def _part(part: str, shown: str) -> Say | None:
    if part in {"", ".", ".."}:
        return say('The name "{name}" leads out of its folder.', name=shown)
    if len(part.encode("utf-8", "surrogatepass")) > MOST_PART:
        return say('A part of the name "{name}" is too long.', name=shown[:80])
    if part.split(".")[0].strip().casefold() in DEVICES:
        return say('The name "{name}" is that of a device on some systems.', name=shown)
    if part[-1] in ". ":
        return say('A part of the name "{name}" ends in a point or a space, which some systems drop.', name=shown)
    return None


def same_to_some(name: str) -> str:
    """The name as systems see it that tell neither capitals nor forms of accents apart."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def fit(words: str, longest: int = LONGEST) -> str:
    """The words as every system can hold them in a file name; empty where nothing is left."""
    plain = STEERING.sub("", unicodedata.normalize("NFC", words))
    plain = UNFIT.sub(" ", plain.encode("utf-8", "ignore").decode())
    stem, dot, end = plain.rpartition(".")
    kept = f"{stem[: longest - len(end) - 1].strip()}.{end}" if dot and len(end) <= 5 else plain[:longest]
    while len(kept.encode()) > 2 * longest:
        kept = kept[1:]
    return kept.strip(" .")


def shown_name(name: str) -> str:
    """The name as it can be shown: signs that cannot be seen as their numbers."""
    told = (f"[U+{ord(c):04X}]" if CONTROL.match(c) or STEERING.match(c) or 0xD800 <= ord(c) < 0xE000 else c
            for c in name)  # fmt: skip
    return "".join(told)
