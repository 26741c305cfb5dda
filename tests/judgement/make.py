"""A small invented profile and records to judge."""

from decimal import Decimal

from inspector.profile.model import Profile
from inspector.record.begin import new_record
from inspector.record.finding import Concluded, Finding
from inspector.record.model import Choices, ProfileRef
from inspector.record.words import Conclusion, Mark, PatternPolicy

YEAR = 1953

CARBURETTOR = [
    {"id": "twin", "name": "twin-float", "years": {"from": 1951, "to": 1954}, "sources": ["list"], "at": "p. 12"},
    {"id": "single", "name": "single-float", "years": {"from": 1950, "to": 1953}, "origin": "factory option",
     "sources": ["list"], "at": "p. 13"},
    {"id": "late", "name": "monobloc", "years": {"from": 1955, "to": 1958}, "sources": ["list"]},
    {"id": "spare", "name": "boxed spare", "years": {"from": 1951, "to": 1960}, "origin": "service replacement"},
    {"id": "copy", "name": "new copy", "origin": "pattern part"},
    {"id": "sister", "name": "from the small model", "origin": "other model"},
    {"id": "foreign", "name": "from another maker", "origin": "other maker"},
    {"id": "dealer", "name": "dealer's special", "origin": "dealer fit"},
    {"id": "argued", "name": "long inlet", "years": {"from": 1952, "to": 1953}, "disputed": True,
     "note": "The list says 1952, the register 1953.", "sources": ["list", "book"]},
    {"id": "changed", "name": "short inlet", "years": {"from": 1953, "to": 1954}, "sources": ["book", "list"],
     "serials": [{"place": "frame", "from": 15900}], "share": 0.3, "detail": "1 in choke"},
    {"id": "undated", "name": "plain inlet"},
]  # fmt: skip


def item(item_id, **more):
    base = {
        "id": item_id,
        "name": item_id.replace("-", " ").capitalize(),
        "question": "Is it right?",
        "how": "Use the lamp. Then the mirror.",
        "assembly": "frame",
    }
    return {**base, **more}


STATIONS = [
    {"id": "left", "name": "Left side", "short": "left", "item": [
        item("tank", assembly="tinware", weight=4, heading="paint", money=3),
        item("seat", assembly="tinware", heading="paint", optional=True, minutes=4),
        item("later-lamp", assembly="electrics", years={"from": 1955}),
    ]},
    {"id": "numbers", "name": "Numbers", "item": [
        item("frame-number", place="frame", identity=True, weight=5, heading="frame"),
        item("engine-number", place="engine", assembly="engine", identity=True, weight=5),
    ]},
    {"id": "front", "name": "Front", "item": [
        item("front-wheel", assembly="wheels and brakes", safety="wheel", weight=2, minutes=2),
        item("front-brake", assembly="wheels and brakes", safety="brake", weight=3, minutes=2),
        item("carburettor", assembly="engine", weight=3, variant=CARBURETTOR, heading="engine"),
    ]},
]  # fmt: skip


def profile(**more):
    data = {
        "format": 1,
        "id": "invented-heron",
        "version": "1",
        "title": "An invented machine",
        "maker": "Brackwater",
        "invented": True,
        "author": [{"name": "Invented Person"}],
        "model_years": [1950, 1960],
        "source": [
            {"id": "list", "kind": "factory list", "title": "Invented parts list"},
            {"id": "book", "kind": "club register", "title": "Invented register"},
        ],
        "place": [
            {"id": "frame", "name": "Frame number", "where": "head lug", "assembly": "frame"},
            {"id": "engine", "name": "Engine number", "where": "left case", "assembly": "engine"},
        ],
        "points": points_scheme(),
        "station": STATIONS,
    }
    return Profile.model_validate({**data, **more})


def points_scheme():
    headings = [{"id": h, "name": h.capitalize(), "points": 4, "most_lost": 6} for h in ("paint", "frame", "engine")]
    headings += [{"id": f"rest-{n}", "name": f"Rest {n}", "points": 4} for n in range(22)]
    thresholds = [{"points": p, "word": w} for p, w in ((85, "third"), (90, "second"), (95, "first"))]
    return {"name": "Invented scheme", "heading": headings, "threshold": thresholds}


def record(*findings, year=YEAR, policy=PatternPolicy.PENALISED, points=False, order=(), **more):
    blank = new_record("r1", "2020-01-01", ProfileRef(id="invented-heron", version="1"), inspector="Ann Invented")
    claim = blank.claim.model_copy(update={"model_year": year})
    choices = Choices(pattern_parts=policy, points=points, order=order)
    return blank.model_copy(update={"findings": findings, "claim": claim, "choices": choices, **more})


def found(item_id, mark=None, *, by="inspector", why=(), **more):
    conclusions = tuple(c if isinstance(c, Concluded) else Concluded(what=Conclusion(c)) for c in why)
    return Finding(item=item_id, by=by, mark=Mark(mark) if mark else None, conclusions=conclusions, **more)


def quarter(text):
    return Decimal(text)
