"""A finished PDF sealed: the record put inside, then all of it signed with the key of this computer (PAdES B-B).

ETSI EN 319 142-1 names the level: SubFilter ETSI.CAdES.detached, the certificate bound in a signed attribute, the
time that of this computer. Nobody outside witnesses it.
"""

from __future__ import annotations

from datetime import datetime
from io import BytesIO
from typing import TYPE_CHECKING, Any

from inspector.sheet.attach import attach

if TYPE_CHECKING:
    from inspector.sheet.keys import SealKey

FIELD = "Seal"
BESIDE = 2000  # bytes of a seal that are not its certificate, at most


def sealed(pdf: bytes, record: bytes, key: SealKey, at: str, reason: str) -> bytes:
    """The PDF with the record inside and one seal over every byte of it.

    ``at`` is ISO 8601 with offset and becomes the time in the seal; ``reason`` is shown by programs that read seals.
    """
    from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
    from pyhanko.sign import fields
    from pyhanko.sign.signers import PdfSignatureMetadata

    moment = datetime.fromisoformat(at)
    writer = IncrementalPdfFileWriter(BytesIO(pdf))
    attach(writer, record, moment)
    metadata = PdfSignatureMetadata(
        field_name=FIELD, md_algorithm="sha256", subfilter=fields.SigSeedSubFilter.PADES, reason=reason
    )
    out = BytesIO()
    room = 2 * (len(key.certificate) + BESIDE)  # in hex; else the library signs twice to find it out
    _signer(metadata, key, moment).sign_pdf(writer, output=out, bytes_reserved=room)
    return out.getvalue()


def _signer(metadata: Any, key: SealKey, moment: datetime) -> Any:
    from asn1crypto import keys, x509
    from pyhanko.sign.signers import PdfSigner, SimpleSigner
    from pyhanko_certvalidator.registry import SimpleCertificateStore

    class AtThisMoment(PdfSigner):
        """Takes the time from the caller, so that seal and sheet say the same."""

        def init_signing_session(self, *args: Any, **named: Any) -> Any:
            session = super().init_signing_session(*args, **named)
            session.system_time = moment
            return session

    store: Any = SimpleCertificateStore
    signer = SimpleSigner(
        signing_cert=x509.Certificate.load(key.certificate),
        signing_key=keys.PrivateKeyInfo.load(key.private),
        cert_registry=store(),
    )
    return AtThisMoment(metadata, signer=signer)
