"""A machine with something of everything in it."""

from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QWidget

from inspector.judgement.route import order
from inspector.photo.intake import intake
from inspector.profile.read import read_profile
from inspector.record import verbs
from inspector.record.begin import new_record
from inspector.record.claim import Paper, Quoted, Statement
from inspector.record.edits import Part
from inspector.record.model import ProfileRef
from inspector.record.reading import Reading, figures_of
from inspector.record.words import Conclusion, Evidence, Mark, Seen
from inspector.session import Session
from inspector.storage.library import Library
from inspector.window.bringing import Tie, photograph_of
from tests.journeys.drive import Clock, heron, picture

MACHINE = "HERON001"
PAGES = ("machines", "claim", "numbers", "walk", "photographs", "result", "sheet")
SIZES = ((1280, 800), (800, 1280))
MARKS, STATES = tuple(Mark), (Seen.NOT_SEEN, Seen.CANNOT_BE_SEEN, Seen.NOT_FITTED)


def begin(house) -> None:
    """A machine is open without a hand having touched anything."""
    assert house.desk.start(read_profile(heron()), 1953)


def make(folder: Path) -> str:
    """A library in the folder with one machine; gives its id.

    Two items of three carry a mark; there are reasons, photographs, a number, a paper, a second person.
    """
    clock, read = Clock(), read_profile(heron())
    ref = ProfileRef(id=read.profile.id, version=read.profile.version, sha256=read.sha256, title=read.profile.title)
    with Library.open(folder, clock) as library:
        library.create(new_record(MACHINE, clock(), ref), read.folder)
        session = Session(library, MACHINE, read.profile, clock)
        session.do(verbs.set_claim("model_year", 1953))
        session.do(verbs.set_claim("model", read.profile.title))
        for n, item in enumerate(order(session.profile, session.record)):
            for verb, *values in _found(session.profile, n, item):
                session.do(verb(session.record, item, "inspector", clock(), *values))
        first = order(session.profile, session.record)[0]
        session.do(verbs.mark(session.record, first, "ben", clock(), Mark.DOUBT))
        _papers(session, clock)
        taken = intake([picture(folder / f"side {n}.jpg", n) for n in range(2)], library.photographs)
        session.do(verbs.add_photographs(tuple(photograph_of(t, Tie(item=first), clock(), "inspector") for t in taken)))
    return MACHINE


def _papers(session, clock) -> None:
    reading = Reading(id="read", place=session.profile.places[0].id, by="inspector", figures=figures_of("H53 1?47"))
    session.do(verbs.put_entry(Part.READINGS, reading, label="Number"))
    paper = Paper(id="paper-1", name="Registration book", quoted=(Quoted(number="H53 1947"),))
    session.do(verbs.put_entry(Part.PAPERS, paper, label="Paper"))
    said = Statement(id="said-1", text="It was my uncle's, and he never let it out in the rain.", at=clock())
    session.do(verbs.put_entry(Part.STATEMENTS, said, label="Said"))


def fill(house) -> None:
    """The machine is open in the house's window."""
    assert house.desk.open(MACHINE)
    house.settle()


def _found(profile, n, item):
    if n % 3 == 2:
        return [(verbs.set_seen, STATES[n // 3 % 3])]
    forms = profile.item_by_id[item].variants
    found = [(verbs.choose_fitted, forms[n % len(forms)].id), (verbs.mark, MARKS[n // 2 % 3])]
    if n % 2:
        found.append((verbs.toggle_conclusion, tuple(Conclusion)[n % 16]))
        found.append((verbs.toggle_evidence, tuple(Evidence)[n % 16]))
        found.append((verbs.set_note, "A weld below the lug, ground flat and painted over in another black."))
    return found


def shown(page: QWidget, kind=QWidget) -> list[QWidget]:
    """All widgets of the kind that can be seen on the page or by scrolling in it."""
    return [w for w in page.findChildren(kind) if w.isVisible()]


def named(widget: QWidget) -> str:
    """How a widget is called in a complaint."""
    words = widget.accessibleName() or getattr(widget, "words", "")
    return f"{type(widget).__name__} “{str(words)[:60]}” {widget.width()}×{widget.height()}"


def scrolls_of(widget: QWidget) -> list[QScrollArea]:
    """The areas in which the widget scrolls, the nearest first."""
    found, above = [], widget.parentWidget()
    while above is not None:
        if isinstance(above, QScrollArea):
            found.append(above)
        above = above.parentWidget()
    return found


def takes_focus(widget: QWidget) -> bool:
    tab = widget.focusPolicy() & Qt.FocusPolicy.TabFocus
    return bool(tab) and widget.isVisible() and widget.isEnabled() and widget.focusProxy() is None
