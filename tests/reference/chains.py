"""An independent reference for stages, chains, essential movements, loops and training states.

Reads JSON, one object a line:
    {"movements": [{"id": ..., "needs": TREE or null}], "goal": id, "states": true (optional)}
    TREE = {"movement": id} | {"all": [TREE...]} | {"any": [TREE...]} | {"least": k, "of": [TREE...]}
Writes JSON, one object a line:
    {"stages": {id: n or null}, "chain": [ids], "essential": [ids], "loops": [[ids]...]}
and, where states were asked for, "states" and "paths" too.

Plain on purpose: everything is computed from its definition, by rounds, by removal and by enumeration. A movement that is
mentioned but not listed can never be trained.
"""

import json
import sys

import networkx as nx

MOST_MOVEMENTS_FOR_STATES = 16


def parts(tree):
    for key in ("all", "any", "of"):
        if key in tree:
            return tree[key]
    return []


def mentions(tree):
    """The movements a tree of needs names."""
    if tree is None:
        return set()
    if "movement" in tree:
        return {tree["movement"]}
    return set().union(*(mentions(part) for part in parts(tree)))


def kth_smallest(numbers, k):
    """The k-th smallest of the numbers that are known; 0 for k = 0; None where fewer are known."""
    if k <= 0:
        return 0
    known = sorted(n for n in numbers if n is not None)
    return known[k - 1] if k <= len(known) else None


def height(tree, stages):
    """The highest stage a tree cannot do without: all = the highest part, any = the lowest, least k = the k-th lowest."""
    if "movement" in tree:
        return stages.get(tree["movement"])
    numbers = [height(part, stages) for part in parts(tree)]
    if "all" in tree:
        return kth_smallest(numbers, len(numbers))
    if "any" in tree:
        return kth_smallest(numbers, 1)
    return kth_smallest(numbers, tree["least"])


def no_needs(tree):
    return tree is None or tree.get("all") == []


def stages(needs, removed=None):
    """The least solution, counted up from the ground: in each round a movement stands where it stands already or becomes
    reachable, and its number only falls. It ends when a round changes nothing."""
    found = {}
    while True:
        after = {}
        for movement, tree in needs.items():
            if movement == removed:
                continue
            below = -1 if no_needs(tree) else height(tree, found)
            if below is not None:
                after[movement] = below + 1
        if after == found:
            return found
        found = after


def mention_graph(needs):
    graph = nx.DiGraph()
    graph.add_nodes_from(needs)
    for movement, tree in needs.items():
        graph.add_edges_from((movement, other) for other in mentions(tree))
    return graph


def essential(needs, goal, chain):
    """By brute force: take each member away and see whether the goal can still be reached."""
    if goal not in stages(needs):
        return []
    return sorted(movement for movement in chain if goal not in stages(needs, removed=movement))


def loops(graph):
    found = [sorted(part) for part in nx.strongly_connected_components(graph) if len(part) > 1 or any(graph.has_edge(m, m) for m in part)]
    return sorted(found)


def holds(tree, state):
    if tree is None:
        return True
    if "movement" in tree:
        return tree["movement"] in state
    true = sum(holds(part, state) for part in parts(tree))
    if "all" in tree:
        return true == len(tree["all"])
    return true >= (1 if "any" in tree else tree["least"])


def states_and_paths(needs):
    """The sets reached from the empty one by adding one movement at a time, each with its needs true in the set before it, and
    the number of orders in which all movements can be added."""
    if len(needs) > MOST_MOVEMENTS_FOR_STATES:
        sys.exit(f"states are counted for at most {MOST_MOVEMENTS_FOR_STATES} movements, here are {len(needs)}")
    orders = {frozenset(): 1}
    total = 0
    for size in range(len(needs) + 1):
        total += len(orders)
        if size == len(needs):
            break
        after = {}
        for state, ways in orders.items():
            for movement, tree in needs.items():
                if movement not in state and holds(tree, state):
                    grown = state | {movement}
                    after[grown] = after.get(grown, 0) + ways
        orders = after
    return total, orders.get(frozenset(needs), 0)


def answer(question):
    needs = {movement["id"]: movement.get("needs") for movement in question["movements"]}
    if len(needs) != len(question["movements"]):
        sys.exit("an id stands twice")
    goal = question["goal"]
    graph = mention_graph(needs)
    found = stages(needs)
    chain = sorted({goal} | (nx.descendants(graph, goal) if goal in graph else set()))
    out = {
        "stages": {movement: found.get(movement) for movement in needs},
        "chain": chain,
        "essential": essential(needs, goal, chain),
        "loops": loops(graph),
    }
    if question.get("states"):
        out["states"], out["paths"] = states_and_paths(needs)
    return out


def main():
    for line in sys.stdin:
        if line.strip():
            print(json.dumps(answer(json.loads(line)), ensure_ascii=False), flush=True)


if __name__ == "__main__":
    main()
