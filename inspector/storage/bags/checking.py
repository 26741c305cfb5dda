"""Whether a bag is whole: every file that is changed, missing or extra, by its name (RFC 8493, 3 and 5)."""

from __future__ import annotations

import hashlib
import re
from collections import defaultdict
from dataclasses import dataclass
from io import StringIO
from typing import TYPE_CHECKING, NamedTuple

from inspector.storage.bags import limits
from inspector.storage.bags.archive import BAGIT_TXT
from inspector.storage.bags.names import decoded, shown_name
from inspector.storage.bags.refusal import Broken
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator

    from inspector.storage.bags.archive import Archive

    Report = Callable[[int, int, str], None]

ALGORITHMS = ("sha512", "sha384", "sha256", "sha224", "sha1", "md5")
WEAK = ("sha1", "md5")
LIST = re.compile(r"(tag)?manifest-([a-z0-9]+)\.txt")
LINE = re.compile(r"([0-9A-Fa-f]+)[ \t]+(\*?)(.+)")
VERSION = re.compile(r"BagIt-Version: (\d{1,4})\.(\d{1,4})")
ENCODING = re.compile(r"Tag-File-Character-Encoding: ?(\S+)")
OLDEST, NEWEST = (0, 93), (1, 0)
OXUM = re.compile(r"(\d{1,20})\.(\d{1,20})")


@dataclass(frozen=True, slots=True)
class Fault:
    """What is wrong with one file of a bag; the sentence names it."""

    file: str
    said: Say


@dataclass(frozen=True, slots=True)
class Checked:
    """What a check of every file found; ``sha256`` is that of the list of lists, empty where there is none."""

    faults: tuple[Fault, ...]
    info: tuple[tuple[str, str], ...]
    version: tuple[int, int]
    files: int
    size: int
    sha256: str
    weak: bool = False

    @property
    def whole(self) -> bool:
        """Whether every file is there, unchanged, and nothing else."""
        return not self.faults

    def told(self, label: str) -> str:
        """What the bag's notes say under this label, or nothing."""
        return next((value for name, value in self.info if name.casefold() == label.casefold()), "")


class _Sum(NamedTuple):
    list: str
    algorithm: str
    digest: str


class _Check:
    def __init__(self, archive: Archive) -> None:
        self.archive = archive
        self.faults: list[Fault] = []
        self.sums: dict[str, list[_Sum]] = defaultdict(list)
        self.untold = 0
        self.lists: list[str] = []
        self.version = NEWEST

    def fault(self, name: str, template: str, **values: object) -> None:
        self.add(name, say(template, name=shown_name(name), **values))

    def add(self, name: str, said: Say) -> None:
        """The fault is told; where there are too many to be told, it is counted."""
        if len(self.faults) < limits.MOST_FAULTS:
            self.faults.append(Fault(name, said))
        else:
            self.untold += 1

    def text(self, name: str) -> str:
        """The words of a list or note; empty, with a fault, where they cannot be read."""
        try:
            return self.archive.read(name).decode("utf-8-sig")
        except Broken as broken:
            self.add(name, broken.said)
        except UnicodeDecodeError:
            self.fault(name, "{name}: changed; it is not written in UTF-8.")
        return ""


def check(archive: Archive, report: Report = lambda done, total, name: None) -> Checked:
    """Every file of the bag is read and compared with every list.

    ``report`` hears of bytes done and of all, and may raise to stop. Raises StorageTrouble where the drive fails.
    """
    run = _Check(archive)
    _declaration(run)
    for name in sorted(archive.sizes):
        found = LIST.fullmatch(name)
        if found and found[2] in ALGORITHMS:
            run.lists.append(name)
            _read_list(run, name, found[2], tag=bool(found[1]))
    _all_listed(run)
    sha256 = _compare(run, report)
    info = tuple(_info(run))
    _oxum(run, info)
    if run.untold:
        run.faults.append(Fault(BAGIT_TXT, say("And {count} more.", count=run.untold)))
    sums = [one for several in run.sums.values() for one in several]
    weak = bool(sums) and all(one.algorithm in WEAK for one in sums)
    payload = [size for name, size in archive.sizes.items() if name.startswith("data/")]
    return Checked(tuple(_once(run.faults)), info, run.version, len(payload), sum(payload), sha256, weak)


def _declaration(run: _Check) -> None:
    text = run.text(BAGIT_TXT)
    version, encoding = VERSION.search(text), ENCODING.search(text)
    if not version or not encoding:
        run.fault(BAGIT_TXT, "{name}: changed or damaged; it does not say the version and the writing of the bag.")
        return
    run.version = int(version[1]), int(version[2])
    if not OLDEST <= run.version <= NEWEST:
        run.fault(BAGIT_TXT, "{name}: the bag is of version {version}, which is not known here.",
                  version=f"{version[1]}.{version[2]}")  # fmt: skip
    if encoding[1].upper() != "UTF-8":
        run.fault(BAGIT_TXT, "{name}: the lists are written in {writing}; only UTF-8 is read here.",
                  writing=shown_name(encoding[1]))  # fmt: skip
    if run.version == NEWEST and len(text.splitlines()) != 2:
        run.fault(BAGIT_TXT, "{name}: changed; it holds more than its two lines.")


def _read_list(run: _Check, name: str, algorithm: str, *, tag: bool) -> None:
    length = hashlib.new(algorithm, usedforsecurity=False).digest_size * 2
    old = run.version < NEWEST
    seen: set[str] = set()
    for number, raw in enumerate(StringIO(run.text(name), newline="\n"), 1):
        line = raw.removesuffix("\n")
        if not line.strip():
            continue
        if len(seen) > limits.MOST_ENTRIES or run.untold:
            run.fault(name, "{name}: changed; it is not read beyond line {number}.", number=number)
            return
        found = LINE.fullmatch(line.removesuffix("\r"))
        path = decoded(found[3], old=old).removeprefix("./" if old else "") if found else ""
        right_place = path.startswith("data/") is not tag
        fits = found and len(found[1]) == length and found[1] in (found[1].lower(), found[1].upper())
        if not found or not fits or not right_place or path in seen or (found[2] and not old):
            run.fault(name, "{name}: changed; line {number} cannot be read.", number=number)
            continue
        seen.add(path)
        run.sums[path].append(_Sum(name, algorithm, found[1].lower()))


def _all_listed(run: _Check) -> None:
    """Files without a sum, and sums without a file."""
    payload_lists = [name for name in run.lists if name.startswith("manifest-")]
    tag_lists = [name for name in run.lists if name.startswith("tagmanifest-")]
    if not payload_lists:
        run.fault(BAGIT_TXT, "{name}: there is no list of files with a sum that is known here.")
    for name in sorted(run.archive.sizes):
        if not name.startswith("tagmanifest-"):
            _is_listed(run, name, payload_lists if name.startswith("data/") else tag_lists)
    for name in run.archive.outside:
        run.fault(name, "{name}: extra; it lies outside the folder of the bag.")
    for name in sorted(set(run.sums) - set(run.archive.sizes)):
        run.fault(name, "{name}: missing; {list} names it.", list=run.sums[name][0].list)
    if "fetch.txt" in run.archive.sizes:
        run.fault("fetch.txt", "{name}: the bag says that some files are elsewhere. Nothing is fetched here.")


def _is_listed(run: _Check, name: str, lists: list[str]) -> None:
    by = {one.list for one in run.sums.get(name, ())}
    if lists and not by:
        run.fault(name, "{name}: extra; it was not in the bag when it was packed.")
    elif name.startswith("data/") and run.version >= NEWEST:
        for absent in sorted(set(lists) - by):
            run.fault(name, "{name}: not in {list}, which must name every file.", list=absent)


def _compare(run: _Check, report: Report) -> str:
    """Each listed file is read once; the SHA-256 of the list of lists is given back."""
    total, done, of_lists = sum(run.archive.sizes.values()), 0, ""
    for name in sorted(run.archive.sizes):
        report(done, total, name)
        sums = run.sums.get(name, [])
        wanted = {one.algorithm for one in sums} or {"sha256"}
        digests = {one: hashlib.new(one, usedforsecurity=False) for one in wanted}
        try:
            for chunk in run.archive.chunks(name):
                for digest in digests.values():
                    digest.update(chunk)
                done += len(chunk)
                report(done, total, name)
        except Broken as broken:
            run.add(name, broken.said)
            continue
        for one in sums:
            if digests[one.algorithm].hexdigest() != one.digest:
                run.fault(name, "{name}: changed; it is not what {list} says.", list=one.list)
        if name == "tagmanifest-sha256.txt":
            of_lists = digests["sha256"].hexdigest()
    return of_lists


def _info(run: _Check) -> Iterator[tuple[str, str]]:
    if "bag-info.txt" not in run.archive.sizes:
        return
    label, value = "", [""]
    for line in run.text("bag-info.txt").splitlines():
        if line[:1] in (" ", "\t"):  # a value that goes on
            value.append(line.strip())
            continue
        if label:
            yield label, " ".join(value)
        label, _, first = (part.strip() for part in line.partition(":"))
        value = [first]
    if label:
        yield label, " ".join(value)


def _oxum(run: _Check, info: Iterable[tuple[str, str]]) -> None:
    said = next((value for name, value in info if name.casefold() == "payload-oxum"), None)
    if said is None:
        return
    found = OXUM.fullmatch(said)
    payload = [size for name, size in run.archive.sizes.items() if name.startswith("data/")]
    if not found or (int(found[1]), int(found[2])) != (sum(payload), len(payload)):
        run.fault("bag-info.txt", "{name}: it says {said} bytes and files below data; there are {size}.{count}.",
                  said=shown_name(said), size=sum(payload), count=len(payload))  # fmt: skip


def _once(faults: list[Fault]) -> Iterator[Fault]:
    seen: set[tuple[str, str]] = set()
    for fault in faults:
        key = (fault.file, str(fault.said))
        if key not in seen:
            seen.add(key)
            yield fault
