"""A file inside a PDF: put in before it is sealed, taken out to be compared."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from datetime import datetime

RECORD = "inspection.json"
WHAT = "The record of this inspection as data, without money and without names of files and cameras"
DEPTH = 12  # of a tree of names; ours has one level


def attach(writer: Any, data: bytes, at: datetime) -> None:
    """The writer's PDF carries these bytes as the record."""
    from pyhanko.pdf_utils.embed import EmbeddedFileObject, EmbeddedFileParams, FileSpec, embed_file

    params = EmbeddedFileParams(creation_date=at, modification_date=at)
    kept = EmbeddedFileObject.from_file_data(writer, data, params=params, mime_type="application/json")
    embed_file(writer, FileSpec(file_spec_string=RECORD, file_name=RECORD, embedded_data=kept, description=WHAT))


def attachments(reader: Any) -> dict[str, bytes]:
    """Every file inside the PDF of this reader, by its name; raises what the reader raises at broken ones."""
    names = _at(reader.root, "/Names", {})
    return dict(_leaves(_at(names, "/EmbeddedFiles", {}), DEPTH))


def _leaves(node: Any, depth: int) -> list[tuple[str, bytes]]:
    if depth == 0:
        return []
    pairs = list(_at(node, "/Names", ()))
    found = [(str(name), _bytes(spec)) for name, spec in zip(pairs[::2], pairs[1::2], strict=False)]
    for child in _at(node, "/Kids", ()):
        found += _leaves(child.get_object(), depth - 1)
    return found


def _at(node: Any, key: str, otherwise: Any) -> Any:
    """What stands there, followed to where it is kept."""
    try:
        return node[key]
    except KeyError:
        return otherwise


def _bytes(spec: Any) -> bytes:
    return bytes(spec.get_object()["/EF"]["/F"].data)
