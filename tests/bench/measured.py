"""A small program that runs another and prints how long it took and the most memory that one process of it held.

What is counted starts small here: on Linux the usage of a program also counts what its starter held.
"""

import json
import resource
import subprocess
import sys
from time import perf_counter

begun = perf_counter()
code = subprocess.run(sys.argv[1:], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False).returncode
took = perf_counter() - begun
held = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss * (1 if sys.platform == "darwin" else 1024)
sys.stdout.write(json.dumps({"code": code, "seconds": took, "bytes": held}))
