"""Where templates and style sheets come from, and the engine that fills them.

A file in the workspace's own templates/ wins over ours of the same name. Ours lie beside the package in a checkout
and inside it when installed.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from hashlib import sha256
from pathlib import Path
from types import CodeType

from jinja2 import BytecodeCache, ChoiceLoader, DictLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError, select_autoescape
from jinja2.bccache import Bucket
from markupsafe import Markup

from ..craft import language
from ..errors import UnreadableInput
from ..source.files import inside
from .passages import lang_attribute
from .shipped import own_folder

OwnTexts = tuple[tuple[str, str], ...]   # templates by their names


def folders(root: Path) -> list[Path]:
    """Template folders of a workspace, the winning one first."""
    theirs, ours = root / "templates", own_folder()
    return [theirs, ours] if theirs.is_dir() and inside(theirs, root) and theirs.resolve() != ours else [ours]


def own_texts(root: Path) -> OwnTexts:
    """The templates that a workspace has itself. Raises UnreadableInput for one that is no text."""
    theirs, *ours = folders(root)
    found = sorted(path for path in theirs.rglob("*.jinja") if path.is_file() and inside(path, theirs)) if ours else []
    return tuple((path.relative_to(theirs).as_posix(), _read(path, theirs)) for path in found)


def _read(path: Path, folder: Path) -> str:
    try:
        return path.read_text("utf-8")
    except (OSError, UnicodeDecodeError) as error:
        raise UnreadableInput(f"templates/{path.relative_to(folder).as_posix()} cannot be read as UTF-8 text: {error}") from None


@lru_cache(maxsize=None)
def ours_digest() -> str:
    """A digest of the templates that come with booklet."""
    made, folder = sha256(), own_folder()
    for path in sorted(folder.rglob("*.jinja")):
        content = path.read_bytes()
        made.update(f"{path.relative_to(folder).as_posix()} {len(content)}\n".encode() + content)
    return made.hexdigest()


class _Compiled(BytecodeCache):
    """Templates that this process has compiled already."""

    def __init__(self) -> None:
        self.known: dict[tuple[str, str], CodeType] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        bucket.code = self.known.get((bucket.key, bucket.checksum))

    def dump_bytecode(self, bucket: Bucket) -> None:
        self.known[bucket.key, bucket.checksum] = bucket.code


_compiled = _Compiled()


def environment(own: OwnTexts) -> Environment:
    """The engine: an undefined name is an error, and every value is escaped unless it is markup of ours."""
    engine = Environment(loader=ChoiceLoader([DictLoader(dict(own)), FileSystemLoader(own_folder())]), undefined=StrictUndefined, bytecode_cache=_compiled,
                       autoescape=select_autoescape(default=True, enabled_extensions=("jinja",), disabled_extensions=("css",)),
                       trim_blocks=True, lstrip_blocks=True)
    engine.filters |= {"bare": str.__str__, "lang": lang_attribute}
    engine.globals |= {"language": language.spoken().tag, "_": _marked(language._, 1), "pgettext": _marked(language.pgettext, 2), "ngettext": _marked(language.form, 3)}
    return engine


def _marked(translate: Callable[..., str], texts: int) -> Callable[..., Markup]:
    """The function for templates: what it gives is markup, whose values are escaped unless they are markup too. It takes so many texts before the values."""
    def marked(*asked, **values) -> Markup:
        text = Markup(translate(*asked))
        return text.format(**({"count": asked[-1]} if texts == 3 else {}) | values) if values or texts == 3 else text
    return marked


def fill(engine: Environment, name: str, **values) -> str:
    """Fill one template. A fault in a template of the user's own becomes one clear line."""
    try:
        return engine.get_template(name).render(**values)
    except TemplateError as error:
        place = f", line {error.lineno}" if getattr(error, "lineno", None) else ""
        raise UnreadableInput(f"templates/{getattr(error, 'name', None) or name}{place}: {error.message or error}") from None


def text_of(root: Path, name: str) -> str:
    """A file of the template folders as it stands, such as a style sheet."""
    for folder in folders(root):
        path = folder / name
        if path.is_file() and inside(path, folder):
            return path.read_text("utf-8")
    raise UnreadableInput(f"templates/{name} is missing", "install booklet again with pip")
