"""The bottles a host sells or owns, read from a CSV file, and how answers and plans name them.

`read_stock` reads a list; `Stock` holds its bottles by wine style. Mistakes are listed by line, never raised;
only a file nothing can be made of raises KnowledgeError.
"""
