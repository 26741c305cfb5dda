"""Whether a sheet is as it was sealed: told from the file alone, and closer where the file as sealed is at hand."""

from __future__ import annotations

import logging
import re
from dataclasses import dataclass, field, replace
from io import BytesIO
from typing import TYPE_CHECKING, Any

from inspector.sheet.attach import attached_record
from inspector.sheet.changed_where import added_since, parted
from inspector.sheet.own_form import not_as_made
from inspector.texts import Say, say

if TYPE_CHECKING:
    from inspector.record.model import Record

PADES = "/ETSI.CAdES.detached"
WORDS = re.compile(rb"\(Record ([!-'*-~]{1,120}?)(?:\\054|,) version (\d{1,6})\)")
NOTHING = say("Nothing was changed since it was sealed.")
UNKNOWN = say("The file alone does not tell where.")


@dataclass(frozen=True, slots=True)
class SheetCheck:
    """What a file says of itself. ``fingerprint`` is the SHA-256 of the seal's certificate, in hex.

    ``as_sealed`` is true only where every byte of the file is covered by the one seal and as it was; whose key it was
    is another question. ``changed`` tells what was changed and where. ``version``, ``record_id`` and ``record`` come
    from the attached record, the first two from the seal's own words where that cannot be read; they count only where
    ``as_sealed`` is true.
    """

    sealed: bool
    as_sealed: bool
    changed: Say
    fingerprint: str = ""
    version: int | None = None
    record_id: str = ""
    at: str = ""
    reasons: tuple[Say, ...] = ()
    record: Record | None = field(default=None, repr=False)
    attached: bytes = field(default=b"", repr=False)


def check_sheet(data: bytes, kept: bytes | None = None) -> SheetCheck:
    """What there is to say of this file; never raises. ``kept`` is the sheet as sealed, where it is at hand.

    With it the place of a change is told; whether there is one is told without it.
    """
    _quiet()
    try:
        found = _checked(data)
    except Exception:  # a broken file breaks its reader in many ways, and none of them is ours
        found = SheetCheck(_looks_sealed(data), False, say("The file cannot be read as a PDF to its end."))
    if not found.record_id:
        found = _by_its_words(found, data)
    if found.as_sealed or kept is None or kept == data:
        return found
    return _nearer(found, kept, data)


def _checked(data: bytes) -> SheetCheck:
    from pyhanko.pdf_utils.reader import PdfFileReader

    reader = PdfFileReader(BytesIO(data))
    if reader.encrypted:
        return SheetCheck(_looks_sealed(data), False, say("It is locked with a passphrase; no sheet made here is."))
    seals = reader.embedded_signatures
    if not seals:
        why = say("It carries no seal, so nothing tells whether it was changed.")
        return _with_record(SheetCheck(_looks_sealed(data), False, why), reader)
    if len(seals) > 1:
        return SheetCheck(True, False, say("It carries {count} seals; a sheet is sealed once.", count=len(seals)))
    return _with_record(_of_seal(data, reader, seals[0]), reader)


def _of_seal(data: bytes, reader: Any, seal: Any) -> SheetCheck:
    import hashlib

    certificate = seal.signer_cert
    told = SheetCheck(
        sealed=True, as_sealed=False, changed=NOTHING,
        fingerprint=hashlib.sha256(certificate.dump()).hexdigest(), at=_time(seal),
    )  # fmt: skip
    reasons = tuple(_reasons(data, reader, seal, certificate))
    if not reasons:
        return replace(told, as_sealed=True)
    return replace(told, changed=reasons[0], reasons=reasons)


def _reasons(data: bytes, reader: Any, seal: Any, certificate: Any) -> list[Say]:
    """Every way in which the file is not as sealed; empty where it is."""
    from pyhanko.sign.validation.settings import KeyUsageConstraints
    from pyhanko.sign.validation.status import SignatureCoverageLevel

    if str(seal.sig_object.get("/SubFilter")) != PADES:
        return [say("Its seal is not of the kind that is made here.")]
    status = _status(seal, certificate, KeyUsageConstraints())
    found: list[Say] = []
    if not status.intact:
        found.append(say("What the seal covers was changed. {where}", where=UNKNOWN))
    elif not status.valid:
        found.append(say("The signature of the seal does not hold."))
    if status.coverage is not SignatureCoverageLevel.ENTIRE_FILE:
        found += added_since(reader, seal)
    elif status.intact and status.valid and not status.bottom_line:
        found.append(say("The seal is not one that a sheet is sealed with."))
    return found or list(not_as_made(data, [int(n) for n in seal.byte_range], certificate))


def _status(seal: Any, certificate: Any, usage: Any) -> Any:
    """The seal's own certificate is taken as trusted: it says whether the file changed, and whose key that was."""
    from pyhanko.sign.validation import validate_pdf_signature
    from pyhanko_certvalidator import ValidationContext

    valid_from = certificate["tbs_certificate"]["validity"]["not_before"].native
    context = ValidationContext(
        trust_roots=[certificate], allow_fetching=False, moment=valid_from, revocation_mode="soft-fail"
    )
    return validate_pdf_signature(seal, context, key_usage_settings=usage)


def _with_record(told: SheetCheck, reader: Any) -> SheetCheck:
    """What the attached record says of itself is added."""
    from inspector.record.model import Record
    from inspector.record.versions import next_version

    try:
        data = attached_record(reader)
        record = Record.model_validate_json(data)
    except Exception:  # a file may hold anything under that name
        if not told.as_sealed:
            return told
        why = say("It is as sealed, but the record inside cannot be read by this version of the program.")
        return replace(told, reasons=(*told.reasons, why))
    return replace(told, record=record, attached=data, record_id=record.id, version=next_version(record))


def _by_its_words(told: SheetCheck, data: bytes) -> SheetCheck:
    """Record and version as the reason of the seal names them."""
    found = WORDS.search(data)
    return replace(told, record_id=found[1].decode("latin-1"), version=int(found[2])) if found else told


def reason_of(record_id: str, version: int) -> str:
    """What the seal says it is for, as it is found again even in a broken file."""
    return f"Record {record_id}, version {version}"


def _nearer(told: SheetCheck, kept: bytes, data: bytes) -> SheetCheck:
    try:
        where = parted(kept, data)
    except Exception:  # the kept file may be damaged as well
        return told
    reasons = tuple(r for r in told.reasons if str(UNKNOWN) not in str(r))
    return replace(told, changed=where[0], reasons=(*where, *reasons)) if where else told


def _time(seal: Any) -> str:
    at = seal.self_reported_timestamp
    return at.isoformat(timespec="seconds") if at is not None else ""


def _looks_sealed(data: bytes) -> bool:
    return PADES.encode() in data


def _quiet() -> None:
    """What the library notes of broken files goes nowhere: it is told in sentences here."""
    for name in ("pyhanko", "pyhanko_certvalidator"):
        logger = logging.getLogger(name)
        if not logger.handlers:
            logger.addHandler(logging.NullHandler())
            logger.propagate = False
