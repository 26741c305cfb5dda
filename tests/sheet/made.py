"""An invented machine, an invented record of it, and pictures, to make sheets of."""

import random
from io import BytesIO

from inspector.judgement.judge import judge
from inspector.profile.model import Profile
from inspector.record.claim import Claim, Inquiry, Paper, Person, Quoted, Statement
from inspector.record.finding import Concluded, Finding, Measured, Photograph, Question
from inspector.record.model import ProfileRef, Record
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Conclusion, Condition, Evidence, Mark, PaperState, Role, Seen, Sureness
from inspector.resource import resource
from inspector.sheet.compose import seller_sheet

MADE_AT = "2025-05-17T11:20:00+01:00"
LEFT = resource("outlines", "left.svg").read_text("utf-8")
BRIEF = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 200 100">
<g stroke="#1B2230" stroke-width="2"><circle cx="50" cy="70" r="25" fill="none"/><rect x="80" y="20" width="60"
height="30" fill="#FBFAF6"/><path d="M10 10 h20 v10 l-5,5 c1 1 2 2 3 3 s1 1 2 2 q1 1 2 2 t3 3 a5 8 30 0 1 6 6 z"
fill="none"/><line x1="0" y1="99" x2="200" y2="99"/><polyline points="1,1 5,9 9,1" fill="none"/></g></svg>"""

ITEMS = (
    # id, name, assembly, safety, x, y
    ("front-wheel", "Front wheel", "wheels and brakes", "wheel", 140, 830),
    ("fuel-tank", "Fuel tank", "tinware", None, 1010, 350),
    ("carburettor", "Carburettor", "engine", "fuel", 1150, 560),
    ("front-brake", "Front brake", "wheels and brakes", "brake", 376, 764),
    ("headlamp", "Headlamp", "electrics", None, 570, 285),
    ("steering", "Steering head", "front end", "steering", 690, 330),
    ("bars", "Handlebar", "controls", "control", 880, 145),
    ("forks", "Front forks", "front end", None, 470, 580),
    ("barrel", "Cylinder barrel", "engine", None, 1030, 480),
    ("crankcase", "Crankcase", "engine", None, 1030, 670),
    ("frame-tube", "Frame, front down tube", "frame", "frame", 870, 745),
    ("cases", "Primary chaincase", "gearbox", None, 1260, 810),
    ("oil-tank", "Oil tank", "tinware", None, 1340, 600),
    ("saddle", "Saddle", "tinware", None, 1440, 375),
    ("exhaust", "Silencer", "engine", None, 1740, 965),
    ("rear-guard", "Rear mudguard", "tinware", None, 1990, 445),
    ("rear-tyre", "Rear tyre", "wheels and brakes", "tyre", 1640, 690),
    ("tail-lamp", "Tail lamp", "electrics", None, 2160, 600),
    ("drain-plug", "Oil drain plug", "engine", None, 1450, 870),
    ("rear-hub", "Rear hub, inside", "wheels and brakes", "brake", 1800, 764),
    ("side-stand", "Side stand", "frame", None, 1250, 960),
)


def item(key, name, assembly, safety, x, y):
    years = {"from": 1956} if key == "side-stand" else {}
    return {
        "id": key, "name": name, "question": f"Is the {name.lower()} of the year?", "how": "By eye and by hand.",
        "assembly": assembly, "spot": {"x": x, "y": y}, "years": years, "bring": ["lamp"],
        "caution": "Ask before touching." if safety else "", **({"safety": safety} if safety else {}),
        "variant": [
            {"id": "early", "name": f"{name}, early form", "detail": "seam under, two bolts",
             "years": {"from": 1950, "to": 1954}, "sources": ["list", "press"], "at": "page 62", "tell": "two bolts"},
            {"id": "late", "name": f"{name}, later form", "years": {"from": 1955, "to": 1958}, "tell": "four bolts"},
        ],
        "measure": [{"id": "width", "name": "Width", "from_where": "edge", "to_where": "edge", "unit": "in",
                     "nominal": [{"value": 7, "minus": 0.05, "plus": 0.05, "sources": ["register"], "at": "sheet 9"}]}],
    }  # fmt: skip


def profile(**changes) -> Profile:
    """The invented Brackwater Heron 600, model years 1950 to 1958."""
    stations = [
        {"id": "left", "name": "Left side", "say_first": "Ask before touching.",
         "item": [item(*i) for i in ITEMS[:11]]},
        {"id": "right", "name": "Right side", "item": [item(*i) for i in ITEMS[11:]]},
    ]  # fmt: skip
    stations[0]["item"][10]["place"] = "frame"
    whole = {
        "format": 1, "id": "brackwater-heron", "version": "1", "title": "Brackwater Heron 600", "maker": "Brackwater",
        "invented": True, "author": [{"name": "A. Teasel (invented)"}], "model_years": [1950, 1958],
        "source": [
            {"id": "list", "kind": "factory list", "title": "Parts list 1953"},
            {"id": "register", "kind": "club register", "title": "Heron register"},
            {"id": "press", "kind": "press", "title": "Road test of 1953"},
        ],
        "place": [
            {"id": "frame", "name": "Frame", "where": "headstock, left", "assembly": "frame",
             "caution": "Never file it.",
             "rule": [{"id": "f", "title": "frame", "segment": [{"id": "n", "kind": "digits"}]}]},
            {"id": "engine", "name": "Engine", "where": "crankcase, left", "assembly": "engine",
             "rule": [{"id": "e", "title": "engine", "segment": [{"id": "n", "kind": "digits"}]}]},
            {"id": "gearbox", "name": "Gearbox", "where": "top", "assembly": "gearbox",
             "rule": [{"id": "g", "title": "gearbox", "segment": [{"id": "n", "kind": "digits"}]}]},
        ],
        "station": stations, "cautions": ["The stand of this model slips on grass."],
        "shot": [{"id": "s1", "name": "Whole machine, left", "how": "from the height of the engine"}],
    }  # fmt: skip
    return Profile.model_validate({**whole, **changes})


def found(key, mark=None, **more) -> Finding:
    """What A. Teasel found at an item."""
    return Finding(item=key, by="inspector", at="2025-05-17T10:42:00+01:00", mark=mark, **more)


def concluded(what, sureness=Sureness.SURE):
    return (Concluded(what=what, sureness=sureness),)


FINDINGS = (
    found("front-wheel", Mark.FAIL, note="Rim cracked at a spoke hole. Seen with lamp, left side.", unsafe=True,
          conditions=(Condition.DAMAGED,), evidence=(Evidence.WEAR,), conclusions=concluded(Conclusion.RIGHT_YEAR)),
    found("fuel-tank", Mark.FAIL, fitted="late", note="Four fixing bolts, seam at the side.",
          conclusions=concluded(Conclusion.WRONG_YEAR), evidence=(Evidence.SHAPE, Evidence.BOOK),
          book="Parts list, p 62", reply="The first tank rusted through.", next_step="Ask for the tank that came off."),
    found("carburettor", Mark.DOUBT, fitted_other="twin-float, no stamp",
          conclusions=concluded(Conclusion.YEAR_NOT_SHOWN)),
    found("front-brake", Mark.DOUBT, fitted="early", conclusions=concluded(Conclusion.MODIFIED, Sureness.LIKELY),
          evidence=(Evidence.MEASUREMENT,), note="Cover plate drilled, later paint.",
          measured=(Measured(measure="width", readings=("7 1/32", "7"), unit="in", instrument="tape"),)),
    *(found(i[0], Mark.PASS, fitted="early", conclusions=concluded(Conclusion.RIGHT_YEAR), evidence=(Evidence.SHAPE,))
      for i in ITEMS[4:15]),
    found("rear-guard", Mark.PASS, note="Ołówek, κινητήρας, двигатель: written as told & <kept>."),
    found("rear-tyre", Mark.DOUBT, note="Made in week 14 of 2008.", unsafe=True, evidence=(Evidence.DATE_CODE,)),
    found("tail-lamp", seen=Seen.NOT_CHECKED),
    found("drain-plug", seen=Seen.NOT_SEEN, note="under the tray"),
    found("rear-hub", seen=Seen.CANNOT_BE_SEEN, note="behind the chain guard"),
)  # fmt: skip


def photographs(count, items=("front-wheel", "fuel-tank", "carburettor", "")):
    return tuple(
        Photograph(id=f"p{n}", sha256=f"{n:064x}", name=f"{n}.jpg", media="image/jpeg", width=1200, height=900, size=9,
                   item=items[(n - 1) % len(items)], caption=f"caption number {n}")
        for n in range(1, count + 1)
    )  # fmt: skip


def jpeg(seed=1, size=(1200, 900), **more) -> bytes:
    """A small JPEG of its own grey."""
    from PIL import Image, ImageDraw

    image = Image.new("RGB", size, (180 + seed % 40, 178, 170))
    ImageDraw.Draw(image).ellipse((300, 250, 300 + 20 * (seed % 20 + 4), 650), fill=(120, 120, 115))
    buffer = BytesIO()
    image.save(buffer, "JPEG", quality=80, **more)
    return buffer.getvalue()


def record(photos=5, **changes) -> Record:
    """An invented inspection of the Heron."""
    whole = {
        "id": "3", "created": MADE_AT, "invented": True,
        "profile": ProfileRef(id="brackwater-heron", version="1", title="Brackwater Heron 600"),
        "claim": Claim(model="Brackwater Heron 600", advertised="1953 Heron, all as made", titled="Heron 600, 1954",
                       model_year=1953, title_year=1954, place="Thornwick", date="17 May 2025",
                       conditions="outdoors, in daylight, engine cold"),
        "people": (
            Person(id="inspector", name="A. Teasel", role=Role.INSPECTOR, interest="none declared"),
            Person(id="seller", name="R. Quill", role=Role.SELLER),
        ),
        "papers": (Paper(id="book", name="Registration book", state=PaperState.COPY, quoted=(Quoted(number="6H 15B42",
                         place="frame"),)),),
        "inquiries": (Inquiry(id="q", about="Theft", body="Marsh Riders register", sent="6H 15842",
                              date="2025-05-16"),),
        "statements": (Statement(id="s", text="The engine was rebuilt in 2011.", by="R. Quill"),),
        "readings": (
            Reading(id="r1", place="frame", figures=figures_of("6H 15[83]42"), by="inspector",
                    stamping={"machining marks": "see", "depth": "cannot see"}),
            Reading(id="r2", place="engine", figures=figures_of("6HE 1?0842"), by="inspector", cleaned=True,
                    leave_of="R. Quill"),
        ),
        "findings": FINDINGS, "photographs": photographs(photos),
        "questions": (Question(id="o", text="Has the seller the tank that came off?"),),
    }  # fmt: skip
    return Record.model_validate({**whole, **changes})


def store(of: Record) -> dict[str, bytes]:
    """A picture for every photograph of the record."""
    return {p.id: jpeg(n) for n, p in enumerate(of.photographs)}


def sheet(of=None, by=None, pictures=None, outline=LEFT):
    """The seller's copy of a record."""
    of, by = of or record(), by or profile()
    return seller_sheet(by, of, judge(by, of), store(of) if pictures is None else pictures, outline, MADE_AT, 1)


def words(seed, count):
    """That many invented words, all different."""
    random.seed(seed)
    return [f"{random.choice(('hub', 'rim', 'bolt', 'lug'))}{n}" for n in range(count)]
