"""QR codes of links, as SVG with a text alternative. The symbol is that of ISO/IEC 18004; segno draws it."""

from __future__ import annotations

import segno
from markupsafe import Markup, escape

from ..craft.language import _


def qr_svg(url: str, label: str) -> Markup:
    """An SVG of 18 mm for a printed link, with the quiet zone of four modules that the standard asks for."""
    code = segno.make(url, error="m", micro=False)
    path = code.svg_inline(border=4, omitsize=True, svgclass=None, lineclass=None)
    body = path[path.index(">") + 1:path.rindex("</svg>")]
    side = code.symbol_size(border=4)[0]
    said = escape(_("QR code: {label}, {address}", label=label, address=url))
    return Markup(f'<svg xmlns="http://www.w3.org/2000/svg" class="qr" width="18mm" height="18mm" viewBox="0 0 {side} {side}" role="img" '
                  f'aria-label="{said}"><title>{said}</title>{body}</svg>')
