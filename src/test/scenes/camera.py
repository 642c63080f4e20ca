"""The camera: where it stands, what it projects, and what lens and sensor do to the picture."""
from dataclasses import dataclass

import numpy as np
from scipy.ndimage import gaussian_filter, map_coordinates

FRAME_35MM_DIAGONAL = 43.267


@dataclass(frozen=True)
class Camera:
    """A view of the ground z = 0, mm and degrees.

    The optical axis meets the ground at `aim`, `distance` away, `tilt` off the vertical, leaning towards `lean`
    (azimuth); the picture is turned by `turn` about the axis. k1, k2: radial terms of the usual (OpenCV) lens model.
    """
    aim: tuple
    distance: float
    tilt: float
    lean: float
    turn: float
    focal_35mm: float
    k1: float = 0.0
    k2: float = 0.0
    width: int = 1824
    height: int = 1368

    @property
    def focal_px(self):
        return self.focal_35mm * np.hypot(self.width, self.height) / FRAME_35MM_DIAGONAL

    def matrix(self):
        """Camera to ground: x right, y up in the picture, z from the scene to the camera."""
        tilt, lean, turn = np.radians([self.tilt, self.lean, self.turn])
        back = np.array([np.sin(tilt) * np.cos(lean), np.sin(tilt) * np.sin(lean), np.cos(tilt)])
        up = np.array([-np.sin(turn), np.cos(turn), 0])
        up -= back * (up @ back)
        up /= np.linalg.norm(up)
        matrix = np.eye(4)
        matrix[:3, :3] = np.column_stack([np.cross(up, back), up, back])
        matrix[:3, 3] = np.array([*self.aim, 0]) + self.distance * back
        return matrix

    def project(self, places):
        """Ground-frame points (n × 3) to pixels (n × 2) of the finished picture, upright."""
        seen = (np.column_stack([places, np.ones(len(places))]) @ np.linalg.inv(self.matrix()).T)[:, :3]
        flat = np.column_stack([seen[:, 0] / -seen[:, 2], seen[:, 1] / seen[:, 2]])
        return flat * self._swell(flat) * self.focal_px + self._middle(self.width, self.height)

    def _swell(self, flat):
        square = np.sum(flat ** 2, axis=-1, keepdims=True)
        return 1 + self.k1 * square + self.k2 * square ** 2

    @staticmethod
    def _middle(width, height):
        return np.array([(width - 1) / 2, (height - 1) / 2])

    def _straight(self):
        """For every pixel of the finished picture, where its ray lies in an undistorted one, in focal lengths."""
        column, row = np.meshgrid(np.arange(self.width), np.arange(self.height))
        bent = (np.stack([column, row], -1) - self._middle(self.width, self.height)) / self.focal_px
        flat = bent.copy()
        for _ in range(14):  # a contraction by 3·|k1|·r², which is below 0.1 for these lenses
            flat = bent / self._swell(flat)
        return flat

    def rendered_size(self):
        """Size of the undistorted picture, same focal length and middle, that holds the finished one and a margin."""
        reach = np.abs(self._straight()).max(axis=(0, 1)) * self.focal_px
        return tuple(2 * (int(np.ceil(r)) + 6) for r in reach)

    def through_lens(self, rendered):
        """Undistorted linear picture -> the one that the lens draws, by a cubic spline."""
        height, width = rendered.shape[:2]
        at = self._straight() * self.focal_px + self._middle(width, height)
        return np.stack([map_coordinates(rendered[..., c], [at[..., 1], at[..., 0]], order=3, mode="nearest")
                         for c in range(3)], -1)


def develop(light, seed, exposure, blur_px=0.6, noise=0.004, sharpen=0.0):
    """Linear light -> 8-bit sRGB, as a phone does it.

    @param exposure (share, level): the brightness below which that share of the picture lies becomes that level
    @param noise standard deviation of the sensor's noise at mid-grey, in linear light; grows with the root of it
    @param sharpen strength of the sharpening mask, which leaves the well-known halo along edges
    """
    share, level = exposure
    light = np.clip(light, 0, None)
    luminance = light @ [0.2126, 0.7152, 0.0722]
    light = light * (level / np.percentile(luminance, 100 * share))
    light = gaussian_filter(light, (blur_px, blur_px, 0))
    grain = gaussian_filter(np.random.default_rng(seed).standard_normal(light.shape), (0.5, 0.5, 0)) / 0.53
    light = np.clip(light + grain * noise * np.sqrt(np.clip(light, 0, 1.5) / 0.2 + 0.1), 0, None)
    # Straight up to 0.7, then a shoulder that reaches white only at infinity.
    light = np.where(light < 0.7, light, 0.7 + 0.3 * (1 - np.exp(-(light - 0.7) / 0.3)))
    shown = np.where(light <= 0.0031308, 12.92 * light, 1.055 * light ** (1 / 2.4) - 0.055)  # IEC 61966-2-1
    if sharpen:
        shown = shown + sharpen * (shown - gaussian_filter(shown, (1.2, 1.2, 0)))
    return np.clip(np.round(shown * 255), 0, 255).astype(np.uint8)
