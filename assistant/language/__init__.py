"""From what a guest says to a frame: what was asked, of which foods and wines, within which limits."""

import sys
from importlib import import_module
from types import ModuleType
from typing import Any

# `import spacy` takes one function of its command line, and with it requests, httpx, typer and weasel: a
# fifth of its time, 18 MB, and an IPv6 socket that urllib3 opens to see whether it could. That function is
# loaded when somebody calls it.
_INFO = "spacy.cli.info"


class _Late(ModuleType):
    """Stands for that module until one of its names is used."""

    def info(self, *given: Any, **named: Any) -> Any:
        return self.__getattr__("info")(*given, **named)

    def __getattr__(self, name: str) -> Any:
        if name.startswith("__"):  # the import system asks, not a user
            raise AttributeError(name)
        if sys.modules.get(_INFO) is self:
            del sys.modules[_INFO]
        return getattr(import_module(_INFO), name)


sys.modules.setdefault(_INFO, _Late(_INFO))
