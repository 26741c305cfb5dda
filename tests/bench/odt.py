"""A composed sheet as an OpenDocument text: the same words and the same pictures, for an office program to print.

The parts of the file and its names: OASIS OpenDocument 1.2, part 1 (text, frames, images) and part 3 (packages).
"""

from __future__ import annotations

import zipfile
from io import BytesIO
from typing import TYPE_CHECKING
from xml.sax.saxutils import escape

from inspector.sheet.text import block_lines, shown

if TYPE_CHECKING:
    from collections.abc import Iterator

    from inspector.sheet.blocks import Block, Picture, Sheet

MEDIA = "application/vnd.oasis.opendocument.text"
SPACES = (("office", "office"), ("style", "style"), ("text", "text"), ("draw", "drawing"), ("manifest", "manifest"))
WIDE_MM, HIGH_MM = 80, 60  # no picture is larger: two stand abreast
HEAD = '<?xml version="1.0" encoding="UTF-8"?>'


def as_odt(sheet: Sheet) -> bytes:
    """The sheet as the bytes of an ODT file: every line of its text, each picture where its block stands, A4."""
    pictures: dict[str, bytes] = {}
    said = "".join("".join(_block(block, pictures)) for block in sheet.blocks)
    said = "".join((_said(sheet.title), *map(_said, sheet.stamp), said, _said(sheet.foot)))
    body = f"<office:body><office:text>{said}</office:text></office:body>"
    buffer = BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as packed:
        packed.writestr(zipfile.ZipInfo("mimetype"), MEDIA)
        packed.writestr("content.xml", _document("content", body))
        packed.writestr("styles.xml", _document("styles", _styles()))
        packed.writestr("META-INF/manifest.xml", _manifest(pictures))
        for name, data in pictures.items():
            packed.writestr(zipfile.ZipInfo(name), data)  # a JPEG is packed already
    return buffer.getvalue()


def pictures_of(block: Block) -> Iterator[Picture]:
    """The pictures of a block that have their print copy."""
    for part in (block, *getattr(block, "entries", ())):
        yield from (picture for picture in getattr(part, "pictures", ()) if picture.jpeg is not None)


def _block(block: Block, pictures: dict[str, bytes]) -> Iterator[str]:
    title, *lines = block_lines(block)
    yield f'<text:h text:style-name="Head" text:outline-level="1">{escape(shown(title))}</text:h>'
    yield from map(_said, lines)
    named = {f"Pictures/{picture.number}.jpg": picture for picture in pictures_of(block)}
    pictures |= {name: picture.jpeg or b"" for name, picture in named.items()}
    frames = "".join(_frame(picture, name) for name, picture in named.items())
    yield f'<text:p text:style-name="Body">{frames}</text:p>' if frames else ""


def _said(line: str) -> str:
    return f'<text:p text:style-name="Body">{escape(shown(line.strip()))}</text:p>'


def _frame(picture: Picture, name: str) -> str:
    scale = min(WIDE_MM / picture.width, HIGH_MM / picture.height)
    size = f'svg:width="{picture.width * scale:.2f}mm" svg:height="{picture.height * scale:.2f}mm"'
    image = f'<draw:image xlink:href="{name}" xlink:type="simple"/>'
    return f'<draw:frame draw:name="{picture.number}" text:anchor-type="as-char" {size}>{image}</draw:frame>'


def _document(kind: str, inside: str) -> str:
    spaces = " ".join(f'xmlns:{short}="urn:oasis:names:tc:opendocument:xmlns:{long}:1.0"' for short, long in SPACES)
    spaces += ' xmlns:fo="urn:oasis:names:tc:opendocument:xmlns:xsl-fo-compatible:1.0"'
    spaces += ' xmlns:svg="urn:oasis:names:tc:opendocument:xmlns:svg-compatible:1.0"'
    spaces += ' xmlns:xlink="http://www.w3.org/1999/xlink"'
    return f'{HEAD}<office:document-{kind} {spaces} office:version="1.2">{inside}</office:document-{kind}>'


def _styles() -> str:
    page = ('<office:automatic-styles><style:page-layout style:name="A4"><style:page-layout-properties'
            ' fo:page-width="210mm" fo:page-height="297mm" fo:margin="18mm"/></style:page-layout>'
            '</office:automatic-styles><office:master-styles><style:master-page style:name="Standard"'
            ' style:page-layout-name="A4"/></office:master-styles>')  # fmt: skip
    return (
        "<office:styles>"
        '<style:style style:name="Body" style:family="paragraph"><style:text-properties fo:font-size="9.5pt"/>'
        '</style:style><style:style style:name="Head" style:family="paragraph"><style:text-properties'
        ' fo:font-size="13pt" fo:font-weight="bold"/></style:style></office:styles>' + page
    )


def _manifest(pictures: dict[str, bytes]) -> str:
    files = (("/", MEDIA), ("content.xml", "text/xml"), ("styles.xml", "text/xml"),
             *((name, "image/jpeg") for name in pictures))  # fmt: skip
    entries = "".join(
        f'<manifest:file-entry manifest:full-path="{name}" manifest:media-type="{media}"/>' for name, media in files
    )
    space = "urn:oasis:names:tc:opendocument:xmlns:manifest:1.0"
    return f'{HEAD}<manifest:manifest xmlns:manifest="{space}" manifest:version="1.2">{entries}</manifest:manifest>'
