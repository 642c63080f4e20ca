package weltwright.command;

import java.util.OptionalInt;
import picocli.CommandLine.Option;
import weltwright.job.Fields;
import weltwright.measure.LengthField;
import weltwright.sheath.Hand;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;

/** What the maker chooses for the sheath. */
final class SheathOptions {
    @Option(
            names = "--kind",
            paramLabel = "KIND",
            description = "folded: one piece folded round the spine, with a welt along the edge. panels: a face and a"
                    + " back, with a welt all round but for the throat. Default: folded.")
    private SheathKind kind;

    @Option(names = "--hand", paramLabel = "HAND", description = "The hand that draws: right or left. Default: right.")
    private Hand hand;

    @Option(
            names = "--leather",
            paramLabel = "LENGTH",
            description = "Thickness of the leather, such as 3mm, 1/8in or 7/8oz. Default: 3mm.")
    private String leather;

    @Option(
            names = "--welt-layers",
            paramLabel = "NUMBER",
            description = "Layers of leather in the welt, the strip between the layers that keeps the edge off the"
                    + " stitches. auto: as many as make it at least as thick as the blade. Default: auto.")
    private String weltLayers;

    @Option(
            names = "--stitch-margin",
            paramLabel = "LENGTH",
            description = "From the stitch row to the outer edge. Default: 1/8in.")
    private String stitchMargin;

    @Option(
            names = "--welt-margin",
            paramLabel = "LENGTH",
            description = "Of welt between the knife and the stitch row. Default: 4mm.")
    private String weltMargin;

    @Option(
            names = "--ease",
            paramLabel = "LENGTH",
            description = "Air round the knife, so that it slides: less holds firmer. Default: 0.8mm.")
    private String ease;

    @Option(
            names = "--pitch",
            paramLabel = "LENGTH",
            description = "From stitch to stitch, as your pricking iron has it. Default: 4mm.")
    private String pitch;

    @Option(
            names = "--neutral-factor",
            paramLabel = "NUMBER",
            description = "Where in the leather's thickness a bend neither stretches nor shrinks: 0 at its inside, 1 at"
                    + " its outside. Default: 0.5.")
    private String neutralFactor;

    @Option(names = "--belt-width", paramLabel = "LENGTH", description = "Of the belt to wear it on. Default: 38mm.")
    private String beltWidth;

    @Option(names = "--belt-thickness", paramLabel = "LENGTH", description = "Of that belt. Default: 4mm.")
    private String beltThickness;

    @Option(
            names = "--handle-depth",
            paramLabel = "LENGTH",
            description = "How much of the handle goes into the sheath past the throat, its open end. 0 seats the knife"
                    + " to its guard. Default: 0.")
    private String handleDepth;

    @Option(
            names = "--drain-hole",
            paramLabel = "LENGTH",
            description = "Width of the hole at the tip that lets water out; 0 for none. Default: 4mm.")
    private String drainHole;

    /** The choices with what was given in place of what was there. */
    SheathSpec over(SheathSpec spec) {
        return new SheathSpec(
                kind == null ? spec.kind() : kind,
                hand == null ? spec.hand() : hand,
                mm(leather, Fields.LEATHER_THICKNESS, spec.leatherThicknessMm()),
                weltLayers == null ? spec.weltLayers() : layers(weltLayers),
                mm(stitchMargin, Fields.STITCH_MARGIN, spec.stitchMarginMm()),
                mm(weltMargin, Fields.WELT_INNER_MARGIN, spec.weltInnerMarginMm()),
                mm(ease, Fields.EASE, spec.easeMm()),
                mm(pitch, Fields.PITCH, spec.pitchMm()),
                neutralFactor == null ? spec.neutralFactor() : Fields.NEUTRAL_FACTOR.read(neutralFactor),
                mm(beltWidth, Fields.BELT_WIDTH, spec.beltWidthMm()),
                mm(beltThickness, Fields.BELT_THICKNESS, spec.beltThicknessMm()),
                mm(handleDepth, Fields.HANDLE_DEPTH, spec.handleDepthMm()),
                mm(drainHole, Fields.DRAIN_HOLE, spec.drainHoleDiameterMm()));
    }

    private static double mm(String typed, LengthField field, double otherwise) {
        return typed == null ? otherwise : field.readMm(typed);
    }

    private static OptionalInt layers(String typed) {
        return typed.strip().equalsIgnoreCase("auto")
                ? OptionalInt.empty()
                : OptionalInt.of(Fields.WELT_LAYERS.readCount(typed));
    }
}
