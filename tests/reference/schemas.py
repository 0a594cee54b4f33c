"""Checks the shipped definitions and the published data against the program's JSON Schemas, with the package jsonschema.

Usage: schemas.py PROGRAM, from the repository's root.
"""

import json
import pathlib
import subprocess
import sys

import jsonschema
import yaml


def schema(program, kind):
    text = subprocess.run([program, "schema", kind], check=True, capture_output=True, text=True).stdout
    value = json.loads(text)
    jsonschema.Draft202012Validator.check_schema(value)
    return jsonschema.Draft202012Validator(value)


class Plain(yaml.SafeLoader):
    """YAML 1.2: no dates, no numbers in sixties, no yes and no."""


Plain.yaml_implicit_resolvers = {
    first: [(tag, expression) for tag, expression in rules if tag in ("tag:yaml.org,2002:null", "tag:yaml.org,2002:merge")]
    for first, rules in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def plain(value):
    if isinstance(value, dict):
        return {key: plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [plain(inner) for inner in value]
    return {"true": True, "false": False}.get(value, value)


def main():
    program = sys.argv[1]
    checked = 0
    kinds = {kind: schema(program, kind) for kind in ["school", "cautions", "movement", "family", "skill", "ledger", "data"]}
    faults = []

    def check(kind, value, name):
        nonlocal checked
        checked += 1
        faults.extend(f"{name}: {error.json_path}: {error.message}" for error in kinds[kind].iter_errors(value))

    content = pathlib.Path("content")
    for path in sorted(content.rglob("*.yaml")):
        value = plain(yaml.load(path.read_text(encoding="utf-8"), Plain))
        place = path.relative_to(content).parts[0]
        kind = {"school.yaml": "school", "cautions.yaml": "cautions", "ledger.yaml": "ledger", "skills": "skill"}.get(place)
        check(kind or ("family" if "family" in value else "movement"), value, str(path))
    check("data", json.loads(pathlib.Path("site-example/data/curriculum.json").read_text(encoding="utf-8")), "data")
    bad = {"movement": "Not An Id", "name": "x"}
    if not list(kinds["movement"].iter_errors(bad)):
        faults.append("a movement without its required keys passes")
    print("\n".join(faults))
    print(f"{checked} files checked")
    sys.exit(1 if faults else 0)


if __name__ == "__main__":
    main()
