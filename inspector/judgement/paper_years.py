"""The four kinds of year that a claim knows, kept apart; and what was asked about theft and lien."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from inspector.texts import Say, say

if TYPE_CHECKING:
    from collections.abc import Iterable

    from inspector.record.claim import Claim, Inquiry
    from inspector.record.model import Record

ALWAYS_ASKED = (("theft", say("Theft: not asked.")), ("lien", say("Lien: not asked.")))
_YEAR = re.compile(r"(?<!\d)(?:18[89]\d|19\d\d|20\d\d)(?!\d)")


def years_kept_apart(record: Record) -> tuple[Say, ...]:
    """Each kind of year as it was claimed, then what stands out between them; none of them proves another."""
    claim = record.claim
    return (
        _said(say("Model year claimed"), claim.model_year),
        _said(say("Built"), claim.build_date),
        _said(say("First registered"), claim.first_registration),
        _said(say("Year on the title"), claim.title_year),
        *years_between(claim),
    )


def inquiries_said(record: Record) -> tuple[Say, ...]:
    """Each inquiry with what was asked, when and the reply; theft and lien as not asked where nobody did."""
    about = [inquiry.about.casefold() for inquiry in record.inquiries]
    missing = (words for key, words in ALWAYS_ASKED if not any(key in one for one in about))
    return (*(_inquiry(one) for one in record.inquiries), *missing)


def _said(kind: Say, value: int | str | None) -> Say:
    text = str(value).strip() if value is not None else ""
    return say("{kind}: {value}.", kind=kind, value=text.rstrip(".") or say("not stated"))


def years_between(claim: Claim) -> Iterable[Say]:
    """What stands out between the kinds of year of a claim; nothing where they are alike or not stated."""
    registered, built = _year_of(claim.first_registration), _year_of(claim.build_date)
    title, model = claim.title_year, claim.model_year
    if title is not None and model is not None and title != model:
        yield say("The title has {title}, the claim {model}: a title can carry the year of registration or of sale.",
                  title=title, model=model)  # fmt: skip
        if title == registered:
            yield say("The year on the title is the year of first registration.")
    if model is not None and registered is not None and registered != model:
        yield say("First registered in {year}; a machine can be sold before its model year begins, or years after it.",
                  year=registered)  # fmt: skip
    if model is not None and built is not None and built != model:
        if built == model - 1:
            yield say("Built in {year}: a season can begin in the summer before its model year.", year=built)
        else:
            yield say("Built in {year}, model year {model}: one of the two needs a reason.", year=built, model=model)


def _year_of(text: str) -> int | None:
    """The one year that the text names, or None."""
    found = {int(year) for year in _YEAR.findall(text)}
    return found.pop() if len(found) == 1 else None


def _inquiry(one: Inquiry) -> Say:
    about = one.about.strip() or say("Inquiry")
    if not (one.body.strip() or one.date.strip() or one.reply.strip()):
        return say("{about}: not asked.", about=about)
    body = one.body.strip() or say("somebody not named")
    date = one.date.strip() or say("on a day not noted")
    sent = one.sent.strip() or say("nothing noted")
    reply = one.reply.strip().rstrip(".") or say("no reply yet")
    return say("{about}: asked {body}, {date}, sent: {sent}; reply: {reply}.",
               about=about, body=body, date=date, sent=sent, reply=reply)  # fmt: skip
