"""The name of the machine that a figure comes from."""

import os
import platform
from pathlib import Path


def processor() -> str:
    """Processor and cores, "AMD EPYC, 2 cores": the name where the system tells it."""
    try:
        lines = Path("/proc/cpuinfo").read_text().splitlines()
    except OSError:
        lines = []
    names = [line.split(":", 1)[1].strip() for line in lines if line.startswith("model name")]
    return f"{(names or [platform.processor() or platform.machine()])[0]}, {os.cpu_count()} cores"
