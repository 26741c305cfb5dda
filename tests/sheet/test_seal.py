"""A sealed sheet is accepted by two readers from outside, holds no money, and an addition to it is told."""

import zlib
from datetime import datetime
from io import BytesIO

import pytest
from pyhanko.keys import load_cert_from_pemder
from pyhanko.pdf_utils import generic
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko.sign.validation.status import SignatureCoverageLevel
from pyhanko_certvalidator import ValidationContext
from pypdf import PdfReader, PdfWriter

from inspector.record.finding import Photograph
from inspector.record.money import Comparable, Figures, Money, Remedy, Version
from inspector.record.versions import attached
from inspector.record.words import PriceKind
from inspector.sheet import attach as attach_module
from inspector.sheet import seal as seal_module
from inspector.sheet.attach import attach
from inspector.sheet.checking import check_sheet
from inspector.sheet.pdf import as_pdf
from tests.sheet import made, sealing


def said(check):
    return " ".join(map(str, (check.changed, *check.reasons)))


def in_an_increment(data, change):
    """The file with one more revision, in which a page was changed."""
    writer = IncrementalPdfFileWriter(BytesIO(data))
    page, _ = writer.find_page_for_modification(1)
    change(page.get_object())
    writer.mark_update(page)
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def rotated(page):
    page["/Rotate"] = generic.NumberObject(90)


# what others say: poppler's pdfsig 22.12 and pyHanko's own validator


def test_pdfsig_finds_the_whole_file_signed_at_the_pades_level(tmp_path):
    told = sealing.pdfsig(tmp_path, sealing.sheet())
    assert "Signature Type: ETSI.CAdES.detached" in told
    assert "Total document signed" in told
    assert "Signature is Valid." in told
    assert "May 17 2025 10:20:00" in told  # 11:20 at +01:00


def test_pdfsig_finds_a_changed_byte(tmp_path):
    data = bytearray(sealing.sheet())
    data[len(sealing.plain()) // 2] ^= 1
    assert "Digest Mismatch" in sealing.pdfsig(tmp_path, bytes(data))


def test_the_librarys_own_validator_accepts_it(tmp_path):
    file = tmp_path / "seal.cer"
    file.write_bytes(sealing.key().certificate)
    trusted = ValidationContext(trust_roots=[load_cert_from_pemder(str(file))], allow_fetching=False)
    (seal,) = PdfFileReader(BytesIO(sealing.sheet())).embedded_signatures
    status = validate_pdf_signature(seal, trusted)
    assert status.bottom_line
    assert status.coverage is SignatureCoverageLevel.ENTIRE_FILE


# what is said here


def test_a_sealed_sheet_is_told_with_key_version_record_and_time():
    check = check_sheet(sealing.sheet())
    assert (check.sealed, check.as_sealed, check.reasons) == (True, True, ())
    assert (check.record_id, check.version, check.at) == ("3", 1, sealing.AT)
    assert check.fingerprint == sealing.key().fingerprint
    assert check.attached == attached(made.record(2))


def test_the_key_of_another_computer_is_told_by_its_fingerprint():
    check = check_sheet(sealing.seal(by=2))
    assert check.as_sealed
    assert check.fingerprint == sealing.key(2).fingerprint != sealing.key().fingerprint


@pytest.mark.parametrize("more", [b"\n", b"x", b"% a remark\n", b"\0" * 300])
def test_bytes_behind_the_seal_are_told(more):
    check = check_sheet(sealing.sheet() + more)
    assert (check.sealed, check.as_sealed) == (True, False)
    assert "behind the seal" in said(check)
    kept = check_sheet(sealing.sheet() + more, sealing.sheet())
    count = "1 byte stands" if len(more) == 1 else f"{len(more)} bytes stand"
    assert str(kept.changed) == f"{count} behind the end of the sheet as it was sealed."


def test_a_page_changed_in_an_increment_is_named_where_a_weaker_test_passes_it(tmp_path):
    data = in_an_increment(sealing.sheet(), rotated)
    told = sealing.pdfsig(tmp_path, data)
    assert "Signature is Valid." in told  # which is why the whole file has to be covered
    assert "Total document signed" not in told
    check = check_sheet(data)
    assert not check.as_sealed
    assert "touches page 2." in said(check)


def replaced(writer, spec):
    spec.get_object()["/EF"]["/F"] = writer.add_object(generic.StreamObject(stream_data=b"{}"))
    writer.mark_update(spec)


def test_another_record_put_in_afterwards_is_named():
    writer = IncrementalPdfFileWriter(BytesIO(sealing.sheet()))
    replaced(writer, writer.root["/Names"]["/EmbeddedFiles"]["/Names"].raw_get(1))
    out = BytesIO()
    writer.write(out)
    check = check_sheet(out.getvalue())
    assert not check.as_sealed
    assert "touches the attached record." in said(check)


def test_pages_put_in_another_order_are_told():
    writer = IncrementalPdfFileWriter(BytesIO(sealing.sheet()))
    ref = writer.root.raw_get("/Pages")
    pages = ref.get_object()
    pages["/Kids"] = generic.ArrayObject(reversed([pages["/Kids"].raw_get(n) for n in range(len(pages["/Kids"]))]))
    writer.mark_update(ref)
    out = BytesIO()
    writer.write(out)
    assert "touches the order of the pages." in said(check_sheet(out.getvalue()))


def test_what_opens_by_itself_is_told():
    writer = IncrementalPdfFileWriter(BytesIO(sealing.sheet()))
    writer.root["/OpenAction"] = generic.DictionaryObject({"/S": generic.NameObject("/JavaScript")})
    writer.update_root()
    out = BytesIO()
    writer.write(out)
    assert "touches the document as a whole." in said(check_sheet(out.getvalue()))


@pytest.mark.parametrize("ring", [True, False])
def test_pages_that_can_not_be_found_any_more_are_told_with_whose_seal_it_was(ring):
    writer = IncrementalPdfFileWriter(BytesIO(sealing.sheet()))
    ref = writer.root.raw_get("/Pages")
    pages = ref.get_object()
    pages["/Count"] = generic.NumberObject(10**9)
    if ring:
        pages["/Kids"] = generic.ArrayObject([ref])
    writer.mark_update(ref)
    out = BytesIO()
    writer.write(out)
    check = check_sheet(out.getvalue())
    assert (check.sealed, check.as_sealed) == (True, False)
    assert check.fingerprint == sealing.key().fingerprint
    assert "leaves its pages unreadable" in said(check)


def test_a_sheet_that_was_never_sealed_is_told_as_such():
    check = check_sheet(sealing.plain())
    assert (check.sealed, check.as_sealed) == (False, False)
    assert "carries no seal" in said(check)


@pytest.mark.parametrize("data", [b"", b"%PDF-1.4", b"PK\x03\x04 no PDF", b"\0" * 5000])
def test_what_is_no_pdf_is_told_as_such(data):
    check = check_sheet(data)
    assert (check.sealed, check.as_sealed) == (False, False)
    assert "cannot be read as a PDF" in said(check)


@pytest.mark.parametrize("share", [0.1, 0.5, 0.9, 0.999])
def test_a_sheet_cut_short_is_told(share):
    whole = sealing.sheet()
    assert not check_sheet(whole[: int(len(whole) * share)]).as_sealed


def test_a_sheet_sealed_twice_is_told(monkeypatch):
    once = sealing.sheet()
    monkeypatch.setattr(seal_module, "FIELD", "Another")
    check = check_sheet(sealing.seal(by=2, pdf=once))
    assert not check.as_sealed
    assert "carries 2 seals" in said(check)


def test_names_that_lead_back_into_themselves_are_gone_through_once():
    writer = IncrementalPdfFileWriter(BytesIO(sealing.plain()))
    tree = generic.DictionaryObject()
    ref = writer.add_object(tree)
    tree["/Kids"] = generic.ArrayObject([ref] * 500)
    writer.root["/Names"] = generic.DictionaryObject({"/EmbeddedFiles": ref})
    writer.update_root()
    out = BytesIO()
    writer.write(out)
    check = check_sheet(out.getvalue())
    assert (check.sealed, check.record) == (False, None)


@pytest.mark.parametrize("passphrase", ["", "heron"])
def test_a_locked_pdf_is_told_as_such(passphrase):
    writer = PdfWriter(clone_from=PdfReader(BytesIO(sealing.plain())))
    writer.encrypt(passphrase, "owner", algorithm="RC4-128")
    out = BytesIO()
    writer.write(out)
    check = check_sheet(out.getvalue())
    assert not check.as_sealed
    assert "locked with a passphrase" in said(check)


def carrying(data):
    """A sheet with these bytes in the place of its record, and no seal."""
    writer = IncrementalPdfFileWriter(BytesIO(sealing.plain()))
    attach(writer, data, datetime.fromisoformat(sealing.AT))
    out = BytesIO()
    writer.write(out)
    return out.getvalue()


def test_a_record_that_unpacks_without_end_is_not_unpacked(monkeypatch):
    record = attached(made.record(2))
    assert check_sheet(carrying(record)).attached == record
    monkeypatch.setattr(attach_module, "LARGEST", len(record) + 100)
    assert check_sheet(carrying(record + b" " * 100)).record is not None
    asked = []
    real = zlib.decompressobj

    def watched():
        class Watched:
            def decompress(self, packed, most):
                asked.append(most)
                return real().decompress(packed, most)

        return Watched()

    monkeypatch.setattr(attach_module.zlib, "decompressobj", watched)
    assert check_sheet(carrying(record + b" " * 10_000_000)).record is None
    assert asked == [len(record) + 101]


def test_the_words_of_a_broken_file_reach_no_terminal():
    assert check_sheet(b"%PDF-1.4 (Record 3, version 2)").record_id == "3"
    assert check_sheet(b"%PDF-1.4 (Record \x1b[2J3, version 2)").record_id == ""


# the bytes that the signature itself does not cover


def own_bytes():
    """The sheet, and where the hex of its seal begins and ends."""
    data = sealing.sheet()
    begin, end = data.index(b"/Contents <3082") + len(b"/Contents <"), data.index(b">\n/ByteRange")
    return data, begin, end


def test_what_stands_in_the_zeros_behind_the_seal_is_told():
    data, _, end = own_bytes()
    assert data[end - 8 : end] == b"00000000"
    changed = data[: end - 4] + b"4869" + data[end:]
    check = check_sheet(changed, data)
    assert not check.as_sealed
    assert str(check.changed) == f"4 bytes were changed, the first is byte {end - 4}, in the seal itself."


def test_the_same_seal_in_other_letters_is_told():
    data, begin, end = own_bytes()
    check = check_sheet(data[:begin] + data[begin:end].lower() + data[end:])
    assert not check.as_sealed
    assert "not written as they were made" in said(check)


def test_another_algorithm_named_where_it_is_not_signed_is_told():
    data, begin, end = own_bytes()
    sha256, sha512 = b"0609608648016503040201", b"0609608648016503040203"  # their object identifiers
    changed = data[:begin] + data[begin:end].replace(sha256, sha512, 1) + data[end:]
    assert changed != data
    assert not check_sheet(changed).as_sealed


# no money


SECRETS = ("4711", "83.19", "98765", "GREENFINCH", "NIGHTJAR", "IMG_LAPWING", "WAXWING", "6543.21")


def priced():
    """The invented record with money in every place that holds any, and private names."""
    record = made.record(2)
    figures = Figures(name="NIGHTJAR", parts=("98765", "98766", "98767"), note="GREENFINCH")
    photographs = tuple(
        Photograph.model_validate({**p.model_dump(), "name": "IMG_LAPWING.jpg", "camera": "WAXWING"})
        for p in record.photographs
    )
    return record.model_copy(
        update={
            "claim": record.claim.model_copy(update={"asking_price": "4711"}),
            "money": Money(currency="GBP", labour_rate="83.19", walk_away="6543.21", offered_for_parts="GREENFINCH"),
            "comparables": (Comparable(id="c", kind=PriceKind.SOLD, price="98765", title="NIGHTJAR"),),
            "remedies": (Remedy(item="fuel-tank", cost="own", figures=figures),),
            "versions": (Version(number=1, whole="a" * 64, sha256="b" * 64),),
            "photographs": photographs,
        }
    )


def everything_in(data):
    """Text, attachments, metadata and every stream of the file, unpacked, and the file as it is."""
    reader = PdfReader(BytesIO(data))
    parts = [data, str(reader.metadata).encode(), *(p.extract_text().encode() for p in reader.pages)]
    parts += [one for files in reader.attachments.values() for one in files]
    for number in range(1, len(reader.xref[0]) + 20):
        try:
            stream = reader.get_object(number)
        except Exception:  # no such object
            continue
        if hasattr(stream, "get_data") and stream.get("/Subtype") != "/Image":
            parts.append(stream.get_data())
    return b"\n".join(parts)


def test_no_money_and_no_private_name_is_in_a_sealed_sellers_copy():
    record = priced()
    sheet = made.sheet(record)
    data = everything_in(sealing.seal(record, pdf=as_pdf(sheet)))
    assert b"Brackwater Heron 600" in data
    assert b'"mark":"fail"' in data  # the record inside was looked into as well
    assert [secret for secret in SECRETS if secret.encode() in data] == []
    assert b"a" * 64 not in data  # whoever has the rest could try amounts until this hash fits
    assert b'"money"' not in attached(record)


def test_the_attached_record_says_what_it_is_and_is_the_record_handed_over():
    reader = PdfReader(BytesIO(sealing.sheet()))
    assert list(reader.attachments) == ["inspection.json"]
    assert reader.attachments["inspection.json"] == [attached(made.record(2))]
