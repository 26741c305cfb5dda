"""A file inside a PDF: put in before it is sealed, taken out to be compared."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from datetime import datetime

RECORD = "inspection.json"
WHAT = "The record of this inspection as data, without money and without names of files and cameras"
MOST = 1000  # files that are looked into; a sheet holds one


def attach(writer: Any, data: bytes, at: datetime) -> None:
    """The writer's PDF carries these bytes as the record."""
    from pyhanko.pdf_utils.embed import EmbeddedFileObject, EmbeddedFileParams, FileSpec, embed_file

    params = EmbeddedFileParams(creation_date=at, modification_date=at)
    kept = EmbeddedFileObject.from_file_data(writer, data, params=params, mime_type="application/json")
    embed_file(writer, FileSpec(file_spec_string=RECORD, file_name=RECORD, embedded_data=kept, description=WHAT))


def attachments(reader: Any) -> dict[str, bytes]:
    """Every file inside the PDF of this reader, by its name; raises what the reader raises at broken ones."""
    found: dict[str, bytes] = {}
    waiting, seen = [_at(_at(reader.root, "/Names", {}), "/EmbeddedFiles", {})], set[int]()
    while waiting and len(found) < MOST:
        node = waiting.pop()
        pairs = list(_at(node, "/Names", ()))
        found |= {str(name): _bytes(spec) for name, spec in zip(pairs[::2], pairs[1::2], strict=False)}
        for child in _at(node, "/Kids", ()):
            number = getattr(child, "idnum", None)
            if number not in seen:  # a tree that leads back into itself is gone through once
                seen |= {number} if number is not None else set()
                waiting.append(child.get_object())
    return found


def _at(node: Any, key: str, otherwise: Any) -> Any:
    """What stands there, followed to where it is kept."""
    try:
        return node[key]
    except KeyError:
        return otherwise


def _bytes(spec: Any) -> bytes:
    return bytes(spec.get_object()["/EF"]["/F"].data)
