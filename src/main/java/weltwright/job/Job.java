package weltwright.job;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.error.UserFacingException;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Guard;
import weltwright.knife.Knife;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.pattern.Pattern;
import weltwright.sheath.spec.SheathKind;
import weltwright.sheath.spec.SheathSpec;
import weltwright.trace.ProgressListener;
import weltwright.trace.Trace;
import weltwright.trace.Tracer;
import weltwright.trace.capture.TraceSettings;
import weltwright.trace.ground.GroundChoice;
import weltwright.trace.outline.UncertainStretch;
import weltwright.units.PrintScale;

/**
 * All of a customer's job. Its pattern is not kept but made anew: the same job gives the same pattern to the last hole.
 *
 * @param customer whose knife it is; may be empty
 * @param knifeName what the maker calls the knife; may be empty
 * @param begun the day it was begun
 * @param due the day it is to be ready, if one was named
 * @param notes free text
 * @param photo the picture, if there is one
 * @param settings what was told about the picture
 * @param trace what came out of the picture, before any correction; empty until it is traced
 * @param silhouette the outline that the pattern is made from: the trace's, or as the user corrected it
 * @param unsure stretches of the outline where the photo's edge was weak and nobody has looked yet
 * @param calipers measures that the user took on the knife; the silhouette agrees with them
 * @param spineOnLeft on which side of the silhouette's frame somebody who saw the knife says that its spine is; the
 *     silhouette agrees with it; empty while nobody has said
 * @param shaping what no photo shows of the knife
 * @param spec what the maker chose
 */
public record Job(
        String customer,
        String knifeName,
        LocalDate begun,
        Optional<LocalDate> due,
        String notes,
        Optional<Photo> photo,
        TraceSettings settings,
        Optional<Trace> trace,
        Optional<Silhouette> silhouette,
        List<UncertainStretch> unsure,
        List<CaliperMeasure> calipers,
        Optional<Boolean> spineOnLeft,
        CrossSectionShape shaping,
        SheathSpec spec) {
    /** An outline that was moved by more than this was moved by somebody who looked at it. */
    private static final double LOOKED_AT_MM = 0.1;

    public Job {
        Objects.requireNonNull(customer);
        Objects.requireNonNull(knifeName);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(due);
        Objects.requireNonNull(notes);
        Objects.requireNonNull(photo);
        Objects.requireNonNull(settings);
        Objects.requireNonNull(trace);
        Objects.requireNonNull(silhouette);
        unsure = List.copyOf(unsure);
        calipers = List.copyOf(calipers);
        Objects.requireNonNull(spineOnLeft);
        Objects.requireNonNull(shaping);
        Objects.requireNonNull(spec);
    }

    /** A job with nothing in it yet, for a knife of a usual size and the standard sheath. */
    public static Job begin(LocalDate today) {
        TraceSettings knife =
                new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE, new GroundChoice.Any());
        return new Job(
                "",
                "",
                today,
                Optional.empty(),
                "",
                Optional.empty(),
                knife,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                CrossSectionShape.usual(0.4),
                SheathSpec.standard(SheathKind.FOLDED));
    }

    /** The same for another order: whose knife it is, what it is called, when it is to be ready, what else was said. */
    public Job withOrder(String customer, String knifeName, Optional<LocalDate> due, String notes) {
        return new Job(
                customer,
                knifeName,
                begun,
                due,
                notes,
                photo,
                settings,
                trace,
                silhouette,
                unsure,
                calipers,
                spineOnLeft,
                shaping,
                spec);
    }

    /** Another picture: what came out of the one before it goes, and what was measured and told of the knife in it. */
    public Job withPhoto(Photo photo) {
        TraceSettings kept = settings.elsewhere().withThickness(ThicknessProfile.NONE);
        return withTracing(Optional.of(photo), kept, Optional.empty(), Optional.empty(), List.of(), List.of())
                .withSpineTold(Optional.empty());
    }

    /** Other things told about the picture: an outline that was made with the old ones goes. */
    public Job withSettings(TraceSettings settings) {
        return settings.equals(this.settings)
                ? this
                : withTracing(photo, settings, Optional.empty(), Optional.empty(), List.of(), calipers);
    }

    /** What came out of the picture, uncorrected but for what was measured and told of the knife. */
    public Job withTrace(Trace trace) {
        Silhouette bent = asTold(trace.silhouette());
        return withTracing(photo, settings, Optional.of(trace), Optional.of(bent), trace.unsure(), calipers);
    }

    /**
     * The outline as the user corrected it, bent to what was measured on the knife, its spine where it was said to be.
     * Where that moved it, somebody has looked.
     */
    public Job withSilhouette(Silhouette corrected) {
        Silhouette bent = asTold(corrected);
        List<UncertainStretch> left = silhouette
                .map(before ->
                        unsure.stream().filter(u -> stays(u, before, bent)).toList())
                .orElse(unsure);
        return withTracing(photo, settings, trace, Optional.of(bent), left, calipers);
    }

    private Silhouette asTold(Silhouette silhouette) {
        boolean right = spineOnLeft.isEmpty() || spineOnLeft.get() == silhouette.spineOnLeft();
        return CaliperMeasure.bentTo(right ? silhouette : silhouette.withOtherSide(), calipers);
    }

    private static boolean stays(UncertainStretch stretch, Silhouette before, Silhouette after) {
        if (before.outline().equals(after.outline())) {
            return true;
        }
        Polyline now = after.outline().sampled(LOOKED_AT_MM);
        return stretch.along(before.outline().sampled(LOOKED_AT_MM)).points().stream()
                .allMatch(p -> now.at(now.stationOf(p)).distance(p) < LOOKED_AT_MM);
    }

    /** A stretch where the edge was weak, but where the outline is right all the same. */
    public Job withLookedAt(UncertainStretch stretch) {
        List<UncertainStretch> left = new ArrayList<>(unsure);
        left.remove(stretch);
        return withTracing(photo, settings, trace, silhouette, left, calipers);
    }

    /** One more measure taken on the knife, in place of one taken at the same place, and the outline bent to it. */
    public Job withCaliper(CaliperMeasure measured) {
        List<CaliperMeasure> all = new ArrayList<>(calipers);
        double before = all.stream()
                .filter(measured::sameAs)
                .mapToDouble(CaliperMeasure::outlineMm)
                .findFirst()
                .orElse(measured.outlineMm());
        all.removeIf(measured::sameAs);
        all.add(new CaliperMeasure(measured.fromTipMm(), measured.mm(), before));
        return withTracing(photo, settings, trace, silhouette.map(s -> CaliperMeasure.bentTo(s, all)), unsure, all);
    }

    /** One measure fewer, and the outline as it was before it. */
    public Job withoutCaliper(CaliperMeasure measured) {
        List<CaliperMeasure> others = new ArrayList<>(calipers);
        others.remove(measured);
        return withTracing(
                photo,
                settings,
                trace,
                silhouette.map(s -> CaliperMeasure.released(s, measured, calipers)),
                unsure,
                others);
    }

    /** The side of the spine as somebody says who saw the knife, and the edge on the other; also for traces to come. */
    public Job withSpine(boolean onLeft) {
        Job told = withSpineTold(Optional.of(onLeft));
        return silhouette.map(told::withSilhouette).orElse(told);
    }

    private Job withSpineTold(Optional<Boolean> spineOnLeft) {
        return new Job(
                customer,
                knifeName,
                begun,
                due,
                notes,
                photo,
                settings,
                trace,
                silhouette,
                unsure,
                calipers,
                spineOnLeft,
                shaping,
                spec);
    }

    /** Another shape of what no photo shows; what came out of the photo stays. */
    public Job withShaping(CrossSectionShape shaping) {
        return new Job(
                customer,
                knifeName,
                begun,
                due,
                notes,
                photo,
                settings,
                trace,
                silhouette,
                unsure,
                calipers,
                spineOnLeft,
                shaping,
                spec);
    }

    /** Another sheath for the same knife. */
    public Job withSpec(SheathSpec spec) {
        return new Job(
                customer,
                knifeName,
                begun,
                due,
                notes,
                photo,
                settings,
                trace,
                silhouette,
                unsure,
                calipers,
                spineOnLeft,
                shaping,
                spec);
    }

    /** Whether somebody should look which side is the edge: the outline did not tell, and nobody has said it. */
    public boolean asksForEdge() {
        return trace.isPresent() && trace.get().landmarkError().asksForEdge() && spineOnLeft.isEmpty();
    }

    /** Whether the outline is no longer what came out of the picture and what was measured and told of the knife. */
    public boolean isCorrected() {
        return silhouette.isPresent() && !silhouette.equals(trace.map(traced -> asTold(traced.silhouette())));
    }

    /** Whether more was corrected than where its guard is, which {@link #withGuardOf} can tell of another trace. */
    public boolean isCorrectedBesidesGuard() {
        return isCorrected()
                && trace.map(traced ->
                                !withoutGuard(asTold(traced.silhouette())).equals(withoutGuard(silhouette.get())))
                        .orElse(true);
    }

    /**
     * The guard as it was told of the same knife before its photo was traced anew: as far from the tip, or none. Where
     * nothing was told of it, it stays as it came out of the picture.
     */
    public Job withGuardOf(Job before) {
        Optional<Guard> found = before.trace.flatMap(traced -> guard(before.asTold(traced.silhouette())));
        if (silhouette.isEmpty()
                || before.silhouette.isEmpty()
                || before.guard().equals(found)) {
            return this;
        }
        double tip = before.silhouette.get().landmarks().tip().x();
        return withSilhouette(before.guard()
                .map(told -> silhouette
                        .get()
                        .withGuardFromTip(
                                tip - told.front().x(), tip - told.back().x()))
                .orElseGet(() -> withoutGuard(silhouette.get())));
    }

    private Optional<Guard> guard() {
        return silhouette.flatMap(Job::guard);
    }

    private static Optional<Guard> guard(Silhouette silhouette) {
        return silhouette.landmarks().guard();
    }

    private static Silhouette withoutGuard(Silhouette silhouette) {
        return silhouette.withGuard(Optional.empty());
    }

    /** The job with an outline: itself where it has one, else with its photo traced. */
    public Job traced(ProgressListener progress) {
        if (silhouette.isPresent()) {
            return this;
        }
        Photo traceable = photo.orElseThrow(() ->
                new UserFacingException("The job has neither a photo nor an outline.", "Open a photo of the knife."));
        return withTrace(Tracer.trace(traceable, settings, progress));
    }

    /** The knife, as outlined and measured; throws {@link UserFacingException} where there is no outline yet. */
    public Knife knife() {
        return silhouette
                .orElseThrow(() ->
                        new UserFacingException("The knife has no outline yet.", "Open a photo of it and trace it."))
                .knife(settings.spineThicknessMm(), settings.handleThicknessMm(), shaping, settings.thickness());
    }

    /** The pattern for this knife and these choices; throws {@link UserFacingException} where none can be made. */
    public Pattern pattern() {
        return PatternMaker.make(knife(), spec);
    }

    private Job withTracing(
            Optional<Photo> photo,
            TraceSettings settings,
            Optional<Trace> trace,
            Optional<Silhouette> silhouette,
            List<UncertainStretch> unsure,
            List<CaliperMeasure> calipers) {
        return new Job(
                customer,
                knifeName,
                begun,
                due,
                notes,
                photo,
                settings,
                trace,
                silhouette,
                unsure,
                calipers,
                spineOnLeft,
                shaping,
                spec);
    }
}
