"""The screen of a lesson: its parts, one module each, and a picture for every kind of question."""
