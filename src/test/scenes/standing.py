"""Knives that stand on their spine or on their edge between blocks, to be photographed from above: what is seen of them is
their thickness along their length. Frames and units as in render.py."""
import numpy as np

from clutter import prism

BALANCE_X = -15.0
"""Knives balance a little behind the heel: common practice."""


def turned(axis, angle):
    """Rotation about one of the axes 0, 1, 2, right-handed."""
    matrix, (a, b) = np.eye(4), [(1, 2), (2, 0), (0, 1)][axis]
    matrix[a, a], matrix[a, b], matrix[b, a], matrix[b, b] = np.cos(angle), -np.sin(angle), np.sin(angle), np.cos(angle)
    return matrix


def cross(a, b, c):
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def rest(outline, down):
    """Height of the axis at the heel over the ground, and its slope, for a knife that rests on the hull of one side."""
    x, y = np.array(outline.exterior.coords).T
    drop = y if down == "spine" else -y
    lower = []
    for at in sorted(zip(x, drop)):  # Andrew's monotone chain over the side that points down
        while len(lower) > 1 and cross(lower[-2], lower[-1], at) >= 0:
            lower.pop()
        lower.append(at)
    k = next(k for k in range(1, len(lower)) if lower[k][0] >= BALANCE_X)
    (x0, d0), (x1, d1) = lower[k - 1], lower[k]
    slope = (d1 - d0) / (x1 - x0)
    return d0 - slope * x0, slope


def knife_matrix(scene, knife):
    """Knife frame to ground, for a knife that stands."""
    outline = knife.outline()
    height, slope = rest(outline, scene.down)
    roll = turned(0, np.radians(-90 if scene.down == "spine" else 90))
    # The axis rises by the slope towards the tip, so that the hull's edge lies level.
    place = turned(2, np.radians(scene.turn)) @ turned(1, -np.arctan(slope))
    x0, _, x1, _ = outline.bounds
    middle = place @ roll @ [(x0 + x1) / 2, 0, 0, 0]
    place[:3, 3] = [scene.at[0] - middle[0], scene.at[1] - middle[1], height * np.cos(np.arctan(slope))]
    return place @ roll


def block(scene, matrix, knife, x, side, size):
    """A block of wood that touches one side of the knife at a place along it; size along the knife, across, up."""
    thick = dict(thickness_along(knife, 0.5))
    half = thick[min(thick, key=lambda at: abs(at - x))] / 2
    c, s = np.cos(np.radians(scene.turn)), np.sin(np.radians(scene.turn))
    foot = (matrix @ [x, 0, 0, 1])[:2]
    corners = np.array([(a * size[0] / 2, side * (half + b * size[1])) for a, b in ((-1, 0), (1, 0), (1, 1), (-1, 1))])
    ground = foot + corners @ np.array([[c, s], [-s, c]])
    return prism(*(np.column_stack([ground, np.full(4, z)]) for z in (0.01, size[2])), "orange")


def thickness_along(knife, step=2.0):
    """Greatest thickness across the flats at stations along the knife: (x, thickness)."""
    bodies = [(np.asarray(v), f) for v, f in knife.bodies().values()]
    x0, _, x1, _ = knife.outline().bounds
    stations = np.arange(np.ceil(x0 / step) * step, x1 - 0.3, step)
    widest = []
    for x in stations:
        near = [2 * np.abs(v[np.abs(v[:, 0] - x) < 0.3, 2]).max() for v, _ in bodies
                if np.any(np.abs(v[:, 0] - x) < 0.3)]
        widest.append((round(float(x), 3), round(float(max(near)), 3)))
    return widest
