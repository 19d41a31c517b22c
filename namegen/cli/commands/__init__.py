"""One file per command; the file's name is the command's."""
