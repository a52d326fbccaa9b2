"""The manual page, made from the options of the command line; `goeswith.1` is what is shipped."""
