"""What else lies about on a bench: closed meshes in the ground frame, mm."""
from dataclasses import dataclass

import numpy as np
from scipy.interpolate import CubicSpline


@dataclass(frozen=True)
class Thing:
    vertices: np.ndarray
    faces: list
    material: str


def prism(low, high, material):
    """The solid between two rings of the same number of points."""
    n = len(low)
    sides = [(j, (j + 1) % n, n + (j + 1) % n, n + j) for j in range(n)]
    return Thing(np.vstack([low, high]), sides + [tuple(range(n))[::-1], tuple(range(n, 2 * n))], material)


def pencil(at, turn, length=118, across=7.2):
    """Six flats, lying on one of them."""
    angle = np.radians(30 + 60 * np.arange(6))
    y, z = across / np.sqrt(3) * np.cos(angle), across / np.sqrt(3) * np.sin(angle) + across / 2
    c, s = np.cos(np.radians(turn)), np.sin(np.radians(turn))
    ends = [np.column_stack([at[0] + c * x - s * y, at[1] + s * x + c * y, z]) for x in (-length / 2, length / 2)]
    return prism(*ends, "pencil")


def coin(at, diameter=22.5, thick=1.9):
    angle = 2 * np.pi * np.arange(128) / 128
    rim = np.column_stack([at[0] + diameter / 2 * np.cos(angle), at[1] + diameter / 2 * np.sin(angle)])
    return prism(*(np.column_stack([rim, np.full(128, z)]) for z in (0.01, thick)), "coin")


def scrap(at, radius=24, thick=2.8):
    """An offcut of leather."""
    radii = radius * (1 + np.array([.1, -.25, .35, -.1, .2, -.35, .15, 0]))
    curve = CubicSpline(np.arange(9), np.append(radii, radii[0]), bc_type="periodic")
    t = np.linspace(0, 8, 241)[:-1]
    angle = 2 * np.pi * t / 8
    rim = np.column_stack([at[0] + curve(t) * np.cos(angle), at[1] + curve(t) * np.sin(angle)])
    return prism(*(np.column_stack([rim, np.full(len(rim), z)]) for z in (0.01, thick)), "leather")
