"""Least cuts of the same networks by networkx: JSON lines in, processor seconds and efforts out."""

import json
import sys
import time

import networkx as nx


def least_cut(network):
    start = time.process_time()
    graph = nx.DiGraph()
    kinds = {node["id"]: node for node in network["nodes"]}
    for name, node in kinds.items():
        if node["kind"] == "valve":
            graph.add_edge((name, 0), (name, 1), capacity=node["weight"])
        else:
            graph.add_edge((name, 0), (name, 1))
        if node["kind"] == "source":
            graph.add_edge("sources", (name, 0))
        if node["kind"] == "work":
            graph.add_edge((name, 1), "work")
    for one, other in network["edges"]:
        graph.add_edge((one, 1), (other, 0))
        graph.add_edge((other, 1), (one, 0))
    try:
        effort = nx.minimum_cut_value(graph, "sources", "work")
    except nx.NetworkXUnbounded:
        effort = None
    return {"effort": effort, "seconds": time.process_time() - start}


for line in sys.stdin:
    print(json.dumps(least_cut(json.loads(line))))
