#!/usr/bin/python3
"""Renders the test scenes: photo-like pictures of knives whose true outline is known.

    src/test/scenes/render.py [NAME ...]      from the project's folder, after the build; all scenes without names

The renderer is Blender's Cycles, which knows nothing of this project; only the reference sheets are drawn by the
project itself. On Debian: apt install blender python3-numpy python3-scipy python3-pil python3-shapely poppler-utils
libimage-exiftool-perl. Everything random is seeded. Blender 3.4, two cores: a minute or two a scene. There is no
denoiser in it: the grain that few samples leave is the photo's grain.

Written per scene, to src/test/resources/scenes, or standing for knives that stand between blocks: NAME.jpg and
NAME.truth.json. What the truth says:

- knife_outline, blade_outline, handle_outline: closed rings in the mid-plane, mm, the first point repeated at the end;
  x from the heel (0) to the tip, y positive on the spine side.
- rest: height of the mid-plane over the ground at the heel; how much lower the tip lies; the mid-plane is level across.
- photo: all of it holds for the upright picture, after the Exif orientation (exif.orientation) has been obeyed.
  focal_px = focal_35mm · diagonal in pixels / 43.267; principal point ((width − 1)/2, (height − 1)/2), pixel centres
  being whole numbers; k1, k2 as in OpenCV: distorted = straight · (1 + k1 r² + k2 r⁴). camera_distance is measured
  along the optical axis to the ground.
- mirrored_in_photo: false when x to the tip and y to the spine are right-handed as seen from above; true when the knife
  lies on its other face, so that the outline has to be mirrored (y to −y) to fall on what the picture shows.
- handle_section_exponent: sections of the handle are super-ellipses of that exponent. The handle keeps handle_thickness
  to 70 % of its length from the butt, thins to 78 % of it at the front, and is rounded off to half of it over the last
  7 mm of the butt: a view aslant sees something of the butt's end outside of the outline.
- guard: where there is one, a plate of its own thickness across the knife, part of knife_outline and handle_outline; a
  view aslant sees its thickness as well. double_edged: spine_thickness is then that of the ridge in the middle.
- ground: sheet-a4, sheet-letter, sheet-a3, mat-cm, mat-inch, graph-5mm, paper-a4 or paper-letter; where it is ruled,
  ruled_pitch_mm between neighbouring lines, thin ones too, and bold_every how many of them one is bold.
- pose: matrices from knife and camera to ground (lengths in unit_mm; camera: x right, y up, looking along −z); the
  ground's origin is the middle of the page, x to the right, y up the page, z to the camera.
- standing_on, thickness_along: where the knife stands on its spine or its edge, its greatest thickness across the flats
  at places along it, [x, thickness] each; rest is then empty.
- exif: what the file says of itself; focal_35mm there may be rounded.
"""
import json
import subprocess
import sys
from dataclasses import dataclass
from pathlib import Path

import numpy as np
from PIL import Image

import grounds
import knives
from camera import Camera, develop
import standing
from clutter import coin, pencil, scrap

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parents[2]
RESULTS = PROJECT / "src/test/resources/scenes"
STANDING_RESULTS = PROJECT / "src/test/resources/standing"
WORK = PROJECT / "target/scenes"
JAR = PROJECT / "target/weltwright.jar"
UNIT_MM = 100.0
SMOOTH = np.radians(30)


@dataclass(frozen=True)
class Light:
    """Lamps: (place, side of the square, strength, colour), mm; the room's colour and strength."""
    lamps: tuple
    room: tuple


DAY, WARM, COOL, NEUTRAL = (1, .98, .95), (1, .76, .50), (.80, .90, 1), (1, 1, 1)
LIGHTS = {
    "window": Light((((-1000, 500, 900), 900, 1.0, DAY),), (DAY, .28)),
    "warm-window": Light((((900, 700, 900), 800, 1.0, (1, .86, .68)),), (WARM, .22)),
    "cool-window": Light((((200, 1100, 1000), 900, 1.0, COOL),), (COOL, .28)),
    "lamp": Light((((420, -260, 620), 45, 2.0, NEUTRAL),), (NEUTRAL, .13)),
    "warm-lamp": Light((((-380, -320, 600), 45, 2.0, WARM),), (WARM, .13)),
    "two-lamps": Light((((-450, 180, 560), 60, 1.0, WARM), ((380, 330, 620), 50, 1.0, DAY)), (DAY, .13)),
    "ceiling": Light((((150, 100, 2200), 1500, 1.0, DAY),), (DAY, .40)),
}


@dataclass(frozen=True)
class Scene:
    """One picture. `at` is where the middle of the knife's length lies, `turn` the direction of its tip, in degrees.

    bright: (share of the picture, level in linear light that it lies below), the exposure.
    exif_focal: what the file says of its focal length; orientation: Exif's tag, the pixels are stored turned by it.
    down: "spine" or "edge" for a knife that stands on it; blocks: (x along the knife, side, (along, across, up)) each.
    """
    knife: str
    blade: str
    handle: str
    ground: str
    desk: str
    light: str
    camera: Camera
    at: tuple
    turn: float
    bright: tuple
    mirrored: bool = False
    tip_lower: float = 0.0
    clutter: tuple = ()
    exif_focal: int = None
    orientation: int = 1
    noise: float = 0.002
    sharpen: float = 0.0
    quality: int = 89
    samples: int = 18
    down: str = None
    blocks: tuple = ()


# name: ground; knife (blade, handle); light; what is particular
#
# clip-sheet-a4: A4 sheet; clip point (satin, pale wood); soft window; barrel lens, focal length in Exif
# dagger-mat-blue: blue cm mat; dagger with guard (satin, black); hard lamp; numbers and scars of the mat
# paring-paper-a4: blank A4; slim paring knife (satin, orange); two lamps, two shadows; mirrored
# skinner-sheet-letter: Letter sheet; skinner (mirror, patterned); ceiling; pincushion lens; stored turned (Exif 6)
# dagger-sheet-a3: A3 sheet; dagger with guard (coated, dark wood); warm window; 15° tilt, knife over the frame
# recurve-mat-inch: red-brown inch mat, half-inch lines; recurve (satin, black); cool window
# tanto-graph: 5 mm squares; tanto (mirror, orange); hard lamp; mirrored
# drop-paper-letter: blank Letter; drop point (satin, pale wood); cool window; butt over the paper's edge
# clip-mat-black: black cm mat; clip point (coated, dark wood); ceiling; many scars; stored upside down (Exif 3)
# hunter-sheet-letter: Letter sheet; hunter with guard (mirror, dark wood); two lamps; 52 mm in Exif; pencil, coin
# skinner-sheet-a4: A4 sheet; skinner (satin, black); window; tip lower by 5 mm; focal length in Exif rounded
# recurve-sheet-a4: A4 sheet; recurve (satin, orange); hard warm lamp; leather touching the frame, pencil; mirrored
# paring-graph: grey 5 mm squares; paring knife (satin, pale wood); ceiling; 18° tilt, long lens
# tanto-paper-a4: blank A4; tanto (coated, patterned); warm window; 14° tilt, strong barrel lens
SCENES = {
    "clip-sheet-a4": Scene(
        "clip-point", "satin", "pale-wood", "sheet-a4", "desk-oak", "window",
        Camera((4, -3), 318, 6, 70, 92, 26, .015, 0, 2016, 1512), (2, 4), 84, (.8, .62), exif_focal=26),
    "dagger-mat-blue": Scene(
        "dagger", "satin", "black", "mat-blue", "desk-oak", "lamp",
        Camera((0, 8), 380, 10, -120, 14, 28, -.03, .008), (-6, 10), 33, (.9, .40)),
    "paring-paper-a4": Scene(
        "paring", "satin", "orange", "paper-a4", "desk-dark", "two-lamps",
        Camera((0, 0), 316, 8, 20, -86, 26, .012, -.004, 2016, 1512), (6, 2), 68, (.8, .62),
        mirrored=True, samples=28),
    "skinner-sheet-letter": Scene(
        "skinner", "mirror", "patterned", "sheet-letter", "desk-slate", "ceiling",
        Camera((-3, 6), 300, 12, 150, 90, 24, -.04, .01, 2016, 1512), (3, -4), -75, (.85, .66),
        orientation=6, samples=28),
    "dagger-sheet-a3": Scene(
        "dagger", "coated", "dark-wood", "sheet-a3", "desk-slate", "warm-window",
        Camera((0, 4), 405, 15, -30, 88, 24, -.02, .004, 2016, 1512), (-48, 40), 160, (.8, .62)),
    "recurve-mat-inch": Scene(
        "recurve", "satin", "black", "mat-inch", "desk-pale", "cool-window",
        Camera((6, 0), 372, 7, 40, -8, 28, .02, -.006), (4, -6), -20, (.9, .50)),
    "tanto-graph": Scene(
        "tanto", "mirror", "orange", "graph", "desk-dark", "lamp",
        Camera((0, 4), 330, 4, 200, 96, 27, 0, 0), (0, 6), 110, (.8, .60), mirrored=True),
    "drop-paper-letter": Scene(
        "drop-point", "satin", "pale-wood", "paper-letter", "desk-slate", "cool-window",
        Camera((-8, 0), 330, 11, 100, 85, 26, -.01, 0), (-44, 12), 16, (.85, .62)),
    "clip-mat-black": Scene(
        "clip-point", "coated", "dark-wood", "mat-black", "desk-pale", "ceiling",
        Camera((0, -10), 352, 9, 75, 24, 26, .02, -.01), (0, -8), 141, (.92, .34), orientation=3),
    "hunter-sheet-letter": Scene(
        "hunter", "mirror", "dark-wood", "sheet-letter", "desk-oak", "two-lamps",
        Camera((0, 0), 590, 2, 10, 90, 52, .03, 0), (-6, 2), 97, (.85, .64), exif_focal=52,
        clutter=(pencil((52, 8), 82), coin((-46, -62)))),
    "skinner-sheet-a4": Scene(
        "skinner", "satin", "black", "sheet-a4", "desk-dark", "window",
        Camera((0, 0), 440, 9, -70, 90, 35.4, 0, 0), (-6, 6), 262, (.85, .62), tip_lower=5, exif_focal=35),
    "recurve-sheet-a4": Scene(
        "recurve", "satin", "orange", "sheet-a4", "desk-pale", "warm-lamp",
        Camera((0, 0), 345, 5, 120, 90, 28, -.015, 0), (-6, 4), 95, (.8, .62), mirrored=True,
        clutter=(scrap((92, -70)), pencil((52, 60), 70)), sharpen=.35),
    "paring-graph": Scene(
        "paring", "satin", "pale-wood", "graph-grey", "desk-slate", "ceiling",
        Camera((0, 0), 580, 18, 160, 90, 48, .01, 0), (4, 0), 48, (.8, .62)),
    "tanto-paper-a4": Scene(
        "tanto", "coated", "patterned", "paper-a4", "desk-oak", "warm-window",
        Camera((0, 4), 316, 14, -160, 88, 25, -.035, .006), (0, 6), 100, (.85, .62), sharpen=.3),
}
# Knives that stand between blocks, for their thickness along their length.
#
# hunter-on-spine: A4 sheet; hunter with guard; window; two blocks at the handle
# drop-on-edge: A4 sheet; drop point; ceiling; one block at the handle, one at the blade on the other side
STANDING = {
    "hunter-on-spine": Scene(
        "hunter", "satin", "dark-wood", "sheet-a4", "desk-oak", "window",
        Camera((-4, 2), 372, 3, 70, 92, 29, .01, 0, 2688, 2016), (2, 4), 86, (.8, .62), exif_focal=29, down="spine",
        blocks=((-55, 1, (24, 22, 26)), (-55, -1, (24, 22, 26)))),
    "drop-on-edge": Scene(
        "drop-point", "satin", "pale-wood", "sheet-a4", "desk-slate", "ceiling",
        Camera((0, 0), 350, 2, 10, 90, 27, -.01, 0, 2688, 2016), (0, 2), 95, (.8, .62), down="edge",
        blocks=((-60, 1, (20, 20, 22)), (40, -1, (16, 20, 18)))),
}
GROUND_NAMES = {"mat-blue": "mat-cm", "mat-black": "mat-cm", "graph": "graph-5mm", "graph-grey": "graph-5mm"}


def turned(axis, degrees):
    """Rotation about one of the axes 0, 1, 2, right-handed."""
    matrix, (a, b) = np.eye(4), [(1, 2), (2, 0), (0, 1)][axis]
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    matrix[a, a], matrix[a, b], matrix[b, a], matrix[b, b] = c, -s, s, c
    return matrix


def knife_matrix(scene, knife):
    """Knife frame to ground."""
    if scene.down:
        return standing.knife_matrix(scene, knife)
    x0, _, x1, _ = knife.outline().bounds
    place = turned(2, scene.turn) @ turned(1, np.degrees(np.arcsin(scene.tip_lower / x1)))
    middle = place @ [(x0 + x1) / 2, 0, 0, 0]
    place[:3, 3] = [scene.at[0] - middle[0], scene.at[1] - middle[1], knife.handle_mm / 2]
    return place @ turned(0, 180) if scene.mirrored else place


def bodies(scene, knife, matrix):
    """All meshes of a scene: (name, vertices, faces, matrix, material)."""
    looks = {"blade": scene.blade, "handle": scene.handle, "guard": "brass"}
    for name, (vertices, faces) in knife.bodies().items():
        yield name, vertices, faces, matrix, looks[name]
    up = -1 if scene.mirrored else 1
    upper, lower = knife.handle_chains()
    for i, share in enumerate((.22, .62)):
        k = int(share * len(upper))
        angle = 2 * np.pi * np.arange(48) / 48
        rim = (upper[k] + lower[k]) / 2 + 3 * np.column_stack([np.cos(angle), np.sin(angle)])
        levels = [np.column_stack([rim, np.full(48, up * z)]) for z in (0, knife.handle_mm / 2 + 0.1)]
        sides = [(j, (j + 1) % 48, 48 + (j + 1) % 48, 48 + j) for j in range(48)]
        yield f"pin{i}", np.vstack(levels), sides + [tuple(range(48, 96))], matrix, "brass"
    blocks = [standing.block(scene, matrix, knife, *block) for block in scene.blocks]
    for i, thing in enumerate([*scene.clutter, *blocks]):
        yield f"clutter{i}", thing.vertices, thing.faces, np.eye(4), thing.material


def scaled(matrix):
    """A pose with its lengths in units of UNIT_MM, as nested lists."""
    copy = matrix.copy()
    copy[:3, 3] /= UNIT_MM
    return copy.tolist()


def truth(scene, knife, matrix):
    camera, ground = scene.camera, GROUND_NAMES.get(scene.ground, scene.ground)
    known = knives.truth(knife) | {
        "rest": {"midplane_height": knife.handle_mm / 2, "tip_lower_by": scene.tip_lower},
        "photo": {
            "width": camera.width, "height": camera.height, "focal_px": round(camera.focal_px, 3),
            "focal_35mm": camera.focal_35mm, "camera_distance": camera.distance, "camera_tilt_deg": camera.tilt,
            "k1": camera.k1, "k2": camera.k2},
        "mirrored_in_photo": scene.mirrored,
        "ground": ground,
    }
    if scene.ground in grounds.RULED:
        lines = grounds.RULED[scene.ground]
        known |= {"ruled_pitch_mm": lines.pitch, "bold_every": lines.bold_every}
    if knife.guard:
        x0, x1, half, thick = knife.guard
        known["guard"] = {"from": x0, "to": x1, "half_height": half, "thickness": thick}
    if scene.down:
        known["standing_on"] = scene.down
        known["thickness_along"] = standing.thickness_along(knife)
        known["rest"] = {}
    return known | {
        "handle_section_exponent": knife.section,
        "double_edged": knife.double_edged,
        "exif": {"orientation": scene.orientation, "focal_35mm": scene.exif_focal},
        "pose": {"matrix_knife": scaled(matrix), "matrix_camera": scaled(camera.matrix()), "unit_mm": UNIT_MM},
    }


def traced(scene, folder, knife, matrix):
    """The undistorted picture in linear light, from Cycles."""
    ground = grounds.make(scene.ground, folder, JAR)
    arrays, described = {}, []
    for name, vertices, faces, place, material in bodies(scene, knife, matrix):
        arrays[name] = vertices
        arrays[name + "_faces"] = np.array([list(f) for f in faces], dtype=object)
        described.append({"name": name, "matrix": place.tolist(), "material": material, "smooth": SMOOTH})
    np.savez(folder / "meshes.npz", **arrays)
    light = LIGHTS[scene.light]
    (folder / "studio.json").write_text(json.dumps({
        "ground": {"size": ground.size, "picture": str(ground.picture), "mm_per_pixel": ground.mm_per_pixel,
                   "thick_mm": ground.thick_mm, "desk": scene.desk},
        "bodies": described,
        "lamps": [{"at": at, "to": (0, 0, 0), "side": side, "strength": strength, "colour": colour}
                  for at, side, strength, colour in light.lamps],
        "room": {"colour": light.room[0], "strength": light.room[1]},
        "camera": {"matrix": scene.camera.matrix().tolist(), "focal_px": scene.camera.focal_px,
                   "size": scene.camera.rendered_size()},
        "samples": scene.samples,
    }))
    subprocess.run(["blender", "-b", "-noaudio", "-P", HERE / "studio.py", "--python-exit-code", "1", "--", folder],
                   check=True, stdout=subprocess.DEVNULL)
    return np.load(folder / "render.npy")


def photograph(name):
    scene = (SCENES | STANDING)[name]
    results = STANDING_RESULTS if scene.down else RESULTS
    knife = knives.KNIVES[scene.knife]
    matrix = knife_matrix(scene, knife)
    folder = WORK / name
    folder.mkdir(parents=True, exist_ok=True)
    light = scene.camera.through_lens(traced(scene, folder, knife, matrix))
    picture = Image.fromarray(develop(light, list(SCENES | STANDING).index(name), scene.bright,
                                      noise=scene.noise, sharpen=scene.sharpen))
    # Exif 2.32, tag 0112: 6 means that a viewer turns the stored picture a quarter clockwise, 3 that it turns it half.
    stored = {1: picture, 6: picture.transpose(Image.ROTATE_90), 3: picture.transpose(Image.ROTATE_180)}
    results.mkdir(parents=True, exist_ok=True)
    file = results / f"{name}.jpg"
    stored[scene.orientation].save(file, quality=scene.quality, subsampling="4:2:0")
    tags = ["-overwrite_original", "-q", f"-Orientation#={scene.orientation}"]
    if scene.exif_focal:
        tags.append(f"-FocalLengthIn35mmFormat={scene.exif_focal}")
    subprocess.run(["exiftool", *tags, file], check=True)
    (results / f"{name}.truth.json").write_text(json.dumps(truth(scene, knife, matrix)) + "\n")


if __name__ == "__main__":
    for wanted in sys.argv[1:] or SCENES | STANDING:
        photograph(wanted)
        print(wanted, flush=True)
