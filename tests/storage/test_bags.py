"""Bags as they are written and checked, against the RFC and against another program that knows them."""

import hashlib
import random
import resource
import shutil
import zipfile
from pathlib import Path

import bagit
import pytest

from inspector.packing.pack import pack
from inspector.photo.refusal import Cancelled
from inspector.storage.bags.archive import opened
from inspector.storage.bags.checking import check
from inspector.storage.bags.names import decoded, encoded, fit, refused
from inspector.storage.bags.refusal import BagRefused
from inspector.storage.bags.writing import BagFile, write_bag
from inspector.storage.trouble import DiskFull, StorageTrouble
from tests.storage.bagged import ID, changed_at, files, filled, library_at, unzipped, zipped

CHANGES = 1000
SUM_OF_HELLO = "5891b5b522d5df086d0ff0b110fbd9d21bb4fc7163af34d08286a2e846f6be03"


@pytest.fixture(scope="module")
def bag(tmp_path_factory):
    """A whole bag, made once."""
    folder = tmp_path_factory.mktemp("bag")
    with library_at(filled(folder)) as library:
        return pack(library, ID, folder / "whole.zip").path


def checked(path):
    with opened(path) as archive:
        return check(archive)


def named(path):
    return {fault.file for fault in checked(path).faults}


def small(folder, contents=None):
    """A bag of a few small files."""
    given = contents or {"a.txt": b"hello\n", "b/c.txt": b""}
    return write_bag(folder / "small.zip", "small", [BagFile(k, v) for k, v in given.items()], [("Label", "value")])


# what is written


def test_another_program_finds_our_bag_valid(bag, tmp_path):
    # bagit 1.9.0 (Library of Congress, pypi.org/project/bagit), which reads RFC 8493 bags of version 1.0.
    home = bagit.Bag(str(unzipped(bag, tmp_path)))
    home.validate()
    assert home.version_info == (1, 0)
    assert home.info["External-Identifier"] == ID


def test_the_declaration_and_the_lists_are_as_the_standard_has_them(tmp_path):
    # RFC 8493, 2.1.1, 2.1.3 and 2.2.2; the sum of "hello\n" is that of coreutils' sha256sum.
    inside = files(small(tmp_path).path)
    assert inside["small/bagit.txt"] == b"BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n"
    assert inside["small/manifest-sha256.txt"].startswith(f"{SUM_OF_HELLO}  data/a.txt\n".encode())
    assert b"Payload-Oxum: 6.2\n" in inside["small/bag-info.txt"]
    assert {line.split()[1] for line in inside["small/tagmanifest-sha256.txt"].splitlines()} == {
        b"bag-info.txt", b"bagit.txt", b"manifest-sha256.txt"}  # fmt: skip


def test_the_sum_that_stands_for_all_is_that_of_the_list_of_lists(tmp_path):
    made = small(tmp_path)
    lists = files(made.path)["small/tagmanifest-sha256.txt"]
    assert made.sha256 == hashlib.sha256(lists).hexdigest() == checked(made.path).sha256


def test_a_bag_past_four_gigabytes_is_read_as_it_is_written(tmp_path, monkeypatch):
    # APPNOTE.TXT 6.3.10, 4.5.3: sizes from 2**32 stand in an extra field; here they do so from a few bytes on.
    monkeypatch.setattr(zipfile, "ZIP64_LIMIT", 20)
    made = small(tmp_path, {"a.txt": b"hello\n" * 9, "b/c.txt": b"x" * 21, "d": b""})
    with zipfile.ZipFile(made.path) as archive:
        assert any(entry.extra[:2] == b"\x01\x00" for entry in archive.infolist())
    assert checked(made.path).faults == ()
    assert checked(made.path).size == 75


def test_the_same_files_give_the_same_bytes(tmp_path):
    first = small(tmp_path).path.read_bytes()
    assert small(tmp_path).path.read_bytes() == first


def test_names_are_written_with_their_line_ends_and_percent_signs_as_numbers(tmp_path):
    # RFC 8493, 2.1.3: only LF, CR, CRLF and % are encoded.
    name = "50%\r\nand %0A more.txt"
    made = small(tmp_path, {name: b"x"})
    assert b"data/50%25%0D%0Aand %250A more.txt\n" in files(made.path)["small/manifest-sha256.txt"]
    assert decoded(encoded(name)) == name
    assert checked(made.path).whole


@pytest.mark.parametrize(("written", "meant"), [("a%0db", "a\rb"), ("100%25", "100%25"), ("%41", "%41")])
def test_before_version_one_a_percent_sign_meant_itself(written, meant):
    assert decoded(written, old=True) == meant


def test_every_original_is_there_under_its_sum_and_with_its_name(bag):
    names = [Path(name).name for name in files(bag) if "/photographs/" in name]
    assert len(names) == 3, "the one that was taken out can be brought back"
    assert sum("DSC 000" in name for name in names) == 2
    sums = {hashlib.sha256(data).hexdigest() for name, data in files(bag).items() if "/photographs/" in name}
    assert {name[:64] for name in names} == sums


def test_the_summary_can_be_read_without_the_program_and_without_a_network(bag):
    inside = {name.partition("/data/")[2]: data.decode() for name, data in files(bag).items() if "summary" in name}
    text, page = inside["summary.txt"], inside["summary.html"]
    assert "It was said to be all there." in text
    assert "It was said to be all there." in page
    assert page.count("<img ") == 2
    assert not any(word in page for word in ("http", "<script", "url(", "//"))


def test_a_name_that_fits_everywhere_is_made_of_any_words():
    assert fit('a/b\\c:d*e?f"g<h>i|j%k.jpg') == "a b c d e f g h i j k.jpg"
    assert fit("..\u202egpj.exe\n") == "gpj.exe"
    assert len(fit("ä" * 500 + ".jpeg").encode()) <= 160
    assert all(refused("x-" + fit(words)) is None for words in ("con", "a ", "b.", "nul.jpg", "🏍" * 90))


# writing that fails


def test_stopped_halfway_it_leaves_what_stood_there(tmp_path):
    target = tmp_path / "small.zip"
    target.write_bytes(b"mine")

    def stop(done, total, name):
        if done:
            raise Cancelled

    with pytest.raises(Cancelled):
        write_bag(target, "small", [BagFile("a", b"x" * 100), BagFile("b", b"y")], [], stop)
    assert [p.name for p in tmp_path.iterdir()] == ["small.zip"]
    assert target.read_bytes() == b"mine"


def test_progress_ends_with_all_bytes_done(tmp_path):
    heard = []
    write_bag(tmp_path / "s.zip", "s", [BagFile("a", b"x" * 100), BagFile("b", b"y")], [], lambda *t: heard.append(t))
    assert heard[-1] == (101, 101, "b")


def test_a_full_disk_is_one_sentence_and_nothing_is_left(tmp_path):
    # A limit on the size of files makes the very writes fail that fail on a full disk, getrlimit(2).
    before = resource.getrlimit(resource.RLIMIT_FSIZE)
    resource.setrlimit(resource.RLIMIT_FSIZE, (100_000, before[1]))
    try:
        with pytest.raises(DiskFull, match="no room left"):
            write_bag(tmp_path / "s.zip", "s", [BagFile("a", b"x" * 300_000)], [])
    finally:
        resource.setrlimit(resource.RLIMIT_FSIZE, before)
    assert list(tmp_path.iterdir()) == []


def test_a_photograph_that_is_gone_is_named_and_the_rest_is_packed(tmp_path):
    home = filled(tmp_path)
    with library_at(home) as library:
        gone = library.load(ID).record.photographs[0].sha256
        library.photographs.path(gone).chmod(0o644)
        library.photographs.path(gone).unlink()
        made = pack(library, ID, tmp_path / "out.zip")
    assert gone[:12] in str(made.left_out[0])
    assert checked(made.path).whole


def test_a_photograph_that_was_changed_on_the_disk_is_not_packed_as_if_it_were_the_original(tmp_path):
    home = filled(tmp_path)
    with library_at(home) as library:
        path = library.photographs.path(library.load(ID).record.photographs[0].sha256)
        path.chmod(0o644)
        path.write_bytes(path.read_bytes()[:-1] + b"?")
        made = pack(library, ID, tmp_path / "out.zip")
    assert "not as it was kept" in str(made.left_out[0])


def test_an_unknown_record_cannot_be_packed(tmp_path):
    with library_at(filled(tmp_path)) as library, pytest.raises(StorageTrouble, match="no record"):
        pack(library, "NOTHERE1", tmp_path / "out.zip")
    assert not (tmp_path / "out.zip").exists()


# what a check finds


def test_a_bag_as_packed_is_whole(bag):
    assert checked(bag).faults == ()


def test_every_change_of_a_byte_is_told_with_the_file_named(bag, tmp_path):
    contents, chance = files(bag), random.Random(8493)
    base = bag and next(iter(contents)).split("/")[0] + "/"
    full = [name for name in contents if contents[name]]
    for n in range(CHANGES):
        name = full[n % len(full)]
        at = chance.randrange(len(contents[name]))
        path = changed_at(tmp_path / "changed.zip", contents, name, at, chance.randrange(8))
        found = checked(path)
        told = {fault.file for fault in found.faults} | {str(fault.said) for fault in found.faults}
        short = name.removeprefix(base)
        assert any(short in one for one in told), f"{short}: byte {at} was changed and not told"


def test_every_change_of_a_byte_of_the_zip_itself_is_told_or_changes_nothing_that_is_read(bag, tmp_path):
    whole, chance, read = bag.read_bytes(), random.Random(1), _read(bag)
    for _ in range(CHANGES):
        data = bytearray(whole)
        data[chance.randrange(len(data))] ^= 1 << chance.randrange(8)
        path = tmp_path / "changed.zip"
        path.write_bytes(data)
        try:
            found = checked(path)
        except BagRefused:
            continue
        assert not found.whole or _read(path) == read


def _read(path):
    with opened(path) as archive:
        return {name: b"".join(archive.chunks(name)) for name in archive.sizes}


def test_a_sum_in_capitals_is_read_and_one_in_both_kinds_of_letters_is_told(tmp_path):
    contents = files(small(tmp_path).path)
    name = "small/tagmanifest-sha256.txt"
    lines = [line.split(b" ", 1) for line in contents[name].splitlines()]
    upper = b"".join(digest.upper() + b" " + rest + b"\n" for digest, rest in lines)
    assert checked(zipped(tmp_path / "u.zip", {**contents, name: upper})).whole
    letter = next(n for n, byte in enumerate(contents[name]) if chr(byte) in "abcdef")
    assert "tagmanifest-sha256.txt" in named(changed_at(tmp_path / "m.zip", contents, name, letter, 5))


def test_a_bag_cut_short_anywhere_is_refused(bag, tmp_path):
    whole = bag.read_bytes()
    for end in range(0, len(whole), max(1, len(whole) // 40)):
        path = tmp_path / "short.zip"
        path.write_bytes(whole[:end])
        with pytest.raises(BagRefused, match="not opened"):
            opened(path)


def test_a_missing_and_an_extra_file_are_named(bag, tmp_path):
    contents = files(bag)
    gone = next(name for name in contents if name.endswith("record.json"))
    base = gone.split("/")[0]
    extra = {**{k: v for k, v in contents.items() if k != gone}, f"{base}/data/more.txt": b"x", f"{base}/t.txt": b"x"}
    assert {"data/record.json", "data/more.txt", "t.txt"} <= named(zipped(tmp_path / "b.zip", extra))


def test_an_extra_file_beside_the_folder_of_the_bag_is_named(bag, tmp_path):
    assert "aside.txt" in named(zipped(tmp_path / "b.zip", {**files(bag), "aside.txt": b"x"}))


def test_a_change_that_keeps_all_lists_in_step_shows_in_the_sum_that_was_written_down(tmp_path):
    mine = small(tmp_path).sha256
    other = small(tmp_path, {"a.txt": b"hellO\n", "b/c.txt": b""})
    assert checked(other.path).whole
    assert checked(other.path).sha256 != mine


@pytest.mark.parametrize("version", ["0.97", "1.0"])
@pytest.mark.parametrize("sums", [["sha256"], ["sha512"], ["sha256", "sha512"], ["md5"]])
@pytest.mark.parametrize("as_zip", [True, False])
def test_bags_of_another_program_are_checked(tmp_path, version, sums, as_zip):
    # bagit 1.9.0 writes version 0.97; the same bag declared as 1.0 differs in nothing else here.
    home = tmp_path / "theirs"
    (home / "deep").mkdir(parents=True)
    (home / "deep" / "ä b.txt").write_text("words")
    (home / "line\nend.txt").write_text("odd")
    bagit.make_bag(str(home), {"Contact-Name": "Ada Fenn (invented)"}, checksums=sums)
    (home / "bagit.txt").write_text(f"BagIt-Version: {version}\nTag-File-Character-Encoding: UTF-8\n")
    bagit.Bag(str(home)).save()
    path = Path(shutil.make_archive(str(home), "zip", tmp_path, "theirs")) if as_zip else home
    found = checked(path)
    assert found.faults == ()
    assert found.told("contact-name") == "Ada Fenn (invented)"
    assert found.weak is (sums == ["md5"])


def test_damage_in_a_bag_of_another_program_is_named_as_that_program_names_it(tmp_path):
    home = tmp_path / "theirs"
    home.mkdir()
    (home / "a.txt").write_text("words")
    bagit.make_bag(str(home))
    (home / "data" / "a.txt").write_text("wordS")
    with pytest.raises(bagit.BagValidationError, match=r"data/a\.txt"):
        bagit.Bag(str(home)).validate()
    assert "data/a.txt" in named(home)


def test_a_version_that_is_not_known_is_told(tmp_path):
    contents = files(small(tmp_path).path)
    contents["small/bagit.txt"] = contents["small/bagit.txt"].replace(b"1.0", b"2.0")
    found = checked(zipped(tmp_path / "two.zip", contents))
    assert any("version 2.0" in str(fault.said) for fault in found.faults)


def test_files_that_are_elsewhere_are_not_fetched(tmp_path):
    contents = files(small(tmp_path).path)
    contents["small/fetch.txt"] = b"http://example.org/x 1 data/x\n"
    assert "fetch.txt" in named(zipped(tmp_path / "f.zip", contents))


def test_a_count_of_bytes_that_is_wrong_is_told(tmp_path):
    contents = files(small(tmp_path).path)
    contents["small/bag-info.txt"] = contents["small/bag-info.txt"].replace(b"6.2", b"6.3")
    told = [str(fault.said) for fault in checked(zipped(tmp_path / "o.zip", contents)).faults]
    assert any("6.3 bytes and files" in line for line in told)


def test_the_newest_version_needs_every_file_in_every_list(tmp_path):
    # RFC 8493, 2.1.3: "every payload file MUST be listed in every payload manifest".
    contents = files(small(tmp_path).path)
    both = hashlib.sha512(b"hello\n").hexdigest()
    contents["small/manifest-sha512.txt"] = f"{both}  data/a.txt\n".encode()
    told = [str(f.said) for f in checked(zipped(tmp_path / "m.zip", contents)).faults if f.file == "data/b/c.txt"]
    assert told == ["data/b/c.txt: not in manifest-sha512.txt, which must name every file."]


def test_what_is_no_bag_is_said_to_be_none(tmp_path):
    with pytest.raises(BagRefused, match=r"no bagit\.txt"):
        opened(zipped(tmp_path / "x.zip", {"a.txt": b"x"}))
    (tmp_path / "pic.zip").write_bytes(b"\xff\xd8\xff\xe0" * 100)
    with pytest.raises(BagRefused, match="no zip"):
        opened(tmp_path / "pic.zip")
    with pytest.raises(StorageTrouble, match="cannot be read"):
        opened(tmp_path / "nothing.zip")
