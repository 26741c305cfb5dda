"""Takes in damaged pictures by the thousand in a process of its own, and prints as JSON what came of them."""

import json
import random
import resource
import struct
import sys
import warnings
from collections import Counter
from hashlib import sha256
from io import BytesIO
from pathlib import Path
from time import perf_counter

import pillow_heif
from PIL import Image, ImageOps

from inspector.photo.copies import THUMBNAIL_PX
from inspector.photo.intake import Taken, take
from inspector.photo.refusal import Refusal
from inspector.texts import Say, tr
from tests.photo.pictures import blocks, camera_jpeg, camera_words, heic, plain, png, saved

ROWS = [[0, 1, 2, 3], [3, 1, 2, 0], [1, 2, 3, 4]]
LOUD = (
    b"\0",
    b"\xff",
    b"\x7f\xff",
    b"\x80\0",
    b"\xff\xff\xff\xff",
    b"\0\0\0\0",
    b"\x7f\xff\xff\xff",
    b"\xff\xd9",
    b"\xff\xd8",
)


NUMBERS = (0, 1, 0xFFFFFFFF, 0x7FFFFFFF, 65_000, 1 << 20)


def samples():
    """Small pictures of every kind that is taken, and some that are not."""
    picture = blocks(ROWS)
    see_through = picture.convert("RGBA")
    see_through.putalpha(120)
    return {
        "jpeg": camera_jpeg(), "turned": saved(picture, "JPEG", exif=camera_words(6)),
        "progressive": saved(picture, "JPEG", progressive=True), "grey": saved(picture.convert("L"), "JPEG"),
        "cmyk": saved(picture.convert("CMYK"), "JPEG"), "sampled": saved(picture, "JPEG", subsampling=0, quality=95),
        "png": saved(picture, "PNG", exif=camera_words(3)), "palette": saved(picture.convert("P"), "PNG"),
        "alpha": saved(see_through, "PNG"), "deep": png(8, 8, (b"\0" + b"\x12\x34" * 24) * 8, bits=16),
        "webp": saved(picture, "WEBP", exif=camera_words(8)), "lossless": saved(see_through, "WEBP", lossless=True),
        "tiff": saved(picture, "TIFF", compression="tiff_lzw", exif=camera_words(5)),
        "strips": saved(plain((40, 30)), "TIFF"), "packed": saved(picture.convert("1"), "TIFF", compression="group4"),
        "heic": heic(plain((64, 64)), exif=camera_words().tobytes()), "gif": saved(picture, "GIF"),
        "mpo": saved(picture, "MPO", save_all=True, append_images=[plain()]),
    }  # fmt: skip


def _flip(rng, data, at, other):
    data[at] ^= 1 << rng.randrange(8)


def _set(rng, data, at, other):
    data[at] = rng.randrange(256)


def _insert(rng, data, at, other):
    data[at:at] = rng.choice(LOUD)


def _overwrite(rng, data, at, other):
    loud = rng.choice(LOUD)
    data[at : at + len(loud)] = loud


def _drop(rng, data, at, other):
    del data[at : at + rng.randint(1, 40)]


def _cut(rng, data, at, other):
    del data[at:]


def _repeat(rng, data, at, other):
    data[at:at] = data[at : at + rng.randint(1, 60)] * rng.randint(1, 3)


def _graft(rng, data, at, other):
    start = rng.randrange(len(other))
    data[at : at + 16] = other[start : start + rng.randint(1, 64)]


def _number(rng, data, at, other):
    data[at : at + 4] = struct.pack(rng.choice("<>") + "I", rng.choice(NUMBERS))


WAYS = (_flip, _set, _insert, _overwrite, _drop, _cut, _repeat, _graft, _number)


def mutated(rng, whole, other):
    """The bytes with one to four kinds of damage."""
    data = bytearray(whole)
    for _ in range(rng.randint(1, 4)):
        if not data:
            break
        at = rng.randrange(len(data))
        if rng.random() < 0.5:
            at = min(at, rng.randrange(200))  # headers tell the most
        rng.choice(WAYS)(rng, data, at, other)
    return bytes(data)


class Shelf:
    """Keeps the last thing only."""

    def keep(self, source, copy=None):
        self.source, self.copy = source, copy
        return type("Receipt", (), {"sha256": sha256(source).hexdigest(), "already": False})()


def false(data, taken, shelf):
    """What is wrong with what was kept: empty where it is the very bytes, told as another decoder sees them."""
    if shelf.source != data or taken.sha256 != sha256(data).hexdigest() or taken.size != len(data):
        return "other bytes"
    with Image.open(BytesIO(shelf.copy)) as copy:
        copy.load()
        if copy.format != "JPEG" or max(copy.size) > THUMBNAIL_PX:
            return "no small copy"
        if "exif" in copy.info or "xmp" in copy.info:
            return "a copy with tags"
    try:
        with Image.open(BytesIO(data)) as image:
            image.load()
            size = ImageOps.exif_transpose(image).size
    except Exception:  # the general opener knows less than the decoder of the kind
        return ""
    return "" if (taken.width, taken.height) in (size, size[::-1]) else f"{size} told as {taken.width} x {taken.height}"


def most_memory():
    """The most bytes this program has held. On Linux the usage also counts who started it, so its own mark is read."""
    status = Path("/proc/self/status")
    if status.exists():
        line = next(line for line in status.read_text().splitlines() if line.startswith("VmHWM:"))
        return 1024 * int(line.split()[1])
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * (1 if sys.platform == "darwin" else 1024)


def main(count, seed):
    """Prints how many were kept and refused, the slowest in seconds, the most memory in bytes, and what was false."""
    warnings.simplefilter("ignore")
    pillow_heif.register_heif_opener()
    Image.MAX_IMAGE_PIXELS = None
    rng, whole, counts, wrong, slowest = random.Random(seed), samples(), Counter(), [], (0.0, "")
    names, shelf = list(whole), Shelf()
    for n in range(count):
        name = rng.choice(names)
        data = mutated(rng, whole[name], whole[rng.choice(names)])
        sys.stderr.write(f"\r{n} {name} {sha256(data).hexdigest()[:12]}")
        begun = perf_counter()
        found = take((f"{n}.jpg", data), shelf, THUMBNAIL_PX)
        slowest = max(slowest, (perf_counter() - begun, f"{n} {name}"))
        if isinstance(found, Taken):
            counts["kept"] += 1
            if complaint := false(data, found, shelf):
                wrong.append(f"{n} {name}: {complaint}")
        else:
            counts["refused"] += 1
            if not (isinstance(found, Refusal) and isinstance(found.why, Say) and tr(found.why).endswith(".")):
                wrong.append(f"{n} {name}: no sentence")
    most = most_memory()
    sys.stdout.write(json.dumps({**counts, "slowest": slowest, "memory": most, "wrong": wrong}))


if __name__ == "__main__":
    main(int(sys.argv[1]), int(sys.argv[2]))
