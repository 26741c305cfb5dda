"""Small profiles made of published rows alone, for machines of which none is shipped."""

from inspector.judgement.decode import decode
from inspector.judgement.relations import relations
from inspector.judgement.running import running
from inspector.profile.model import Profile
from inspector.record.begin import new_record
from inspector.record.finding import Finding
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Seen

GENERAL = {"kind": "general", "address": "named in the test"}
PLACES = {"frame": ("Frame number", "frame"), "engine": ("Engine number", "engine")}


def literal(text):
    return {"id": f"letters-{text.lower()}", "kind": "literal", "text": text}


def serial(width=None, **more):
    return {"id": "serial", "kind": "digits", **({"width": width} if width else {}), **more}


def rule(name, segments, rows=(), **more):
    """A rule whose segments stand in the order given; rows count its serial."""
    counted = {"serial": "serial"} if rows or any(one["id"] == "serial" for one in segments) else {}
    return {"id": name, "title": name, "segment": list(segments), "range": list(rows), **counted, **more}


def row(first, last=None, *sources, **more):
    """A row from first to last; without last only its start is known."""
    end = {} if last is None else {"to": last}
    return {"from": first, **end, "sources": list(sources), **more}


def machine(years, *, sources, frame=(), engine=(), relation=(), items=(), **more):
    """A profile with these rules on frame and engine, and nothing else but what is given."""
    rules = {"frame": list(frame), "engine": list(engine)}
    data = {
        "format": 1,
        "id": "rows",
        "version": "1",
        "title": "Published rows",
        "maker": "Of the rows",
        "author": [{"name": "Typed from the pages named beside"}],
        "model_years": list(years),
        "source": [{"id": one, "title": one, **GENERAL} for one in sources],
        "place": [
            {"id": place, "name": name, "where": "not documented", "assembly": assembly, "rule": rules[place]}
            for place, (name, assembly) in PLACES.items()
        ],
        "relation": list(relation),
        "station": [{"id": "walk", "name": "Walk", "item": [_item("whole"), *items]}],
    }
    return Profile.model_validate({**data, **more})


def _item(name, **more):
    return {"id": name, "name": name, "question": "Which?", "how": "Look.", "assembly": "frame", **more}


def changed_at(name, place, early, late):
    """An item of two forms: the first up to the one number of the place, the second from the other on."""
    forms = [
        {"id": "early", "name": "early", "serials": [{"place": place, "to": early}]},
        {"id": "late", "name": "late", "serials": [{"place": place, "from": late}]},
    ]
    return _item(name, variant=forms)


def said(profile, place, typed, year=None):
    return decode(profile, profile.place_by_id[place], figures_of(typed), year)


def recorded(profile, numbers, year=None, fitted=()):
    """A record that claims the year, with numbers by place and fitted forms by item, and what is decoded of it."""
    readings = tuple(Reading(id=place, place=place, figures=figures_of(typed)) for place, typed in numbers.items())
    blank = new_record("r1", "2020-01-01", ProfileRef(id=profile.id, version=profile.version))
    findings = tuple(
        Finding(item=item, by="inspector", fitted=form, seen=Seen.EXAMINED) for item, form in dict(fitted).items()
    )
    claim = blank.claim.model_copy(update={"model_year": year})
    made = blank.model_copy(update={"claim": claim, "readings": readings, "findings": findings})
    return made, {one.id: said(profile, one.place, one.typed()) for one in readings}


def stands(profile, frame, engine, year=None):
    """How frame and engine stand; one relation is expected."""
    (found,) = relations(profile, *recorded(profile, {"frame": frame, "engine": engine}, year))
    return found


def running_change(profile, place, typed, item, form):
    """The one sentence on a fitted form and the number it is bound to."""
    (sentence,) = running(profile, *recorded(profile, {place: typed}, fitted={item: form}))
    return str(sentence)
