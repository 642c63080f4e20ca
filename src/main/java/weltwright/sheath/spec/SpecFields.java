package weltwright.sheath.spec;

import weltwright.message.Messages;
import weltwright.units.LengthField;
import weltwright.units.NumberField;

/**
 * Names and bounds of the measures of a sheath, for forms, files, the command line and drafting alike. The bounds are
 * chosen by eye, beyond what makers use.
 */
public final class SpecFields {
    private static final Messages TEXTS = Messages.of(SpecFields.class);

    public static final LengthField HANDLE_THICKNESS =
            LengthField.of(TEXTS.text("spec-fields.handle-thickness"), 0.3, 60);
    public static final LengthField SPINE_THICKNESS =
            LengthField.of(TEXTS.text("spec-fields.spine-thickness"), 0.3, 15);
    public static final NumberField HANDLE_SQUARENESS =
            NumberField.of(TEXTS.text("spec-fields.squareness-of-the-handle"), 2, 10);
    public static final LengthField LEATHER_THICKNESS =
            LengthField.ofLeather(TEXTS.text("spec-fields.leather-thickness"), 0.8, 8);
    public static final LengthField STITCH_MARGIN = LengthField.of(TEXTS.text("spec-fields.stitch-margin"), 1.5, 15);
    public static final LengthField WELT_INNER_MARGIN =
            LengthField.of(TEXTS.text("spec-fields.inner-margin-of-the-welt"), 1, 25);
    public static final LengthField EASE = LengthField.of("ease", 0, 5);
    public static final LengthField PITCH = LengthField.of(TEXTS.text("spec-fields.stitch-pitch"), 1.5, 12);
    public static final LengthField THREAD = LengthField.of(TEXTS.text("spec-fields.thread"), 0.2, 2);
    public static final LengthField BELT_WIDTH = LengthField.of(TEXTS.text("spec-fields.belt-width"), 12, 120);
    public static final LengthField BELT_THICKNESS = LengthField.of(TEXTS.text("spec-fields.belt-thickness"), 1, 12);
    public static final LengthField THROAT_DEPTH =
            LengthField.of(TEXTS.text("spec-fields.depth-of-the-throat-s"), 0, 40);
    public static final LengthField BELT_STRAP_WIDTH = LengthField.of("width of the belt strap", 10, 60);
    public static final LengthField BELT_STRAP_LEATHER =
            LengthField.ofLeather(TEXTS.text("spec-fields.leather-of-the-belt-strap"), 0.8, 8);
    public static final LengthField STRAP_WIDTH = LengthField.of("width of the strap round the handle", 10, 60);
    public static final LengthField STRAP_LEATHER =
            LengthField.ofLeather(TEXTS.text("spec-fields.leather-of-the-strap-round"), 0.8, 8);
    public static final LengthField STRAP_ALLOWANCE =
            LengthField.of(TEXTS.text("spec-fields.allowance-of-the-strap"), 0, 20);
    public static final NumberField WELT_LAYERS =
            NumberField.count(TEXTS.text("spec-fields.number-of-welt-layers"), 1, 12);
    public static final NumberField NEUTRAL_FACTOR = NumberField.of(TEXTS.text("spec-fields.neutral-factor-k"), 0, 1);
    public static final NumberField BACK_STITCHES =
            NumberField.count(TEXTS.text("spec-fields.number-of-back-stitches"), 0, 6);
    public static final NumberField FORMING_SHRINK =
            NumberField.of("shrinkage of wet-formed leather in percent", 0, 10);
    public static final LengthField FORMING_GIVE =
            LengthField.of(TEXTS.text("spec-fields.give-of-formed-leather"), 0, 5);
    public static final NumberField TILT = NumberField.of(TEXTS.text("spec-fields.tilt-in-degrees"), -45, 45);
    public static final LengthField STRAP_HEIGHT = LengthField.of("height of the strap above the throat", 5, 300);
    public static final LengthField HANDLE_DEPTH =
            LengthField.of(TEXTS.text("spec-fields.depth-of-the-handle-in"), 0, 200);
    public static final LengthField DRAIN_HOLE = LengthField.of(TEXTS.text("spec-fields.drain-hole"), 0, 10);

    private SpecFields() {}
}
