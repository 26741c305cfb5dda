"""Who was there, what was claimed, shown, asked and answered, and who signs."""

from __future__ import annotations

from typing import TYPE_CHECKING

from inspector.judgement.paper_years import years_between
from inspector.judgement.wording import lower_first
from inspector.record.signing import standing
from inspector.record.words import Role
from inspector.sheet.blocks import (
    CautionsBlock,
    ClaimBlock,
    Head,
    InquiriesBlock,
    PeopleBlock,
    Phrase,
    QuestionsBlock,
    ReplyBlock,
    Row,
    SignatureBlock,
    Signed,
)
from inspector.sheet.words import listed, moment, sentence, year_of
from inspector.texts import tr

if TYPE_CHECKING:
    from collections.abc import Mapping

    from inspector.judgement.judge import Judgement
    from inspector.judgement.questions import OpenQuestion
    from inspector.profile.model import Profile
    from inspector.record.claim import Inquiry
    from inspector.record.model import Record
    from inspector.record.money import Signature

CAUTIONS = (  # each behind a word that tells that a profile says it already
    ("firmly", "The machine stands firmly or is held while it is looked at; exhaust, fuel and battery can burn."),
    ("indoors", "An engine is not started indoors."),
    ("abrade", "Never abrade, etch or file a number pad: that can destroy evidence and be a crime."),
    (
        "ownership",
        "Ownership, theft, registration and roadworthiness are decided by the authorities and licensed people"
        " of the place.",
    ),
)


def names_as(record: Record, role: Role) -> str:
    """The names of the people with this role; empty where none is noted."""
    return listed(p.name for p in record.people_as(role))


def machine_name(record: Record) -> str:
    """What the machine is called on the sheet."""
    return record.claim.model or record.profile.title or record.profile.id


def head(record: Record, invented: bool, *, placed: bool = True) -> Head:
    """The machine, what it is claimed to be, where it was seen if that is told (``placed``), when and by whom."""
    claim = record.claim
    seller = names_as(record, Role.SELLER)
    inspector = names_as(record, Role.INSPECTOR) or tr("nobody named")
    when, light = moment(claim.date), lower_first(claim.conditions)
    if placed:
        where = listed((claim.place or tr("a place not noted"), when, light))
        seen = tr("Seen at {where}, by {who}", where=where, who=inspector)
    else:
        when = listed((when or tr("a day not noted"), light))
        seen = tr("Seen on {when}, by {who}", when=when, who=inspector)
    shown = tr("; shown by {seller}", seller=seller) if seller else ""
    example = tr("This is an invented example: no such machine and no such people.") if invented else ""
    claimed = Phrase(tr("Claimed: {year}.", year=year_of(record)), sentence(seen + shown))
    return Head(machine_name(record), claimed, tuple(line for line in (example,) if line))


def claim_block(record: Record) -> ClaimBlock:
    """The claim as advertised and as titled, the four kinds of year, each apart, and what stands out between them."""
    claim = record.claim
    facts = (
        (tr("As advertised"), claim.advertised),
        (tr("As titled"), claim.titled),
        (tr("Model year"), str(claim.model_year or "")),
        (tr("Build date"), claim.build_date),
        (tr("First registration"), claim.first_registration),
        (tr("Year on the title"), str(claim.title_year or "")),
        (tr("Market"), claim.market),
    )
    rows = [Row(label, Phrase("", said or tr("not stated"))) for label, said in facts]
    rows += [Row("", Phrase("", tr(between))) for between in years_between(claim)]
    return ClaimBlock(tr("The claim"), tuple(rows), note=tr("What is claimed is not shown by being claimed."))


def inquiries_block(record: Record) -> InquiriesBlock:
    """What was asked of bodies outside about theft and lien; "not asked" unless somebody did."""
    rows = [_inquiry(inquiry) for inquiry in record.inquiries]
    asked = " ".join(inquiry.about.casefold() for inquiry in record.inquiries)
    rows += [Row(tr(w), Phrase("", tr("not asked"))) for w in ("Theft", "Lien") if w.casefold() not in asked]
    note = tr("This sheet asks nobody itself; a reply is that body’s own.")
    return InquiriesBlock(tr("Asked of others"), tuple(rows), note=note)


def _inquiry(inquiry: Inquiry) -> Row:
    if not (inquiry.body or inquiry.sent or inquiry.date or inquiry.reply):
        return Row(inquiry.about, Phrase("", tr("not asked")))
    parts = (
        tr("asked of {body}", body=inquiry.body) if inquiry.body else tr("asked; of whom is not noted"),
        tr("sent: {sent}", sent=inquiry.sent) if inquiry.sent else tr("what was sent is not noted"),
        moment(inquiry.date) if inquiry.date else tr("not dated"),
        tr("reply: {reply}", reply=inquiry.reply) if inquiry.reply else tr("no reply noted"),
    )
    return Row(inquiry.about, Phrase("", sentence(listed(parts, "; "))))


def people_block(record: Record) -> PeopleBlock:
    """Everybody present with role and interest; "not asked" where none was given."""
    rows = tuple(
        Row(tr(p.role.value).capitalize(), Phrase(p.name or tr("not named")), _interest(p.interest))
        for p in record.people
    )
    return PeopleBlock(tr("People"), rows, note="" if rows else tr("Nobody is named."))


def _interest(interest: str) -> str:
    return tr("interest: {interest}", interest=interest.strip() or tr("not asked"))


def cautions_block(profile: Profile) -> CautionsBlock:
    """The cautions of the profile, then those that hold for every machine and that it does not say itself."""
    said = " ".join(profile.cautions).casefold()
    texts = (*profile.cautions, *(tr(caution) for word, caution in CAUTIONS if word not in said))
    return CautionsBlock(tr("Cautions"), tuple(Row("", Phrase("", text)) for text in texts), running=True)


def questions_block(judgement: Judgement, numbers: Mapping[str, int]) -> QuestionsBlock:
    """What is still open, numbered, each with its next step; what a finding tells already is not told again.

    ``numbers`` are those of the findings in full, by item.
    """
    rows, told = [], set()
    for question in judgement.questions:
        step = _next_step(question)
        again = bool(question.item) and (question.item, step) in told
        told.add((question.item, step))
        rows.append(Row("", Phrase("", _asked(question, numbers)), "" if again else step))
    return QuestionsBlock(tr("Open questions"), tuple(rows), numbered=True, note="" if rows else tr("None is noted."))


def _asked(question: OpenQuestion, numbers: Mapping[str, int]) -> str:
    """The question in short where its finding stands on the sheet, with the number of the finding if it has one."""
    said = tr(question.short or question.text)
    number = numbers.get(question.item)
    return tr("{said} Finding {number}.", said=said, number=number) if number else said


def _next_step(question: OpenQuestion) -> str:
    step = sentence(question.next_step)
    return step if not step or question.needs_next_step else tr("Next step: {step}", step=step)


def reply_block() -> ReplyBlock:
    """Ruled room for the seller."""
    return ReplyBlock(tr("The seller’s reply"), tr("Room for the seller’s own words."), 3)


def signature_block(record: Record, version: int, made_at: str) -> SignatureBlock:
    """A line for inspector and seller each, and for whoever else signed; a signature from before a change is none."""
    by_person = standing(record)
    parties = [p for p in record.people if p.role in (Role.INSPECTOR, Role.SELLER) or p.id in by_person]
    lines = tuple(
        _signed(listed((p.name or tr("not named"), tr(p.role.value))), by_person.get(p.id)) for p in parties
    ) or (_signed(tr("inspector"), None), _signed(tr("seller"), None))
    note = tr(
        "Signed for what version {version} says, as it stood on {when}. Neither a drawn signature nor a typed name"
        " shows whose it is.",
        version=version, when=moment(made_at),
    )  # fmt: skip
    return SignatureBlock(tr("Signed"), lines, note)


def _signed(who: str, signature: Signature | None) -> Signed:
    if signature is None:
        return Signed(who, tr("not yet signed"))
    if signature.refused:
        return Signed(who, listed((tr("refused to sign"), moment(signature.at))), (), signature.statement)
    strokes = tuple(stroke for stroke in signature.strokes if stroke)
    if signature.typed and not strokes:
        state = listed((tr("name typed, not drawn"), moment(signature.at)))
        return Signed(who, state, (), signature.statement, signature.typed)
    state = moment(signature.at) if strokes else tr("not yet signed")
    return Signed(who, state, strokes, signature.statement)
