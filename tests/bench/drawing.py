"""A whole program that draws a composed sheet: text and pictures are read from one file, the PDF goes to another."""

import pickle
import sys
from pathlib import Path

from inspector.sheet.pdf import as_pdf

composed, pdf = map(Path, sys.argv[1:])
pdf.write_bytes(as_pdf(pickle.loads(composed.read_bytes())))
