"""Whatever single byte of a sealed sheet is changed, the check tells it; with the sheet as sealed also where."""

import os
import random

import pytest

from inspector.sheet.checking import check_sheet
from tests.sheet import sealing

MANY = 1000 if os.environ.get("INSPECTOR_BENCH") == "1" else 100
PARTS = 10


def changes():
    """Place and new value of random bytes, the same every time; a third lie where the seal itself stands."""
    data = sealing.sheet()
    chance = random.Random(20250517)
    own = range(data.index(b"/Contents <3082"), data.index(b"/ByteRange") + 60)
    for number in range(MANY):
        at = chance.choice(own) if number % 3 == 0 else chance.randrange(len(data))
        yield at, data[at] ^ chance.randrange(1, 256)


def changed(data, at, value):
    return data[:at] + bytes([value]) + data[at + 1 :]


@pytest.mark.parametrize("part", range(PARTS))
def test_every_changed_byte_is_told(part):
    data = sealing.sheet()
    unseen = [at for at, value in list(changes())[part::PARTS] if check_sheet(changed(data, at, value)).as_sealed]
    assert unseen == []


def test_the_place_of_a_changed_byte_is_told():
    data = sealing.sheet()
    for at, value in list(changes())[:: MANY // 10]:
        told = str(check_sheet(changed(data, at, value), data).changed)
        assert told.startswith(f"Byte {at} was changed, in ")


def test_bytes_changed_in_several_objects_are_counted_and_each_place_is_told():
    data = sealing.sheet()
    picture = data.index(b"stream", data.index(b"/Subtype /Image")) + 20
    record = data.index(b"stream", data.index(b"/EmbeddedFile")) + 20
    spoilt = bytearray(data)
    for at in (*range(picture, picture + 9000), record):
        spoilt[at] ^= 1
    told = str(check_sheet(bytes(spoilt), data).changed)
    assert told == f"9001 bytes were changed, the first is byte {picture}, in page 2, the attached record."


def test_the_page_of_a_changed_byte_is_told():
    data = sealing.sheet()
    record = data.index(b"/EmbeddedFile")
    at = data.index(b"stream", record) + 20
    told = str(check_sheet(changed(data, at, data[at] ^ 1), data).changed)
    assert told == f"Byte {at} was changed, in the attached record."
