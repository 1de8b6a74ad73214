"""A page in the browser that remembers every address asked for outside this computer."""

from contextlib import contextmanager
from urllib.parse import urlsplit


@contextmanager
def new_page(chromium):
    """An empty page the size of a laptop's screen; page.outside lists the addresses that left this computer."""
    context = chromium.new_context(viewport={"width": 1280, "height": 800})
    page = context.new_page()
    page.outside = []

    def remember(request):
        parts = urlsplit(request.url)
        if parts.scheme not in ("data", "blob") and parts.hostname not in ("127.0.0.1", "localhost"):
            page.outside.append(request.url)

    page.on("request", remember)
    page.on("websocket", remember)
    yield page
    context.close()
