package weltwright.wording;

import java.util.Locale;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.Retention;
import weltwright.knife.CrossSection;
import weltwright.message.Language;
import weltwright.message.Messages;
import weltwright.sheath.pattern.Advice;
import weltwright.sheath.pattern.Severity;
import weltwright.sheath.pattern.WeltStack;
import weltwright.sheath.spec.SheathKind;
import weltwright.units.MeasureUnit;

/** Words the advice on a pattern: what the maker should know before cutting. */
public final class AdviceWording {
    private static final SentencesByType<Advice> SENTENCES = new SentencesByType<Advice>()
            .add(Advice.WeltThickness.class, AdviceWording::weltThickness)
            .add(Advice.WeltAllRound.class, (a, in) -> in.text("advice.welt-all-round"))
            .add(Advice.DrawnInArc.class, (a, in) -> in.text("advice.drawn-in-arc." + key(a.towards()), a.radiusMm()))
            .add(
                    Advice.DrawnAslant.class,
                    (a, in) -> in.text("advice.drawn-aslant." + key(a.towards()), Math.toDegrees(a.turnRad())))
            .add(Advice.NarrowStretch.class, AdviceWording::narrow)
            .add(
                    Advice.EdgeNearStitches.class,
                    (a, in) -> in.text("advice.edge-near-stitches", a.leastMm(), place(a.atMm(), in), a.safeMm()))
            .add(Advice.SeatedAtGuard.class, (a, in) -> in.text("advice.seated-at-guard"))
            .add(Advice.OpenForGuard.class, AdviceWording::openForGuard)
            .add(Advice.HeldByStrap.class, (a, in) -> in.text("advice.held-by-strap"))
            .add(
                    Advice.HeldByForm.class,
                    (a, in) -> in.text("advice.held-by-form", a.handleMm(), a.gripMm(), a.openedMm(), a.giveMm()))
            .add(Advice.HeldByFriction.class, (a, in) -> in.text("advice.held-by-friction", a.handleMm(), a.gripMm()))
            .add(Advice.LooseThroat.class, (a, in) -> in.text("advice.loose-throat", a.byMm(), a.giveMm()))
            .add(Advice.HoldsBladeAlone.class, (a, in) -> in.text("advice.holds-blade-alone"))
            .add(Advice.RivetsAgainstBlade.class, (a, in) -> in.text("advice.rivets-against-blade"))
            .add(Advice.TiltLeftOut.class, (a, in) -> in.text("advice.tilt-left-out"))
            .add(Advice.StaysWide.class, AdviceWording::staysWide)
            .add(Advice.EmptyCorner.class, (a, in) -> in.text("advice.empty-corner", a.byMm()))
            .add(Advice.PitchFitted.class, AdviceWording::pitchFitted);

    private AdviceWording() {}

    /** The advice in one or two sentences, with lengths in mm: what, where, and what to do. */
    public static String sentence(Advice advice) {
        return sentence(advice, MeasureUnit.MILLIMETRE);
    }

    /** The advice in one or two sentences: what, where, and what to do. */
    public static String sentence(Advice advice, MeasureUnit unit) {
        return SENTENCES.of(advice, Messages.of(AdviceWording.class).withUnit(unit));
    }

    /** The sentence after the word for its severity, with lengths in mm: "Stop: ..." */
    public static String line(Advice advice) {
        return line(advice, MeasureUnit.MILLIMETRE);
    }

    /** The sentence after the word for its severity: "Stop: ..." */
    public static String line(Advice advice, MeasureUnit unit) {
        return Messages.of(AdviceWording.class)
                .withUnit(unit)
                .text("advice.line", word(advice.severity()), sentence(advice, unit));
    }

    /** The word for a severity. */
    public static String word(Severity severity) {
        return Messages.of(AdviceWording.class).text("severity." + key(severity));
    }

    private static String openForGuard(Advice.OpenForGuard advice, Messages in) {
        String side = advice.sides().size() == 2 ? "both" : key(advice.sides().get(0));
        String open = in.text("advice.open-for-guard." + side, advice.openMm());
        return advice.isEdgeBare() ? open + " " + in.text("advice.edge-beside-guard", advice.edgeMm()) : open;
    }

    private static String weltThickness(Advice.WeltThickness advice, Messages in) {
        String kind = advice.isThin() ? "thin" : advice.isThick() ? "thick" : "fair";
        String compared = in.text(
                "advice.welt-" + kind, layers(advice.welt(), in), advice.welt().thicknessMm(), advice.bladeMm());
        return compared
                + advice.nearer()
                        .map(stack -> " "
                                + in.text("advice.welt-nearer", capitalized(layers(stack, in)), stack.thicknessMm()))
                        .orElse("");
    }

    /** "one layer of 3 mm and two of 1.6 mm". */
    private static String layers(WeltStack stack, Messages in) {
        String all = "";
        for (WeltStack.Sheets sheets : stack.sheets()) {
            String thickness = in.unit() == MeasureUnit.MILLIMETRE
                    ? Language.decimal(stack.thickness(sheets).replaceFirst("\\.0+$", "")) + " mm"
                    : in.unit().format(sheets.thicknessMm());
            all = all.isEmpty()
                    ? in.text(sheets.count() == 1 ? "welt.layer" : "welt.layers", number(sheets.count(), in), thickness)
                    : in.text("welt.layers-joined", all, number(sheets.count(), in), thickness);
        }
        return all;
    }

    /** The number in words if the bundle has it, else in digits. */
    private static String number(int count, Messages in) {
        String key = "number." + count;
        return in.has(key) ? in.text(key) : Integer.toString(count);
    }

    private static String capitalized(String text) {
        return text.substring(0, 1).toUpperCase(Language.current().locale()) + text.substring(1);
    }

    private static String pitchFitted(Advice.PitchFitted fitted, Messages in) {
        double least = fitted.pitch().leastMm();
        double greatest = fitted.pitch().greatestMm();
        return greatest - least < 0.005
                ? in.text("advice.pitch-fitted", fitted.seam().words(), least, fitted.wantedMm(), fitted.holes())
                : in.text(
                        "advice.pitch-fitted-by-turns",
                        fitted.seam().words(),
                        least,
                        greatest,
                        fitted.wantedMm(),
                        fitted.holes());
    }

    private static String staysWide(Advice.StaysWide wide, Messages in) {
        String remedy = wide.isFaceAlone() ? "face-alone" : wide.kind() == SheathKind.FOLDED ? "folded" : "shared";
        return in.text("advice.stays-wide", place(wide.fromMm(), in), place(wide.toMm(), in), wide.byMm())
                + " "
                + in.text("advice.stays-wide-remedy." + remedy);
    }

    private static String narrow(Advice.NarrowStretch advice, Messages in) {
        Retention.Narrow narrow = advice.narrow();
        boolean edge = narrow.isOn(Side.EDGE);
        boolean spine = narrow.isOn(Side.SPINE);
        String side = edge == spine ? "both" : edge ? "edge" : "spine";
        String part = narrow.part() == CrossSection.Part.HANDLE ? "handle" : "blade";
        String stretch = in.text(
                "advice.narrow-" + part + "." + side,
                place(narrow.fromMm(), in),
                place(narrow.toMm(), in),
                narrow.byMm());
        return in.text("advice.narrow-" + (advice.isOpen() ? "open" : part + "-gives"), stretch);
    }

    /** The distance of an abscissa in the knife's frame from the heel, to a mm. */
    private static String place(double xMm, Messages in) {
        double whole = Math.round(Math.abs(xMm));
        return whole == 0 ? in.text("place.heel") : in.text(xMm < 0 ? "place.behind-heel" : "place.before-heel", whole);
    }

    private static String key(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }
}
