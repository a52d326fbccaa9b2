"""The notebook: what the host told, kept in one plain Turtle file that only ever grows.

`load` reads it, `stated` makes a statement of what was told, `add` saves it, `withdrawal` takes it back,
`standing` says what is left, `export` and `merge` carry it between hosts. `note_answer` and `read_log`
keep the log of answers. Bad files and bad statements are problems, never exceptions.
"""

from assistant.notebook.answer_log import Entry, Log, note_answer, read_log
from assistant.notebook.merging import Merged, merge
from assistant.notebook.reading import Notebook, load
from assistant.notebook.saving import Saved, add, export
from assistant.notebook.standing import standing
from assistant.notebook.statement import Stated, Statement, stated, withdrawal
from assistant.notebook_place import log_beside, log_place, place

__all__ = [
    "Entry",
    "Log",
    "Merged",
    "Notebook",
    "Saved",
    "Stated",
    "Statement",
    "add",
    "export",
    "load",
    "log_beside",
    "log_place",
    "merge",
    "note_answer",
    "place",
    "read_log",
    "standing",
    "stated",
    "withdrawal",
]
