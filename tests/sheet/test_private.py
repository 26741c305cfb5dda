"""What a sealed seller's copy does not give away, wherever in the file one looks: money, places, what is covered."""

import json
from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageDraw

from inspector.demo import demo_folder, put_demo
from inspector.issuing import place_of, sealed_sheet
from inspector.photo.intake import take
from inspector.profile.read import read_profile
from inspector.record.claim import Claim
from inspector.record.finding import Box, Photograph
from inspector.record.money import Comparable, Money, Remedy
from inspector.record.verbs import choose_place_told
from inspector.record.versions import attached, stands_as_sealed, version_of
from inspector.record.words import PriceKind
from inspector.sealing import seal_version
from inspector.sheet.text import as_text
from inspector.storage.library import Library
from tests.sheet import made, purse, read, sealing

PLACE = "Thornwick-under-Edge"
AMOUNT = 777013
MOST_RED = 24  # how much more red than grey a pixel of grey paper may be once it was made a JPEG
GPS = {1: "N", 2: (51.0, 33.0, 7.0), 3: "W", 4: (2.0, 4.0, 9.0)}  # Exif 2.3, 4.6.6: GPS attributes, tags 1 to 4
PURSE = {
    "comparables": (Comparable(id="c", kind=PriceKind.SOLD, price=AMOUNT, currency="EUR", place="Marsham"),),
    "money": Money(budget=AMOUNT, target=AMOUNT, price_asked=AMOUNT, purpose="keeping"),
    "remedies": (Remedy(item="tank", cost=str(AMOUNT)),),
}


def photograph():
    """A photograph with a red plate on grey, as a camera that knows where it is leaves it."""
    image = Image.new("RGB", (1600, 1200), (128, 128, 128))
    ImageDraw.Draw(image).rectangle((600, 500, 1000, 700), fill=(255, 0, 0))
    exif = Image.Exif()
    exif[0x8825] = GPS
    exif[0x010E] = PLACE  # ImageDescription
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=95, exif=exif, comment=PLACE.encode())
    return buffer.getvalue()


@pytest.fixture(scope="module")
def sealed(tmp_path_factory):
    """The sealed seller's copy of a machine with prices, a place, and a photograph of which a part is covered."""
    folder = tmp_path_factory.mktemp("library")
    (folder / "card.jpg").write_bytes(photograph())
    with Library.open(folder / "data", lambda: made.MADE_AT) as library:
        record = library.load(put_demo(library)).record
        taken = take(folder / "card.jpg", library.photographs)
        box = Box(left=600 / 1600, top=500 / 1200, right=1000 / 1600, bottom=700 / 1200)
        told = {"sha256": taken.sha256, "media": taken.media, "width": 1600, "height": 1200, "size": taken.size,
                "has_place": taken.has_place}  # fmt: skip
        shown = Photograph(id="p", name=f"{PLACE}.jpg", camera=PLACE, item="tank", masks=(box,), **told)
        assert taken.has_place
        claim = record.claim.model_copy(update={"place": PLACE, "asking_price": f"{AMOUNT} crowns"})
        record = record.model_copy(update={**PURSE, "claim": claim, "photographs": (shown,)})
        profile = read_profile(demo_folder()).profile
        version = seal_version(profile, record, place_of(library), sealing.key(), made.MADE_AT)
        return sealed_sheet(version, place_of(library))


def everything(data):
    """All that can be got out of the file as text: pages, what it says of itself, what is attached, every stream."""
    document = read.reader(data)
    attachments = [part for parts in document.attachments.values() for part in parts]
    assert len(attachments) == 1
    raw = read.streams(data)
    return " ".join((read.flat(data), str(document.metadata), *(part.decode() for part in attachments),
                     raw.decode("latin-1"), raw.decode("utf-16-be", "ignore")))  # fmt: skip


def test_no_amount_can_be_got_out_of_a_sealed_sellers_copy(sealed):
    assert str(AMOUNT) not in everything(sealed)
    assert "777 013" not in everything(sealed)


def test_no_place_can_be_got_out_of_it(sealed):
    told = everything(sealed)
    assert PLACE not in told
    (record,) = read.reader(sealed).attachments["inspection.json"]
    claim = json.loads(record)["claim"]
    assert not claim.get("place")
    assert claim["date"]
    assert "Seen on" in read.flat(sealed)


def test_no_covered_part_and_no_position_is_in_the_bytes_of_its_pictures(sealed):
    shown = [image._data for image in read.images(sealed)]
    assert len(shown) == 1
    picture = Image.open(BytesIO(shown[0]))
    assert len(picture.getexif()) == 0
    assert not {"exif", "comment", "photoshop", "icc_profile"} & set(picture.info)
    pixels = np.asarray(picture.convert("RGB")).astype(int)
    assert int((pixels[:, :, 0] - pixels[:, :, 1]).max()) < MOST_RED


def test_the_place_is_on_it_where_that_was_chosen():
    record = made.record(0, claim=Claim(model="Heron", place=PLACE, date="2025-05-17"))
    assert PLACE not in as_text(made.sheet(record))
    assert "Seen on 17 May 2025, by A. Teasel" in as_text(made.sheet(record))
    chosen = record.model_copy(update={"choices": record.choices.model_copy(update={"place_told": True})})
    assert f"Seen at {PLACE}, 17 May 2025, by A. Teasel" in as_text(made.sheet(chosen))
    assert PLACE.encode() in attached(chosen)
    assert PLACE.encode() not in attached(record)


def test_the_owners_own_file_tells_the_place_all_the_same():
    record = purse.filled(made.record(0, claim=Claim(model="Heron", place=PLACE)))
    assert f"Seen at {PLACE}" in as_text(purse.owner(record, pictures={}))


def test_what_was_sealed_without_the_place_stands_when_only_the_place_is_changed():
    record = made.record(0)
    kept = version_of(record, made.MADE_AT, b"sheet", "key")
    moved = record.model_copy(update={"claim": record.claim.model_copy(update={"place": PLACE}), "versions": (kept,)})
    assert stands_as_sealed(moved) == kept
    told = moved.model_copy(update={"choices": moved.choices.model_copy(update={"place_told": True})})
    assert stands_as_sealed(told) is None


def test_telling_the_place_is_a_choice_that_can_be_taken_back():
    from inspector.record.edits import apply

    record = made.record(0)
    chosen, back = apply(record, choose_place_told(True))
    assert chosen.choices.place_told
    assert apply(chosen, back)[0] == record
