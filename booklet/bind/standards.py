"""What a PDF says about itself: its metadata, and the standard that it keeps to.

- PDF/UA-1 (ISO 14289-1): every edition is tagged and says so as it is joined; see press/metadata.py.
- PDF/A-2u (ISO 19005-2): colours are those of sRGB, and links are printed as they are seen.
- PDF/X-4 (ISO 15930-7): the press is named by its colour profile, colours of ours are those of sRGB, and no page has a link.

Tests hold files against the rules that they can read off them. No validator is at hand, so a printer's own
preflight has the last word.
"""

from __future__ import annotations

import os
from hashlib import sha256
from importlib.resources import files
from xml.sax.saxutils import escape

from ..source.editions import X4
from .edition import Edition
from .html import moment

UA, A2 = "PDF/UA-1", "PDF/A-2"
UNDATED = 2000   # the year of a file that must have a date where neither book nor SOURCE_DATE_EPOCH gives one
_EXTENSION = """
  <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
   <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">
    <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
    <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
    <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
    <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource">
     <pdfaProperty:name>part</pdfaProperty:name><pdfaProperty:valueType>Integer</pdfaProperty:valueType>
     <pdfaProperty:category>internal</pdfaProperty:category><pdfaProperty:description>Part of ISO 14289</pdfaProperty:description>
    </rdf:li></rdf:Seq></pdfaSchema:property>
   </rdf:li></rdf:Bag></pdfaExtension:schemas>
  </rdf:Description>"""


def declare(pdf, on: Edition, profile: bytes, year: int | None) -> None:
    """Write metadata, and what the standard of the edition asks for besides PDF/UA, into the file."""
    when = moment(os.environ.get)
    if on.output == A2:
        _intent(pdf, "/GTS_PDFA1", "sRGB IEC61966-2.1", _srgb(), 3)
        for page in pdf.pages:
            for note in page.get("/Annots", []):
                note.F = 4   # printed, as a link looks on screen
    elif on.output == X4:
        when = when or f"{year or UNDATED}-01-01T00:00:00Z"
        _press(pdf, profile)
    if when:
        stamp = "D:" + "".join(filter(str.isdigit, when)) + "Z"
        pdf.docinfo["/CreationDate"] = pdf.docinfo["/ModDate"] = stamp
    stream = pdf.make_stream(_xmp(pdf, on, when).encode())
    stream.Type, stream.Subtype = _name("Metadata"), _name("XML")
    pdf.Root.Metadata = stream


def _press(pdf, profile: bytes) -> None:
    """PDF/X-4: the press and its colours; nothing to click."""
    import pikepdf

    _intent(pdf, "/GTS_PDFX", _described(profile), profile, {b"CMYK": 4, b"RGB ": 3, b"GRAY": 1}[profile[16:20]])
    pdf.docinfo["/Trapped"] = _name("False")
    srgb = pdf.make_stream(_srgb(), N=3)
    ours = pikepdf.Array([_name("ICCBased"), pdf.make_indirect(srgb)])
    for page in pdf.pages:
        if "/Annots" in page:
            del page["/Annots"]
        spaces = page.Resources.get("/ColorSpace", pikepdf.Dictionary())
        spaces.DefaultRGB = ours
        page.Resources.ColorSpace = spaces
    _without_links(pdf)


def _without_links(pdf) -> None:
    """Tags of links become plain text, for there is nothing left to click."""
    import pikepdf

    for held in pdf.objects:
        if isinstance(held, pikepdf.Dictionary) and held.get("/S") == "/Link":
            held.S = _name("Span")
            kept = [kid for kid in (held.K if isinstance(held.get("/K"), pikepdf.Array) else [held.get("/K")])
                    if not (isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == "/OBJR")]
            held.K = pikepdf.Array([kid for kid in kept if kid is not None])


def _intent(pdf, kind: str, name: str, profile: bytes, channels: int) -> None:
    import pikepdf

    stream = pdf.make_indirect(pdf.make_stream(profile, N=channels))
    pdf.Root.OutputIntents = pikepdf.Array([pikepdf.Dictionary(
        Type=_name("OutputIntent"), S=pikepdf.Name(kind), OutputConditionIdentifier=name, Info=name, DestOutputProfile=stream)])


def problem_of(profile: bytes) -> str:
    """Why a file is no colour profile of a press; empty if it is one. An ICC profile has its class and colour space at fixed places (ISO 15076-1, 7.2)."""
    if len(profile) < 132 or profile[36:40] != b"acsp":
        return "is no colour profile"
    if profile[12:16] != b"prtr":
        return "is not the colour profile of a press"
    return "" if profile[16:20] in (b"CMYK", b"RGB ", b"GRAY") else "is for inks that are not known here"


def _described(profile: bytes) -> str:
    """What the profile calls itself; a plain word where that cannot be read."""
    at = profile.find(b"desc\0\0\0\0", 132)
    size = int.from_bytes(profile[at + 8:at + 12], "big") if at > 0 else 0
    name = profile[at + 12:at + 12 + size].split(b"\0")[0].decode("ascii", "ignore") if 0 < size < 200 else ""
    return name.strip() or "Custom"


def _srgb() -> bytes:
    return (files("weasyprint.pdf") / "sRGB2014.icc").read_bytes()


def _name(text: str):
    import pikepdf

    return pikepdf.Name(f"/{text}")


def _xmp(pdf, on: Edition, when: str) -> str:
    """The metadata packet."""
    info = pdf.docinfo

    def said(key: str) -> str:
        return escape(str(info.get(key, "")))

    language = escape(str(pdf.Root.get("/Lang", "x-default")))
    parts = [f"<dc:format>application/pdf</dc:format><dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{said('/Title')}</rdf:li></rdf:Alt></dc:title>",
             f"<dc:language><rdf:Bag><rdf:li>{language}</rdf:li></rdf:Bag></dc:language>",
             f"<pdf:Producer>{said('/Producer')}</pdf:Producer><xmp:CreatorTool>{said('/Creator')}</xmp:CreatorTool>"]
    if "/Author" in info:
        parts.append(f"<dc:creator><rdf:Seq><rdf:li>{said('/Author')}</rdf:li></rdf:Seq></dc:creator>")
    if "/Subject" in info:
        parts.append(f"<dc:description><rdf:Alt><rdf:li xml:lang=\"x-default\">{said('/Subject')}</rdf:li></rdf:Alt></dc:description>")
    if when:
        parts.append(f"<xmp:CreateDate>{when}</xmp:CreateDate><xmp:ModifyDate>{when}</xmp:ModifyDate><xmp:MetadataDate>{when}</xmp:MetadataDate>")
    parts.append("<pdfuaid:part>1</pdfuaid:part>")
    if on.output == A2:
        parts.append("<pdfaid:part>2</pdfaid:part><pdfaid:conformance>U</pdfaid:conformance>")
    if on.output == X4:
        mark = sha256("".join(parts).encode()).hexdigest()[:32]
        parts.append("<pdf:Trapped>False</pdf:Trapped><pdfxid:GTS_PDFXVersion>PDF/X-4</pdfxid:GTS_PDFXVersion>"
                     f"<xmpMM:DocumentID>uuid:{mark}</xmpMM:DocumentID><xmpMM:VersionID>1</xmpMM:VersionID><xmpMM:RenditionClass>default</xmpMM:RenditionClass>")
    described = "\n   ".join(parts)
    return f"""<?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
<x:xmpmeta xmlns:x="adobe:ns:meta/">
 <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
  <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" xmlns:xmp="http://ns.adobe.com/xap/1.0/"
    xmlns:xmpMM="http://ns.adobe.com/xap/1.0/mm/" xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
    xmlns:pdfxid="http://www.npes.org/pdfx/ns/id/">
   {described}
  </rdf:Description>{_EXTENSION if on.output == A2 else ""}
 </rdf:RDF>
</x:xmpmeta>
<?xpacket end="r"?>"""
