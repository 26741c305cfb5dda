"""The tracked files of this checkout, for checks of the house itself."""

import ast
import subprocess
import sys
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]


@cache
def tracked() -> tuple[str, ...]:
    """The paths of all files that git tracks and that are still there, from the top."""
    command = ["git", "-c", f"safe.directory={ROOT.as_posix()}", "ls-files", "-z"]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    return tuple(name for name in done.stdout.split("\0") if name and (ROOT / name).is_file())


def python_files(*tops: str) -> list[str]:
    """The tracked Python files below the given top folders."""
    return [n for n in tracked() if n.endswith(".py") and n.split("/")[0] in tops]


def parsed(name: str) -> ast.Module:
    """The syntax tree of a tracked Python file."""
    return ast.parse((ROOT / name).read_text("utf-8"), name)


def loaded_after(module: str) -> set[str]:
    """The names of all modules in a fresh interpreter that imported the given one."""
    code = f"import sys, {module}; print(*sys.modules, sep='\\n')"
    command = [sys.executable, "-c", code]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return set(done.stdout.split())
