package weltwright.paper;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.StringJoiner;
import java.util.function.Function;
import weltwright.fit.DrawCheck.Side;
import weltwright.fit.Grip;
import weltwright.knife.Section;
import weltwright.sheath.Advice;
import weltwright.sheath.Severity;
import weltwright.sheath.WeltStack;

/**
 * The sentences of each kind of {@link Advice}: the one place where they are worded, for paper, command line and window
 * alike.
 */
public final class AdviceWords {
    private static final List<String> SMALL_NUMBERS = List.of("one", "two", "three", "four", "five", "six");

    private static final Map<Class<? extends Advice>, Function<Advice, String>> SENTENCES = new LinkedHashMap<>();

    static {
        say(Advice.WeltThickness.class, AdviceWords::weltThickness);
        say(Advice.WeltAllRound.class, a -> "The blade cuts on both sides, so the welt runs all round.");
        say(
                Advice.DrawnInArc.class,
                a -> text(
                        "The knife comes out with the least slack in an arc of %.0f mm radius, its handle swinging to the %s side.",
                        a.radiusMm(), of(a.towards())));
        say(
                Advice.DrawnAslant.class,
                a -> text(
                        "The knife comes out with the least slack when it is drawn %.0f° towards the %s side.",
                        Math.toDegrees(a.turnRad()), of(a.towards())));
        say(Advice.NarrowStretch.class, AdviceWords::narrow);
        say(
                Advice.EdgeNearStitches.class,
                a -> text(
                        "The edge passes within %.1f mm of the stitches, nearest at %s, and may cut them: make the welt inner margin"
                                + " wider, so that at least %.0f mm are left.",
                        a.leastMm(), place(a.atMm()), a.safeMm()));
        say(Advice.SeatedAtGuard.class, a -> "The throat lies before the guard, which stands on it.");
        say(Advice.HeldByStrap.class, a -> "The strap round the handle keeps the knife in.");
        say(
                Advice.HeldByForm.class,
                a -> text(
                        "The sheath takes in %.0f mm of the handle. Formed to it, the leather lies against it over %.0f mm, and the"
                                + " knife's widest part pushes it open by up to %.1f mm, of the %.1f mm that it gives: that holds the"
                                + " knife.",
                        a.handleMm(), a.gripMm(), a.openedMm(), a.giveMm()));
        say(
                Advice.HeldByFriction.class,
                a -> text(
                        "The sheath takes in %.0f mm of the handle, and holds it by friction over %.0f mm: form the leather to it,"
                                + " and test how it holds.",
                        a.handleMm(), a.gripMm()));
        say(
                Advice.LooseThroat.class,
                a -> text(
                        "The throat is %.1f mm wider than the knife in it, because wider parts must pass, and formed leather gives"
                                + " by %.1f mm: plan a strap round the handle.",
                        a.byMm(), a.giveMm()));
        say(
                Advice.HoldsBladeAlone.class,
                a -> "The sheath holds the blade alone: plan a strap round the handle, or let the"
                        + " sheath take in some of the handle where there is no guard.");
        say(
                Advice.RivetsAgainstBlade.class,
                a -> "The rivets in the back lie against the blade: set their flat side inside,"
                        + " and glue thin leather over them.");
        say(
                Advice.TiltLeftOut.class,
                a -> "A sheath that hangs on a ring hangs as its weight has it: the tilt is left out.");
        say(Advice.PitchFitted.class, AdviceWords::pitchFitted);
    }

    private AdviceWords() {}

    /** One or two sentences: what it is, where, and what to do about it. */
    public static String sentence(Advice advice) {
        return SENTENCES.get(advice.getClass()).apply(advice);
    }

    /** The sentence with how much it matters before it: "Stop: ..." */
    public static String line(Advice advice) {
        return word(advice.severity()) + ": " + sentence(advice);
    }

    /** How much it matters, in one word. */
    public static String word(Severity severity) {
        return switch (severity) {
            case STOP -> "Stop";
            case MIND -> "Mind";
            case NOTE -> "Note";
        };
    }

    private static <A extends Advice> void say(Class<A> kind, Function<A, String> sentence) {
        SENTENCES.put(kind, advice -> sentence.apply(kind.cast(advice)));
    }

    private static String weltThickness(Advice.WeltThickness advice) {
        String layers = layers(advice.welt());
        String size =
                text("The welt is %s, %.1f mm in all", layers, advice.welt().thicknessMm());
        String judged = advice.isThin()
                ? text(
                        "%s, thinner than the blade with its %.1f mm: take more, lest the edge reach the stitches.",
                        size, advice.bladeMm())
                : advice.isThick()
                        ? text(
                                "%s, twice the blade's %.1f mm or more: the blade rattles in it.",
                                size, advice.bladeMm())
                        : text("%s; the blade is %.1f mm thick.", size, advice.bladeMm());
        return judged
                + advice.nearer()
                        .map(stack -> text(
                                " %s would come nearer, with %.1f mm.", capital(layers(stack)), stack.thicknessMm()))
                        .orElse("");
    }

    /** "one layer of 3 mm and two of 1.6 mm". */
    private static String layers(WeltStack stack) {
        StringJoiner layers = new StringJoiner(" and ");
        String noun = " layer";
        for (WeltStack.Sheets sheets : stack.sheets()) {
            String plural = noun.isEmpty() || sheets.count() == 1 ? noun : noun + "s";
            layers.add(text(
                    "%s%s of %s mm",
                    number(sheets.count()), plural, stack.told(sheets).replaceFirst("\\.0+$", "")));
            noun = "";
        }
        return layers.toString();
    }

    private static String number(int count) {
        return count <= SMALL_NUMBERS.size() ? SMALL_NUMBERS.get(count - 1) : Integer.toString(count);
    }

    private static String capital(String words) {
        return words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }

    private static String pitchFitted(Advice.PitchFitted fitted) {
        double least = fitted.pitch().leastMm();
        double greatest = fitted.pitch().greatestMm();
        String apart = greatest - least < 0.005 ? text("%.2f", least) : text("%.2f to %.2f", least, greatest);
        return text(
                "The holes of the %s are %s mm apart, not %.2f mm as the iron has them, so that %d of them fill the row:"
                        + " prick them one by one through the paper.",
                fitted.seam(), apart, fitted.wantedMm(), fitted.holes());
    }

    private static String narrow(Advice.NarrowStretch a) {
        Grip.Narrow narrow = a.narrow();
        boolean edge = narrow.isOn(Side.EDGE);
        boolean spine = narrow.isOn(Side.SPINE);
        String side = edge == spine ? "From" : "On the " + at(edge ? Side.EDGE : Side.SPINE) + " side, from";
        boolean handle = narrow.part() == Section.Part.HANDLE;
        String stretch = text(
                "%s %s to %s, the %s is up to %.1f mm narrower than what must pass",
                side, place(narrow.fromMm()), place(narrow.toMm()), handle ? "handle" : "blade", narrow.byMm());
        if (a.isOpen()) {
            return stretch + "; the sheath is kept open there, so that the knife can be drawn.";
        }
        return stretch + (handle ? "; formed leather gives by as much, and grips it." : "; leather gives by as much.");
    }

    private static String at(Side side) {
        return side == Side.EDGE ? "edge" : "spine";
    }

    private static String of(Side side) {
        return at(side) + "'s";
    }

    private static String place(double xMm) {
        long whole = Math.round(Math.abs(xMm));
        return whole == 0 ? "the heel" : whole + " mm " + (xMm < 0 ? "behind" : "in front of") + " the heel";
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
