"""Bags taken in: the same record with the same sums comes out again, and nothing that was here is touched."""

import errno
import json
import os
import zipfile
from contextlib import closing

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL.PngImagePlugin import PngInfo
from PIL.TiffImagePlugin import ImageFileDirectory_v2

from inspector.packing.command import packed
from inspector.packing.pack import pack
from inspector.packing.share import Sharing, pack_to_share, to_share
from inspector.packing.standing import FROM_BAG, Here
from inspector.packing.take import offer, take_in
from inspector.photo.intake import take
from inspector.photo.refusal import Cancelled
from inspector.record.claim import Inquiry, Person
from inspector.record.edits import Part
from inspector.record.finding import Box, Finding
from inspector.record.photographs import change_photograph, photograph_of
from inspector.record.reading import Reading, figures_of
from inspector.record.second import visit_before
from inspector.record.verbs import put_entry, set_claim
from inspector.record.words import Covered, Mark, Role
from inspector.revisit import begin_second_visit, compared
from inspector.storage import database
from inspector.storage.bags.refusal import BagRefused
from inspector.storage.trouble import DiskFull, StorageTrouble
from tests.photo.pictures import MAKE, SERIAL, camera_words, heic, plain, saved
from tests.photo.test_sharing import ALLOWED, segments
from tests.record.steps import blank, steps
from tests.storage.bagged import AWAY, HERE, ID, changed_at, files, filled, library_at, photograph, profile
from tests.storage.shelf import Clock, opened, said, sql

ROUNDS = 100 if os.environ.get("INSPECTOR_BENCH") else 10
PARTS = tuple(part for part in Part if part not in (Part.PHOTOGRAPHS, Part.VERSIONS))


def bag(folder, name="bag.zip", home=HERE, record_id=ID):
    with library_at(folder / home) as library:
        return pack(library, record_id, folder / name).path


def rows(folder):
    """Everything in the tables of a closed library, for comparing."""
    with closing(database.open_to_read(folder / database.NAME)) as db:
        return {table: db.execute(f"SELECT * FROM {table} ORDER BY 1, 2").fetchall() for table in database.READ}


@given(done=st.lists(steps(PARTS), max_size=6))
@settings(max_examples=ROUNDS, deadline=None, suppress_health_check=[HealthCheck.too_slow])
def test_from_bag_to_an_empty_machine_to_bag_nothing_changes(tmp_path_factory, done):
    folder = tmp_path_factory.mktemp("round")
    with library_at(folder / HERE) as library:
        library.create(blank(), profile(folder))
        session = opened(library, Clock())
        session.do(put_entry(Part.PHOTOGRAPHS, photograph(library, 1), label="Photographs"))
        for step in done:
            session.do(step)
        if len(done) % 2:
            session.undo()
        record, first = session.record, pack(library, ID, folder / "first.zip")
    with library_at(folder / AWAY) as library:
        taken = take_in(first.path, library)
        loaded = library.load(taken.record_id)
        second = pack(library, ID, folder / "second.zip")
        assert loaded.record == record
    assert second.sha256 == first.sha256
    assert second.path.read_bytes() == first.path.read_bytes()


def test_history_undo_and_redo_come_along(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / HERE) as here, library_at(tmp_path / AWAY) as away:
        take_in(path, away)
        assert away.load(ID).undo == here.load(ID).undo
        assert away.load(ID).redo == here.load(ID).redo
        assert [line[1:] for line in away.history(ID)] == [line[1:] for line in here.history(ID)]
        assert away.machines() == here.machines()
        session = opened(away, Clock())
        session.undo()
        assert [p.id for p in session.record.photographs] == ["p0", "p1", "p2"]
        assert away.photographs.check(session.record.photographs[2].sha256).value == "ok"


def test_a_record_whose_id_is_here_comes_in_beside_and_touches_nothing(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / HERE) as library:
        opened(library, Clock()).do(said("later", "said later, here"))
        before = library.load(ID), library.history(ID)
        found = offer(path, library)
        assert (found.here, found.later_here, found.later_there) == (Here.OLDER, 1, 0)
        assert any("said later, here" in str(line) for line in found.differences)
        taken = take_in(path, library)
        assert taken.beside
        assert taken.was_id == ID
        assert library.recall(taken.record_id, FROM_BAG) == ID
        assert (library.load(ID), library.history(ID)) == before
        assert len(library.machines()) == 2
        assert pack(library, taken.record_id, tmp_path / "again.zip").path.is_file()


def test_what_came_in_beside_is_known_again_until_it_is_changed(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / HERE) as library:
        opened(library, Clock()).do(said("later"))
        taken = take_in(path, library)
        found = offer(path, library)
        assert (found.here, found.twin, found.differences) == (Here.SAME, taken.record_id, ())
        opened(library, Clock(), taken.record_id).do(said("changed"))
        assert (offer(path, library).here, offer(path, library).twin) == (Here.OLDER, "")


def test_a_bag_that_was_packed_without_a_lost_photograph_can_be_taken_in(tmp_path):
    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        lost, kept = library.load(ID).record.photographs
        library.photographs.forget(lost.sha256)
    path = bag(tmp_path)
    assert any(lost.sha256[:12].encode() in data for name, data in files(path).items() if name.endswith("left-out.txt"))
    with library_at(tmp_path / AWAY) as library:
        assert offer(path, library).absent == 1
        taken = take_in(path, library)
        assert (taken.photographs, taken.absent) == (2, 1)
        record = library.load(ID).record
        assert record.photographs == (lost, kept)
        assert [library.photographs.check(p.sha256).value for p in record.photographs] == ["missing", "ok"]


@pytest.mark.parametrize(
    "damage",
    ["DELETE FROM snapshots WHERE seq = 0", "UPDATE snapshots SET body = '{}' WHERE seq = 0",
     "UPDATE edits SET step = 'garble' WHERE seq = 1", "UPDATE edits SET inverse = '[]' WHERE seq = 2"],
)  # fmt: skip
def test_a_record_whose_history_is_damaged_can_be_packed_without_it(tmp_path, damage):
    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        record = library.load(ID).record
    sql(tmp_path / HERE, "DROP TRIGGER edits_stay", damage)
    with library_at(tmp_path / HERE) as library:
        made = pack(library, ID, tmp_path / "bag.zip")
        assert any("history of this record cannot be read" in str(line) for line in made.left_out)
    with library_at(tmp_path / AWAY) as library:
        take_in(made.path, library)
        assert library.load(ID).record == record


def test_a_history_longer_than_a_bag_can_hold_stays_out_of_it_and_is_named(tmp_path, monkeypatch):
    filled(tmp_path)
    monkeypatch.setattr("inspector.packing.pack.MOST_HISTORY", 1000)
    with library_at(tmp_path / HERE) as library:
        made = pack(library, ID, tmp_path / "bag.zip")
        record = library.load(ID).record
    assert any("longer than a bag can hold" in str(line) for line in made.left_out)
    with library_at(tmp_path / AWAY) as library:
        take_in(made.path, library)
        assert library.load(ID).record == record


def test_a_sealed_version_that_is_damaged_is_named_and_the_rest_is_packed(tmp_path):
    from inspector.record.versions import canonical, keep_version, version_of

    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        session = opened(library, Clock())
        sheet = library.frozen.keep(b"%PDF-1.7 sealed")
        library.frozen.keep(canonical(session.record))
        session.do(keep_version(version_of(session.record, "2026-03-01T10:00:00+00:00", b"%PDF-1.7 sealed", "ab" * 32)))
        path = library.frozen.folder / sheet
        path.chmod(0o644)
        path.write_bytes(b"%PDF-1.7 spoilt")
        made = pack(library, ID, tmp_path / "bag.zip")
        assert [str(line) for line in made.left_out] == [f"{path} is not as it was frozen. Put it back from a copy."]
    with library_at(tmp_path / AWAY) as library:
        assert take_in(tmp_path / "bag.zip", library).record_id == ID


def test_the_offer_says_when_all_is_here_already(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / HERE) as library:
        found = offer(path, library)
    assert found.here is Here.SAME
    assert found.differences == ()
    assert found.checked.whole
    assert (found.record.id, len(found.record.photographs)) == (ID, 2)


def test_the_offer_says_what_a_bag_has_that_is_not_here(tmp_path):
    filled(tmp_path)
    old = bag(tmp_path, "old.zip")
    with library_at(tmp_path / AWAY) as away:
        take_in(old, away)
        opened(away, Clock()).do(said("away", "said away"))
        opened(away, Clock()).do(said("away2", "said away too"))
    new = bag(tmp_path, "new.zip", AWAY)
    with library_at(tmp_path / HERE) as here:
        assert (offer(new, here).here, offer(new, here).later_there) == (Here.NEWER, 2)
        opened(here, Clock()).do(said("mine", "said here"))
        assert offer(new, here).here is Here.OTHER
        assert offer(new, here).later_here == 1


def test_a_record_that_was_taken_out_of_the_list_is_here_all_the_same(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / HERE) as library:
        library.remove(ID)
        assert offer(path, library).taken_out
        taken = take_in(path, library)
        assert taken.beside
        library.restore(ID)
        assert len(library.machines()) == 2


def test_a_changed_bag_is_offered_with_its_faults_and_not_taken_in(tmp_path):
    filled(tmp_path)
    contents = files(bag(tmp_path))
    name = next(name for name in contents if "/photographs/" in name)
    path = changed_at(tmp_path / "changed.zip", contents, name, 100)
    with library_at(tmp_path / AWAY) as library:
        assert [fault.file for fault in offer(path, library).checked.faults] == [name.partition("/")[2]]
        with pytest.raises(BagRefused, match="not whole, so nothing was taken in"):
            take_in(path, library)
        assert library.machines() == ()
        assert library.photographs.listing() == []


def test_stopped_halfway_nothing_of_it_stays(tmp_path):
    filled(tmp_path)
    path = bag(tmp_path)

    def stop(done, total, name):
        if done == 2 and total == 3:
            raise Cancelled

    with library_at(tmp_path / AWAY) as library:
        with pytest.raises(Cancelled):
            take_in(path, library, stop)
        assert library.machines() == ()
        assert library.photographs.listing() == []
        assert {p.name for p in library.folder.iterdir()} <= {
            "library.sqlite", "library.sqlite-wal", "library.sqlite-shm", "library.lock", "photographs", "profiles",
            "backups", "thumbnails"}  # fmt: skip


def full_at(moment):
    """A write to a file that finds the disk full the n-th time."""
    count, write = iter(range(1, 100_000)), os.write

    def written(number, data):
        if next(count) == moment:
            raise OSError(errno.ENOSPC, "No space left on device")
        return write(number, data)

    return written


def test_wherever_the_disk_is_full_nothing_of_it_stays_and_the_next_try_succeeds(tmp_path, monkeypatch):
    filled(tmp_path)
    path = bag(tmp_path)
    with library_at(tmp_path / AWAY) as library:
        moment, sentences = 0, []
        while len(sentences) == moment:
            moment += 1
            with monkeypatch.context() as patch:
                patch.setattr(os, "write", full_at(moment))
                try:
                    take_in(path, library)
                except DiskFull as trouble:
                    sentences.append(str(trouble))
            if len(sentences) == moment:
                assert (library.machines(), library.photographs.listing()) == ((), [])
                assert not list(library.folder.rglob(".unfinished-*"))
        assert all("no room left" in sentence for sentence in sentences)
        assert moment > 8
        assert [m.summary.id for m in library.machines()] == [ID]
        assert [library.photographs.check(p.sha256).value for p in library.load(ID).record.photographs] == ["ok", "ok"]


def test_what_a_killed_taking_in_left_is_swept_away(tmp_path):
    filled(tmp_path)
    left = tmp_path / HERE / ".unfinished-abc"
    left.mkdir()
    (left / "file").write_bytes(b"half")
    library_at(tmp_path / HERE).close()
    assert left.exists(), "another program may be at it"
    os.utime(left, (0, 0))
    library_at(tmp_path / HERE).close()
    assert not left.exists()


def test_a_history_that_leads_elsewhere_is_refused(tmp_path):
    filled(tmp_path)
    contents = {k.partition("/data/")[2]: v for k, v in files(bag(tmp_path)).items() if "/data/" in k}
    record = json.loads(contents["record.json"])
    record["claim"]["model"] = "Another machine (invented)"
    contents["record.json"] = json.dumps(record).encode()
    path = rewritten(tmp_path, contents)
    with library_at(tmp_path / AWAY) as library, pytest.raises(BagRefused, match="does not lead to its record"):
        take_in(path, library)


@pytest.mark.parametrize(
    "line",
    [b"{}", b"nonsense", b'{"kind":"undo","joined":false,"at":"","who":"","format":1,"step":{},"inverse":{}}',
     b'{"kind":"drop","joined":false,"at":"","who":"","format":1,"step":{},"inverse":{}}'],
)  # fmt: skip
def test_a_history_that_is_none_is_refused(tmp_path, line):
    filled(tmp_path)
    contents = {k.partition("/data/")[2]: v for k, v in files(bag(tmp_path)).items() if "/data/" in k}
    contents["history/edits.jsonl"] = line + b"\n" + contents["history/edits.jsonl"]
    path = rewritten(tmp_path, contents)
    with library_at(tmp_path / AWAY) as library, pytest.raises(BagRefused, match="cannot be taken in"):
        take_in(path, library)


def test_a_bag_of_a_newer_program_says_so(tmp_path):
    filled(tmp_path)
    contents = {k.partition("/data/")[2]: v for k, v in files(bag(tmp_path)).items() if "/data/" in k}
    contents["about.json"] = contents["about.json"].replace(b'"begun_format": 1', b'"begun_format": 9')
    with library_at(tmp_path / AWAY) as library, pytest.raises(BagRefused, match="newer version"):
        take_in(rewritten(tmp_path, contents), library)


def rewritten(folder, contents):
    """A bag of these files whose lists are in step with them."""
    from inspector.storage.bags.writing import BagFile, write_bag

    return write_bag(folder / "re.zip", "re", [BagFile(name, data) for name, data in contents.items()], []).path


def test_sealed_versions_come_along(tmp_path):
    from inspector.record.versions import keep_version, version_of

    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        session = opened(library, Clock())
        sheet = b"%PDF-1.7 sealed"
        library.frozen.keep(sheet)
        session.do(keep_version(version_of(session.record, "2026-03-01T10:00:00+00:00", sheet, "ab" * 32)))
    path = bag(tmp_path)
    with library_at(tmp_path / AWAY) as library:
        taken = take_in(path, library)
        (version,) = library.load(taken.record_id).record.versions
        assert library.frozen.read(version.sheet) == b"%PDF-1.7 sealed"


def test_a_second_visit_comes_with_the_visit_before_and_its_photographs(tmp_path):
    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        first = library.load(ID).record
        new = begin_second_visit(library, ID, "2027-05-01T09:00:00+00:00")
        again = begin_second_visit(library, new, "2028-05-01T09:00:00+00:00")
        assert library.load(again).record.earlier.record == new
    path = bag(tmp_path, record_id=new)
    with library_at(tmp_path / AWAY) as library:
        taken = take_in(path, library)
        record = library.load(taken.record_id).record
        assert (record.photographs, record.statements) == ((), ())
        before = visit_before(record)
        assert before.photographs == first.photographs
        assert all(library.photographs.check(p.sha256).value == "ok" for p in before.photographs)
        with pytest.raises(StorageTrouble, match="no record"):
            compared(library, ID, new)
    with library_at(tmp_path / HERE) as library:
        was, now, visits = compared(library, ID, new)
        assert (was, now.id, visits.lines) == (first, new, ())


# sharing

ADA, BEN = "Ada Fenn (invented)", "Ben Oake (invented)"


@pytest.fixture
def private(tmp_path):
    """A record full of what is not for others."""
    with library_at(tmp_path / HERE) as library:
        library.create(blank(), profile(tmp_path))
        session = opened(library, Clock())
        for field, value in {"place": "Hidden Lane 7", "asking_price": "7777 pounds", "model": "Tern 250"}.items():
            session.do(set_claim(field, value))
        session.do(
            put_entry(Part.PEOPLE, Person(id="seller", name=BEN, role=Role.SELLER, interest="his own"), label="x")
        )
        mask = Box(left=0.2, top=0.2, right=0.8, bottom=0.8, hides=Covered.PLATE)
        shown = photograph(library, 1, name="Hidden Lane.jpg", camera="Ben's telephone", has_place=True)
        session.do(put_entry(Part.PHOTOGRAPHS, shown, label="x"))
        session.do(change_photograph(session.record.photographs[0], label="x", masks=(mask,)))
        note = "Ben Oake said that it runs. Benign otherwise."
        session.do(
            put_entry(Part.FINDINGS, Finding(item="tank", by="inspector", mark=Mark.DOUBT, note=note), label="x")
        )
    return tmp_path


def shared(folder, **choice):
    with library_at(folder / HERE) as library:
        return pack_to_share(library, ID, folder / "shared.zip", Sharing(**choice))


def test_nothing_private_can_be_found_in_a_sharing_bag(private):
    made = shared(private, names=False)
    everything = b"".join(files(made.path).values())
    for word in ("Hidden Lane", "7777", "telephone", "Ben Oake", "Ada Fenn"):
        assert word.encode() not in everything
    assert b"seller said that it runs. Benign otherwise." in everything
    assert any("names of people" in str(line) for line in made.left_out)


GPS = b"".join(n.to_bytes(4, "little") + d.to_bytes(4, "little") for n, d in ((52, 1), (13, 1), (3, 2)))
XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/">Hollow in XMP exif:GPSLatitude="52,13.025N"</x:xmpmeta>'


def telling_pictures():
    """One picture of each kind that is taken, with a place in everything that such a file can hold."""
    image, words = plain((640, 480)), camera_words()
    words.get_ifd(0x8825)[29] = "Hollow by date"
    tags = PngInfo()
    tags.add_text("Location", "Hollow in tEXt")
    tags.add_text("Comment", "Hollow in zTXt", zip=True)
    tags.add_itxt("XML:com.adobe.xmp", XMP.decode())
    tiff = ImageFileDirectory_v2()
    tiff[0x010E], tiff[0x8825], tiff[700] = "Hollow in TIFF", dict(words.get_ifd(0x8825)), XMP
    thumb = saved(plain((32, 32), (250, 9, 250)), "JPEG")
    with_thumb = words.tobytes() + thumb  # as cameras put a small picture of the whole behind their words
    return {
        "Hollow Farm.jpg": saved(image, "JPEG", exif=with_thumb, xmp=XMP, comment=b"Hollow in a comment"),
        "Hollow Farm.heic": heic(image, words.tobytes(), xmp=XMP),
        "Hollow Farm.png": saved(image, "PNG", pnginfo=tags, exif=words),
        "Hollow Farm.webp": saved(image, "WEBP", exif=words, xmp=XMP),
        "Hollow Farm.tif": saved(image, "TIFF", tiffinfo=tiff),
    }, thumb


def test_of_every_kind_of_picture_and_of_all_that_was_ever_entered_no_place_is_left_in_any_byte(tmp_path):
    pictures, thumb = telling_pictures()
    with library_at(tmp_path / HERE) as library:
        library.create(blank(), profile(tmp_path))
        session = opened(library, Clock())
        for place in ("Oldhollow Mews 3", "Hollow Farm, Nether Wending 12"):
            session.do(set_claim("place", place))
        session.do(set_claim("asking_price", "8642"))
        session.do(set_claim("asking_price", ""))
        for name, data in pictures.items():
            taken = take((name, data), library.photographs)
            tie = {"caption": "in the yard of hollow farm", "item": "tank"}
            shown = photograph_of(taken, "2026-03-01T10:00:00+00:00", "inspector", **tie)
            box = Box(left=0.1, top=0.1, right=0.9, bottom=0.9, hides=Covered.NUMBER)
            session.do(put_entry(Part.PHOTOGRAPHS, shown.model_copy(update={"masks": (box,)}), label="x"))
        assert [p.has_place for p in session.record.photographs] == [True] * len(pictures)
        session.do(said("claim-place-B", "Claim: place: Wendinghollow Barn"))
        session.do(said("told", "It stood at Hollow Farm, Nether Wending 12, then in NETHER WENDING 12 for years."))
        whole = pack(library, ID, tmp_path / "whole.zip")
    everything = b"".join(files(whole.path).values())
    assert all(word in everything for word in (b"Hollow in XMP", b"Oldhollow", b"8642", thumb, GPS)), "it is looked for"
    contents = files(shared(tmp_path).path)
    everything = b"".join(contents.values()) + (tmp_path / "shared.zip").read_bytes()
    told = (b"ollow", b"wending", b"8642", thumb, GPS, b"GPS", b"Exif", b"xmpmeta", MAKE.encode(), SERIAL.encode())
    for word in told:
        assert word.lower() not in everything.lower(), word
    assert not any(word in name.lower() for name in contents for word in ("hollow", "thumb", "history", "versions"))
    copies = [data for name, data in contents.items() if "/photographs/" in name]
    assert len(copies) == len(pictures)
    assert {marker for data in copies for marker, _ in segments(data)} <= ALLOWED
    assert b"then in \xe2\x80\xa6 for years" in everything


def test_a_line_full_of_names_and_places_can_still_be_shared(tmp_path):
    with library_at(tmp_path / HERE) as library:
        library.create(blank(), profile(tmp_path))
        session = opened(library, Clock())
        session.do(set_claim("place", "Wem"))
        session.do(put_entry(Part.PEOPLE, Person(id="seller", name="Al", role=Role.SELLER), label="x"))
        session.do(set_claim("titled", "Al of Wem " * 49))
        told = Inquiry(id="q", about="Al in Wem " * 49)
        session.do(put_entry(Part.INQUIRIES, told, label="x"))
    contents = files(shared(tmp_path, names=False).path)
    assert b"Wem" not in b"".join(contents.values())


def test_that_a_covered_number_stands_in_the_record_is_said(tmp_path):
    with library_at(tmp_path / HERE) as library:
        library.create(blank(), profile(tmp_path))
        session = opened(library, Clock())
        box = Box(left=0.1, top=0.1, right=0.9, bottom=0.9, hides=Covered.NUMBER)
        session.do(put_entry(Part.PHOTOGRAPHS, photograph(library, 1, masks=(box,)), label="x"))
        assert not any("stand in the record" in str(line) for line in to_share(session.record, Sharing())[1])
        session.do(put_entry(Part.READINGS, Reading(id="r", place="frame", figures=figures_of("12345")), label="x"))
        assert any("stand in the record" in str(line) for line in to_share(session.record, Sharing())[1])


def test_names_stay_unless_they_are_asked_to_go(private):
    everything = b"".join(files(shared(private).path).values())
    assert b"Ben Oake" in everything
    assert b"Hidden Lane" not in everything


def test_the_originals_are_not_in_it_and_what_is_covered_is_gone_from_the_copies(private):
    from io import BytesIO

    from PIL import Image

    from inspector.photo.masks import INK

    contents = files(shared(private).path)
    with library_at(private / HERE) as library:
        original = library.load(ID).record.photographs[0].sha256
        assert not any(original in name for name in contents)
    ((_, copy),) = [one for one in contents.items() if "/photographs/" in one[0]]
    with Image.open(BytesIO(copy)) as image:
        assert not image.getexif()
        middle = image.convert("RGB").getpixel((image.width // 2, image.height // 2))
    assert all(abs(a - b) < 12 for a, b in zip(middle, INK, strict=True))


def test_it_says_what_was_left_out(private):
    text = next(data.decode() for name, data in files(shared(private).path).items() if name.endswith("left-out.txt"))
    for part in ("money", "place", "history", "covered in 1 photographs", "written by hand"):
        assert part in text


def test_a_sharing_bag_can_be_taken_in_and_a_photograph_can_be_held_back(private):
    with library_at(private / AWAY) as library:
        taken = take_in(shared(private).path, library)
        record = library.load(taken.record_id).record
        assert (len(record.photographs), record.claim.place) == (1, "")
    made = shared(private, photographs=frozenset())
    assert not any("/photographs/" in name for name in files(made.path))
    assert any("1 photographs that were not chosen" in str(line) for line in made.left_out)


@given(done=st.lists(steps(PARTS), max_size=8))
@settings(max_examples=20, deadline=None)
def test_whatever_was_entered_no_money_and_no_place_is_left_to_share(done):
    from inspector.record.edits import apply

    record = blank()
    for step in done:
        record = apply(record, step).record
    for names in (True, False):
        left, _ = to_share(record, Sharing(names=names))
        assert left.money == type(left.money)()
        assert (left.comparables, left.adjustments, left.remedies, left.signatures) == ((), (), (), ())
        assert (left.claim.place, left.claim.asking_price) == ("", "")
        assert names or not any(person.name for person in left.people)


# the command


def test_the_command_packs_and_tells_the_sum(tmp_path):
    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        answer, lines = packed(library, ID, tmp_path / "new" / "bag.zip", sharing=False, names=True)
        assert answer["sha256"] in str(lines[1])
        with pytest.raises(StorageTrouble, match="record file has no photographs"):
            packed(library, "record.json", tmp_path / "x.zip", sharing=False, names=True)
        with pytest.raises(StorageTrouble, match="add --sharing"):
            packed(library, ID, tmp_path / "x.zip", sharing=False, names=False)
    assert zipfile.is_zipfile(tmp_path / "new" / "bag.zip")
