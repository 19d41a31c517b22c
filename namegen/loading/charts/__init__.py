"""Charts that people have already: a table of devices -> robots, and what could not be placed."""
