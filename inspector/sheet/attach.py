"""A file inside a PDF: put in before it is sealed, taken out to be compared."""

from __future__ import annotations

import zlib
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from collections.abc import Iterator
    from datetime import datetime

RECORD = "inspection.json"
WHAT = "The record of this inspection as data, without money and without names of files and cameras"
MOST = 1000  # files that are looked through; a sheet holds one
LARGEST = 50_000_000  # bytes of a record that is taken out


def attach(writer: Any, data: bytes, at: datetime) -> None:
    """The writer's PDF carries these bytes as the record."""
    from pyhanko.pdf_utils.embed import EmbeddedFileObject, EmbeddedFileParams, FileSpec, embed_file

    params = EmbeddedFileParams(creation_date=at, modification_date=at)
    kept = EmbeddedFileObject.from_file_data(writer, data, params=params, mime_type="application/json")
    embed_file(writer, FileSpec(file_spec_string=RECORD, file_name=RECORD, embedded_data=kept, description=WHAT))


def attached_record(reader: Any) -> bytes:
    """The record inside the PDF of this reader.

    Raises LookupError where there is none, ValueError where it is larger than any record, and what the reader raises
    at broken ones.
    """
    for number, (name, spec) in enumerate(_named(reader)):
        if name == RECORD:
            return _bytes(spec.get_object()["/EF"]["/F"])
        if number >= MOST:
            break
    raise LookupError(RECORD)


def _named(reader: Any) -> Iterator[tuple[str, Any]]:
    """Every file inside by its name, not yet unpacked."""
    waiting, seen = [_at(_at(reader.root, "/Names", {}), "/EmbeddedFiles", {})], set[int]()
    while waiting:
        node = waiting.pop()
        pairs = list(_at(node, "/Names", ()))
        yield from ((str(name), spec) for name, spec in zip(pairs[::2], pairs[1::2], strict=False))
        for child in _at(node, "/Kids", ()):
            number = getattr(child, "idnum", None)
            if number not in seen:  # a tree that leads back into itself is gone through once
                seen |= {number} if number is not None else set()
                waiting.append(child.get_object())


def _at(node: Any, key: str, otherwise: Any) -> Any:
    """What stands there, followed to where it is kept."""
    try:
        return node[key]
    except KeyError:
        return otherwise


def _bytes(stream: Any) -> bytes:
    """What the stream holds, never unpacked past what a record can be."""
    packed, how = stream.encoded_data, _at(stream, "/Filter", [])
    filters = [str(how)] if isinstance(how, str) else [str(one) for one in how]
    if filters not in ([], ["/FlateDecode"]) or "/DecodeParms" in stream:
        raise ValueError("not packed as a record is")
    data: bytes = zlib.decompressobj().decompress(packed, LARGEST + 1) if filters else packed
    if len(data) > LARGEST:
        raise ValueError("larger than any record")
    return data
