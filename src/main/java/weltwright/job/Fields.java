package weltwright.job;

import weltwright.measure.LengthField;
import weltwright.measure.NumberField;

/**
 * The measures that a job is asked for: what makers call them, and between which bounds they make sense. The bounds are
 * wide: they keep out slips of the hand and the wrong unit, not odd knives.
 */
public final class Fields {
    public static final LengthField HANDLE_THICKNESS = LengthField.of("handle thickness", 0.3, 60);
    public static final LengthField SPINE_THICKNESS = LengthField.of("spine thickness", 0.3, 15);
    public static final LengthField EDGE_THICKNESS = LengthField.of("edge thickness", 0, 15);
    public static final LengthField GRIND_HEIGHT = LengthField.of("height of the grind", 0, 150);
    public static final NumberField HANDLE_SQUARENESS = NumberField.of("squareness of the handle", 2, 10);
    public static final LengthField TIP_DROP = LengthField.of("tip drop", 0, 40);

    public static final LengthField BLADE_LENGTH = LengthField.of("length of the blade", 10, 1500);
    public static final LengthField WIDTH = LengthField.of("width of the knife", 1, 300);
    public static final LengthField WIDTH_PLACE = LengthField.of("place of the width, from the tip", 1, 1500);

    public static final LengthField LINE_PITCH = LengthField.of("distance of the ground's lines", 2, 60);

    /** The sheet's bars are 100 mm where the printer prints true, and no printer is a tenth off. */
    public static final LengthField SHEET_BAR_ACROSS = LengthField.of("bar across the sheet", 90, 110);

    public static final LengthField SHEET_BAR_DOWN = LengthField.of("bar down the sheet", 90, 110);

    public static final LengthField PRINTED_SQUARE_ACROSS = LengthField.of("width of the printed square", 45, 55);
    public static final LengthField PRINTED_SQUARE_DOWN = LengthField.of("height of the printed square", 45, 55);

    public static final LengthField LEATHER_THICKNESS = LengthField.ofLeather("leather thickness", 0.8, 8);
    public static final LengthField STITCH_MARGIN = LengthField.of("stitch margin", 1.5, 15);
    public static final LengthField WELT_INNER_MARGIN = LengthField.of("inner margin of the welt", 1, 25);
    public static final LengthField EASE = LengthField.of("ease", 0, 5);
    public static final LengthField PITCH = LengthField.of("stitch pitch", 1.5, 12);
    public static final LengthField BELT_WIDTH = LengthField.of("belt width", 12, 120);
    public static final LengthField BELT_THICKNESS = LengthField.of("belt thickness", 1, 12);
    public static final LengthField THROAT_DEPTH = LengthField.of("depth of the throat's cut", 0, 40);
    public static final LengthField STRAP_HEIGHT = LengthField.of("height of the strap above the throat", 5, 300);
    public static final LengthField STRAP_ALLOWANCE = LengthField.of("allowance of the strap", 0, 20);
    public static final LengthField HANDLE_DEPTH = LengthField.of("depth of the handle in the sheath", 0, 200);
    public static final LengthField DRAIN_HOLE = LengthField.of("drain hole", 0, 10);

    public static final LengthField POST = LengthField.of("diameter of the post", 0.5, 15);
    public static final LengthField CAP = LengthField.of("diameter of the cap", 1, 40);
    public static final LengthField GRIP_FROM = LengthField.of("thinnest leather that it holds", 0, 40);
    public static final LengthField GRIP_TO = LengthField.of("thickest leather that it holds", 0.5, 60);
    public static final LengthField RING_INSIDE = LengthField.of("clear width of the ring", 5, 100);
    public static final LengthField RING_WIRE = LengthField.of("wire of the ring", 1, 12);
    public static final NumberField FOCAL_35MM = NumberField.of("focal length in 35 mm terms", 5, 2000);
    /** What {@code SHEET_BAR_ACROSS} and {@code SHEET_BAR_DOWN} leave room for. */
    public static final NumberField SHEET_SCALE = NumberField.of("scale of the printed sheet", 0.9, 1.1);

    public static final NumberField WELT_LAYERS = NumberField.count("number of welt layers", 1, 12);
    public static final NumberField NEUTRAL_FACTOR = NumberField.of("neutral factor K", 0, 1);

    public static final NumberField STITCHES_PER_INCH = NumberField.of("stitches per inch", 2.2, 16);
    public static final NumberField BACK_STITCHES = NumberField.count("number of back-stitches", 0, 6);
    public static final NumberField FORMING_SHRINK = NumberField.of("shrinkage of wet-formed leather in percent", 0, 10);
    public static final NumberField TILT = NumberField.of("tilt in degrees", -45, 45);

    private Fields() {}
}
