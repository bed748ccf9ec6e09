"""Published check values: what books and tables print, and what the lab makes of the same inputs.

Numbers only, each with its source's id and how well the source is known.  `register.REGISTER` holds them all.
"""
