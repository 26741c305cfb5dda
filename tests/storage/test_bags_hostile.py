"""Zips made to do harm: each is refused in words, nothing is written, and little memory is used."""

import io
import json
import random
import stat
import struct
import tracemalloc
import zipfile
import zlib
from contextlib import contextmanager

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inspector.packing.pack import pack
from inspector.packing.take import offer, take_in
from inspector.storage.bags import limits
from inspector.storage.bags.archive import opened
from inspector.storage.bags.checking import check
from inspector.storage.bags.names import refused
from inspector.storage.bags.refusal import BagRefused, Broken
from inspector.storage.bags.writing import BagFile, write_bag
from inspector.storage.trouble import StorageTrouble
from tests.storage.bagged import HERE, ID, files, filled, library_at, small_zip, zipped

DECLARED = {"b/bagit.txt": b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"}
MEGA = 1 << 20


def refusal(path):
    """The sentence with which the file is refused."""
    with pytest.raises(BagRefused) as caught:
        opened(path)
    sentence = str(caught.value)
    assert "\n" not in sentence
    return sentence


def made(tmp_path, data):
    path = tmp_path / "bad.zip"
    path.write_bytes(data)
    return path


def named(tmp_path, name, *, data=b"x", mode=None, twice=False):
    """A zip that holds a file of that name, written as it is."""
    path = tmp_path / "bad.zip"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("b/bagit.txt", DECLARED["b/bagit.txt"])
        entry = zipfile.ZipInfo("x")
        entry.filename = name  # past the tidying of the constructor
        entry.create_system = 3
        entry.external_attr = (mode or 0o100644) << 16
        archive.writestr(entry, data)
        if twice:
            entry = zipfile.ZipInfo("x")
            entry.filename = name.upper()
            archive.writestr(entry, data)
    return path


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("../out.txt", "leads out"),
        ("b/../../out.txt", "leads out"),
        ("b/./x", "leads out"),
        ("b//x", "leads out"),
        ("/etc/x", "root of a drive"),
        ("\\\\server\\x", "root of a drive"),
        ("C:/x", "root of a drive"),
        ("c:x", "root of a drive"),
        ("b\\..\\x", "parts paths"),
        ("b/x:stream", "parts paths"),
        ("b/con", "device"),
        ("b/NUL.txt", "device"),
        ("b/com1.tar.gz", "device"),
        ("b/LPT¹", "device"),
        ("b/x.", "point or a space"),
        ("b/x ", "point or a space"),
        ("b/x\x00y", "cannot be seen"),
        ("b/x\x1b[2J", "cannot be seen"),
        ("b/gpj\u202egpj.exe", "direction of reading"),
        ("b/" + "x" * 300, "too long"),
        ("b/" + "y/" * 600 + "x", "too long"),
    ],
)
def test_a_name_that_tricks_is_refused(tmp_path, name, word):
    assert word in str(refused(name))
    if "\x00" not in name:  # the library that makes the zip cuts it there
        assert word in refusal(named(tmp_path, name))


@pytest.mark.parametrize("name", ["b/x.txt", "b/ä é.jpg", "b/.hidden", "b/console.txt", "b/comic1", "b/a\nb"])
def test_a_plain_name_is_not_refused(name):
    assert refused(name) is None


@pytest.mark.parametrize("kind", [stat.S_IFLNK, stat.S_IFIFO, stat.S_IFCHR, stat.S_IFSOCK, stat.S_IFBLK, stat.S_IFDIR])
def test_a_link_or_device_is_refused(tmp_path, kind):
    assert "link or a device" in refusal(named(tmp_path, "b/x", data=b"/etc/passwd", mode=kind | 0o777))


def test_a_link_in_a_folder_is_refused(tmp_path):
    home = tmp_path / "bag"
    home.mkdir()
    (home / "bagit.txt").write_bytes(DECLARED["b/bagit.txt"])
    (home / "data").symlink_to(tmp_path)
    assert "link or a device" in refusal(home)


def test_two_names_that_are_one_on_some_systems_are_refused(tmp_path):
    assert "one name on some systems" in refusal(named(tmp_path, "b/a.txt", twice=True))
    composed = {**DECLARED, "b/\u00e9": b"1", "b/e\u0301": b"2"}
    assert "one name on some systems" in refusal(zipped(tmp_path / "n.zip", composed))


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_the_same_name_twice_is_refused(tmp_path):
    path = tmp_path / "two.zip"
    with zipfile.ZipFile(path, "w") as archive:
        for data in (b"one", b"two"):
            archive.writestr("b/bagit.txt", data)
    assert "one name" in refusal(path)


def test_a_file_that_is_also_a_folder_is_refused(tmp_path):
    assert "itself a file" in refusal(zipped(tmp_path / "f.zip", {**DECLARED, "b/x": b"", "b/x/y": b""}))


def test_a_name_in_an_untold_writing_is_refused(tmp_path):
    data = small_zip({**DECLARED, "b/zz.txt": b"x"}).replace(b"b/zz.txt", b"b/\xe4\xf6.txt")
    assert "writing that is not told" in refusal(made(tmp_path, data))


def test_a_name_that_is_utf_8_without_saying_so_is_read(tmp_path):
    data = small_zip({**DECLARED, "b/zz.txt": b"x"}).replace(b"b/zz.txt", "b/ä.txt".encode())
    with opened(made(tmp_path, data)) as archive:
        assert "ä.txt" in archive.sizes


def test_a_bomb_of_one_file_is_refused_before_it_unpacks(tmp_path):
    path = zipped(tmp_path / "b.zip", {**DECLARED, "b/data/x": bytes(64 * MEGA)}, zipfile.ZIP_DEFLATED)
    assert path.stat().st_size < MEGA // 8
    tracemalloc.start()
    assert "unpack" in refusal(path).lower()
    used = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert used < MEGA


def test_a_bomb_of_many_files_is_refused_for_their_sum(tmp_path):
    many = {f"b/data/{n}": bytes(MEGA - 1) for n in range(40)}
    assert "million bytes" in refusal(zipped(tmp_path / "b.zip", {**DECLARED, **many}, zipfile.ZIP_DEFLATED))


def test_files_that_share_their_bytes_are_refused(tmp_path):
    # The way of D. Fifield, "A better zip bomb" (usenix.org/conference/woot19/presentation/fifield): entries overlap.
    data = bytearray(small_zip({**DECLARED, "b/one": b"x" * 50, "b/two": b"x" * 50}))
    first, second = (data.index(b"b/one") - 30, data.index(b"b/two") - 30)
    at = data.rindex(b"b/two") - 4
    assert struct.unpack_from("<L", data, at)[0] == second
    struct.pack_into("<L", data, at, first)
    assert "lies where another file is" in refusal(made(tmp_path, bytes(data)))


def many(count):
    """A zip of so many empty files, with the ends that such a number needs (APPNOTE.TXT 6.3.10, 4.3.14 to 4.3.16)."""
    heads, listed = [], []
    at = 0
    for n in range(count):
        name = b"b/%d" % n
        heads.append(struct.pack("<4s5H3L2H", b"PK\3\4", 20, 0, 0, 0, 33, 0, 0, 0, len(name), 0) + name)
        shared = struct.pack("<4s6H3L5H2L", b"PK\1\2", 20, 20, 0, 0, 0, 33, 0, 0, 0, len(name), 0, 0, 0, 0, 0, at)
        listed.append(shared + name)
        at += len(heads[-1])
    directory = b"".join(listed)
    end = at + len(directory)
    large = struct.pack("<4sQ2H2L4Q", b"PK\6\6", 44, 45, 45, 0, 0, count, count, len(directory), at)
    large += struct.pack("<4sLQL", b"PK\6\7", 0, end, 1)
    plain = struct.pack("<4s4H2LH", b"PK\5\6", 0, 0, 0xFFFF, 0xFFFF, 0xFFFFFFFF, 0xFFFFFFFF, 0)
    return b"".join(heads) + directory + large + plain


def test_a_hundred_thousand_files_are_refused_at_once(tmp_path):
    path = tmp_path / "many.zip"
    path.write_bytes(many(100_000))
    with zipfile.ZipFile(path) as archive:
        assert len(archive.infolist()) == 100_000, "another reader finds them all"
    lied = bytearray(small_zip(DECLARED))
    for at in (8, 10):
        struct.pack_into("<H", lied, len(lied) - 22 + at, 0xFFFF - 1)
    liar = made(tmp_path, bytes(lied))
    tracemalloc.start()
    assert "100000 files" in refusal(path)
    assert "65534 files" in refusal(liar)
    used = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert used < MEGA


def test_two_ends_that_differ_are_refused(tmp_path):
    data = bytearray(many(3))
    struct.pack_into("<2H", data, len(data) - 22 + 8, 2, 2)
    assert "two ends" in refusal(made(tmp_path, bytes(data)))


def test_more_files_than_the_zip_says_are_refused(tmp_path):
    data = bytearray(small_zip({**DECLARED, "b/x": b"x"}))
    for at in (8, 10):
        struct.pack_into("<H", data, len(data) - 22 + at, 1)
    assert "says that it holds 1 files and lists more" in refusal(made(tmp_path, bytes(data)))


def test_a_locked_file_is_refused(tmp_path):
    data = bytearray(small_zip({**DECLARED, "b/x": b"x"}))
    at = data.rindex(b"PK\1\2") + 8
    data[at] |= 1
    assert "password" in refusal(made(tmp_path, bytes(data)))


@pytest.mark.parametrize("method", [zipfile.ZIP_BZIP2, zipfile.ZIP_LZMA])
def test_an_unknown_way_of_packing_is_refused(tmp_path, method):
    assert "way that is not known" in refusal(zipped(tmp_path / "w.zip", {**DECLARED, "b/x": b"x" * 99}, method))


@pytest.mark.parametrize("method", [zipfile.ZIP_STORED, zipfile.ZIP_DEFLATED])
def test_a_file_whose_sum_is_wrong_is_named(tmp_path, method):
    words = b"words and more words, and words again" * 9
    path = zipped(tmp_path / "s.zip", {**DECLARED, "b/data/x": words}, method)
    crc = struct.pack("<L", zlib.crc32(words))
    path.write_bytes(path.read_bytes().replace(crc, b"\0\0\0\0"))
    with opened(path) as archive:
        with pytest.raises(Broken, match="data/x: changed or damaged"):
            archive.read("data/x")
        assert any(f.file == "data/x" and "damaged" in str(f.said) for f in check(archive).faults)


def test_a_file_that_unpacks_to_more_than_it_says_stops_there(tmp_path):
    path = zipped(tmp_path / "m.zip", {**DECLARED, "b/data/x": b"ab" * 500}, zipfile.ZIP_DEFLATED)
    path.write_bytes(path.read_bytes().replace(struct.pack("<L", 1000), struct.pack("<L", 10)))
    with opened(path) as archive, pytest.raises(Broken, match="changed or damaged"):
        archive.read("data/x")


def test_what_the_list_says_must_be_what_the_file_says_of_itself(tmp_path):
    data = bytearray(small_zip({**DECLARED, "b/data/xxxx": b"x"}))
    at = data.index(b"b/data/xxxx")
    data[at : at + 11] = b"b/data/yyyy"
    with opened(made(tmp_path, bytes(data))) as archive, pytest.raises(Broken, match="xxxx: changed"):
        archive.read("data/xxxx")


@pytest.mark.parametrize("lie", [2**40, 2**63, 2**64 - 1])
def test_lies_about_large_sizes_are_refused(tmp_path, lie):
    path = tmp_path / "l.zip"
    with zipfile.ZipFile(path, "w") as archive:
        archive.writestr("b/bagit.txt", DECLARED["b/bagit.txt"])
        entry = zipfile.ZipInfo("b/data/x")
        entry.extra = struct.pack("<2H2Q", 1, 16, lie, lie)
        archive.writestr(entry, b"x")
    data = bytearray(path.read_bytes())
    struct.pack_into("<2L", data, data.rindex(b"PK\1\2") + 20, 0xFFFFFFFF, 0xFFFFFFFF)
    assert refusal(made(tmp_path, bytes(data)))


def test_a_large_size_that_is_not_given_is_refused(tmp_path):
    data = bytearray(small_zip({**DECLARED, "b/x": b"x"}))
    struct.pack_into("<2L", data, data.rindex(b"PK\1\2") + 20, 0xFFFFFFFF, 0xFFFFFFFF)
    assert "names a size that it does not give" in refusal(made(tmp_path, bytes(data)))


def test_a_zip_behind_or_before_other_bytes_is_refused(tmp_path):
    data = small_zip(DECLARED)
    assert refusal(made(tmp_path, data + b"more"))
    assert refusal(made(tmp_path, b"MZ" * 100 + data))


def test_several_bags_in_one_zip_are_refused(tmp_path):
    two = {**DECLARED, "c/bagit.txt": DECLARED["b/bagit.txt"]}
    assert "several bags" in refusal(zipped(tmp_path / "two.zip", two))


@given(data=st.binary(max_size=400), head=st.booleans(), tail=st.booleans())
@settings(max_examples=150, deadline=None)
def test_any_bytes_are_refused_in_words_or_read(tmp_path_factory, data, head, tail):
    whole = small_zip(DECLARED)
    path = tmp_path_factory.mktemp("any") / "any.zip"
    path.write_bytes((whole[:60] if head else b"") + data + (whole[-60:] if tail else b""))
    with pytest.raises(BagRefused):
        opened(path)


@given(at=st.integers(0, 10_000), put=st.binary(min_size=1, max_size=8))
@settings(max_examples=250, deadline=None)
def test_a_zip_with_a_few_bytes_put_in_is_refused_or_told_or_the_same(tmp_path_factory, at, put):
    whole = small_zip({**DECLARED, "b/data/x": b"words", "b/data/y": b"more"})
    at %= len(whole)
    path = tmp_path_factory.mktemp("put") / "put.zip"
    path.write_bytes(whole[:at] + put + whole[at + len(put) :])
    told = ""
    try:
        with opened(path) as archive:
            check(archive)
    except StorageTrouble as trouble:
        told = str(trouble)
    assert "\n" not in told


@pytest.mark.parametrize(
    "record",
    [b"", b"null", b"[]", b"{", b'{"format": 1}', b"[" * 200_000, b'{"format": 1e400}', b"\xff\xfe", b'{"format": 99}'],
)
def test_a_bag_with_a_record_that_is_none_is_refused_and_leaves_nothing(tmp_path, record):
    contents = {"about.json": b'{"format":1,"kind":"sharing","record":"A","updated":"","begun_format":1}',
                "record.json": record}  # fmt: skip
    path = bag_of(tmp_path, contents)
    with library_at(tmp_path / "library") as library:
        before = sorted(p for p in library.folder.rglob("*") if "backups" not in p.parts)
        with pytest.raises(BagRefused, match="cannot be taken in"):
            take_in(path, library)
        with pytest.raises(BagRefused):
            offer(path, library)
        assert sorted(p for p in library.folder.rglob("*") if "backups" not in p.parts) == before
        assert library.machines() == ()


def bag_of(folder, contents):
    from inspector.storage.bags.writing import BagFile, write_bag

    return write_bag(folder / "b.zip", "b", [BagFile(name, data) for name, data in contents.items()], []).path


def test_a_bag_of_something_else_is_not_taken_in(tmp_path):
    path = bag_of(tmp_path, {"letter.txt": b"words"})
    with library_at(tmp_path / "library") as library, pytest.raises(BagRefused, match="not of an inspection"):
        take_in(path, library)


def test_a_large_file_is_read_in_pieces(tmp_path):
    path = tmp_path / "large.zip"
    with zipfile.ZipFile(path, "w") as archive:
        for name, data in DECLARED.items():
            archive.writestr(name, data)
        with archive.open("b/data/x", "w") as into:
            for _ in range(64):
                into.write(b"x" * MEGA)
    tracemalloc.start()
    with opened(path) as archive:
        check(archive)
    used = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert used < 8 * MEGA


def test_deflated_bytes_are_read_in_pieces_too(tmp_path):
    text = b"".join(str(n).encode() for n in range(MEGA))
    path = zipped(tmp_path / "d.zip", {**DECLARED, "b/data/x": text}, zipfile.ZIP_DEFLATED)
    with opened(path) as archive:
        pieces = list(archive.chunks("data/x"))
    assert b"".join(pieces) == text
    assert max(map(len, pieces)) <= limits.CHUNK


def test_bytes_of_a_zip_are_bytes_in_memory_only(tmp_path):
    with zipfile.ZipFile(io.BytesIO(small_zip(DECLARED))) as archive:
        assert archive.testzip() is None, "the zips that these tests start from are good ones"


def bagged(tmp_path, contents, tags=None):
    """A whole bag of these files below data, its tag files then replaced by these."""
    path = write_bag(tmp_path / "whole.zip", "b", [BagFile(n, d) for n, d in contents.items()], []).path
    inside = {**files(path), **{f"b/{name}": data for name, data in (tags or {}).items()}}
    return zipped(tmp_path / "bag.zip", inside)


@contextmanager
def within(megabytes):
    """What is done inside takes no more memory of Python's own."""
    tracemalloc.start()
    try:
        yield
        used = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert used < megabytes * MEGA, f"{used // MEGA} MB"


@pytest.mark.parametrize(
    ("name", "data"),
    [
        ("bagit.txt", b"BagIt-Version: " + b"9" * 5000 + b".0\nTag-File-Character-Encoding: UTF-8\n"),
        ("bag-info.txt", b"Payload-Oxum: " + b"9" * 5000 + b".1\n"),
        ("bag-info.txt", b"Payload-Oxum: \xd9\xa1.\xd9\xa1\n"),
    ],
)
def test_numbers_that_are_none_are_faults(tmp_path, name, data):
    # Python turns no text of more than 4300 figures into a number (docs.python.org, "Integer string conversion").
    with opened(bagged(tmp_path, {"a": b"x"}, {name: data})) as archive:
        assert name in {fault.file for fault in check(archive).faults}


def test_notes_of_endless_lines_are_read_once(tmp_path):
    noise = random.Random(8493).randbytes(MEGA).hex().encode()
    lines = b"A: b\n" + b"\n".join(b" " + noise[n : n + 3] for n in range(0, len(noise), 3))
    path = bagged(tmp_path, {"a": b"x"}, {"bag-info.txt": lines})
    with within(200), opened(path) as archive:
        assert not check(archive).whole


@pytest.mark.parametrize("line", ["", "%x\n", "%064x  data/%x\n", "%064x  elsewhere/%x\n"])
def test_lists_of_endless_lines_are_told_and_not_followed(tmp_path, line):
    whole = b"".join((line % ((n,) * line.count("%"))).encode() for n in range(120_000))
    whole = whole or bytes(range(33, 64)) * 40_000
    path = bagged(tmp_path, {"a": b"x"}, {"manifest-sha256.txt": whole})
    with within(200), opened(path) as archive:
        found = check(archive)
    assert not found.whole
    assert len(found.faults) <= limits.MOST_FAULTS + 1


def inspection(tmp_path):
    """What lies below data in a bag of an inspection."""
    filled(tmp_path)
    with library_at(tmp_path / HERE) as library:
        path = pack(library, ID, tmp_path / "good.zip").path
    return {name.partition("/data/")[2]: data for name, data in files(path).items() if "/data/" in name}


def said_of(tmp_path, contents):
    """The sentence with which a bag of these is not taken in."""
    path = bagged(tmp_path, contents)
    with library_at(tmp_path / "away") as library:
        with pytest.raises(BagRefused) as caught:
            take_in(path, library)
        assert library.machines() == ()
        assert library.photographs.listing() == []
    return str(caught.value)


def test_a_record_that_would_fill_the_memory_is_refused(tmp_path):
    contents = inspection(tmp_path)
    contents["record.json"] = b'{"format":1,"x":[' + b"[]," * (6 * MEGA) + b"0]}"
    with within(100):
        assert "larger than such a file can be" in said_of(tmp_path, contents)


@pytest.mark.parametrize("part", ["x", "findings", "created"])
def test_a_record_of_millions_of_values_is_refused_before_they_are_made(tmp_path, part):
    contents = inspection(tmp_path)
    record = json.loads(contents["record.json"])
    text = json.dumps({**record, part: "HERE"}).replace('"HERE"', "[" + "[]," * MEGA + "0]")
    for name in ("record.json", "history/begun.json"):
        with within(120):
            assert "more values than a record can" in said_of(tmp_path, {**contents, name: text.encode()})
        for left in (tmp_path / "whole.zip", tmp_path / "bag.zip"):
            left.unlink()


def test_a_history_that_would_take_hours_to_follow_is_refused(tmp_path, monkeypatch):
    monkeypatch.setattr("inspector.packing.inside.MOST_WORK", 50_000)
    contents = inspection(tmp_path)
    first = json.loads(contents["history/edits.jsonl"].splitlines()[0])
    put = first["step"]["puts"][0]
    first["step"]["puts"] = [{**put, "key": str(n), "value": {**put["value"], "id": str(n)}} for n in range(400)]
    line = json.dumps(first).encode() + b"\n"
    contents["history/edits.jsonl"] = line * 40
    assert "longer than that of an inspection" in said_of(tmp_path, contents)


def test_a_profile_of_endless_files_is_refused_before_any_is_written(tmp_path, monkeypatch):
    contents = inspection(tmp_path)
    contents |= {f"profile/{n}.svg": b"" for n in range(limits.MOST_PROFILE_FILES)}
    written = []
    monkeypatch.setattr("inspector.packing.laid_out.write_out", lambda *given: written.append(given))
    assert "profile is larger than one can be" in said_of(tmp_path, contents)
    assert written == []


def test_a_day_of_change_that_is_none_is_refused(tmp_path):
    contents = inspection(tmp_path)
    about = json.loads(contents["about.json"])
    contents["about.json"] = json.dumps({**about, "updated": "yesterday"}).encode()
    assert "cannot be read" in said_of(tmp_path, contents)


@pytest.mark.parametrize("folder", ["photographs", "versions"])
def test_a_file_that_bears_the_sum_of_another_is_refused_and_nothing_stays(tmp_path, folder):
    contents = inspection(tmp_path)
    contents[f"{folder}/{'0' * 64}-1.pdf"] = b"something else"
    assert "not what its name says" in said_of(tmp_path, contents)
    assert not list((tmp_path / "away").glob("versions/*"))
