"""A library with one inspection in it that has everything a bag can hold, and what is in a bag."""

import io
import zipfile

from inspector.profile.find import new_profile
from inspector.record.edits import Part
from inspector.record.finding import Photograph
from inspector.record.verbs import add_photographs, drop_entry
from inspector.storage.library import Library
from tests.photo.pictures import plain, saved
from tests.record.steps import blank
from tests.storage.shelf import ID, Clock, opened, said

HERE, AWAY = "here", "away"


def profile(folder):
    """A small profile that can be read."""
    home = folder / "tern"
    if not home.exists():
        new_profile(home, "tern-250", "Tern 250 (invented)")
    return home


def photograph(library, number, **told):
    """A photograph that is kept, as a record names it."""
    data = saved(plain((40 + number, 30)), "JPEG")
    sha256 = library.photographs.keep(data).sha256
    return Photograph(
        id=f"p{number}", sha256=sha256, name=told.pop("name", f"DSC {number:04}.JPG"), media="image/jpeg",
        width=40 + number, height=30, size=len(data), **told,
    )  # fmt: skip


def library_at(folder):
    """The library of that folder, open."""
    return Library.open(folder, Clock())


def filled(folder, steps=()):
    """A closed library with one record: photographs, one of them taken out again, and these steps."""
    with library_at(folder / HERE) as library:
        library.create(blank(), profile(folder))
        session = opened(library, Clock())
        session.do(said("first", "It was said to be all there."))
        session.do(add_photographs(tuple(photograph(library, n) for n in range(3))))
        session.do(drop_entry(Part.PHOTOGRAPHS, "p2", label="Take a photograph out"))
        for step in steps:
            session.do(step)
        session.do(said("undone"))
        session.undo()
    return folder / HERE


def files(path):
    """What is in a zip, by name."""
    with zipfile.ZipFile(path) as archive:
        return {name: archive.read(name) for name in archive.namelist()}


def zipped(path, contents, compression=zipfile.ZIP_STORED):
    """A zip of these files."""
    with zipfile.ZipFile(path, "w", compression) as archive:
        for name, data in contents.items():
            archive.writestr(name, data)
    return path


def unzipped(path, folder):
    """The zip laid out in a folder; the folder of the bag."""
    with zipfile.ZipFile(path) as archive:
        archive.extractall(folder)
    (home,) = folder.iterdir()
    return home


def changed_at(path, contents, name, at, bit=0):
    """The zip with one bit of one file another."""
    data = bytearray(contents[name])
    data[at] ^= 1 << bit
    return zipped(path, {**contents, name: bytes(data)})


def small_zip(contents):
    """The bytes of a zip of these files."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w") as archive:
        for name, data in contents.items():
            archive.writestr(name, data)
    return buffer.getvalue()


__all__ = ["AWAY", "HERE", "ID"]
