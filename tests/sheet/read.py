"""What a PDF holds, read back by programs that did not make it."""

import re
from io import BytesIO

import pypdf
import pypdfium2

MM = 72 / 25.4


def reader(data: bytes) -> pypdf.PdfReader:
    return pypdf.PdfReader(BytesIO(data))


def pages(data: bytes) -> list[str]:
    """The text of each page, white space as it comes."""
    return [page.extract_text() for page in reader(data).pages]


def lines(page: str, stamp: str) -> list[str]:
    """What stands on a page, line by line, without its head and foot: these are drawn first, and end with the stamp."""
    return [line for line in map(str.strip, page.split(stamp, 1)[1].splitlines()) if line]


def flat(data: bytes) -> str:
    """All text with single spaces."""
    return " ".join(" ".join(pages(data)).split())


def body(data: bytes, furniture: tuple[str, ...]) -> str:
    """All text with single spaces, without page numbers and what stands at the head and foot of every page."""
    found = []
    for page in pages(data):
        text = re.sub(r"page \d+ of \d+", "", " ".join(page.split()))
        for words in furniture:
            text = text.replace(words, "", 1)
        found.append(text)
    return " ".join(" ".join(found).split())


def fonts(data: bytes) -> dict[str, bool]:
    """Every font that the pages list, and whether its file is embedded."""
    found = {}
    for page in reader(data).pages:
        for font in page["/Resources"].get("/Font", {}).values():
            font = font.get_object()
            described = font.get("/FontDescriptor", {})
            found[str(font["/BaseFont"])] = "/FontFile2" in described
    return found


def boxes(data: bytes) -> list[tuple[int, float, float, float, float]]:
    """Every stretch of text: its page, and left, foot, right, top in points."""
    document = pypdfium2.PdfDocument(data)
    found = []
    for number, page in enumerate(document):
        text = page.get_textpage()
        found += [(number, *text.get_rect(n)) for n in range(text.count_rects())]
        text.close()
        page.close()
    document.close()
    return found


def images(data: bytes) -> list:
    """Every image that the pages hold, as it lies in the file."""
    found = []
    for page in reader(data).pages:
        objects = page["/Resources"].get("/XObject", {})
        found += [o for name in objects if (o := objects[name].get_object())["/Subtype"] == "/Image"]
    return found


def streams(data: bytes) -> bytes:
    """Everything in the file, streams unpacked."""
    parts = [data]
    for number in range(1, reader(data).trailer["/Size"]):
        thing = reader(data).get_object(number)
        if hasattr(thing, "get_data") and thing.get("/Subtype") != "/Image":
            parts.append(thing.get_data())
    return b"\n".join(parts)
