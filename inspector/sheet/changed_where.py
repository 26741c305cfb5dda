"""Where a sealed sheet was changed: which pages an addition touches, and where two files of one sheet part."""

from __future__ import annotations

import re
from io import BytesIO
from typing import TYPE_CHECKING, Any, NamedTuple

from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

ENDED = re.compile(rb"endobj")
OBJECT = re.compile(rb"(?<![0-9])(\d{1,9}) (\d{1,5}) obj\b")
SEVERAL = 4  # places that are told
MOST_PAGES = 400  # pages that are looked through


def added_since(reader: Any, signed: Any) -> tuple[Say, ...]:
    """What was added to the file behind the seal, by the pages that it touches."""
    touched: set[int] = set()
    for revision in range(signed.signed_revision + 1, reader.xrefs.total_revisions):
        touched |= {ref.idnum for ref in reader.xrefs.explicit_refs_in_revision(revision)}
    if not touched:
        return (say("Bytes were added behind the seal that belong to no page."),)
    try:
        where = _places(reader, touched)
    except Exception:  # what was added may leave no page that can be found
        return (say("After sealing, something was added that leaves its pages unreadable."),)
    return (say("After sealing, something was added that touches {where}.", where=where),)


def parted(kept: bytes, given: bytes) -> tuple[Say, ...]:
    """Where the given file is not the kept one, byte by byte; empty where they are the same."""
    if kept == given:
        return ()
    if given.startswith(kept):
        return (_behind(len(given) - len(kept)),)
    if kept.startswith(given):
        return (_missing(len(kept) - len(given)),)
    first = _first_parting(kept, given)
    if len(kept) != len(given):
        where = _places(_read(kept), {_object_at(kept, first)})
        return (say("From byte {first} on it is another file, first in {where}.", first=first, where=where),)
    changed = tuple(_changed_parts(kept, given))
    count = sum(part.bytes for part in changed)
    where = _places(_read(kept), {part.object for part in changed})
    if count == 1:
        return (say("Byte {first} was changed, in {where}.", first=first, where=where),)
    return (say("{count} bytes were changed, the first is byte {first}, in {where}.", count=count, first=first,
                where=where),)  # fmt: skip


def _behind(count: int) -> Say:
    if count == 1:
        return say("1 byte stands behind the end of the sheet as it was sealed.")
    return say("{count} bytes stand behind the end of the sheet as it was sealed.", count=count)


def _missing(count: int) -> Say:
    if count == 1:
        return say("The last byte of the sheet is missing.")
    return say("The last {count} bytes of the sheet are missing.", count=count)


class _Part(NamedTuple):
    """How many bytes of an object were changed; number 0 between objects and in the tables."""

    object: int
    bytes: int


def _changed_parts(kept: bytes, given: bytes) -> Iterator[_Part]:
    """What was changed in two files of one length, object by object."""
    begin = 0
    for end in (*(found.end() for found in ENDED.finditer(kept)), len(kept)):
        if kept[begin:end] != given[begin:end]:
            head = OBJECT.search(kept, begin, end)
            parts = ((0, begin, head.start()), (int(head[1]), head.start(), end)) if head else ((0, begin, end),)
            for number, start, stop in parts:
                count = sum(one != other for one, other in zip(kept[start:stop], given[start:stop], strict=True))
                if count:
                    yield _Part(number, count)
        begin = end


def _first_parting(kept: bytes, given: bytes) -> int:
    """The first byte in which two files part, of which neither begins with the other."""
    low, high = 0, min(len(kept), len(given))
    while high - low > 1:
        middle = (low + high) // 2
        low, high = (middle, high) if kept[low:middle] == given[low:middle] else (low, middle)
    return low


def _read(pdf: bytes) -> Any:
    from pyhanko.pdf_utils.reader import PdfFileReader

    return PdfFileReader(BytesIO(pdf))


def _object_at(pdf: bytes, place: int) -> int:
    """The number of the object that stands at this byte; 0 between objects and in the tables."""
    before = max(pdf.rfind(b"endobj", 0, place), 0)
    found = OBJECT.search(pdf, before, place + 1)
    return int(found[1]) if found else 0


def _places(reader: Any, numbers: set[int]) -> Say:
    """The pages, and what else, to which objects of these numbers belong."""
    pages = [n for n, refs in enumerate(_pages(reader), 1) if refs & numbers]
    told = [say("page {page}", page=page) for page in pages[:SEVERAL]]
    told += [say("further pages")] if len(pages) > SEVERAL else []
    told += [say("the attached record")] if _attached(reader) & numbers else []
    told += [say("the seal itself")] if _seals(reader) & numbers else []
    told += [say("the order of the pages")] if _tree(reader) & numbers else []
    told += [say("the document as a whole")] if {reader.root_ref.idnum} & numbers else []
    told = told or [say("a part of the file that no page shows")]
    whole = told[0]
    for other in told[1:]:
        whole = say("{one}, {other}", one=whole, other=other)
    return whole


def _pages(reader: Any) -> list[set[int]]:
    count = int(reader.root["/Pages"]["/Count"])
    found = []
    for number in range(min(count, MOST_PAGES)):
        ref = reader.find_page_for_modification(number)[0]
        found.append(_reached(ref, ("/Parent", "/P", "/Dest", "/A", "/V")))
    return found


def _tree(reader: Any) -> set[int]:
    """The numbers of the objects that say which page follows which."""
    from pyhanko.pdf_utils.generic import IndirectObject

    seen: set[int] = set()
    waiting = [reader.root.raw_get("/Pages")]
    while waiting:
        ref = waiting.pop()
        node = ref.get_object()
        if isinstance(ref, IndirectObject) and ref.idnum not in seen and "/Kids" in node:
            seen.add(ref.idnum)
            waiting += [node["/Kids"].raw_get(n) for n in range(min(len(node["/Kids"]), MOST_PAGES))]
    return seen


def _attached(reader: Any) -> set[int]:
    names = reader.root.raw_get("/Names") if "/Names" in reader.root else None
    return _reached(names, ()) if names is not None else set()


def _seals(reader: Any) -> set[int]:
    """The numbers of the objects that hold a seal."""
    fields = (seal.sig_field for seal in reader.embedded_signatures)
    return {field.raw_get("/V").idnum for field in fields if hasattr(field.raw_get("/V"), "idnum")}


def _reached(start: Any, without: Iterable[str]) -> set[int]:
    """The numbers of all objects that this one leads to, itself among them."""
    from pyhanko.pdf_utils.generic import ArrayObject, DictionaryObject, IndirectObject, Reference

    seen: set[int] = set()
    waiting = [start]
    while waiting:
        one = waiting.pop()
        if isinstance(one, IndirectObject | Reference):
            if one.idnum not in seen:
                seen.add(one.idnum)
                waiting.append(one.get_object())
        elif isinstance(one, DictionaryObject):  # streams too
            waiting += [one.raw_get(key) for key in one if key not in without]
        elif isinstance(one, ArrayObject):
            waiting += [one.raw_get(n) for n in range(len(one))]
    return seen
