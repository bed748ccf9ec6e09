"""What the start screen imports stays light."""

import subprocess
import sys


def test_pydantic_is_imported_only_when_the_first_file_is_read():
    program = "import sys, lab.files; sys.exit('pydantic' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", program], check=False, timeout=60).returncode == 0
