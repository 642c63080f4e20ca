"""The knives: outlines as splines, and the solid bodies that have exactly these outlines.

Knife frame, mm: x from the heel of the blade (0) to the tip, y to the spine, z across the flats, z = 0 half-way through
the thickness. A body lies between two chains of points with the same number of points each, both from the body's back
end to its front: section i goes from lower[i] to upper[i]. Since every section is widest in z = 0, the body's outline
there is the two chains and nothing else, so the truth that is written is the mesh's own silhouette.
"""
from dataclasses import dataclass

import numpy as np
from scipy.interpolate import CubicSpline
from shapely.geometry import Polygon
from shapely.ops import unary_union

CORNER = "corner"
STATION_MM = 0.35
"""Chord of a chain: on a curve of 5 mm radius its sagitta is 0.003 mm."""


def chain(nodes):
    """Smooth curve through nodes, broken where one is marked CORNER.

    Returns its points as a function of the share of its length, the shares at which its corners lie, and its length.
    """
    pieces, run = [], []
    for node in nodes:
        run.append(node[:2])
        if len(node) == 3 and len(run) > 1:
            pieces.append(run)
            run = [node[:2]]
    if len(run) > 1:
        pieces.append(run)
    dense = [np.array(pieces[0][:1], float)]
    corners = []
    for piece in pieces:
        points = np.array(piece, float)
        at = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
        # Chord lengths as parameters keep the speed even along nearly straight stretches.
        curve = CubicSpline(at, points, bc_type="natural")
        dense.append(curve(np.linspace(0, at[-1], max(2, int(at[-1] / 0.02))))[1:])
        corners.append(sum(len(d) for d in dense) - 1)
    points = np.vstack(dense)
    length = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    share = length / length[-1]
    return (lambda u: np.column_stack([np.interp(u, share, points[:, k]) for k in (0, 1)]),
            share[corners[:-1]], length[-1])


def paired(upper, lower):
    """Points of two chains at the same shares of their lengths, corners of both among them."""
    up, up_corners, up_length = chain(upper)
    low, low_corners, low_length = chain(lower)
    even = np.linspace(0, 1, int(max(up_length, low_length) / STATION_MM) + 1)
    corners = np.concatenate([up_corners, low_corners])
    if corners.size:
        even = even[np.min(np.abs(even[:, None] - corners[None, :]), axis=1) > 1e-4]
    u = np.unique(np.concatenate([[0], even, corners, [1]]))
    # Rounded, so that blade and handle share the heel's line exactly and their union is one outline.
    return np.round(up(u), 9), np.round(low(u), 9)


@dataclass(frozen=True)
class Knife:
    """Chains by nodes (x, y[, CORNER]), thicknesses in mm.

    spine and edge run from heel to tip; upper and lower from butt to the handle's front. bevel is the share of the
    blade's width, from the edge, that the grind takes (1: full flat). A guard is a plate (x from, x to, half height,
    thickness), centred on the axis.
    """
    spine: tuple
    edge: tuple
    upper: tuple
    lower: tuple
    spine_mm: float
    edge_mm: float
    handle_mm: float
    bevel: float = 1.0
    double_edged: bool = False
    section: float = 2.5
    guard: tuple = None

    def blade_chains(self):
        return paired(self.spine, self.edge)

    def handle_chains(self):
        return paired(self.upper, self.lower)

    def guard_chains(self):
        x0, x1, half, _ = self.guard
        r = (x1 - x0) / 2
        # A stadium across the knife: straight flanks, round ends. Its chains go left to right over each end.
        angle = np.linspace(np.pi, 0, 161)
        arc = np.column_stack([(x0 + x1) / 2 + r * np.cos(angle), half - r + r * np.sin(angle)])
        return arc, arc * [1, -1]

    def blade_outline(self):
        return ring(*self.blade_chains())

    def handle_outline(self):
        body = ring(*self.handle_chains())
        return unary_union([body, ring(*self.guard_chains())]) if self.guard else body

    def outline(self):
        return unary_union([self.blade_outline(), self.handle_outline()])

    def bodies(self):
        """Name -> (vertices, faces) of closed meshes."""
        bodies = {"blade": self._blade(), "handle": self._handle()}
        if self.guard:
            upper, lower = self.guard_chains()
            bodies["guard"] = loft(upper, lower, rounded_box, np.full(len(upper), self.guard[3] / 2))
        return bodies

    def _blade(self):
        spine, edge = self.blade_chains()
        width = np.hypot(*(spine - edge).T)
        # A flat grind comes to the point with its own planes, so the thickness falls with the width near the tip.
        taper = np.minimum(1, width / (0.55 * width.max()))
        half = (self.edge_mm + (self.spine_mm - self.edge_mm) * taper) / 2
        ratio = self.edge_mm / 2 / half
        # The tang: the blade goes on unseen into the handle, so that no light falls through the joint.
        tang = np.array([[-6, 0.0]])
        spine = np.vstack([spine[:1] * [1, .6] + tang, spine])
        edge = np.vstack([edge[:1] * [1, .6] + tang, edge])
        half, ratio = np.append(half[:1], half), np.append(ratio[:1], ratio)
        shares = np.linspace(0, 1, 41)  # from the spine to the edge
        if self.double_edged:
            rise = lambda q: q + (1 - q) * (1 - np.abs(2 * shares - 1))
        else:
            rise = lambda q: q + (1 - q) * np.minimum(1, (1 - shares) / self.bevel)
        section = lambda i: (np.concatenate([1 - 2 * shares, (1 - 2 * shares)[::-1]]),
                             np.concatenate([rise(ratio[i]), -rise(ratio[i])[::-1]]))
        return loft(spine, edge, section, half)

    def _handle(self):
        upper, lower = self.handle_chains()
        x = (upper[:, 0] + lower[:, 0]) / 2
        along = (x - x[0]) / (x[-1] - x[0])
        # Scales: thickest from the middle to the swell, a little thinner at the front, rounded off at the butt.
        front = 1 - 0.22 * np.clip((along - 0.7) / 0.3, 0, 1) ** 2
        butt = np.sqrt(1 - 0.75 * np.clip(1 - (x - x[0]) / 7, 0, 1) ** 2)
        t = 2 * np.pi * np.arange(144) / 144
        power = lambda c: np.sign(c) * np.abs(np.where(np.abs(c) < 1e-12, 0, c)) ** (2 / self.section)
        ellipse = (power(np.cos(t)), power(np.sin(t)))
        return loft(upper, lower, lambda i: ellipse, self.handle_mm / 2 * front * butt)


def rounded_box(_):
    """Section of a guard: flat faces, edges rounded; in shares of half its height and half its thickness."""
    t = 2 * np.pi * np.arange(96) / 96
    power = lambda c: np.sign(c) * np.abs(np.where(np.abs(c) < 1e-12, 0, c)) ** 0.25
    return power(np.cos(t)), power(np.sin(t))


def loft(upper, lower, section, half):
    """Closed mesh over sections: point j of section i at centre + v_j·(upper − lower)/2, z = w_j·half_i."""
    middle, arm = (upper + lower) / 2, (upper - lower) / 2
    rings = []
    for i in range(len(upper)):
        v, w = section(i)
        rings.append(np.column_stack([middle[i] + v[:, None] * arm[i], w * half[i]]))
    count, around = len(rings), len(rings[0])
    index = np.arange(count * around).reshape(count, around)
    nxt = np.roll(index, -1, axis=1)
    quads = np.stack([index[:-1], index[1:], nxt[1:], nxt[:-1]], axis=-1).reshape(-1, 4)
    faces = quads.tolist() + [index[0].tolist(), index[-1][::-1].tolist()]
    return np.vstack(rings), faces


def ring(upper, lower):
    """The outline between two chains; where they meet, the meeting point counts once."""
    points = np.vstack([upper, lower[::-1]])
    outline = Polygon(points[np.hypot(*(points - np.roll(points, 1, axis=0)).T) > 1e-6])
    if not outline.is_valid:
        raise ValueError("the chains of an outline cross")
    return outline


def points(polygon):
    """Ring of an outline with no more points than 0.004 mm asks for, rounded to the micrometre."""
    return [[round(x, 3), round(y, 3)] for x, y in polygon.simplify(0.004).exterior.coords]


def truth(knife):
    """What is measured on the knife, in the words of the truth files."""
    blade, whole = knife.blade_outline(), knife.outline()
    return {
        "units": "mm",
        "frame": "x runs from the heel of the blade (0) to the tip; y is positive on the spine side",
        "knife_outline": points(whole),
        "blade_outline": points(blade),
        "handle_outline": points(knife.handle_outline()),
        "blade_length": round(blade.bounds[2], 3),
        "overall_length": round(whole.bounds[2] - whole.bounds[0], 3),
        "blade_width": round(blade.bounds[3] - blade.bounds[1], 3),
        "spine_thickness": knife.spine_mm,
        "edge_thickness": knife.edge_mm,
        "handle_thickness": knife.handle_mm,
    }


C = CORNER
KNIVES = {
    # Drop point with a finger guard and a small choil.
    "drop-point": Knife(
        spine=((0, 11.5), (30, 12.2), (60, 11.0), (82, 7.0), (98, .5)),
        edge=((0, -9.5), (5, -9.7, C), (6.2, -12.2, C), (40, -13.2), (70, -11.3), (88, -6.3), (98, .5)),
        upper=((-112, -2), (-110.5, 5), (-104, 9.8), (-70, 11.9), (-35, 10.6), (-10, 11.2), (0, 11.5)),
        lower=((-112, -2), (-110.5, -8.5), (-104, -12.6), (-92, -12.6), (-60, -14.2), (-36, -12.2), (-20, -11.2),
               (-10, -13.6), (-4.5, -18.2), (-1.6, -18.8), (0, -17.2)),
        spine_mm=4.0, edge_mm=.4, handle_mm=20),
    # Clip point: a sharp corner where the clip begins; the heel stands proud of the handle.
    "clip-point": Knife(
        spine=((0, 11.6), (62, 12.4, C), (75, 8.3), (90, 5.0), (106, 3.4)),
        edge=((0, -13), (1.2, -13.8, C), (50, -14), (80, -11.2), (97, -4.4), (106, 3.4)),
        upper=((-108, 1), (-106, 7.5), (-98, 10.2), (-80, 9.6), (-50, 11.4), (-20, 10.6), (0, 11.6)),
        lower=((-108, 1), (-107.5, -8), (-103.5, -14.6), (-96, -14.2), (-84, -10.6), (-56, -13), (-30, -10.5),
               (-14, -10.7), (0, -11.6)),
        spine_mm=4.5, edge_mm=.5, handle_mm=21, bevel=.6),
    # Skinner: an upswept belly, the tip higher than the spine.
    "skinner": Knife(
        spine=((0, 9.5), (30, 9.0), (60, 10.8), (84, 17)),
        edge=((0, -11), (25, -14), (48, -13), (66, -6), (78, 5.5), (84, 17)),
        upper=((-104, -4), (-101, 4), (-90, 8.6), (-60, 11.5), (-25, 9), (0, 9.5)),
        lower=((-104, -4), (-102, -11), (-93, -14), (-60, -12.5), (-30, -13.5), (-12, -11), (0, -13)),
        spine_mm=3.2, edge_mm=.35, handle_mm=18, section=2.2),
    # A slim paring knife, nearly straight edge, thin handle.
    "paring": Knife(
        spine=((0, 7.2), (45, 6.8), (70, 4.2), (86, -3.6)),
        edge=((0, -8), (1, -9.5, C), (55, -8.6), (76, -6.8), (86, -3.6)),
        upper=((-96, 0), (-95, 5), (-90, 7.6), (-50, 8.8), (-15, 7.4), (0, 7.2)),
        lower=((-96, 0), (-95, -5), (-90, -7.6), (-55, -8), (-25, -9.4), (0, -7.6)),
        spine_mm=1.8, edge_mm=.25, handle_mm=12.5, section=3.0),
    # Dagger: two edges, ridge in the middle, a guard on both sides.
    "dagger": Knife(
        spine=((0, 11), (40, 11.6), (80, 8.8), (118, 0)),
        edge=((0, -11), (40, -11.6), (80, -8.8), (118, 0)),
        upper=((-108, 0), (-106.6, 6.4), (-100, 9.6), (-70, 8.2), (-40, 9.8), (-3, 9.2)),
        lower=((-108, 0), (-106.6, -6.4), (-100, -9.6), (-70, -8.2), (-40, -9.8), (-3, -9.2)),
        spine_mm=5.0, edge_mm=.4, handle_mm=18, double_edged=True, section=2.0, guard=(-6, 0, 22, 15)),
    # Recurve: hollow near the heel, belly near the tip.
    "recurve": Knife(
        spine=((0, 11.4), (50, 11.2), (80, 8.6), (103, .8)),
        edge=((0, -11.5), (18, -10.3), (38, -11.6), (62, -15), (84, -11.8), (97, -4.2), (103, .8)),
        upper=((-114, -1), (-112.4, 5.2), (-101, 10.2), (-65, 11), (-30, 12.8), (0, 11.4)),
        lower=((-114, -1), (-113.4, -8.5), (-108, -13.6), (-97, -12.0), (-75, -13.4), (-45, -11.4), (-20, -12.4),
               (-8, -15.2), (0, -14.6)),
        spine_mm=4.2, edge_mm=.45, handle_mm=22, bevel=.75),
    # Straight edge, an angular point in two facets.
    "tanto": Knife(
        spine=((0, 11.6), (60, 11.9), (99, 8.8)),
        edge=((0, -11.8), (74, -11.8, C), (87, -2.2), (99, 8.8)),
        upper=((-106, 8, C), (-104, 11, C), (-55, 11.4), (0, 11.6)),
        lower=((-106, 8), (-106, -8, C), (-102.6, -12, C), (-50, -11.2), (0, -12)),
        spine_mm=4.8, edge_mm=.6, handle_mm=16, bevel=.5, section=3.4),
    # Straight back and a small guard on both sides.
    "hunter": Knife(
        spine=((0, 9.8), (70, 10.0), (95, 8.4), (112, 4.2)),
        edge=((0, -10.6), (60, -11.6), (88, -8.6), (104, -1.6), (112, 4.2)),
        upper=((-100, 0), (-98.5, 7), (-92, 10.4), (-60, 10.8), (-25, 8.8), (-2.5, 9)),
        lower=((-100, 0), (-98.5, -8), (-92, -12), (-70, -10.4), (-45, -11.8), (-20, -9.2), (-2.5, -9)),
        spine_mm=4.0, edge_mm=.4, handle_mm=23, section=2.2, guard=(-5, 0, 14.5, 19)),
}
