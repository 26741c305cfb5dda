"""The photographs that are picked: one large with all that is known of it, or several to be moved together."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QThreadPool, Signal
from PySide6.QtGui import QImage

from inspector.judgement.offers import Offer, moment_of, seconds_off
from inspector.photo.clock_offset import clock_shows, offset_seconds, offset_told
from inspector.record.model import CameraClock
from inspector.record.photographs import change_photograph, set_clock, take_out, tie_photographs
from inspector.record.words import Cleaning, Light
from inspector.texts import tr, trn
from inspector.window.job import Job
from inspector.window.look.columns import Column
from inspector.window.look.fields import ChoiceField, LineField
from inspector.window.look.keyrow import ChoiceKeys, KeyRow
from inspector.window.look.keys import Key, Option
from inspector.window.look.menus import MenuKey
from inspector.window.look.picture import Picture
from inspector.window.look.text import ItemHead, SectionHead, Text
from inspector.window.photographs.entries import state_words, tied_words

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from inspector.record.finding import Photograph
    from inspector.storage.photographs import State
    from inspector.window.desk import Desk

HIGH, PX = 52.0, 1200
LOOSE, AT_PLACE, AT_ITEM = "loose", "place:", "item:"
WITH = "with"


class OneView(Column):
    """What is picked in the list; ``look_at`` asks for it to be looked at closely, ``cover`` for boxes to be drawn."""

    look_at = Signal(str)
    cover = Signal(str)
    take_offer = Signal(str)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, parent=parent)
        self.desk = desk
        self.photographs: tuple[Photograph, ...] = ()
        self._shown = ""
        self._pool = QThreadPool(self)
        self._pool.setMaxThreadCount(1)
        look = desk.look
        hint = tr("Pick a photograph in the list; it is shown here with all that is known of it.")
        self.none = Text(look, hint, ink="soft")
        self.head = ItemHead(look)
        self.picture = Picture(look, HIGH)
        self.trouble = Text(look, semibold=True)
        self.closely = Key(look, tr("look closely"), name=tr("Look at the photograph closely"))
        self.covers = Key(look, tr("cover for sharing"))
        self.out = Key(look, tr("take out"), name=tr("Take out of the record"))
        self.keys = KeyRow(look, [self.closely, self.covers, self.out], fit="flow")
        self.offer = Text(look)
        self.take_key = Key(look, tr("take it"), name=tr("Take the item offered"))
        self.belongs = MenuKey(look, tr("Move to an item or a place"), held="")
        self.caption = LineField(look, tr("Caption"))
        self.of_number = OfNumber(desk)
        self.shot = ChoiceField(look, tr("It is the shot"), (), none=tr("of no list"))
        self.clock = LineField(look, tr("If it shows a clock: what does the clock show?"), hint="14:32")
        self.facts = Text(look, ink="soft")
        self.hash = Text(look, ink="soft", step="small")
        self._lay_out()
        self._connect()
        self.show_picked((), {}, None)

    def _lay_out(self) -> None:
        look = self.desk.look
        self.facts_head = SectionHead(look, tr("What is known of it"))
        self.add(self.none)
        self.add(self.head, 0)
        for part, gap in (
            (self.picture, 2), (self.trouble, 2), (self.keys, 3), (self.offer, 4), (self.take_key, 2),
            (self.belongs, 4), (self.caption, 4), (self.of_number, 4), (self.shot, 4), (self.clock, 4),
            (self.facts_head, 6), (self.facts, 2), (self.hash, 2),
        ):  # fmt: skip
            self.add(part, gap)
        self._alone: tuple[QWidget, ...] = (
            self.picture, self.caption, self.of_number, self.shot, self.clock, self.facts_head, self.facts, self.hash,
            self.closely, self.covers,
        )  # fmt: skip

    def _connect(self) -> None:
        self.closely.clicked.connect(lambda: self.look_at.emit(self.photographs[0].id))
        self.covers.clicked.connect(lambda: self.cover.emit(self.photographs[0].id))
        self.take_key.clicked.connect(lambda: self.take_offer.emit(self.photographs[0].id))
        self.out.clicked.connect(lambda: self.desk.do(take_out(self.photographs)))
        self.belongs.picked.connect(self._move)
        self.caption.committed.connect(lambda text: self._change("Caption", caption=text))
        self.shot.committed.connect(lambda shot: self._change("Shot", shot=shot))
        self.clock.committed.connect(self._set_clock)
        self.of_number.changed.connect(self._change_number)

    # showing

    def show_picked(self, photographs: tuple[Photograph, ...], states: dict[str, State], offer: Offer | None) -> None:
        """These are picked; one is shown with all that is known of it."""
        if [p.id for p in photographs] != [p.id for p in self.photographs]:
            for field in (self.caption, self.shot, self.clock):
                field.let_go()
        self.photographs = photographs
        for part in self._alone:
            part.setVisible(len(photographs) == 1)
        for shown in (self.keys, self.belongs, self.out):
            shown.setVisible(bool(photographs))
        self.offer.setVisible(offer is not None and len(photographs) == 1)
        self.take_key.setVisible(self.offer.isVisibleTo(self))
        self.trouble.hide()
        if len(photographs) == 1:
            self._show_one(photographs[0], states, offer)
        else:
            self._show_many()
        self.settle_soon()

    def _show_many(self) -> None:
        count = len(self.photographs)
        self.head.setVisible(bool(count))
        self.none.setVisible(not count)
        self.head.say(trn("{count} photograph", "{count} photographs", count) if count else "")
        self._shown = ""
        if count:
            self._offer_ties()

    def _show_one(self, one: Photograph, states: dict[str, State], offer: Offer | None) -> None:
        profile = self.desk.profile
        self.head.show()
        self.none.hide()
        self.head.say(tied_words(profile, one), place=one.name)
        trouble = state_words(states.get(one.sha256))
        self.trouble.say(_mended(trouble))
        self.trouble.setVisible(bool(trouble))
        if offer is not None:
            self.offer.say(tr(offer.reason), tr("Offered: {item}.", item=offer.name))
        self._offer_ties()
        self.caption.set_value(one.caption)
        self.of_number.setVisible(bool(one.place))
        self.of_number.show_photograph(one)
        self._show_shot(one)
        self._show_clock(one)
        self.facts.say(self._known(one))
        self.hash.say("SHA-256 " + " ".join(one.sha256[n : n + 16] for n in range(0, 64, 16)))
        self._show_picture(one)

    def _offer_ties(self) -> None:
        profile = self.desk.profile
        options = [Option(LOOSE, tr("Not yet assigned"))]
        options += [Option(AT_PLACE + p.id, p.name, second=tr("the number")) for p in profile.places]
        options += [
            Option(AT_ITEM + item, profile.item_by_id[item].name, second=profile.station_of[item].name)
            for item in self.desk.walk
        ]
        self.belongs.set_options(options)

    def _show_shot(self, one: Photograph) -> None:
        self.shot.set_options([Option("", tr("of no list")), *_shot_options(self.desk)])
        self.shot.set_value(one.shot)

    def _show_clock(self, one: Photograph) -> None:
        self.clock.setVisible(_camera_time(one) is not None)
        known = next((c for c in self.desk.record.choices.clocks if c.photograph == one.id), None)
        self.clock.set_value(known.shows if known else "")
        self.clock.say(tr(offset_told(known.seconds)) if known else "")

    def _known(self, one: Photograph) -> str:
        lines = [f"{one.width} × {one.height}, {one.size / 1e6:.1f} MB, {one.media}"]
        if one.camera:
            lines.append(tr("Camera: {name}.", name=one.camera))
        if one.taken_at:
            when = one.taken_at[:19].replace("T", " ")
            lines.append(tr("The camera says {when}; that is no proof of when it was taken.", when=when))
        at = moment_of(self.desk.record, one)
        if at is not None and seconds_off(self.desk.record, one.camera):
            lines.append(tr("Put right by the clock: {when}.", when=at.strftime("%Y-%m-%d %H:%M:%S")))
        lines.append(tr("Brought in {when}.", when=one.imported_at[:16].replace("T", " ")))
        if one.marks or one.measures:
            marks = trn("{count} mark", "{count} marks", len(one.marks))
            measures = trn("{count} measurement", "{count} measurements", len(one.measures))
            kept = tr("{marks}, {measures}", marks=marks, measures=measures) if one.marks and one.measures else (
                marks if one.marks else measures)  # fmt: skip
            lines.append(tr("Kept with it: {what}.", what=kept))
        if one.has_place:
            lines.append(tr("The file tells where it was taken; a sharing copy does not."))
        return "\n".join(lines)

    def _show_picture(self, one: Photograph) -> None:
        name = one.caption or one.name
        if self._shown == one.sha256:
            return
        self._shown = one.sha256
        self.picture.show_image(QImage(), name, tr("coming"))
        thumbs, sha256 = self.desk.library.thumbs, one.sha256
        job = Job(lambda report: _decoded(thumbs.get(sha256, PX)))
        job.done.connect(lambda image: self._loaded(sha256, name, image))
        job.failed.connect(lambda _: self._loaded(sha256, name, QImage()))
        job.start(self._pool)

    def _loaded(self, sha256: str, name: str, image: QImage) -> None:
        if sha256 == self._shown:
            self.picture.show_image(image, name, tr("not in the store"))
            self.picture.whole()

    # changing

    def _change(self, label: str, joins: str = "", **changes: Any) -> None:
        if len(self.photographs) != 1:
            return
        one = self.photographs[0]
        if any(getattr(one, name) != value for name, value in changes.items()):
            self.desk.do(change_photograph(one, label=label, joins=joins, **changes))

    def _change_number(self, name: str, value: object) -> None:
        changes: dict[str, Any] = {name: value}
        self._change(name.replace("_", " ").capitalize(), **changes)

    def _move(self, to: str) -> None:
        item = to.removeprefix(AT_ITEM) if to.startswith(AT_ITEM) else ""
        place = to.removeprefix(AT_PLACE) if to.startswith(AT_PLACE) else ""
        moved = [p for p in self.photographs if (p.item, p.place) != (item, place)]
        if moved:
            self.desk.do(tie_photographs(moved, item=item, place=place))

    def _set_clock(self, typed: str) -> None:
        if len(self.photographs) != 1 or not typed.strip():
            return
        one = self.photographs[0]
        camera = _camera_time(one)
        if camera is None:
            return
        shows = clock_shows(typed, camera)
        if shows is None:
            self.clock.say(tr("Write the time as 14:32, or with its date as 2026-05-09 14:32."))
            return
        seconds = offset_seconds(camera, shows)
        clock = CameraClock(camera=one.camera, seconds=seconds, photograph=one.id, shows=typed.strip())
        if self.desk.do(set_clock(self.desk.record, clock)):
            self.clock.say(tr(offset_told(seconds)))


class OfNumber(Column):
    """What every photograph of a number is asked: light, cleaning, scale. ``changed(field, value)``."""

    changed = Signal(str, object)

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk.look, edge=0, top=0, parent=parent)
        look = desk.look
        held = {"held": "kept", "may_clear": True}
        self.light = ChoiceKeys(look, [Option(x.value, tr(x.value)) for x in Light], **held)  # type: ignore[arg-type]
        self.cleaned = ChoiceKeys(look, [Option(x.value, tr(x.value)) for x in Cleaning], **held)  # type: ignore[arg-type]
        self.scale = ChoiceKeys(look, [Option(WITH, tr("a scale is in the picture"))], many=True, held="kept")
        self.add(SectionHead(look, tr("Photograph of a number")))
        for words, keys in ((tr("Light"), self.light), (tr("Cleaned"), self.cleaned), (tr("Scale"), self.scale)):
            self.add(Text(look, words, ink="soft", step="small"), 3)
            self.add(keys, 1)
        self.light.changed.connect(lambda held: self.changed.emit("light", held[0] if held else ""))
        self.cleaned.changed.connect(lambda held: self.changed.emit("cleaned", held[0] if held else ""))
        self.scale.changed.connect(lambda held: self.changed.emit("scale_present", held == [WITH]))

    def show_photograph(self, one: Photograph) -> None:
        """The keys hold what the record says."""
        self.light.set_held(one.light)
        self.cleaned.set_held(one.cleaned)
        self.scale.set_held(*([WITH] if one.scale_present else []))


def _camera_time(one: Photograph) -> datetime | None:
    """The camera's own time; None where it told none, or a record from elsewhere tells what is no time."""
    try:
        return datetime.fromisoformat(one.taken_at).replace(tzinfo=None)
    except ValueError:
        return None


def _decoded(data: bytes | None) -> QImage:
    return QImage.fromData(data) if data else QImage()


def _shot_options(desk: Desk) -> list[Option]:
    from inspector.judgement.shots import named_shots

    return [Option(line.id, tr(line.name)) for line in named_shots(desk.profile, desk.record)]


def _mended(trouble: str) -> str:
    if not trouble:
        return ""
    what = _capital(trouble)
    return tr("{what}. Put the file back from a backup, or bring the photograph in again.", what=what)


def _capital(words: str) -> str:
    return words[:1].upper() + words[1:]
