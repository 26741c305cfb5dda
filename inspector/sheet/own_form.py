"""The bytes of a seal that its own signature does not cover: they are told one by one, so that none can change unseen.

RFC 5652 leaves parts of a signed message unsigned. A seal made here has one form only, which is built anew from the
signed parts and compared; whatever else stands there was put there later.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterator


class Span(NamedTuple):
    """Where the seal's own bytes lie in the file: from the opening bracket up to behind the closing one."""

    begin: int
    end: int


def span_of(byte_range: list[int]) -> Span:
    """The gap that the signed ranges leave."""
    return Span(byte_range[0] + byte_range[1], byte_range[2])


def not_as_made(data: bytes, byte_range: list[int], certificate: Any) -> Iterator[Say]:
    """A sentence for every way in which the seal is not of the form in which it is made here."""
    span = span_of(byte_range)
    if len(byte_range) != 4 or byte_range[0] != 0 or byte_range[2] + byte_range[3] != len(data):
        yield say("The seal does not cover the file from its first byte to its last.")
        return
    hexed = data[span.begin : span.end]
    raw = _decoded(hexed)
    if raw is None or hexed != b"<" + raw.hex().upper().encode() + b">":
        yield say("The bytes of the seal itself are not written as they were made.")
        return
    if raw != _rebuilt(raw, certificate):
        yield say("The seal carries more, or other, than what its signature covers.")


def _decoded(hexed: bytes) -> bytes | None:
    try:
        return bytes.fromhex(hexed[1:-1].decode("ascii"))
    except ValueError:
        return None


def _rebuilt(raw: bytes, certificate: Any) -> bytes:
    """The seal as it is made from its certificate, its signed attributes and its signature, filled up with zeros."""
    from asn1crypto import algos, cms, core

    given = cms.ContentInfo.load(raw)["content"]["signer_infos"][0]
    sha256 = algos.DigestAlgorithm({"algorithm": "sha256", "parameters": core.Null()})
    info = cms.SignerInfo({
        "version": "v1",
        "sid": cms.SignerIdentifier({
            "issuer_and_serial_number": cms.IssuerAndSerialNumber(
                {"issuer": certificate.issuer, "serial_number": certificate.serial_number}
            )
        }),
        "digest_algorithm": sha256,
        "signature_algorithm": algos.SignedDigestAlgorithm({"algorithm": "sha256_rsa", "parameters": core.Null()}),
        "signed_attrs": given["signed_attrs"],
        "signature": given["signature"].native,
    })  # fmt: skip
    signed = cms.SignedData({
        "version": "v1",
        "digest_algorithms": cms.DigestAlgorithms((sha256,)),
        "encap_content_info": {"content_type": "data"},
        "certificates": [certificate],
        "signer_infos": [info],
    })  # fmt: skip
    made: bytes = cms.ContentInfo({"content_type": "signed_data", "content": signed}).dump()
    return made + bytes(max(len(raw) - len(made), 0))
