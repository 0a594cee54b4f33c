"""The same pages as the floor writes, by a plain script on general-purpose libraries.

Usage: script.py FROM TO
"""

import sys
from pathlib import Path

import jinja2
import networkx
import yaml
from markdown_it import MarkdownIt

LOADER = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
ROWS_A_PAGE = 1000
HERE = Path(__file__).parent


def leaves(needs):
    """Each needed movement with the target it is needed at, if any."""
    for need in needs:
        if isinstance(need, str):
            yield need, ""
            continue
        for key, value in need.items():
            if isinstance(value, list):
                yield from leaves(value)
            else:
                yield key, value


def read(folder):
    return [yaml.load(path.read_bytes(), Loader=LOADER) for path in sorted(folder.rglob("*.yaml"))]


def renderer(names):
    """Markdown to HTML, with links to movements looked up."""
    markdown = MarkdownIt("commonmark")
    markdown.validateLink = lambda url: True

    def look_up(state):
        for block in state.tokens:
            children = block.children or []
            for at, token in enumerate(children):
                href = token.attrGet("href") if token.type == "link_open" else None
                if not isinstance(href, str) or not href.startswith("movement:"):
                    continue
                id = href.removeprefix("movement:")
                token.attrSet("href", f"{id}.html")
                if children[at + 1].type == "link_close":
                    token.meta["name"] = names[id]

    def link_open(self, tokens, index, options, env):
        return self.renderToken(tokens, index, options, env) + tokens[index].meta.get("name", "")

    markdown.core.ruler.push("look_up", look_up)
    markdown.add_render_rule("link_open", link_open)
    return markdown.render


def main():
    content, to = Path(sys.argv[1]) / "content", Path(sys.argv[2])
    movements = {m["movement"]: m for m in read(content / "movements")}
    skills = read(content / "skills")
    notes = {path.stem: path.read_text() for path in (content / "notes").rglob("*.md")}

    graph = networkx.DiGraph()
    graph.add_nodes_from(movements)
    for id, movement in movements.items():
        movement["leaves"] = list(leaves(movement.get("needs", [])))
        graph.add_edges_from((needed, id) for needed, _ in movement["leaves"])
    for id in networkx.topological_sort(graph):
        below = [movements[needed]["stage"] for needed in graph.predecessors(id)]
        movements[id]["stage"] = max(below, default=-1) + 1

    rows = {
        id: {"id": id, "name": m["name"], "pattern": m["pattern"], "standard": m["standard"], "stage": m["stage"]}
        for id, m in movements.items()
    }
    ways = {id: [] for id in movements}
    tables = [("movements", "All movements", [rows[id] for id in sorted(rows)])]
    for skill in skills:
        chain = networkx.ancestors(graph, skill["goal"]) | {skill["goal"]}
        for id in chain:
            ways[id].append(skill["skill"])
        ordered = sorted(chain, key=lambda id: (movements[id]["stage"], id))
        tables.append((skill["skill"], skill["name"], [rows[id] for id in ordered]))

    templates = jinja2.Environment(loader=jinja2.FileSystemLoader(HERE), autoescape=True, keep_trailing_newline=True)
    page, table = templates.get_template("page.html"), templates.get_template("rows.html")
    render = renderer({id: m["name"] for id, m in movements.items()})
    to.mkdir(parents=True)

    def card(id, target):
        return {"id": id, "name": movements[id]["name"], "target": target, "stage": movements[id]["stage"]}

    for id, m in movements.items():
        test = m["test"]
        html = page.render(
            id=id, name=m["name"], summary=m["summary"], exit=m.get("exit"), pattern=m["pattern"],
            position=m["position"], load=m["load"], stage=m["stage"], weeks=m["weeks"], equipment=m["equipment"],
            stresses=m["stresses"], standard=m["standard"], how=test["how"], counts=test["counts"], stop=test["stop"],
            rest=test["rest"], cues=m["cues"], faults=m["faults"], note=render(notes[id]), skills=ways[id],
            needs=[card(needed, target) for needed, target in m["leaves"]],
            opens=[card(above, movements[above]["standard"]) for above in sorted(graph.successors(id))],
        )
        (to / f"{id}.html").write_text(html)

    for name, title, of in tables:
        parts = [of[start:start + ROWS_A_PAGE] for start in range(0, len(of), ROWS_A_PAGE)]
        for part, some in enumerate(parts, 1):
            path = to / (f"{name}.html" if part == 1 else f"{name}-{part}.html")
            path.write_text(table.render(title=title, part=part, parts=len(parts), rows=some))
    print(len(list(to.iterdir())), "files")


if __name__ == "__main__":
    main()
