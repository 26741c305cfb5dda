"""Pictures made for the tests: small, exact, and with whatever a camera writes into them."""

import struct
import zlib
from io import BytesIO

import pillow_heif
from PIL import Image

MAKE, MODEL = "Nocam", "Nocam One"  # invented
SERIAL = "SERIAL-0042-X"
BLOCK = 16
STEP = 45  # between the grey values of two blocks


def saved(image, kind, **options):
    """The bytes of the picture as a file of that kind."""
    buffer = BytesIO()
    image.save(buffer, kind, **options)
    return buffer.getvalue()


def heic(image, exif=None, **options):
    """The bytes of the picture as a HEIC, turned by its own boxes as the tags tell."""
    file = pillow_heif.from_pillow(image)
    file.info["exif"] = exif
    buffer = BytesIO()
    file.save(buffer, **options)
    return buffer.getvalue()


def camera_words(orientation=1, place=True, taken="2024:05:06 10:11:12", offset="+02:00"):
    """The tags that an invented camera writes."""
    exif = Image.Exif()
    exif[0x010F], exif[0x0110], exif[0x0112] = MAKE, MODEL, orientation
    inner = exif.get_ifd(0x8769)
    inner[0x9003], inner[0x9011], inner[0xA431] = taken, offset, SERIAL
    if place:
        exif.get_ifd(0x8825).update({1: "N", 2: (52.0, 13.0, 1.5), 3: "E", 4: (4.0, 6.0, 7.25)})
    return exif


def plain(size=(64, 48), colour=(200, 40, 30)):
    """A picture of one colour."""
    return Image.new("RGB", size, colour)


def camera_jpeg(size=(64, 48), **words):
    """A JPEG as an invented camera writes it."""
    return saved(plain(size), "JPEG", quality=90, exif=camera_words(**words), comment="by nobody")


def blocks(rows):
    """A picture of grey blocks, one for each number in the rows."""
    image = Image.new("RGB", (BLOCK * len(rows[0]), BLOCK * len(rows)))
    for y, row in enumerate(rows):
        for x, number in enumerate(row):
            grey = (number * STEP,) * 3
            image.paste(grey, (x * BLOCK, y * BLOCK, (x + 1) * BLOCK, (y + 1) * BLOCK))
    return image


def numbers(image):
    """The numbers that a picture of grey blocks shows."""
    grey = image.convert("L")
    return [
        [round(grey.getpixel((x + BLOCK // 2, y + BLOCK // 2)) / STEP) for x in range(0, image.width, BLOCK)]
        for y in range(0, image.height, BLOCK)
    ]


def shown(data):
    """The picture in these bytes, decoded."""
    image = Image.open(BytesIO(data))
    image.load()
    return image


def chunk(name, content):
    """One chunk of a PNG."""
    sums = zlib.crc32(name + content)
    return struct.pack(">I", len(content)) + name + content + struct.pack(">I", sums)


def png(width, height, rows, bits=8, colour=2, last=b""):
    """A PNG put together by hand, so that its header can say anything."""
    header = struct.pack(">IIBBBBB", width, height, bits, colour, 0, 0, 0)
    body = chunk(b"IHDR", header) + chunk(b"IDAT", zlib.compress(rows)) + last
    return b"\x89PNG\r\n\x1a\n" + body + chunk(b"IEND", b"")


def with_frame(data, width, height):
    """The JPEG with another size in its frame header."""
    at = data.index(b"\xff\xc0")
    return data[: at + 5] + struct.pack(">HH", height, width) + data[at + 9 :]
