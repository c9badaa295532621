"""Where templates and style sheets come from, and the engine that fills them.

A file in the workspace's own templates/ wins over ours of the same name. Ours lie beside the package in a checkout
and inside it when installed.
"""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from jinja2 import ChoiceLoader, Environment, FileSystemLoader, StrictUndefined, TemplateError, select_autoescape
from markupsafe import Markup

from ..craft import language
from ..errors import UnreadableInput
from ..source.files import inside

PACKAGE = Path(__file__).resolve().parent.parent


def own_folder() -> Path:
    """The folder of the templates that come with booklet."""
    installed = PACKAGE / "templates"
    return installed if installed.is_dir() else PACKAGE.parent / "templates"


def folders(root: Path) -> list[Path]:
    """Template folders of a workspace, the winning one first."""
    theirs, ours = root / "templates", own_folder()
    return [theirs, ours] if theirs.is_dir() and inside(theirs, root) and theirs.resolve() != ours else [ours]


def environment(root: Path) -> Environment:
    """The engine: an undefined name is an error, and every value is escaped unless it is markup of ours."""
    engine = Environment(loader=ChoiceLoader([FileSystemLoader(folder) for folder in folders(root)]), undefined=StrictUndefined,
                       autoescape=select_autoescape(default=True, enabled_extensions=("jinja",), disabled_extensions=("css",)),
                       trim_blocks=True, lstrip_blocks=True)
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
