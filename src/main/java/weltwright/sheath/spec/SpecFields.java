package weltwright.sheath.spec;

import weltwright.units.LengthField;
import weltwright.units.NumberField;

/**
 * Names and bounds of the measures of a sheath, for forms, files, the command line and drafting alike. The bounds are
 * chosen by eye, beyond what makers use.
 */
public final class SpecFields {
    public static final LengthField HANDLE_THICKNESS = LengthField.of("handle thickness", 0.3, 60);
    public static final LengthField SPINE_THICKNESS = LengthField.of("spine thickness", 0.3, 15);
    public static final NumberField HANDLE_SQUARENESS = NumberField.of("squareness of the handle", 2, 10);
    public static final LengthField LEATHER_THICKNESS = LengthField.ofLeather("leather thickness", 0.8, 8);
    public static final LengthField STITCH_MARGIN = LengthField.of("stitch margin", 1.5, 15);
    public static final LengthField WELT_INNER_MARGIN = LengthField.of("inner margin of the welt", 1, 25);
    public static final LengthField EASE = LengthField.of("ease", 0, 5);
    public static final LengthField PITCH = LengthField.of("stitch pitch", 1.5, 12);
    public static final LengthField THREAD = LengthField.of("thread thickness", 0.2, 2);
    public static final LengthField BELT_WIDTH = LengthField.of("belt width", 12, 120);
    public static final LengthField BELT_THICKNESS = LengthField.of("belt thickness", 1, 12);
    public static final LengthField THROAT_DEPTH = LengthField.of("depth of the throat's cut", 0, 40);
    public static final LengthField BELT_STRAP_WIDTH = LengthField.of("width of the belt strap", 10, 60);
    public static final LengthField BELT_STRAP_LEATHER = LengthField.ofLeather("leather of the belt strap", 0.8, 8);
    public static final LengthField STRAP_WIDTH = LengthField.of("width of the strap round the handle", 10, 60);
    public static final LengthField STRAP_LEATHER =
            LengthField.ofLeather("leather of the strap round the handle", 0.8, 8);
    public static final LengthField STRAP_ALLOWANCE = LengthField.of("allowance of the strap", 0, 20);
    public static final NumberField WELT_LAYERS = NumberField.count("number of welt layers", 1, 12);
    public static final NumberField NEUTRAL_FACTOR = NumberField.of("neutral factor K", 0, 1);
    public static final NumberField BACK_STITCHES = NumberField.count("number of back-stitches", 0, 6);
    public static final NumberField FORMING_SHRINK =
            NumberField.of("shrinkage of wet-formed leather in percent", 0, 10);
    public static final LengthField FORMING_GIVE = LengthField.of("give of formed leather", 0, 5);
    public static final NumberField TILT = NumberField.of("tilt in degrees", -45, 45);
    public static final LengthField STRAP_HEIGHT = LengthField.of("height of the strap above the throat", 5, 300);
    public static final LengthField HANDLE_DEPTH = LengthField.of("depth of the handle in the sheath", 0, 200);
    public static final LengthField DRAIN_HOLE = LengthField.of("drain hole", 0, 10);

    private SpecFields() {}
}
