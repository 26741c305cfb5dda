"""The same work without a window. 0 is well, 1 is "not as it should be", 2 is wrong use."""

from __future__ import annotations

from contextlib import nullcontext
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inspector.clock import now
from inspector.named import found, from_library, library_if_any, open_library, profile_at, profile_for_blank
from inspector.terminal import AMISS, MISUSE, WELL, Parser, Stop, a_path, a_word, need_screen, run, tell, tell_json
from inspector.texts import tr

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterator, Sequence

    from inspector.answer import Answer
    from inspector.profile.model import Profile
    from inspector.profile.numbers import Place
    from inspector.record.model import Record
    from inspector.sheet.blank import Form
    from inspector.sheet.pdf import Paper
    from inspector.storage.library import Library
    from inspector.storage.same import SameNumber

LONGEST_NUMBER = 100  # figures of a number that is read; the longest of any maker has a fifth of it


def main(argv: Sequence[str] | None = None) -> int:
    """The command is done; gives its code. An error is one line, never a traceback."""
    options = _parser().parse_args(argv)
    return run(lambda: int(options.act(options)))


def _parser() -> Parser:
    parser = Parser(prog="inspector", description=tr("Walks you through the inspection of an old motorcycle."))
    parser.set_defaults(act=_window)
    commands = parser.add_subparsers(metavar=tr("COMMAND"))
    _add(commands, "demo", _demo, tr("put the demo machine into the library and open it"), ("--to",))
    judge = _add(commands, "judge", _judge, tr("everything computed from a record"))
    judge.add_argument("file", type=a_word, help=tr("a record file, a bag, or the id of a record in the library"))
    sheet = _add(commands, "sheet", _sheet, tr("write a sheet as PDF, or the wants list also as CSV"))
    sheet.add_argument(
        "file", type=a_word, help=tr("a record file, an id of the library, or a profile for a blank sheet")
    )
    sheet.add_argument("--copy", choices=("seller", "owner", "dating", "pictures", "wants", "blank"), required=True)
    sheet.add_argument("--to", type=a_path, required=True, metavar="OUT.pdf")
    sheet.add_argument("--paper", choices=("A4", "Letter"), default="A4")
    forms = tr("form of a blank sheet: short, one line an item, or full, with how to look and sources")
    sheet.add_argument("--form", choices=("short", "full"), default="short", help=forms)
    sheet.add_argument("--year", type=int, help=tr("claimed model year of a blank sheet"))
    _add_pack(commands)
    check = _add(commands, "check", _check, tr("are profiles, records, sheets and bags as they should be?"))
    check.add_argument("files", nargs="+", type=a_path)
    read = _add(commands, "read", _read_number, tr("what a number says by the rules of a profile"))
    read.add_argument("profile", type=a_word, help=tr("the folder of a profile, or the name of one that ships"))
    read.add_argument("place", help=tr("the place that carries the number, as frame or engine"))
    read.add_argument("number", type=a_word, help=tr("the number as read: ? for an unreadable figure, [19] for 1 or 9"))
    read.add_argument("--year", type=int, help=tr("only what this model year allows"))
    _add(commands, "list", _list, tr("the machines of the library"))
    profile = _add(commands, "profile", _profile, tr("begin a profile, or write its schema"))
    profile.add_argument("what", choices=("new", "schema"))
    profile.add_argument("--to", type=a_path, help=tr("folder of the new profile, or file of the schema"))
    profile.add_argument("--title", default="My model")
    return parser


def _add_pack(commands: Any) -> None:
    pack = _add(commands, "pack", _pack, tr("pack a whole inspection as a bag, or a copy of it to share"))
    pack.add_argument("file", type=a_word, help=tr("the id of a record in the library"))
    pack.add_argument("--to", type=a_path, required=True, metavar="OUT.zip")
    pack.add_argument("--sharing", action="store_true", help=tr("without money, places and what is covered"))
    pack.add_argument("--without-names", action="store_true", help=tr("when sharing: people by their role alone"))


def _add(commands: Any, name: str, act: Any, words: str, paths: Sequence[str] = ()) -> argparse.ArgumentParser:
    command: argparse.ArgumentParser = commands.add_parser(name, help=words, description=words)
    command.set_defaults(act=act)
    command.add_argument("--json", action="store_true", help=tr("answer in JSON"))
    for path in paths:
        command.add_argument(path, type=a_path, metavar="FOLDER")
    return command


def _say(options: argparse.Namespace, data: Any, lines: Sequence[str]) -> None:
    tell_json(data) if options.json else tell(lines)


# the commands


def _window(_: argparse.Namespace) -> int:
    need_screen()
    from inspector.app import main as open_window

    return open_window([])


def _demo(options: argparse.Namespace) -> int:
    if options.to is not None:
        return _demo_sheets(options)
    need_screen()
    from inspector.demo import put_demo

    with open_library(look_only=False) as library:
        record_id = put_demo(library)
    from inspector.app import main as open_window

    return open_window(["--record", record_id])


def _demo_sheets(options: argparse.Namespace) -> int:
    import tempfile

    from inspector.demo import put_demo
    from inspector.storage.library import Library

    with tempfile.TemporaryDirectory() as scratch, Library.open(Path(scratch), now) as library:
        profile, record = from_library(library, put_demo(library))
        written = [
            _write(options.to / f"demo-seller-{paper}.pdf", _copy_pdf("seller", profile, record, library, paper))
            for paper in ("A4", "Letter")
        ]
        written.append(_write(options.to / "blank-walk-sheet.pdf", _blank_pdf(profile, 1953, "A4")))
    _say(options, {"written": written}, written)
    return WELL


def _judge(options: argparse.Namespace) -> int:
    from inspector.judgement.judge import judge, to_json
    from inspector.judgement.score import percent_seen
    from inspector.judgement.sides import identity_places

    profile, record, library = found(options.file)
    same: tuple[SameNumber, ...] = ()
    if library is not None:
        with library:
            same = library.same_numbers(record.id, identity_places(profile))
    judged = judge(profile, record)
    score = judged.score
    value = tr("nothing seen yet") if score.value is None else f"{score.value:.1f}"
    lines = [tr(f.sentence) for f in judged.safety.findings] + [tr(judged.safety.caution)]
    lines += [
        tr("Seen: {n} %", n=percent_seen(score.seen_percent)),
        tr("Correct, of what was seen: {value} (may end at {low} to {high})", value=value,
           low=f"{score.low:.1f}", high=f"{score.high:.1f}"),
    ]  # fmt: skip
    lines += [tr("Open: {question}", question=question.text) for question in judged.questions]
    lines += [tr(one.sentence) for one in same]
    _say(options, {**to_json(judged), "same_numbers": [asdict(one) for one in same]}, lines)
    return WELL


def _sheet(options: argparse.Namespace) -> int:
    from inspector.handover import wants_list

    if options.copy == "blank":
        profile, year = profile_for_blank(options.file, options.year)
        pdf = _blank_pdf(profile, year, options.paper, options.form)
    else:
        profile, record, library = found(options.file)
        with library or nullcontext():
            if options.copy == "wants":
                pdf = wants_list(profile, record, now(), options.to.suffix, options.paper)
            elif library is not None:
                pdf = _copy_pdf(options.copy, profile, record, library, options.paper)
            else:
                what = tr("A record file has no photographs with it: give the id of a record, or take in a bag first.")
                raise Stop(what, MISUSE)
    written = _write(options.to, pdf)
    _say(options, {"written": written}, [written])
    return WELL


def _pack(options: argparse.Namespace) -> int:
    from inspector.packing.command import packed

    with open_library() as library:
        answer, lines = packed(
            library, options.file, options.to, sharing=options.sharing, names=not options.without_names
        )
    _say(options, answer, [tr(line) for line in lines])
    return WELL


def _check(options: argparse.Namespace) -> int:
    from inspector.checking import check

    library = library_if_any()
    try:
        answers = {str(path): check(path, library) for path in options.files}
    finally:
        if library is not None:
            library.close()
    lines = [line for path, answer in answers.items() for line in _check_lines(path, answer)]
    _say(options, {path: answer.plain() for path, answer in answers.items()}, lines)
    return WELL if all(answer.well for answer in answers.values()) else AMISS


def _check_lines(path: str, answer: Answer) -> Iterator[str]:
    """Every sentence of the answer, those that tell the whole behind the name of the file."""
    for number, line in enumerate(map(tr, answer.lines())):
        heads = number < max(len(answer.problems), 1)
        yield f"{path}: {line}" if heads and path not in line else line


def _read_number(options: argparse.Namespace) -> int:
    from inspector.judgement.decode import decode
    from inspector.judgement.decoded_words import decoded_lines
    from inspector.judgement.plain import plain
    from inspector.record.reading import figures_of

    if len(options.number) > LONGEST_NUMBER:
        raise Stop(tr("No number has more than {most} figures. Give it as it was read.", most=LONGEST_NUMBER), MISUSE)
    profile = profile_at(options.profile)
    place = _place_of(profile, options.place)
    try:
        figures = figures_of(options.number)
    except ValueError as error:
        raise Stop(tr("{number} cannot be read: {why}.", number=options.number, why=error), MISUSE) from error
    decoded = decode(profile, place, figures, options.year)
    _say(options, plain(decoded), [tr(line) for line in decoded_lines(profile, decoded)])
    return WELL if decoded.hits else AMISS


def _place_of(profile: Profile, name: str) -> Place:
    for place in profile.places:
        if name.casefold() in (place.id.casefold(), place.name.casefold()):
            return place
    known = ", ".join(f"{place.id} ({place.name})" for place in profile.places) or tr("none")
    raise Stop(tr("{name} is no place of this profile. Its places are: {known}.", name=name, known=known), MISUSE)


def _list(options: argparse.Namespace) -> int:
    with open_library() as library:
        machines = library.machines()
    data = [{**asdict(m.summary), "updated": m.updated} for m in machines]
    lines = [f"{m.summary.id}  {m.summary.title}  {m.summary.model_year or '-'}  {m.summary.place}" for m in machines]
    _say(options, data, lines or [tr("No machine here yet.")])
    return WELL


def _profile(options: argparse.Namespace) -> int:
    from inspector.profile.find import new_profile
    from inspector.profile.schema import write_schema

    to: Path | None = options.to
    if to is None:
        raise Stop(tr("Say where with --to."), MISUSE)
    try:
        if options.what == "schema":
            write_schema(to)
        else:
            to = new_profile(to, to.name, options.title)
    except FileExistsError as error:
        raise Stop(tr("{folder} holds a profile already. Choose another folder.", folder=to)) from error
    except OSError as error:
        raise Stop(tr("{path} cannot be written: {why}.", path=to, why=error.strerror)) from error
    except ValueError as error:
        raise Stop(str(error)) from error
    _say(options, {"written": str(to)}, [str(to)])
    return WELL


# what they share


def _copy_pdf(copy: str, profile: Profile, record: Record, library: Library, paper: str) -> bytes:
    from inspector.handover import copy_of
    from inspector.issuing import place_of
    from inspector.sealing import drawn
    from inspector.sheet.pdf import as_pdf

    size: Paper = "Letter" if paper == "Letter" else "A4"
    if copy == "seller":
        return drawn(profile, record, place_of(library), now(), size)
    return as_pdf(copy_of(copy, profile, record, library, now()), size)


def _blank_pdf(profile: Profile, year: int | None, paper: str, form: Form = "short") -> bytes:
    from inspector.handover import walk_sheet
    from inspector.sheet.pdf import as_pdf

    return as_pdf(walk_sheet(profile, year, now(), form), "Letter" if paper == "Letter" else "A4")


def _write(path: Path, pdf: bytes) -> str:
    from inspector.sheet.write import SheetTrouble, write_atomically

    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        write_atomically(path, pdf)
    except OSError as error:
        raise Stop(tr("{path} cannot be written: {why}.", path=path, why=error.strerror)) from error
    except SheetTrouble as trouble:
        raise Stop(trouble.sentence) from trouble
    return str(path)
