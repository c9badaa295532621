"""The needle's way through finished stitches, held against shortest paths by a general graph library."""

import networkx
from hypothesis import given
from hypothesis import strategies as st
from tests.craft.pieces import stepped, workable

from booklet.craft.events import Section
from booklet.craft.travel import Spot, Worked

MOVE = 1_000   # parts of a unit of cost, so that of two equally easy ways the one with fewer moves is shorter


@given(st.one_of(workable(), stepped()), st.data())
def test_no_way_is_easier(piece, data):
    worked = Worked(piece.rows)
    spots = [Spot(row, index, top) for row in piece.rows for index in range(len(row.stitches)) for top in (False, True)]
    start, goal = data.draw(st.sampled_from(spots)), data.draw(st.sampled_from(spots))
    graph = networkx.DiGraph()
    graph.add_nodes_from(spot.stitch for spot in spots)
    for spot in spots:
        for cost, there, moves in worked._moves(spot):
            weight = cost * MOVE + len(moves)
            known = graph.get_edge_data(spot.stitch, there.stitch, {"weight": weight})["weight"]
            graph.add_edge(spot.stitch, there.stitch, weight=min(weight, known))
    try:
        shortest = networkx.shortest_path_length(graph, start.stitch, goal.stitch, "weight")
    except networkx.NetworkXNoPath:
        shortest = None
    try:
        way = worked.way(Section("row", 1), start, goal)
    except ValueError:
        way = None
    assert (shortest is None) == (way is None)
    if way is not None:
        assert len(way) == shortest % MOVE
