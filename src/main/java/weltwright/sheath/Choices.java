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
        knife(knife);
        if (knife.doubleEdged() && spec.kind() == SheathKind.FOLDED) {
            throw new Trouble(
                    "A double-edged knife would cut a body that is folded round its second edge.",
                    "Choose a sheath of two panels, with a welt all round.");
        }
        leather(spec.leather(), spec.welt());
        hardware(spec.hardware());
        within("stitch margin", spec.stitching().marginMm(), 1.5, 15);
        within("pitch", spec.stitching().pitchMm(), 1.5, 12);
        within("number of back-stitches", spec.stitching().backStitches(), 0, 6);
        within("depth of the throat's cut", spec.throat().depthMm(), 0, 40);
        within("ease", spec.easeMm(), 0, 5);
        within("belt width", spec.belt().beltWidthMm(), 12, 120);
        within("belt thickness", spec.belt().beltThicknessMm(), 1, 12);
        within("tilt in degrees", Math.toDegrees(spec.carry().tiltRad()), -45, 45);
        within("depth of the handle in the sheath", spec.handleDepthMm(), 0, longestHandleDepth(knife));
        spec.strap().ifPresent(strap -> within("allowance of the handle strap", strap.allowanceMm(), 0, 20));
        if (spec.drain().diameterMm() != 0 && !spec.drain().eyelet()) {
            within("diameter of the drain hole", spec.drain().diameterMm(), 1, 10);
        }
    }

    private static void knife(Knife knife) {
        within("thickness of the blade at the spine", knife.spineThicknessMm(), 0.3, 15);
        within("thickness of the blade behind the edge", knife.shaping().edgeThicknessMm(), 0, knife.spineThicknessMm());
        within("thickness of the handle", knife.handleThicknessMm(), 0.3, 60);
        within("length of the blade", knife.bladeLengthMm(), 25, 600);
        within("length of the handle", handleLength(knife), 10, 600);
        within("height of the blade at the heel", heightAtHeel(knife), 3, 150);
        within("squareness of the handle", knife.shaping().handleExponent(), 2, 10);
        if (knife.shaping().grind().hasHeight()) {
            within("height of the grind", knife.shaping().grind().heightMm(), 0.5, 150);
        }
    }

    private static void hardware(HardwareList list) {
        for (Fastener fastener : list.fasteners()) {
            boolean possible = fastener.postMm() > 0
                    && fastener.capMm() > fastener.postMm()
                    && fastener.gripFromMm() >= 0
                    && fastener.gripToMm() > fastener.gripFromMm();
            if (!possible) {
                throw new Trouble(
                        "In the list of hardware the sizes of the " + fastener.name() + " cannot be.",
                        "Its cap must be wider than its post, and its grip go from thin to thick.");
            }
        }
        for (Ring ring : list.rings()) {
            if (!(ring.insideMm() > 0 && ring.wireMm() > 0)) {
                throw new Trouble(
                        "In the list of hardware the sizes of the " + ring.name() + " cannot be.",
                        "Measure one, and put its sizes there.");
            }
        }
    }

    private static void leather(Leather leather, WeltChoice welt) {
        within("leather thickness", leather.thicknessMm(), 0.8, 8);
        within("neutral factor K", leather.neutralFactor(), 0, 1);
        within("shrinkage of wet-formed leather", leather.formingShrink(), 0, 0.1);
        welt.layers().ifPresent(layers -> within("number of welt layers", layers, 1, 12));
        within("welt inner margin", welt.innerMarginMm(), 1, 25);
        welt.leathersMm().forEach(mm -> within("thickness of leather for the welt", mm, 0.8, 8));
        within("number of leathers for the welt", welt.leathersMm().size(), 0, 6);
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
