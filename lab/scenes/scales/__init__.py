"""A body on scales as a picture: from its side, and with three scales from above too."""
