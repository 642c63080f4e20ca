package weltwright.app.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;
import weltwright.error.UserFacingException;
import weltwright.geometry.Point;
import weltwright.job.Job;
import weltwright.job.JobFields;
import weltwright.knife.Guard;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.message.Messages;
import weltwright.sheath.spec.SpecFields;
import weltwright.trace.Trace;
import weltwright.trace.capture.KnifeMark;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.units.Length;

/** The options for the knife, its ground and its photo. */
final class KnifeOptions {
    private static final Messages TEXTS = Messages.of(KnifeOptions.class);

    @Option(names = "--handle-thickness", paramLabel = "LENGTH")
    private @Nullable String handleThickness;

    @Option(names = "--spine-thickness", paramLabel = "LENGTH")
    private @Nullable String spineThickness;

    @Option(names = "--thickness-at", paramLabel = "FROM_TIP:THICKNESS")
    private @Nullable List<String> thicknessAt;

    @Option(names = "--ground", paramLabel = "GROUND")
    private @Nullable String ground;

    @Option(names = "--corners", paramLabel = "CORNERS")
    private @Nullable String corners;

    @Option(names = "--knife-at", paramLabel = "X,Y")
    private @Nullable List<String> knifeAt;

    @Option(names = "--not-knife-at", paramLabel = "X,Y")
    private @Nullable List<String> notKnifeAt;

    @Option(names = "--tip-drop", paramLabel = "LENGTH")
    private @Nullable String tipDrop;

    @Option(names = "--focal-35mm", paramLabel = "NUMBER")
    private @Nullable String focal35mm;

    @Option(names = "--sheet-bars", paramLabel = "ACROSS,DOWN")
    private @Nullable String sheetBars;

    @Option(names = "--other-side")
    private boolean otherSide;

    @Option(names = "--guard", paramLabel = "WHERE")
    private @Nullable String guard;

    /** Returns the trace with the options for edge side and guard applied. */
    Trace applyTo(Trace trace, TraceSettings settings) {
        Trace sided = otherSide ? trace.withSpineOnLeft(!trace.silhouette().spineOnLeft(), settings) : trace;
        return sided.withGuard(guard(sided.silhouette()));
    }

    /** Returns the job with the options for edge side and guard applied; manual corrections remain. */
    Job applyTo(Job job) {
        Job sided = withSide(job);
        return guard == null
                ? sided
                : sided.silhouette()
                        .map(s -> sided.withSilhouette(s.withGuard(guard(s))))
                        .orElse(sided);
    }

    private Optional<Guard> guard(Silhouette silhouette) {
        if (guard == null) {
            return silhouette.landmarks().guard();
        }
        return switch (guard.strip().toLowerCase(Locale.ROOT)) {
            case "find" -> silhouette.withGuardFound().landmarks().guard();
            case "none" -> Optional.empty();
            default -> {
                double[] fromTip = LengthPair.GUARD.readMm(guard);
                yield silhouette
                        .withGuardFromTip(fromTip[0], fromTip[1])
                        .landmarks()
                        .guard();
            }
        };
    }

    /**
     * Returns the job with edge and spine exchanged where the option asks for it and the sides are as proposed by the
     * trace. So a repeated command on its own output does not exchange them back.
     */
    private Job withSide(Job job) {
        return otherSide
                ? job.silhouette()
                        .filter(s -> isSideAsProposed(s, job))
                        .map(s -> job.withSpine(!s.spineOnLeft()))
                        .orElse(job)
                : job;
    }

    /** Returns whether the sides are as traced; for an outline without a trace, whether the user has not set them. */
    private static boolean isSideAsProposed(Silhouette silhouette, Job job) {
        return job.trace()
                .map(trace -> trace.silhouette().spineOnLeft() == silhouette.spineOnLeft())
                .orElse(job.spineOnLeft().isEmpty());
    }

    /** Returns the settings with the given options applied. */
    TraceSettings applyTo(TraceSettings settings) {
        return new TraceSettings(
                handleThickness == null
                        ? settings.handleThicknessMm()
                        : OptionalDouble.of(SpecFields.HANDLE_THICKNESS.readMm(handleThickness)),
                spineThickness == null
                        ? settings.spineThicknessMm()
                        : OptionalDouble.of(SpecFields.SPINE_THICKNESS.readMm(spineThickness)),
                tipDrop == null ? settings.tipDropMm() : JobFields.TIP_DROP.readMm(tipDrop),
                focal35mm == null ? settings.focal35mm() : OptionalDouble.of(JobFields.FOCAL_35MM.read(focal35mm)),
                sheetBars == null ? settings.sheetScale() : LengthPair.SHEET_BARS.readScale(sheetBars),
                ground(settings.ground()),
                settings.phone(),
                thickness(settings.thickness()),
                settings.handleSection(),
                settings.doubleEdged(),
                marks(settings.marks()));
    }

    /** Returns the given marks, or those before where none is given. */
    private List<KnifeMark> marks(List<KnifeMark> before) {
        if (knifeAt == null && notKnifeAt == null) {
            return before;
        }
        return Stream.concat(
                        knifeAt == null ? Stream.of() : knifeAt.stream().map(typed -> mark(typed, true)),
                        notKnifeAt == null ? Stream.of() : notKnifeAt.stream().map(typed -> mark(typed, false)))
                .toList();
    }

    private static KnifeMark mark(String typed, boolean isKnife) {
        String[] parts = typed.split(",", -1);
        if (parts.length != 2) {
            throw new UserFacingException(
                    TEXTS.text("knife-options.is-no-place-in-the", typed),
                    TEXTS.text("knife-options.give-pixels-from-the-left"));
        }
        return new KnifeMark(
                new Point(JobFields.PHOTO_PLACE.read(parts[0]), JobFields.PHOTO_PLACE.read(parts[1])), isKnife);
    }

    private ThicknessProfile thickness(ThicknessProfile before) {
        if (thicknessAt == null) {
            return before;
        }
        if (thicknessAt.size() == 1 && thicknessAt.get(0).strip().equalsIgnoreCase("none")) {
            return ThicknessProfile.NONE;
        }
        return new ThicknessProfile(
                thicknessAt.stream().map(KnifeOptions::reading).toList());
    }

    private static ThicknessProfile.Reading reading(String typed) {
        String[] parts = typed.split(":", -1);
        if (parts.length != 2) {
            throw new UserFacingException(
                    TEXTS.text("knife-options.does-not-tell-a-place", typed),
                    TEXTS.text("knife-options.give-both-with-a-colon"));
        }
        return new ThicknessProfile.Reading(
                JobFields.THICKNESS_PLACE.readMm(parts[0]), JobFields.THICKNESS.readMm(parts[1]));
    }

    private GroundChoice ground(GroundChoice before) {
        return ground(ground, corners, before);
    }

    /** Returns the ground that is given with its corners, or the one before where none is given. */
    static GroundChoice ground(@Nullable String ground, @Nullable String corners, GroundChoice before) {
        if (corners == null) {
            return ground == null ? before : GroundChoice.parse(ground);
        }
        String words = ground == null ? before.words() : ground;
        if (!words.trim().toLowerCase(Locale.ROOT).startsWith("rectangle:")) {
            throw new UserFacingException(
                    TEXTS.text("knife-options.corners-are-given-but-not"),
                    TEXTS.text("knife-options.give-its-width-and-height"));
        }
        return GroundChoice.parse(TEXTS.text("knife-options.at", words.replaceFirst("(?i) at .*", "")) + corners);
    }

    /** Prints the thicknesses that were assumed because nobody measured them, since the sizes depend on them. */
    static void printAssumed(TraceSettings settings, PrintWriter out) {
        assumed(settings, TEXTS.text("knife-options.measure-it-and-give-it")).forEach(out::println);
    }

    /**
     * The thicknesses that were assumed because nobody measured them, a line for each.
     *
     * @param toDo begins the sentence that ends "as --handle-thickness, ..."
     */
    static List<String> assumed(TraceSettings settings, String toDo) {
        TraceSettings assumed = settings.assumingUsual();
        List<String> lines = new ArrayList<>();
        if (settings.handleThicknessMm().isEmpty()) {
            lines.add(TEXTS.text(
                    "knife-options.the-handle-was-taken-to",
                    new Length(assumed.measuredHandleMm()).inMillimetres(),
                    toDo));
        }
        if (settings.spineThicknessMm().isEmpty()) {
            lines.add(TEXTS.text(
                    "knife-options.the-spine-was-taken-to",
                    new Length(assumed.measuredSpineMm()).inMillimetres(),
                    toDo));
        }
        return lines;
    }
}
