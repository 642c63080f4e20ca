package weltwright.sheath;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import weltwright.fit.DrawCheck;
import weltwright.fit.DrawCheck.Bind;
import weltwright.fit.DrawCheck.Side;
import weltwright.knife.Knife;

/** What a master would say over an apprentice's shoulder before the leather is cut. */
final class Advice {
    /** A throat that is wider than its ease by more than this holds nothing by itself. Rule of thumb; no source. */
    private static final double LOOSE_MM = 2;

    private Advice() {}

    static List<String> on(Knife knife, SheathSpec spec, DrawCheck check, int layers, List<Seam> seams) {
        List<String> advice = new ArrayList<>();
        double weltMm = layers * spec.leatherThicknessMm();
        advice.add(welt(knife, layers, weltMm));
        for (Bind bind : check.binds()) {
            advice.add(bind(bind));
        }
        if (!check.stitchesAreSafe()) {
            advice.add(text(
                    "The edge passes within %.1f mm of the stitches and may cut them:"
                            + " make the welt inner margin wider, so that at least %.0f mm are left.",
                    check.leastEdgeToStitchMm(), DrawCheck.SAFE_EDGE_TO_STITCH_MM));
        }
        if (check.throatSlackMm() - 2 * spec.easeMm() > LOOSE_MM) {
            advice.add(text(
                    "The throat is %.1f mm wider than the knife in it, because wider parts must pass:"
                            + " plan a strap round the handle.",
                    check.throatSlackMm()));
        } else if (spec.handleDepthMm() == 0) {
            advice.add("The sheath holds the blade alone: plan a strap round the handle,"
                    + " or let the sheath take in some of the handle.");
        }
        Seam main = seams.get(0);
        if (Math.abs(main.pitchMm() - spec.pitchMm()) > 0.005) {
            advice.add(text(
                    "The holes of the %s are %.2f mm apart, so that %d of them fill the row.",
                    main.name(), main.pitchMm(), main.holeCount()));
        }
        return advice;
    }

    private static String welt(Knife knife, int layers, double weltMm) {
        String size = text(
                "The welt is %d %s of leather, %.1f mm in all",
                layers, layers == 1 ? "layer" : "layers", weltMm);
        double spine = knife.spineThicknessMm();
        return weltMm >= spine - 1e-9
                ? text("%s; the blade is %.1f mm thick.", size, spine)
                : text("%s, thinner than the blade with its %.1f mm: take more layers, lest the edge reach the stitches.",
                        size, spine);
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
