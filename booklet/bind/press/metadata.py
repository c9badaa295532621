"""What a PDF says of itself, twice: as document information and as an XMP packet (ISO 16684-1), which PDF/UA asks for."""

from __future__ import annotations

import re
from dataclasses import dataclass
from xml.sax.saxutils import escape

from .pdf_text import text_of

PRODUCER = "booklet"


@dataclass(frozen=True)
class About:
    """Title, author, one sentence, language; the times are ISO 8601 in UTC, or empty."""

    title: str
    author: str = ""
    subject: str = ""
    language: str = "en"
    creator: str = "booklet"
    created: str = ""
    modified: str = ""


def information(about: About) -> bytes:
    """The document information dictionary."""
    said = {"Title": about.title, "Author": about.author, "Subject": about.subject, "Creator": about.creator, "Producer": PRODUCER,
            "CreationDate": _pdf_time(about.created), "ModDate": _pdf_time(about.modified)}
    return b"<<" + b"".join(b"/%s %s" % (key.encode(), text_of(value)) for key, value in said.items() if value) + b">>"


def _pdf_time(moment: str) -> str:
    return "D:" + re.sub(r"[-:T]", "", moment) if moment else ""


def packet(about: About) -> bytes:
    """The XMP packet."""
    author = f"<dc:creator><rdf:Seq><rdf:li>{escape(about.author)}</rdf:li></rdf:Seq></dc:creator>" if about.author else ""
    subject = f'<dc:description><rdf:Alt><rdf:li xml:lang="x-default">{escape(about.subject)}</rdf:li></rdf:Alt></dc:description>' if about.subject else ""
    times = "".join(f"<xmp:{name}>{value}</xmp:{name}>" for name, value in (("CreateDate", about.created), ("ModifyDate", about.modified)) if value)
    return f"""<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
<rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" \
xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
<dc:title><rdf:Alt><rdf:li xml:lang="x-default">{escape(about.title)}</rdf:li></rdf:Alt></dc:title>{author}{subject}
<dc:language><rdf:Bag><rdf:li>{escape(about.language)}</rdf:li></rdf:Bag></dc:language>
<pdf:Producer>{PRODUCER}</pdf:Producer><xmp:CreatorTool>{escape(about.creator)}</xmp:CreatorTool>{times}
<pdfuaid:part>1</pdfuaid:part>
</rdf:Description></rdf:RDF></x:xmpmeta>
<?xpacket end="r"?>""".encode()
