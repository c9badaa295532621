"""SARIF and workflow commands. SARIF is held against the published schema of OASIS, where npm can bring it."""

import json
import shutil
import subprocess
import tarfile

import pytest
from jsonschema import Draft4Validator

from booklet.findings import Finding, Mark, Severity
from booklet.lint.github import github_lines
from booklet.lint.run import Checked, checked
from booklet.lint.sarif import as_sarif
from booklet.source.workspace import load
from tests.lint.books import completed, write_book

ERROR = Finding(Mark("patterns/a b.yaml", 2, 5, 3), Severity.ERROR, "counted-differs", "this is 7 % wrong", "do that")
NOTE = Finding(Mark("patterns/b.yaml", 1), Severity.NOTE, "yaml-syntax", "one\ntwo::error::")


@pytest.fixture(scope="session")
def sarif_schema(tmp_path_factory):
    """Source: SARIF Version 2.1.0, OASIS Standard, its JSON schema (sarif-2.1.0-rtm.5), as the npm package @microsoft/jest-sarif ships it."""
    npm = shutil.which("npm")
    if npm is None:
        pytest.skip("npm is not installed: SARIF is not held against the schema of OASIS in this run")
    folder = tmp_path_factory.mktemp("sarif")
    done = subprocess.run([npm, "pack", "--silent", "@microsoft/jest-sarif@1.0.0-beta.0"], cwd=folder, capture_output=True, text=True)
    if done.returncode:
        pytest.skip("npm cannot fetch @microsoft/jest-sarif: SARIF is not held against the schema of OASIS in this run")
    with tarfile.open(folder / done.stdout.split()[-1]) as package:
        (name,) = [name for name in package.getnames() if name.endswith("sarif-2.1.0-rtm.5.json")]
        return json.load(package.extractfile(name))


def allowing(root):
    """A run with a finding, and one that its pattern allows."""
    text = "counted: {base: 9}\nlint: {allow: {counted-differs: Counted with the loop.}}\n"
    return checked(load(write_book(root, {"a.yaml": completed(text), "b.yaml": completed("counted: {rows: 9}\n")})))


def test_sarif_is_what_its_schema_says(tmp_path, sarif_schema):
    validator = Draft4Validator(sarif_schema)
    for run in (Checked((), ()), Checked((ERROR, NOTE), ()), allowing(tmp_path)):
        assert list(validator.iter_errors(json.loads(as_sarif(run)))) == []
    broken = json.loads(as_sarif(Checked((ERROR,), ())))
    broken["runs"][0]["results"][0]["level"] = "fatal"
    assert list(validator.iter_errors(broken)), "the schema rejects nothing"


def test_a_sarif_result_has_rule_place_and_level():
    (run,) = json.loads(as_sarif(Checked((ERROR, NOTE), ())))["runs"]
    rules = run["tool"]["driver"]["rules"]
    assert [(rules[result["ruleIndex"]]["id"], result["level"]) for result in run["results"]] == [("counted-differs", "error"), ("yaml-syntax", "note")]
    place = run["results"][0]["locations"][0]["physicalLocation"]
    assert place == {"artifactLocation": {"uri": "patterns/a%20b.yaml", "uriBaseId": "SRCROOT"}, "region": {"startLine": 2, "startColumn": 5, "endColumn": 8}}
    assert run["results"][0]["message"]["text"] == "this is 7 % wrong. Do that"
    assert rules[0]["shortDescription"]["text"] == "What the author counted by hand is not what the pattern has." and rules[1] == {"id": "yaml-syntax"}


def test_sarif_tells_what_is_allowed_with_its_reason(tmp_path):
    (run,) = json.loads(as_sarif(allowing(tmp_path)))["runs"]
    assert [result.get("suppressions") for result in run["results"]] == [[{"kind": "inSource", "justification": "Counted with the loop."}], None]


def test_workflow_commands_are_one_line_each_and_cannot_be_forged():
    assert list(github_lines([ERROR, NOTE])) == [
        "::error file=patterns/a b.yaml,line=2,col=5,endColumn=8,title=counted-differs::this is 7 %25 wrong (do that)",
        "::notice file=patterns/b.yaml,line=1,col=1,endColumn=2,title=yaml-syntax::one\\ntwo::error::"]
