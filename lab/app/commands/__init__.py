"""One module a command of `tiltbench`: `run(args, console, paths)` does it and returns the exit code."""
