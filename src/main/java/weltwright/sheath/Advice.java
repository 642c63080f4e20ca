package weltwright.sheath;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import weltwright.fit.DrawCheck;
import weltwright.fit.DrawCheck.Bind;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.DrawPath;
import weltwright.knife.Knife;

/** What a master would say over an apprentice's shoulder before the leather is cut. */
final class Advice {
    /** A throat that is wider than its ease by more than this holds nothing by itself. Rule of thumb; no source. */
    private static final double LOOSE_MM = 2;

    private Advice() {}

    static List<String> on(
            Knife knife, SheathSpec spec, DrawCheck check, WeltStack welt, List<Seam> seams) {
        List<String> advice = new ArrayList<>();
        advice.add(welt(knife, welt));
        if (knife.doubleEdged() && spec.kind() == SheathKind.PANELS_EDGE_WELT) {
            advice.add("The blade cuts on both sides, so the welt runs all round.");
        }
        path(check.path()).ifPresent(advice::add);
        for (Bind bind : check.binds()) {
            advice.add(bind(bind));
        }
        if (!check.stitchesAreSafe()) {
            advice.add(unsafe(check));
        }
        boolean hasStrap = spec.strap().isPresent();
        if (!hasStrap && check.throatSlackMm() - 2 * spec.easeMm() > LOOSE_MM) {
            advice.add(text(
                    "The throat is %.1f mm wider than the knife in it, because wider parts must pass:"
                            + " plan a strap round the handle.",
                    check.throatSlackMm()));
        } else if (!hasStrap && spec.handleDepthMm() == 0) {
            advice.add("The sheath holds the blade alone: plan a strap round the handle,"
                    + " or let the sheath take in some of the handle.");
        }
        if (spec.belt().style() == BeltHold.Style.RIVETED_STRAP || spec.belt().style() == BeltHold.Style.HANGING_RING) {
            advice.add("The rivets in the back lie against the blade: set their flat side inside,"
                    + " and glue thin leather over them.");
        }
        if (spec.belt().style() == BeltHold.Style.HANGING_RING && spec.carry().tiltRad() != 0) {
            advice.add("A sheath that hangs on a ring hangs as its weight has it: the tilt is left out.");
        }
        Seam main = seams.get(0);
        if (Math.abs(main.pitchMm() - spec.stitching().pitchMm()) > 0.005) {
            advice.add(text(
                    "The holes of the %s are %.2f mm apart, so that %d of them fill the row.",
                    main.name(), main.pitchMm(), main.holeCount()));
        }
        return advice;
    }

    private static String welt(Knife knife, WeltStack welt) {
        int layers = welt.layers();
        String size = text(
                "The welt is %d %s of leather, %.1f mm in all",
                layers, layers == 1 ? "layer" : "layers", welt.thicknessMm());
        double spine = knife.spineThicknessMm();
        return welt.thicknessMm() >= spine - 1e-9
                ? text("%s; the blade is %.1f mm thick.", size, spine)
                : text("%s, thinner than the blade with its %.1f mm: take more layers, lest the edge reach the stitches.",
                        size, spine);
    }

    private static Optional<String> path(DrawPath path) {
        if (path instanceof DrawPath.Circular circle) {
            return Optional.of(text(
                    "The knife comes out with the least slack in an arc of %.0f mm radius, its handle swinging to the"
                            + " %s side.",
                    circle.radiusMm(), circle.centre().y() > 0 ? "spine's" : "edge's"));
        }
        double turn = Math.toDegrees(((DrawPath.Straight) path).towardsSpineRad());
        return turn == 0
                ? Optional.empty()
                : Optional.of(text(
                        "The knife comes out with the least slack when it is drawn %.0f° towards the %s side.",
                        Math.abs(turn), turn > 0 ? "spine's" : "edge's"));
    }

    private static String unsafe(DrawCheck check) {
        DrawCheck.Step nearest = check.steps().stream()
                .min(Comparator.comparingDouble(DrawCheck.Step::edgeToStitchMm))
                .orElseThrow();
        return text(
                "The edge passes within %.1f mm of the stitches, nearest at %s, and may cut them:"
                        + " make the welt inner margin wider, so that at least %.0f mm are left.",
                check.leastEdgeToStitchMm(), place(nearest.stitch().x()), DrawCheck.SAFE_EDGE_TO_STITCH_MM);
    }

    private static String bind(Bind bind) {
        return text(
                "On the %s side, from %s to %s, the knife is up to %.1f mm narrower than nearer its tip;"
                        + " the sheath is kept open there, so that the knife can be drawn.",
                bind.side() == Side.EDGE ? "edge" : "spine", place(bind.fromMm()), place(bind.toMm()), bind.depthMm());
    }

    private static String place(double xMm) {
        long whole = Math.round(Math.abs(xMm));
        return whole == 0 ? "the heel" : whole + " mm " + (xMm < 0 ? "behind" : "in front of") + " the heel";
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
