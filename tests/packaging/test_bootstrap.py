"""Setting up a checkout, decision by decision, on a pretend computer that only writes down what it is asked."""

import os
import sys
from pathlib import Path

import pytest

from booklet import bootstrap
from booklet.bootstrap import BROKEN, NO_PANGO, SOUND, Environment
from booklet.machine import Machine, Stop, lock, try_lock

PIP = "pip install"
VENV = "venv"
PROBE = "probe"
ALL_DEBIAN = "libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0"


class PretendMachine(Machine):
    """A computer of files in a temporary folder. `answers` gives the exit codes of its commands, in turn."""

    python, version = "/usr/bin/python3", "3.11"

    def __init__(self, programs=(), root=False, modules=("ensurepip",), **answers):
        self.programs, self.root, self.modules = programs, root, modules
        self.answers = {name: list(codes) for name, codes in answers.items()}
        self.asked, self.said = [], []

    def run(self, command):
        name, words = self.name(command), ""
        self.asked.append(name)
        code = self.answers[name].pop(0) if self.answers.get(name) else 0
        if name == VENV and code == 0:
            self.make_venv(Path(command[-1]))
        if code:
            words = "Collecting\nERROR: No matching distribution found for click.\nhint: none\n"
        return code, words

    def name(self, command):
        if "apt-get" in command:
            return " ".join(word for word in command if not word.startswith("--"))
        if bootstrap.PROBE in command:
            return PROBE
        if "venv" in command:
            assert command[0] == self.python
            return VENV
        return "pip --version" if "--version" in command else f"{PIP} {Path(command[-1]).name}"

    def make_venv(self, folder):
        assert not folder.exists()
        (folder / "bin").mkdir(parents=True)
        (folder / "lib" / f"python{self.version}" / "site-packages").mkdir(parents=True)
        (folder / "bin" / "python").touch(mode=0o755)

    def has(self, program):
        return program in self.programs

    def has_module(self, name):
        return name in self.modules

    def is_root(self):
        return self.root

    def say(self, line):
        self.said.append(line)


@pytest.fixture
def checkout(tmp_path):
    root = tmp_path / "here"
    root.mkdir()
    (root / "pyproject.toml").write_text("[project]\n", encoding="utf-8")
    return root


def make_ready(root, machine, extra=""):
    """Run the whole of setting up; give the names of the commands that were run."""
    Environment(machine, str(root), extra).make_ready()
    return machine.asked


def site_packages(root):
    return root / ".venv" / "lib" / "python3.11" / "site-packages"


def touch_packages(root):
    """Set the folder's time apart from any earlier one, as adding a package does."""
    os.utime(site_packages(root), ns=(1, 1))


def test_first_run_makes_all_and_the_second_does_nothing(checkout):
    machine = PretendMachine()
    assert make_ready(checkout, machine) == [VENV, f"{PIP} here", PROBE]
    assert machine.said == [
        "making .venv with Python 3.11",
        "installing what booklet needs into .venv (a minute or two)",
        "ready",
    ]
    again = PretendMachine()
    assert make_ready(checkout, again) == []
    assert again.said == []


def test_the_tests_add_their_packages_to_the_same_environment(checkout):
    make_ready(checkout, PretendMachine())
    assert make_ready(checkout, PretendMachine(), "test") == ["pip --version", f"{PIP} here[test]", PROBE]
    assert make_ready(checkout, PretendMachine()) == []
    assert make_ready(checkout, PretendMachine(), "test") == []


def test_a_changed_project_file_installs_again_without_starting_anew(checkout):
    make_ready(checkout, PretendMachine())
    (checkout / "pyproject.toml").write_text("[project]\nname = 'x'\n", encoding="utf-8")
    assert make_ready(checkout, PretendMachine()) == ["pip --version", f"{PIP} here", PROBE]


def test_another_python_makes_the_environment_anew(checkout):
    make_ready(checkout, PretendMachine())
    newer = PretendMachine()
    newer.version = "3.12"
    assert make_ready(checkout, newer) == [VENV, f"{PIP} here", PROBE]
    assert not site_packages(checkout).exists()


def test_a_moved_checkout_makes_the_environment_anew(checkout):
    make_ready(checkout, PretendMachine())
    moved = checkout.rename(checkout.with_name("there"))
    assert make_ready(moved, PretendMachine()) == [VENV, f"{PIP} there", PROBE]


def test_a_half_made_environment_is_made_anew(checkout):
    PretendMachine().make_venv(checkout / ".venv")
    assert make_ready(checkout, PretendMachine()) == [VENV, f"{PIP} here", PROBE]


def test_a_stamp_that_cannot_be_read_counts_as_none(checkout):
    make_ready(checkout, PretendMachine())
    (checkout / ".venv" / "stamp").write_bytes(b"\xff\xfe")
    assert make_ready(checkout, PretendMachine()) == [VENV, f"{PIP} here", PROBE]


def test_a_python_that_is_gone_makes_the_environment_anew(checkout):
    make_ready(checkout, PretendMachine())
    (checkout / ".venv" / "bin" / "python").unlink()
    assert make_ready(checkout, PretendMachine()) == [VENV, f"{PIP} here", PROBE]


def test_a_link_to_another_folder_is_replaced_and_the_folder_kept(checkout, tmp_path):
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    (elsewhere / "kept").touch()
    (checkout / ".venv").symlink_to(elsewhere)
    make_ready(checkout, PretendMachine())
    assert (elsewhere / "kept").exists()


def test_an_added_package_is_only_looked_at(checkout):
    make_ready(checkout, PretendMachine(), "test")
    touch_packages(checkout)
    assert make_ready(checkout, PretendMachine()) == [PROBE]
    assert make_ready(checkout, PretendMachine(), "test") == [], "the tests' packages must not be forgotten"


def test_a_package_that_is_gone_is_installed_again(checkout):
    make_ready(checkout, PretendMachine())
    touch_packages(checkout)
    machine = PretendMachine(probe=[BROKEN, SOUND])
    assert make_ready(checkout, machine) == [PROBE, "pip --version", f"{PIP} here", PROBE]


def test_an_environment_that_cannot_be_mended_is_made_anew(checkout):
    make_ready(checkout, PretendMachine())
    touch_packages(checkout)
    machine = PretendMachine(probe=[BROKEN, BROKEN, SOUND])
    assert make_ready(checkout, machine)[-3:] == [VENV, f"{PIP} here", PROBE]


def test_error_new_environment_does_not_load(checkout):
    with pytest.raises(Stop) as stop:
        make_ready(checkout, PretendMachine(probe=[BROKEN]))
    assert str(stop.value) == (f"a package in the new .venv does not load. "
                               f"`{checkout}/.venv/bin/python -m pip check` may say which.")


def test_error_pip_fails(checkout):
    machine = PretendMachine(**{f"{PIP} here": [1]})
    with pytest.raises(Stop) as stop:
        make_ready(checkout, machine)
    assert str(stop.value) == (
        "pip could not install what is needed (ERROR: No matching distribution found for click). Check the network "
        "connection and run the same command again; all that pip said is in .venv/pip.log.")
    assert "hint: none" in (checkout / ".venv" / "pip.log").read_text(encoding="utf-8")
    assert make_ready(checkout, PretendMachine()) == [VENV, f"{PIP} here", PROBE]


def test_error_folder_cannot_be_made(checkout):
    with pytest.raises(Stop, match=r"^cannot make the folder \.venv \(ERROR: .*\)\. Check that you may write here"):
        make_ready(checkout, PretendMachine(venv=[1]))


def test_error_checkout_cannot_be_written(tmp_path):
    with pytest.raises(Stop) as stop, lock(PretendMachine(), str(tmp_path / "nowhere")):
        pass
    assert str(stop.value) == (f"cannot write in {tmp_path}/nowhere (No such file or directory). "
                               "Copy the checkout to a folder of your own.")


@pytest.mark.parametrize("programs, commands", [
    (["apt-get"], [f"sudo apt-get install {ALL_DEBIAN}"]),
    (["dnf"], ["sudo dnf install pango harfbuzz"]),
    (["brew"], ['brew install pango && export DYLD_FALLBACK_LIBRARY_PATH="$(brew --prefix)/lib"']),
    ([], [f"sudo apt-get install {ALL_DEBIAN}", "sudo dnf install pango harfbuzz",
          'brew install pango && export DYLD_FALLBACK_LIBRARY_PATH="$(brew --prefix)/lib"']),
])
def test_error_no_pango_names_the_command_of_this_system(checkout, programs, commands):
    with pytest.raises(Stop) as stop:
        make_ready(checkout, PretendMachine(programs, probe=[NO_PANGO]))
    assert str(stop.value).splitlines() == [
        "Pango, which sets the pages of the PDF, is missing. Install it, then run the same command again:",
        *("  " + command for command in commands),
    ]
    assert make_ready(checkout, PretendMachine(programs)) == [PROBE], "nothing is installed twice"


def test_root_on_debian_gets_pango_installed(checkout):
    machine = PretendMachine(["apt-get"], root=True, probe=[NO_PANGO, SOUND])
    assert make_ready(checkout, machine)[2:] == [PROBE, f"apt-get install {ALL_DEBIAN}", PROBE]
    assert f"installing {ALL_DEBIAN} with apt-get" in machine.said


def test_package_lists_are_fetched_only_when_an_install_fails(checkout):
    install = f"apt-get install {ALL_DEBIAN}"
    machine = PretendMachine(["apt-get"], root=True, probe=[NO_PANGO, SOUND], **{install: [100, 0]})
    assert make_ready(checkout, machine)[2:] == [PROBE, install, "apt-get update", install, PROBE]


def test_error_apt_fails(checkout):
    install = f"apt-get install {ALL_DEBIAN}"
    machine = PretendMachine(["apt-get"], root=True, probe=[NO_PANGO], **{install: [100, 100]})
    with pytest.raises(Stop, match=rf"^apt-get could not install {ALL_DEBIAN} \(ERROR: .*\)\. Check the network"):
        make_ready(checkout, machine)


def test_error_pango_still_does_not_load(checkout):
    machine = PretendMachine(["apt-get"], root=True, probe=[NO_PANGO, NO_PANGO])
    with pytest.raises(Stop, match=r"^WeasyPrint cannot load Pango\. Run `.*python -m weasyprint --info` to see why"):
        make_ready(checkout, machine)


def test_root_on_debian_gets_what_the_environment_needs(checkout):
    machine = PretendMachine(["apt-get"], root=True, modules=())
    assert make_ready(checkout, machine)[:2] == ["apt-get install python3.11-venv", VENV]


def test_error_no_ensurepip(checkout):
    with pytest.raises(Stop) as stop:
        make_ready(checkout, PretendMachine(["apt-get"], modules=()))
    assert str(stop.value) == ("Python's ensurepip module is missing. Install it, then run the same command again:\n"
                               "  sudo apt-get install python3.11-venv")


def test_a_second_run_waits_for_the_first(checkout):
    first = (checkout / ".venv.lock").open("a")
    assert try_lock(first)

    class Waiting(PretendMachine):
        def wait(self):
            make_stamped(checkout)
            first.close()

    machine = Waiting()
    assert make_ready(checkout, machine) == []
    assert machine.said == ["waiting for another run that is setting up"]


def make_stamped(root):
    """What the run that holds the lock does meanwhile."""
    machine = PretendMachine()
    machine.make_venv(root / ".venv")
    environment = Environment(machine, str(root))
    environment.write_stamp(environment.touched())


def enter(monkeypatch, machine, root, **words):
    """Call `enter`; give the command that it would become."""
    became = []
    monkeypatch.setattr(bootstrap, "Machine", lambda: machine)
    monkeypatch.setattr(bootstrap, "ROOT", str(root))
    monkeypatch.setattr(sys, "argv", ["x", "build", "--format", "pdf"])
    monkeypatch.setattr(os, "execv", lambda program, command: became.append((program, command)))
    bootstrap.enter("booklet", **words)
    return became


def test_enter_becomes_the_same_command_inside(monkeypatch, checkout):
    python = str(checkout / ".venv" / "bin" / "python")
    assert enter(monkeypatch, PretendMachine(), checkout) == [
        (python, [python, "-m", "booklet", "build", "--format", "pdf"])]


def test_enter_installs_missing_tools(monkeypatch, checkout):
    machine = PretendMachine(["apt-get", "there"], root=True)
    tools = {"there": {"apt-get": "one"}, "not-there": {"apt-get": "two"}}
    enter(monkeypatch, machine, checkout, tools=tools)
    assert machine.asked[-1] == "apt-get install two"


def test_error_old_python(monkeypatch, checkout):
    machine = PretendMachine()
    monkeypatch.setattr(sys, "version_info", (3, 9, 2, "final", 0))
    machine.version = "3.9"
    with pytest.raises(SystemExit) as end:
        enter(monkeypatch, machine, checkout)
    assert end.value.code == 2
    assert machine.said == [f"Python 3.10 or newer is needed; this is Python 3.9 ({sys.executable}). "
                            "Run the command with a newer python3."]
    assert machine.asked == []


def test_an_interrupt_ends_quietly(monkeypatch, checkout):
    class Interrupted(PretendMachine):
        def run(self, command):
            raise KeyboardInterrupt

    with pytest.raises(SystemExit) as end:
        enter(monkeypatch, Interrupted(), checkout)
    assert end.value.code == 130


def needed(monkeypatch, root, *, prefix="/usr", path=(), extra=""):
    monkeypatch.setattr(bootstrap, "ROOT", str(root))
    monkeypatch.setattr(sys, "prefix", str(prefix))
    monkeypatch.setattr(sys, "path", [str(folder) for folder in path])
    return bootstrap.is_needed(extra)


def installed(folder, points):
    info = folder / "booklet-1.0.dist-info"
    info.mkdir(parents=True)
    (info / "entry_points.txt").write_text(points, encoding="utf-8")
    return folder


def test_a_checkout_needs_its_environment(monkeypatch, checkout):
    assert needed(monkeypatch, checkout, path=[checkout, checkout / "none.zip"])


def test_inside_the_environment_nothing_is_needed(monkeypatch, checkout):
    make_ready(checkout, PretendMachine())
    assert not needed(monkeypatch, checkout, prefix=checkout / ".venv")
    assert needed(monkeypatch, checkout, prefix=checkout / ".venv", extra="test")


def test_where_booklet_is_installed_nothing_is_needed(monkeypatch, checkout, tmp_path):
    folder = installed(tmp_path / "site", "[console_scripts]\nbooklet = booklet.cli:main\n")
    assert not needed(monkeypatch, checkout, path=[folder])


def test_another_project_of_our_name_does_not_count(monkeypatch, checkout, tmp_path):
    assert needed(monkeypatch, checkout, path=[installed(tmp_path / "site", "[console_scripts]\n")])


def test_outside_a_checkout_nothing_is_needed(monkeypatch, tmp_path):
    assert not needed(monkeypatch, tmp_path)
