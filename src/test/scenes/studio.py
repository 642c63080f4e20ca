"""Runs inside Blender (blender -b -P studio.py -- FOLDER): builds what FOLDER/studio.json describes, renders it with
Cycles into FOLDER/render.exr, linear. Knows nothing of what is measured in the picture."""
import json
import sys
from pathlib import Path

import bpy
import numpy as np
from mathutils import Matrix

UNIT = 0.01  # one Blender unit is 100 mm
FOLDER = Path(sys.argv[sys.argv.index("--") + 1])
WANTED = json.loads((FOLDER / "studio.json").read_text())


def scaled(matrix):
    m = Matrix(matrix)
    for i in range(3):
        m[i][3] *= UNIT
    return m


def material(name):
    m = bpy.data.materials.new(name)
    m.use_nodes = True
    return m, m.node_tree.nodes, m.node_tree.links, m.node_tree.nodes["Principled BSDF"]


def plain(colour, roughness, metallic=0.0, grain=None, specular=0.5):
    """One colour; grain = (scale along x, y, z; strength) roughens the surface as brushing or weave does."""
    m, nodes, links, shader = material("plain")
    shader.inputs["Base Color"].default_value = (*colour, 1)
    shader.inputs["Roughness"].default_value = roughness
    shader.inputs["Metallic"].default_value = metallic
    shader.inputs["Specular"].default_value = specular
    if grain:
        bump = nodes.new("ShaderNodeBump")
        bump.inputs["Strength"].default_value = grain[3]
        bump.inputs["Distance"].default_value = 0.002
        links.new(stretched_noise(nodes, links, grain[:3]).outputs["Fac"], bump.inputs["Height"])
        links.new(bump.outputs["Normal"], shader.inputs["Normal"])
    return m


def stretched_noise(nodes, links, scale, detail=2.0):
    place, mapping, noise = (nodes.new(k) for k in ("ShaderNodeTexCoord", "ShaderNodeMapping", "ShaderNodeTexNoise"))
    mapping.inputs["Scale"].default_value = scale
    noise.inputs["Scale"].default_value = 1.0
    noise.inputs["Detail"].default_value = detail
    links.new(place.outputs["Object"], mapping.inputs["Vector"])
    links.new(mapping.outputs["Vector"], noise.inputs["Vector"])
    return noise


def ramp(nodes, stops):
    r = nodes.new("ShaderNodeValToRGB")
    while len(r.color_ramp.elements) < len(stops):
        r.color_ramp.elements.new(0.5)
    for element, (at, colour) in zip(r.color_ramp.elements, stops):
        element.position, element.color = at, (*colour, 1)
    return r


def grained(scale, dark, light, roughness):
    """Wood, stone or leather: noise between two colours, stretched along the grain."""
    m, nodes, links, shader = material("grained")
    colours = ramp(nodes, [(0.35, dark), (0.65, light)])
    links.new(stretched_noise(nodes, links, scale).outputs["Fac"], colours.inputs["Fac"])
    links.new(colours.outputs["Color"], shader.inputs["Base Color"])
    shader.inputs["Roughness"].default_value = roughness
    return m


def patches(scale, colours, roughness):
    """Patches of several colours with hard borders."""
    m, nodes, links, shader = material("patches")
    steps = ramp(nodes, [(i / len(colours), c) for i, c in enumerate(colours)])
    steps.color_ramp.interpolation = "CONSTANT"
    noise = stretched_noise(nodes, links, scale, 1.0)
    widen = nodes.new("ShaderNodeMapRange")
    widen.inputs["From Min"].default_value, widen.inputs["From Max"].default_value = 0.3, 0.7
    links.new(noise.outputs["Fac"], widen.inputs["Value"])
    links.new(widen.outputs["Result"], steps.inputs["Fac"])
    links.new(steps.outputs["Color"], shader.inputs["Base Color"])
    shader.inputs["Roughness"].default_value = roughness
    return m


MATERIALS = {
    "satin": lambda: plain((.62, .62, .63), .34, 1, (2, 180, 2, .12)),
    "mirror": lambda: plain((.86, .86, .87), .06, 1),
    "coated": lambda: plain((.028, .028, .030), .48, 0, (60, 60, 60, .1)),
    "brass": lambda: plain((.72, .52, .22), .25, 1),
    "steel": lambda: plain((.55, .55, .56), .2, 1),
    "dark-wood": lambda: grained((1.5, 22, 22), (.030, .014, .007), (.12, .055, .028), .42),
    "pale-wood": lambda: grained((1.5, 18, 18), (.42, .27, .13), (.62, .46, .28), .5),
    "black": lambda: plain((.016, .016, .018), .5, 0, (90, 90, 90, .15)),
    "orange": lambda: plain((.80, .17, .015), .38),
    "patterned": lambda: patches((5, 7, 7), [(.05, .07, .03), (.20, .16, .07), (.025, .025, .02), (.3, .27, .16)], .55),
    "leather": lambda: grained((18, 18, 18), (.17, .065, .02), (.24, .10, .035), .65),
    "pencil": lambda: plain((.70, .36, .02), .3),
    "coin": lambda: grained((30, 30, 30), (.45, .30, .16), (.75, .55, .32), .3),
    "desk-oak": lambda: grained((.35, 6, 1), (.16, .085, .04), (.24, .14, .07), .6),
    "desk-slate": lambda: grained((2, 2, 2), (.075, .08, .085), (.12, .125, .13), .7),
    "desk-dark": lambda: grained((.35, 5, 1), (.030, .019, .013), (.06, .04, .028), .5),
    "desk-pale": lambda: grained((1, 1, 1), (.44, .42, .38), (.50, .48, .44), .7),
}


def paper(picture, roughness=0.9):
    m, nodes, links, shader = material("paper")
    image = nodes.new("ShaderNodeTexImage")
    image.image = bpy.data.images.load(picture)
    image.interpolation, image.extension = "Linear", "EXTEND"
    links.new(image.outputs["Color"], shader.inputs["Base Color"])
    shader.inputs["Roughness"].default_value = roughness
    shader.inputs["Specular"].default_value = 0.2
    return m


def mesh(name, vertices, faces, matrix, look, smooth=None):
    """Smooth: greatest angle, in radians, across which the shading goes on smoothly."""
    data = bpy.data.meshes.new(name)
    data.from_pydata((np.asarray(vertices) * UNIT).tolist(), [], faces)
    data.validate()
    thing = bpy.data.objects.new(name, data)
    bpy.context.collection.objects.link(thing)
    thing.matrix_world = scaled(matrix)
    data.materials.append(look)
    if smooth:
        data.polygons.foreach_set("use_smooth", [True] * len(data.polygons))
        data.use_auto_smooth, data.auto_smooth_angle = True, smooth
    return thing


def ground(g):
    """A slab whose upper face is z = 0 and wears the picture; the desk under it."""
    (w, h), t = g["size"], g["thick_mm"]
    corners = [(-w / 2, -h / 2), (w / 2, -h / 2), (w / 2, h / 2), (-w / 2, h / 2)]
    slab = mesh("ground", [(x, y, 0) for x, y in corners] + [(x, y, -t) for x, y in corners],
                [(0, 1, 2, 3)] + [(i, i + 4, (i + 1) % 4 + 4, (i + 1) % 4) for i in range(4)],
                np.eye(4), paper(g["picture"]))
    image = slab.data.materials[0].node_tree.nodes["Image Texture"].image
    across, down = image.size[0] * g["mm_per_pixel"], image.size[1] * g["mm_per_pixel"]
    uv = slab.data.uv_layers.new().data
    for loop in slab.data.loops:
        x, y, _ = slab.data.vertices[loop.vertex_index].co / UNIT
        uv[loop.index].uv = ((x + w / 2) / across, 1 - (h / 2 - y) / down)
    far = 3000
    mesh("desk", [(-far, -far, 0), (far, -far, 0), (far, far, 0), (-far, far, 0)], [(0, 1, 2, 3)],
         [[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, -t], [0, 0, 0, 1]], MATERIALS[g["desk"]]())


def lamp(light):
    """A square lamp at `at` facing `to`, where the light that it throws across its axis is `strength`."""
    data = bpy.data.lights.new("lamp", "AREA")
    data.size = light["side"] * UNIT
    at, to = (np.array(light[k], float) * UNIT for k in ("at", "to"))
    data.energy = light["strength"] * np.pi * float(np.sum((at - to) ** 2))  # Lambert's law, the lamp being small
    data.color = light["colour"]
    thing = bpy.data.objects.new("lamp", data)
    bpy.context.collection.objects.link(thing)
    back = (at - to) / np.linalg.norm(at - to)
    side = np.cross([0.0, 1.0, 0.0], back)
    side /= np.linalg.norm(side)
    pose = np.eye(4)
    pose[:3, :3] = np.column_stack([side, np.cross(back, side), back])
    pose[:3, 3] = at
    thing.matrix_world = Matrix(pose)


def room(colour, strength):
    """Even light from all around, and what a mirror shows of the room: a dark shelf, a pale wall, the telephone."""
    world = bpy.data.worlds.new("room")
    bpy.context.scene.world = world
    world.use_nodes = True
    background = world.node_tree.nodes["Background"]
    background.inputs["Color"].default_value = (*colour, 1)
    background.inputs["Strength"].default_value = strength
    lifted = lambda z: np.array([[1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 1, z], [0, 0, 0, 1]])
    at_camera, above = np.array(WANTED["camera"]["matrix"]) @ lifted(8), lifted(1500)
    for name, (x0, x1, y0, y1), shade, pose in (
            ("phone", (-80, 80, -38, 38), .02, at_camera),
            ("shelf", (-900, -250, -300, 700), .06, above),
            ("wall", (300, 900, -900, -100), .8, above)):
        thing = mesh(name, [(x0, y0, 0), (x1, y0, 0), (x1, y1, 0), (x0, y1, 0)], [(0, 1, 2, 3)], pose.tolist(),
                     plain((shade, shade, shade), .6))
        thing.visible_shadow = thing.visible_diffuse = thing.visible_camera = False


def camera(c):
    data = bpy.data.cameras.new("camera")
    data.sensor_fit, data.sensor_width = "HORIZONTAL", 36
    data.lens = 36 * c["focal_px"] / c["size"][0]
    data.clip_start, data.clip_end = 0.1, 1000
    thing = bpy.data.objects.new("camera", data)
    bpy.context.collection.objects.link(thing)
    thing.matrix_world = scaled(c["matrix"])
    scene = bpy.context.scene
    scene.camera = thing
    scene.render.resolution_x, scene.render.resolution_y = c["size"]
    scene.render.resolution_percentage = 100


bpy.ops.wm.read_factory_settings(use_empty=True)
arrays = np.load(FOLDER / "meshes.npz", allow_pickle=True)
ground(WANTED["ground"])
for body in WANTED["bodies"]:
    mesh(body["name"], arrays[body["name"]], arrays[body["name"] + "_faces"].tolist(), body["matrix"],
         MATERIALS[body["material"]](), body["smooth"])
for light in WANTED["lamps"]:
    lamp(light)
room(WANTED["room"]["colour"], WANTED["room"]["strength"])
camera(WANTED["camera"])
scene = bpy.context.scene
scene.render.engine = "CYCLES"
scene.cycles.samples = WANTED["samples"]
scene.cycles.use_adaptive_sampling = scene.cycles.use_denoising = False  # Debian builds it without a denoiser
scene.cycles.seed = 1
scene.cycles.max_bounces, scene.cycles.diffuse_bounces, scene.cycles.glossy_bounces = 3, 1, 2
scene.cycles.caustics_reflective = scene.cycles.caustics_refractive = False
scene.cycles.sample_clamp_indirect = 3.0
scene.render.image_settings.file_format = "OPEN_EXR"
scene.render.image_settings.color_depth = "32"
scene.view_settings.view_transform = "Standard"
scene.render.filepath = str(FOLDER / "render.exr")
bpy.ops.render.render(write_still=True)
pixels = bpy.data.images.load(scene.render.filepath)
pixels.colorspace_settings.name = "Non-Color"
flat = np.empty(len(pixels.pixels), np.float32)
pixels.pixels.foreach_get(flat)
# Blender's rows run upwards.
np.save(FOLDER / "render.npy", flat.reshape(pixels.size[1], pixels.size[0], 4)[::-1, :, :3])
