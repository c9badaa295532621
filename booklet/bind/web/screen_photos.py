"""Photos for screens: no larger than a page shows them, and without what cameras write into a file, such as the place where it was taken."""

from __future__ import annotations

import io
import warnings

LONGEST = 1600    # pixels: a page shows a photo up to 544 px wide, and some screens have three points to a px
FORMATS = ("JPEG", "PNG", "WEBP")
QUALITY = {"JPEG": {"quality": 85, "optimize": True, "progressive": True}, "PNG": {"optimize": True}, "WEBP": {"quality": 85, "method": 4}}


def for_screens(photo: bytes) -> bytes:
    """The photo, made small. A file that is no picture stays as it is: lint has told of it."""
    from PIL import Image, ImageOps, UnidentifiedImageError   # imported here, because most patterns have no photo

    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore", Image.DecompressionBombWarning)    # Pillow refuses what is far too large
            with Image.open(io.BytesIO(photo), formats=FORMATS) as image:
                kind, profile = image.format, image.info.get("icc_profile")
                image.draft("RGB", (LONGEST, LONGEST))    # a JPEG is read at a size near the wanted one
                upright = ImageOps.exif_transpose(image)
                upright.thumbnail((LONGEST, LONGEST), Image.Resampling.LANCZOS)
                bare = Image.new(upright.mode, upright.size)
                bare.paste(upright)
                if upright.mode == "P":
                    bare = upright.convert("RGBA" if "transparency" in upright.info else "RGB")
    except (UnidentifiedImageError, Image.DecompressionBombError, OSError, ValueError, SyntaxError):
        return photo
    bare.info.clear()
    file = io.BytesIO()
    bare.save(file, kind, **QUALITY[kind], **({"icc_profile": profile} if profile else {}))
    return file.getvalue()
