package weltwright.sheath;

import java.util.Locale;
import weltwright.knife.Knife;
import weltwright.trouble.Trouble;

/** Refuses what no leatherworker could make, naming the choice to change. */
final class Choices {
    private Choices() {}

    static void check(Knife knife, SheathSpec spec) {
        if (!knife.outline().sampled(1).polygon().isValid()) {
            throw new Trouble(
                    "The outline of the knife crosses itself.", "Move its points so that it runs round the knife once.");
        }
        within("thickness of the blade at the spine", knife.spineThicknessMm(), 0.3, 15);
        within("thickness of the blade behind the edge", knife.edgeThicknessMm(), 0, knife.spineThicknessMm());
        within("thickness of the handle", knife.handleThicknessMm(), 0.3, 60);
        within("length of the blade", knife.bladeLengthMm(), 25, 600);
        within("length of the handle", handleLength(knife), 10, 600);
        within("height of the blade at the heel", heightAtHeel(knife), 3, 150);

        within("leather thickness", spec.leatherThicknessMm(), 0.8, 8);
        spec.weltLayers().ifPresent(layers -> within("number of welt layers", layers, 1, 12));
        within("stitch margin", spec.stitchMarginMm(), 1.5, 15);
        within("welt inner margin", spec.weltInnerMarginMm(), 1, 25);
        within("ease", spec.easeMm(), 0, 5);
        within("pitch", spec.pitchMm(), 1.5, 12);
        within("neutral factor K", spec.neutralFactor(), 0, 1);
        within("belt width", spec.beltWidthMm(), 12, 120);
        within("belt thickness", spec.beltThicknessMm(), 1, 12);
        within("depth of the handle in the sheath", spec.handleDepthMm(), 0, longestHandleDepth(knife));
        if (spec.drainHoleDiameterMm() != 0) {
            within("diameter of the drain hole", spec.drainHoleDiameterMm(), 1, 10);
        }
    }

    private static double heightAtHeel(Knife knife) {
        return knife.landmarks().spineStart().y() - knife.landmarks().heel().y();
    }

    private static double handleLength(Knife knife) {
        return knife.landmarks().heel().x() - knife.landmarks().butt().x();
    }

    /** The hand must still find the end of the handle. */
    private static double longestHandleDepth(Knife knife) {
        return 0.8 * handleLength(knife);
    }

    private static void within(String choice, double value, double least, double greatest) {
        if (!(value >= least && value <= greatest)) {
            throw new Trouble(
                    "The " + choice + " is " + number(value) + ", and no sheath can be made so.",
                    "Change the " + choice + " to something from " + number(least) + " to " + number(greatest) + ".");
        }
    }

    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.2f", value);
        return text.contains(".") ? text.replaceAll("\\.?0+$", "") : text;
    }
}
