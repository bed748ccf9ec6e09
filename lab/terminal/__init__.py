"""The same lessons and sums as in the window, in plain text."""
