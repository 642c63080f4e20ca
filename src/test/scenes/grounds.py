"""What the knife lies on, true to size, as pictures: the top of the picture is the top of the page."""
import subprocess
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from PIL import Image, ImageDraw, ImageFont
from scipy.ndimage import gaussian_filter

A4, LETTER, A3 = (210, 297), (215.9, 279.4), (297, 420)  # ISO 216; ANSI/ASME Y14.1
FONT = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"


@dataclass(frozen=True)
class Ground:
    """A flat thing of size (width, height) mm; its picture's scale; its thickness."""
    size: tuple
    picture: Path
    mm_per_pixel: float
    thick_mm: float = 0.2


@dataclass(frozen=True)
class Ruled:
    """Lines on a mat or paper. Colours are sRGB; margins and widths mm."""
    size: tuple
    pitch: float
    field: tuple
    ink: tuple
    thin: float
    bold: float
    bold_every: int
    margin: float
    numbers: bool = False
    scars: int = 0
    thick_mm: float = 3.0
    faint: float = 1.0


RULED = {
    "mat-blue": Ruled((450, 300), 10, (62, 84, 108), (196, 204, 196), .30, .65, 5, 10, True, 14),
    "mat-black": Ruled((450, 300), 10, (38, 38, 40), (190, 176, 120), .30, .60, 5, 10, True, 30),
    "mat-inch": Ruled((457.2, 304.8), 12.7, (104, 58, 60), (222, 208, 190), .28, .70, 2, 12.7, True, 10, faint=.75),
    "graph": Ruled(A4, 5, (244, 243, 238), (128, 158, 190), .18, .18, 1, 0, thick_mm=.2, faint=.9),
    "graph-grey": Ruled(A4, 5, (247, 246, 244), (150, 150, 156), .22, .22, 1, 0, thick_mm=.2, faint=.9),
}
SHEETS = {"sheet-a4": A4, "sheet-letter": LETTER, "sheet-a3": A3}
PAPERS = {"paper-a4": A4, "paper-letter": LETTER}


def make(name, folder, jar):
    """The ground of that name, its picture written into the folder."""
    if name in SHEETS:
        return sheet(name, folder, jar)
    if name in PAPERS:
        return paper(PAPERS[name], folder / f"{name}.png")
    return ruled(RULED[name], folder / f"{name}.png")


def sheet(name, folder, jar, dpi=400):
    """The reference sheet as the program prints it, drawn by poppler: an ink that is not quite black."""
    page = name.removeprefix("sheet-")
    pdf = folder / f"{name}.pdf"
    subprocess.run(["java", "-jar", jar, "sheet", "--page", page, "-o", pdf], check=True)
    subprocess.run(["pdftoppm", "-r", str(dpi), "-png", "-singlefile", pdf, folder / f"{name}-print"], check=True)
    ink = np.asarray(Image.open(folder / f"{name}-print.png").convert("RGB"), np.float32)
    picture = folder / f"{name}.png"
    Image.fromarray(np.uint8(34 + ink * ((236 - 34) / 255))).save(picture)
    # Poppler draws from the upper left corner and rounds the picture's size up: the scale, not the size, is exact.
    return Ground(SHEETS[name], picture, 25.4 / dpi)


def paper(size, picture, dpi=100):
    """White paper, very slightly cloudy."""
    width, height = (int(np.ceil(mm / 25.4 * dpi)) for mm in size)
    cloud = gaussian_filter(np.random.default_rng(11).standard_normal((height, width)), 3)
    shade = 236 + 1.2 * cloud / cloud.std()
    Image.fromarray(np.uint8(np.stack([shade, shade, shade - 4], -1))).save(picture)
    return Ground(size, picture, 25.4 / dpi)


def ruled(r, picture, dpi=254):
    """Lines with exact coverage of each pixel, numbers along two sides, scars of a blade, a little wear."""
    scale = 25.4 / dpi
    width, height = (int(np.ceil(mm / scale)) for mm in r.size)
    random = np.random.default_rng(5)

    def coverage(count, extent):
        edges = np.arange(count + 1) * scale
        cover = np.zeros(count)
        lines = int(round((extent - 2 * r.margin) / r.pitch))
        for i in range(lines + 1):
            half = (r.bold if i % r.bold_every == 0 else r.thin) / 2
            strength = 1 if i % r.bold_every == 0 else r.faint
            at = r.margin + i * r.pitch
            overlap = np.clip(np.minimum(edges[1:], at + half) - np.maximum(edges[:-1], at - half), 0, None) / scale
            cover = np.maximum(cover, overlap * strength)
        return cover

    def inside(count, extent):
        middle = (np.arange(count) + 0.5) * scale
        return (middle >= r.margin - r.bold / 2) & (middle <= extent - r.margin + r.bold / 2)

    across, down = coverage(width, r.size[0]), coverage(height, r.size[1])
    ink = np.maximum(across[None, :] * inside(height, r.size[1])[:, None],
                     down[:, None] * inside(width, r.size[0])[None, :])
    if r.numbers:
        ink = np.maximum(ink, numbers(r, (width, height), scale))
    wear = gaussian_filter(random.standard_normal((height, width)), 1.5)
    wear = 1 + 0.015 * wear / wear.std()
    rgb = np.array(r.field, float) * (1 - ink[..., None]) + np.array(r.ink, float) * ink[..., None]
    rgb *= wear[..., None] if r.numbers else 1 + (wear[..., None] - 1) / 6
    if r.scars:
        rgb = scarred(rgb, r, random)
    Image.fromarray(np.uint8(np.clip(rgb, 0, 255))).save(picture, compress_level=1)
    return Ground(r.size, picture, scale, r.thick_mm)


def numbers(r, size, scale):
    image = Image.new("L", size, 0)
    draw = ImageDraw.Draw(image)
    font = ImageFont.truetype(FONT, int(4.2 / scale))
    for axis in (0, 1):
        count = int(round((r.size[axis] - 2 * r.margin) / r.pitch))
        for i in range(0, count + 1, r.bold_every):
            at = (r.margin + i * r.pitch) / scale
            place = (at, r.size[1] / scale - r.margin / scale / 2) if axis == 0 else (r.margin / scale / 2, at)
            draw.text(place, str(i // r.bold_every * (5 if r.bold_every == 5 else 1)), 220, font, anchor="mm")
    return np.asarray(image, float) / 255


def scarred(rgb, r, random):
    """Cuts of a knife: long, thin, dark on one side and light on the other."""
    height, width = rgb.shape[:2]
    image = Image.new("L", (width, height), 128)
    draw = ImageDraw.Draw(image)
    for _ in range(r.scars):
        x, y = random.uniform(0.1, 0.9) * width, random.uniform(0.1, 0.9) * height
        angle, length = random.uniform(0, np.pi), random.uniform(300, 1600)
        dx, dy = np.cos(angle) * length, np.sin(angle) * length
        draw.line((x, y, x + dx, y + dy), 84, 3)
        draw.line((x + 2, y + 2, x + dx + 2, y + dy + 2), 150, 2)
    return rgb * (np.asarray(image, float)[..., None] / 128)
