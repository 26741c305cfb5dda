"""Who signs what: nobody before the inspector's interests are told, and nobody for more than what stood there."""

from __future__ import annotations

from inspector.record.claim import Person
from inspector.record.edits import Part, Step
from inspector.record.finding import Finding
from inspector.record.model import Record
from inspector.record.money import Signature
from inspector.record.refusing import EditRefused
from inspector.record.verbs import drop_entry, put_entry
from inspector.record.versions import as_frozen, attached, next_version, sha256_of
from inspector.record.words import Role
from inspector.texts import Say, say

Strokes = tuple[tuple[tuple[float, float], ...], ...]
MOST_POINTS = 20_000
LONGEST_NAME = 120
STATEMENTS = {
    Role.INSPECTOR: say(
        "I looked at this machine and wrote down what I saw, and what I could not see. My interests are told on this"
        " sheet. I do not say who owns the machine, what it is worth, or that it may be ridden."
    ),
    Role.SELLER: say(
        "I was shown this sheet. What I have to say to it stands beside the findings and under “The seller’s reply”."
        " My signature is not agreement with what was found."
    ),
}
OTHER = say("I was present when this sheet was signed. I say nothing else by it.")
REFUSED = say("Was asked to sign and did not.")


def statement_of(role: Role) -> Say:
    """What somebody with this role says by signing, and what not."""
    return STATEMENTS.get(role, OTHER)


def who_signs(record: Record) -> tuple[Person, ...]:
    """Inspectors first, then sellers, in the order entered."""
    return (*record.people_as(Role.INSPECTOR), *record.people_as(Role.SELLER))


def blocked(record: Record) -> Say | None:
    """Why nobody can sign yet, in one sentence; None where signing is open."""
    inspectors = tuple(record.people_as(Role.INSPECTOR))
    if not inspectors:
        return say("Nobody is entered as inspector. Add the inspector under People on the page Claim, with interests.")
    silent = next((p for p in inspectors if not p.interest.strip()), None)
    if silent is None:
        return None
    return say(
        "The interests of {name} are not declared. Enter them under People on the page Claim; “none declared” has to"
        " be said.",
        name=silent.name or say("the inspector"),
    )


def to_be_signed(record: Record) -> str:
    """The SHA-256 of what is signed: all that is handed over, but for the signatures themselves."""
    return sha256_of(attached(record.model_copy(update={"signatures": ()})))


def standing(record: Record) -> dict[str, Signature]:
    """The signatures that hold for the version not sealed yet, by person; those of what was changed since do not."""
    number, now = next_version(record), to_be_signed(record)
    return {s.person: s for s in record.signatures if s.version == number and s.of in ("", now)}


def of_version(record: Record, number: int) -> dict[str, Signature]:
    """The signatures that stand on the sealed sheet of this version, by person."""
    frozen = as_frozen(record, number)
    return standing(
        frozen.model_copy(update={"signatures": tuple(s for s in record.signatures if s.version <= number)})
    )


def outdated(record: Record) -> tuple[str, ...]:
    """The people who signed this version before something in it was changed."""
    number, holding = next_version(record), standing(record)
    return tuple(dict.fromkeys(s.person for s in record.signatures if s.version == number and s.person not in holding))


def sign(record: Record, person: str, strokes: Strokes, statement: str, at: str) -> Step:
    """The record signed by this person. Raises EditRefused where that cannot be yet, or nothing was drawn."""
    _open_to_sign(record)
    drawn = tuple(stroke for stroke in strokes if stroke)
    if not drawn:
        raise EditRefused(say("Nothing is drawn yet. Draw the signature on the line, then press the key again."))
    if sum(map(len, drawn)) > MOST_POINTS:
        raise EditRefused(say("The drawing is too long for a signature. Clear it and sign again."))
    return _put(record, person, at, strokes=drawn, statement=statement)


def sign_by_name(record: Record, person: str, name: str, statement: str, at: str) -> Step:
    """The record with the name that this person typed where nothing was drawn; it is kept and shown as typed.

    Raises EditRefused where nobody can sign yet, or no name is there.
    """
    _open_to_sign(record)
    typed = " ".join("".join(c if c.isprintable() else " " for c in name).split())
    if not any(c.isalpha() for c in typed):
        raise EditRefused(say("No name is typed yet. Type the name in full, then press the key again."))
    if len(typed) > LONGEST_NAME:
        raise EditRefused(say("The name is longer than {most} letters. Shorten it.", most=LONGEST_NAME))
    return _put(record, person, at, typed=typed, statement=statement)


def _open_to_sign(record: Record) -> None:
    why = blocked(record)
    if why is not None:
        raise EditRefused(why)


def refuse(record: Record, person: str, statement: str, at: str) -> Step:
    """The record with it noted that this person was asked to sign and did not."""
    return _put(record, person, at, refused=True, statement=statement)


def withdraw(record: Record, person: str) -> Step | None:
    """The record without this person's signature or refusal of the version not sealed yet; None where there is none."""
    key = _key(record, person)
    if all(s.id != key for s in record.signatures):
        return None
    return drop_entry(Part.SIGNATURES, key, label="Take a signature back")


def set_reply(record: Record, finding: Finding, reply: str) -> Step:
    """The finding with the seller's reply beside it; who found what and when stays."""
    new = finding.model_copy(update={"reply": reply})
    return put_entry(Part.FINDINGS, new, label="Seller's reply", joins=f"reply {finding.key}")


def _put(record: Record, person: str, at: str, **how: object) -> Step:
    new = Signature.model_validate(
        {"id": _key(record, person), "person": person, "at": at, "version": next_version(record),
         "of": to_be_signed(record), **how}
    )  # fmt: skip
    return put_entry(Part.SIGNATURES, new, label="Refusal noted" if new.refused else "Signature")


def _key(record: Record, person: str) -> str:
    return f"v{next_version(record)}-{person}"[:120]
