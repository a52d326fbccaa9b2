"""From what a guest says to a frame: what was asked, of which foods and wines, within which limits."""

import socket
from contextlib import suppress

# spaCy brings urllib3, which on its import opens an IPv6 socket to see whether it could. Nothing here ever
# opens one: it is told that it could not.
_could, socket.has_ipv6 = socket.has_ipv6, False
with suppress(ImportError):
    import urllib3.util.connection  # noqa: F401
socket.has_ipv6 = _could
