"""Sets everything up on a fresh machine, then opens the program or passes its tests.

    python3 resources/start.py          open the window with the demo machine in it; without a
                                        screen, write the demo's sheets and pictures of the pages
    python3 resources/start.py test     pass the checks and the tests; further words go to pytest

Needs Python 3.11 or newer and nothing else. What it makes lies in .start/ in this checkout,
which may be deleted at any time.
"""

from __future__ import annotations

import hashlib
import importlib.util
import os
import shutil
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
OURS = ROOT / ".start"
ENVIRONMENT = OURS / "env"
DEMO = OURS / "demo"
OLDEST = (3, 11)
VERBS = ("run", "test")

# What Qt's wheels link to but do not carry, by Debian's names.
OFFSCREEN = ("libgl1", "libegl1", "libxkbcommon0", "libdbus-1-3", "libfontconfig1",
             "libglib2.0-0", "libgssapi-krb5-2", "fontconfig", "fonts-dejavu-core")  # fmt: skip
SCREEN = ("libxkbcommon-x11-0", "libxcb-cursor0", "libxcb-icccm4", "libxcb-keysyms1",
          "libxcb-shape0", "libpulse0")  # fmt: skip
TESTS = ("xvfb", "poppler-utils", "git")
# The journey of the phone is made in one of these; Debian's package of it is the first.
BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable")
NO_BROWSER = (
    "There is no browser Chromium here, and it could not be installed: the journey of the phone will fail."
    " Install it (on Debian the package chromium), or name its program in INSPECTOR_CHROMIUM, then start again."
)


class Stop(Exception):
    """Set-up cannot go on; the message says what, where and how to mend it."""


def main(words: list[str]) -> int:
    """Does what the words ask and gives the exit code: 0 well, 1 not well, 2 wrong use."""
    verb, rest = (words[0], words[1:]) if words else ("run", [])
    if verb in ("-h", "--help", "help"):
        print(__doc__)
        return 0
    if verb not in VERBS or (verb == "run" and rest):
        print(f"start.py does not know {' '.join(words)!r}: say nothing, 'test' or '--help'.")
        return 2
    try:
        return test(rest) if verb == "test" else run()
    except Stop as stop:
        print(f"\n{stop}", file=sys.stderr)
        return 1
    except KeyboardInterrupt:
        print("\nStopped. Start again to go on.", file=sys.stderr)
        return 1


def run() -> int:
    """Opens the demo in the window; without a screen writes its sheets and pages to a folder."""
    seen = has_screen()
    python = ready(OFFSCREEN + SCREEN if seen else OFFSCREEN, tests=False)
    if seen:
        return call([python, "-m", "inspector", "demo"])
    env = surroundings(
        QT_QPA_PLATFORM="offscreen",
        QT_LOGGING_RULES="default.warning=false",  # what is missing for want of a screen is no news
        INSPECTOR_DATA=str(DEMO / "library"),
    )
    sheets, pages = DEMO / "sheets", DEMO / "pages"
    for folder in (sheets, pages):
        shutil.rmtree(folder, ignore_errors=True)
        make(folder)
    say("There is no screen here: the demo is written to files instead.")
    code = call([python, "-m", "inspector", "demo", "--to", str(sheets)], env)
    code = code or call([python, "-m", "inspector.app", "--pictures", str(pages)], env)
    if code == 0:
        say(f"The demo's sheets are in {sheets}\nPictures of the pages are in {pages}")
    return code


def test(rest: list[str]) -> int:
    """Runs every check and the tests, names what failed, and ends with pytest's closing line."""
    python = ready(OFFSCREEN + SCREEN + TESTS, tests=True)
    if not browser():
        say(NO_BROWSER)
    env = surroundings(
        QT_QPA_PLATFORM="offscreen", PYTHONUTF8="1", LANG="C.UTF-8", LC_ALL="C.UTF-8"
    )
    steps = {
        "style (ruff)": [python, "-m", "ruff", "check", "."],
        "types (mypy)": [python, "-m", "mypy"],
        "imports (import-linter)": [str(Path(python).with_name("lint-imports"))],
        # On every core; a file stays on one, so that what its tests share is made once.
        "tests (pytest)": [python, "-m", "pytest", "-n", "auto", "--dist", "loadfile", *rest],
    }
    failed, closing = [], ""
    for name, command in steps.items():
        say(f"== {name}")
        code, closing = tee(command, env)
        if code:
            failed.append(name)
    say("\nAll steps passed." if not failed else f"\nFAILED: {', '.join(failed)}")
    say(closing)
    return 1 if failed else 0


def has_screen() -> bool:
    """True where a window can be shown."""
    if sys.platform in ("win32", "darwin"):
        return True
    return bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY"))


def ready(packages: tuple[str, ...], *, tests: bool) -> str:
    """Gives the path of a Python that has the program and, if asked, what its tests need."""
    if sys.version_info[:2] < OLDEST:
        raise Stop(
            f"Python {sys.version.split()[0]} is too old: start this with Python 3.11 or newer."
        )
    system_packages(packages)
    python = ENVIRONMENT / ("Scripts/python.exe" if sys.platform == "win32" else "bin/python")
    key, stamp = fingerprint(), ENVIRONMENT / "made-for"
    made = stamp.read_text("utf-8").split() if stamp.is_file() else []
    want = "tests" if tests else "program"
    if made[:1] != [key]:
        make_environment()
        made = [key]
    if want not in made:
        install(python, ".[dev]" if tests else ".")
        done = ["program", "tests"] if tests else ["program"]
        stamp.write_text(" ".join([key, *done]), "utf-8")
    return str(python)


def fingerprint() -> str:
    """Gives what the environment depends on, as a hash: this folder, Python and the settings."""
    parts = (str(ROOT), sys.executable, sys.version, (ROOT / "pyproject.toml").read_text("utf-8"))
    return hashlib.sha256("\0".join(parts).encode()).hexdigest()


def make_environment() -> None:
    """Leaves a fresh, empty environment in .start/env."""
    if importlib.util.find_spec("ensurepip") is None:
        raise Stop(
            f"The Python at {sys.executable} cannot make environments (its ensurepip is missing):"
            " install your system's package for that, on Debian and Ubuntu python3-venv."
        )
    make(OURS)
    say("Making an environment in .start/env ...")
    command = [sys.executable, "-m", "venv", "--clear", str(ENVIRONMENT)]
    done = subprocess.run(command, capture_output=True, text=True, check=False, env=surroundings())
    if done.returncode:
        told = (done.stdout + done.stderr).strip().splitlines()[-1:] or ["no reason given"]
        raise Stop(f"No environment could be made in {ENVIRONMENT}: {told[0]}")


def install(python: Path, what: str) -> None:
    """Leaves the program in the environment, to be run from this checkout."""
    say("Installing the libraries: some 400 megabytes the first time, one to five minutes ...")
    pip = [str(python), "-m", "pip", "install", "--quiet", "--disable-pip-version-check"]
    if call([*pip, "--editable", what], surroundings(PIP_ROOT_USER_ACTION="ignore")):
        raise Stop(
            "The libraries could not be installed (pip's reason stands above):"
            " check the network and the room on the disk, then start again."
        )


def system_packages(wanted: tuple[str, ...]) -> None:
    """Leaves the wanted packages installed on Debian and Ubuntu; elsewhere does nothing."""
    if not (shutil.which("dpkg-query") and shutil.which("apt-get")):
        return
    if importlib.util.find_spec("ensurepip") is None and sys.prefix == "/usr":
        wanted = (*wanted, "python3-venv")
    lacking = missing(wanted, installed())
    if not lacking:
        return
    apt = ["apt-get", "install", "--yes", "--no-install-recommends", *lacking]
    before = may_install()
    if before is None:
        raise Stop(
            "Libraries of the system are missing. Run this, then start again:\n"
            f"    sudo {' '.join(apt)}"
        )
    say(f"Installing what the system lacks: {' '.join(lacking)} ...")
    env = surroundings(DEBIAN_FRONTEND="noninteractive")
    quiet = ["-qq", "-o", "Dpkg::Use-Pty=0"]
    call([*before, "apt-get", "update", *quiet], env, stdout=subprocess.DEVNULL)
    if call([*before, *apt, *quiet], env, stdout=subprocess.DEVNULL):
        raise Stop(
            "apt-get failed (its reason stands above). Run this, then start again:\n"
            f"    {' '.join(apt)}"
        )
    importlib.invalidate_caches()


def browser() -> bool:
    """True where there is a Chromium for the tests, installed now if the system allows it."""
    if has_browser():
        return True
    try:
        system_packages(BROWSERS[:1])
    except Stop as stop:
        say(str(stop))
    return has_browser()


def has_browser() -> bool:
    """True where a Chromium, or one of its kin, can be started by its name."""
    return bool(os.environ.get("INSPECTOR_CHROMIUM") or any(map(shutil.which, BROWSERS)))


def installed() -> set[str]:
    """Gives the names of the installed packages and of what they provide."""
    shown = "--showformat=${db:Status-Status}|${Package}, ${Provides}\n"
    done = subprocess.run(["dpkg-query", "-W", shown], capture_output=True, text=True, check=False)
    names: set[str] = set()
    for line in done.stdout.splitlines():
        status, _, packages = line.partition("|")
        if status == "installed":
            names.update(name.split()[0] for name in packages.split(",") if name.strip())
    return names


def missing(wanted: tuple[str, ...], present: set[str]) -> list[str]:
    """Gives the wanted packages that are not present, in the order wanted."""
    return [name for name in wanted if name not in present]


def may_install() -> list[str] | None:
    """Gives what to put before apt-get to be allowed to install, or None if nothing helps."""
    if os.geteuid() == 0:
        return []
    if shutil.which("sudo") and call(["sudo", "-n", "true"], stderr=subprocess.DEVNULL) == 0:
        return ["sudo", "-n", "--preserve-env=DEBIAN_FRONTEND"]
    return None


def make(folder: Path) -> None:
    """Leaves the folder existing and writable."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Stop(
            f"{folder} cannot be made ({error.strerror}): move the checkout to where you may write."
        ) from None


def surroundings(**settings: str) -> dict[str, str]:
    """Gives the variables for a command: this process's, without what would mislead Python."""
    dropped = ("PYTHONPATH", "PYTHONHOME", "VIRTUAL_ENV")
    kept = {name: value for name, value in os.environ.items() if name not in dropped}
    if not kept.get("HOME", "unset"):
        del kept["HOME"]  # an empty HOME would make "~" the root of the disk
    return {**kept, **settings}


def call(
    command: list[str],
    env: dict[str, str] | None = None,
    stdout: int | None = None,
    stderr: int | None = None,
) -> int:
    """Runs a command in the checkout and gives its exit code."""
    env = env or surroundings()
    return subprocess.call(command, cwd=ROOT, env=env, stdout=stdout, stderr=stderr)


def tee(command: list[str], env: dict[str, str]) -> tuple[int, str]:
    """Runs a command, shows its output as it comes, and gives its exit code and last line."""
    last = ""
    with subprocess.Popen(
        command, cwd=ROOT, env=env, stdout=subprocess.PIPE, stderr=subprocess.STDOUT,
        encoding="utf-8", errors="replace",
    ) as process:  # fmt: skip
        for line in process.stdout or ():
            print(line, end="", flush=True)
            last = line.strip() or last
    return process.returncode, last


def say(text: str) -> None:
    """Prints at once, so that the order holds with what commands print."""
    print(text, flush=True)


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
