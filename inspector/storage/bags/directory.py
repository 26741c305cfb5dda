"""A zip's own list of its files, read with distrust: every lie that could do harm is refused in words.

Field layouts are those of PKWARE's APPNOTE.TXT 6.3.10, 4.3 to 4.5.
"""

from __future__ import annotations

import struct
from dataclasses import dataclass
from typing import IO, TYPE_CHECKING, NamedTuple

from inspector.storage.bags import limits
from inspector.storage.bags.names import refused, same_to_some, shown_name
from inspector.storage.bags.refusal import BagRefused
from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator

END, END_64, LOCATOR_64 = b"PK\5\6", b"PK\6\6", b"PK\6\7"
CENTRAL, LOCAL = b"PK\1\2", b"PK\3\4"
END_BYTES, CENTRAL_BYTES, LOCAL_BYTES, END_64_BYTES, LOCATOR_BYTES = 22, 46, 30, 56, 20
FULL_16, FULL_32 = 0xFFFF, 0xFFFFFFFF
ENCRYPTED, LATER, UTF_8, MASKED = 0x1, 0x8, 0x800, 0x2000
STORED, DEFLATED = 0, 8
FORMAT_BITS, PLAIN, FOLDER = 0o170000, 0o100000, 0o040000
UNIX = 3


@dataclass(slots=True)
class Entry:
    """One file as the list has it; ``start`` is where its packed bytes begin, ``fault`` what its own head denies."""

    name: str
    raw: bytes
    flags: int
    method: int
    crc: int
    packed: int
    size: int
    head: int
    stamp: int
    start: int = 0
    fault: Say | None = None


class _End(NamedTuple):
    files: int
    size: int
    start: int
    here: int  # where the list must end


def read_directory(file: IO[bytes], length: int) -> list[Entry]:
    """Every file of the zip, in the order of its bytes. Raises BagRefused, and OSError of the file."""
    end = _end(file, length)
    if end.files > limits.MOST_ENTRIES:
        raise _no(say("It holds {count} files; more than {most} are not opened.", count=end.files,
                      most=limits.MOST_ENTRIES))  # fmt: skip
    if end.size > limits.MOST_DIRECTORY or end.start + end.size != end.here:
        raise _no(say("Its list of files is not where or as long as it says."))
    file.seek(end.start)
    entries = [one for one in _entries(file.read(end.size), end.files) if one is not None]
    _no_doubles(entries)
    _no_bomb(entries, length)
    entries.sort(key=lambda one: one.head)
    _heads(file, entries, end.start)
    return entries


def _no(why: Say) -> BagRefused:
    return BagRefused(say("This file is not opened. {why}", why=why))


def _end(file: IO[bytes], length: int) -> _End:
    reach = min(length, END_BYTES + FULL_16)
    file.seek(length - reach)
    tail = file.read(reach)
    at = tail.rfind(END)
    if at < 0 or len(tail) - at < END_BYTES:
        raise _no(say("It is no zip, or its end is missing."))
    disk, first, here, count, size, start, comment = struct.unpack_from("<4H2LH", tail, at + 4)
    if at + END_BYTES + comment != len(tail):
        raise _no(say("It ends in bytes that do not belong to it."))
    place = length - reach + at
    if FULL_16 in (here, count) or FULL_32 in (size, start) or _has_large_end(file, place):
        end = _end_64(file, place)
        # Where the short end says a number too, some readers go by that: it must be the same.
        if any(short not in (full, said) for short, full, said in (
            (count, FULL_16, end.files), (size, FULL_32, end.size), (start, FULL_32, end.start)
        )):
            raise _no(say("Its two ends do not say the same of its list of files."))
        return end
    if disk or first or here != count:
        raise _no(say("It is one part of several."))
    return _End(count, size, start, place)


def _has_large_end(file: IO[bytes], place: int) -> bool:
    if place < LOCATOR_BYTES:
        return False
    file.seek(place - LOCATOR_BYTES)
    return file.read(4) == LOCATOR_64


def _end_64(file: IO[bytes], place: int) -> _End:
    if place < LOCATOR_BYTES + END_64_BYTES:
        raise _no(say("It is no zip, or its end is missing."))
    file.seek(place - LOCATOR_BYTES)
    sign, _, at, _ = struct.unpack("<4sLQL", file.read(LOCATOR_BYTES))
    if sign != LOCATOR_64 or at != place - LOCATOR_BYTES - END_64_BYTES:
        raise _no(say("Its list of files is not where or as long as it says."))
    file.seek(at)
    head = file.read(END_64_BYTES)
    sign, _, _, _, disk, first, here, count, size, start = struct.unpack("<4sQ2H2L4Q", head)
    if sign != END_64 or disk or first or here != count:
        raise _no(say("It is one part of several."))
    return _End(count, size, start, at)


def _entries(listed: bytes, count: int) -> Iterator[Entry | None]:
    at, found = 0, 0
    while at < len(listed):
        if listed[at : at + 4] != CENTRAL or at + CENTRAL_BYTES > len(listed):
            raise _no(say("Its list of files cannot be read."))
        (made, _, flags, method, stamp, crc, packed, size, name_len, extra_len, comment_len, disk, _, mode, head) = (
            struct.unpack_from("<4H4L5H2L", listed, at + 4)
        )
        after = at + CENTRAL_BYTES
        raw = listed[after : after + name_len]
        extra = listed[after + name_len : after + name_len + extra_len]
        at = after + name_len + extra_len + comment_len
        if at > len(listed):
            raise _no(say("Its list of files cannot be read."))
        size, packed, head = _large(extra, size, packed, head)
        if disk:
            raise _no(say("It is one part of several."))
        found += 1
        if found > count:
            break
        entry = Entry(_name(raw, flags), raw, flags, method, crc, packed, size, head, stamp)
        yield None if _is_folder(entry, made >> 8, mode >> 16) else _plain(entry)
    if found > count:
        raise _no(say("It says that it holds {count} files and lists more.", count=count))
    if found != count:
        raise _no(say("It says that it holds {count} files and lists {found}.", count=count, found=found))


def _large(extra: bytes, size: int, packed: int, head: int) -> tuple[int, int, int]:
    """The three, each from the extra field where the short one says that it is there."""
    values = [size, packed, head]
    if FULL_32 not in values:
        return size, packed, head
    field = next(_extra_fields(extra), b"")
    for n, value in enumerate(values):
        if value == FULL_32:
            if len(field) < 8:
                raise _no(say("It names a size that it does not give."))
            values[n], field = struct.unpack("<Q", field[:8])[0], field[8:]
    return values[0], values[1], values[2]


def _extra_fields(extra: bytes) -> Iterator[bytes]:
    at = 0
    while at + 4 <= len(extra):
        kind, length = struct.unpack_from("<2H", extra, at)
        if kind == 1:
            yield extra[at + 4 : at + 4 + length]
        at += 4 + length


def _name(raw: bytes, flags: int) -> str:
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError as error:
        shown = shown_name(raw.decode("cp437"))
        if flags & UTF_8:
            raise _no(say('The name "{name}" is not in the writing that it says.', name=shown)) from error
        raise _no(say('The name "{name}" is in a writing that is not told; UTF-8 was expected.', name=shown)) from error


def _is_folder(entry: Entry, system: int, mode: int) -> bool:
    """Whether it only names a folder. Raises BagRefused for a link, a device and what bears no fit name."""
    kind = mode & FORMAT_BITS if system == UNIX else 0
    folder = entry.name.endswith("/")
    why = refused(entry.name.removesuffix("/"))
    if why is not None:
        raise _no(why)
    if kind not in (0, PLAIN, FOLDER) or (kind == FOLDER and not folder):
        raise _no(say('"{name}" is a link or a device, not a file.', name=entry.name))
    if folder and entry.size:
        raise _no(say('"{name}" is a folder that holds bytes of its own.', name=entry.name))
    return folder


def _plain(entry: Entry) -> Entry:
    if entry.flags & (ENCRYPTED | MASKED):
        raise _no(say('"{name}" is locked with a password. Pack it without one.', name=entry.name))
    if entry.method not in (STORED, DEFLATED):
        raise _no(say('"{name}" is packed in a way that is not known here.', name=entry.name))
    if entry.method == STORED and entry.packed != entry.size:
        raise _no(say('"{name}" says two sizes of itself.', name=entry.name))
    return entry


def _no_doubles(entries: list[Entry]) -> None:
    seen: dict[str, str] = {}
    for entry in entries:
        other = seen.setdefault(same_to_some(entry.name), entry.name)
        if other is not entry.name:
            raise _no(say('"{name}" and "{other}" are one name on some systems.', name=entry.name, other=other))
    for key, name in seen.items():
        above = key.rpartition("/")[0]
        while above:
            if above in seen:
                raise _no(say('"{name}" lies in what is itself a file.', name=name))
            above = above.rpartition("/")[0]


def _no_bomb(entries: list[Entry], length: int) -> None:
    total = sum(entry.size for entry in entries)
    if total > limits.MOST_TOTAL or total > limits.MOST_RATIO * length + limits.SMALL:
        raise _no(say("Unpacked it would be {size} million bytes.", size=total // 1_000_000))
    for entry in entries:
        if entry.size > limits.SMALL and entry.size > limits.MOST_RATIO * entry.packed:
            raise _no(say('"{name}" would unpack to {size} million bytes from {packed}.', name=entry.name,
                          size=entry.size // 1_000_000, packed=entry.packed))  # fmt: skip


def _heads(file: IO[bytes], entries: list[Entry], until: int) -> None:
    """Each file's own head is read: where its bytes begin, and whether it says the same as the list."""
    for n, entry in enumerate(entries):
        stop = entries[n + 1].head if n + 1 < len(entries) else until
        if entry.head + LOCAL_BYTES + len(entry.raw) + entry.packed > stop:
            raise _no(say('"{name}" lies where another file is.', name=entry.name))
        file.seek(entry.head)
        head = file.read(LOCAL_BYTES + len(entry.raw))
        sign, _, flags, method, stamp, crc, packed, size, name_len, extra_len = struct.unpack_from("<4s3H4L2H", head)
        entry.start = entry.head + LOCAL_BYTES + name_len + extra_len
        same = (sign, flags, method, stamp) == (LOCAL, entry.flags, entry.method, entry.stamp)
        told = entry.flags & LATER or FULL_32 in (packed, size) or (crc, packed, size) == (
            entry.crc, entry.packed, entry.size)  # fmt: skip
        if not (same and told and head[LOCAL_BYTES:] == entry.raw) or entry.start + entry.packed > stop:
            entry.fault = say("{name}: changed; what stands before its bytes is not what the list of files says.",
                              name=shown_name(entry.name))  # fmt: skip
