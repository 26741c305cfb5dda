"""What leaves the house has covered what was chosen to be covered; the owner's own file has not."""

from io import BytesIO

import numpy as np
import pytest
from PIL import Image, ImageDraw

from inspector.handover import dating_pack, owners_file, picture_pack, sellers_copy
from inspector.issuing import Place
from inspector.record.finding import Box, Photograph
from inspector.sheet.pdf import as_pdf
from inspector.storage.frozen import Frozen
from inspector.storage.photographs import Photographs
from tests.sheet import made, read


@pytest.fixture
def kept(tmp_path):
    """A store with one photograph, a red plate on grey, and the record that has it, the plate covered."""
    image = Image.new("RGB", (1600, 1200), (128, 128, 128))
    ImageDraw.Draw(image).rectangle((600, 500, 1000, 700), fill=(255, 0, 0))
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=95)
    store = Photographs(tmp_path / "photographs")
    sha256 = store.keep(buffer.getvalue()).sha256
    box = Box(left=600 / 1600, top=500 / 1200, right=1000 / 1600, bottom=700 / 1200)
    shown = Photograph(id="p", sha256=sha256, name="p.jpg", media="image/jpeg", width=1600, height=1200,
                       size=len(buffer.getvalue()), place="frame", masks=(box,))  # fmt: skip
    return store, made.record(0, photographs=(shown,))


def reds(data):
    """How many pixels of the images in this PDF are more red than grey."""
    found = 0
    for image in read.images(data):
        pixels = np.asarray(Image.open(BytesIO(image._data)).convert("RGB")).astype(int)
        found += int((pixels[:, :, 0] > pixels[:, :, 1] + 24).sum())
    return found


def test_a_covered_part_is_in_no_copy_that_leaves_the_house(kept):
    store, record = kept
    store.copy(record.photographs[0].sha256)
    for make in (sellers_copy, dating_pack, picture_pack):
        data = as_pdf(make(made.profile(), record, store, made.MADE_AT))
        assert len(read.images(data)) == 1
        assert reds(data) == 0


def test_the_owners_own_file_shows_it(kept):
    store, record = kept
    place = Place(store, Frozen(store.folder.parent / "frozen"))
    assert reds(as_pdf(owners_file(made.profile(), record, place, made.MADE_AT))) > 10_000


def test_a_covered_photograph_whose_original_is_lost_is_not_shown_uncovered(kept):
    store, record = kept
    store.copy(record.photographs[0].sha256)
    (store.folder / record.photographs[0].sha256).unlink()
    data = as_pdf(sellers_copy(made.profile(), record, store, made.MADE_AT))
    assert read.images(data) == []
    assert "photograph 1 is not in the store" in read.flat(data)
