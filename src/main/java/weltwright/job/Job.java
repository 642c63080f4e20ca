package weltwright.job;

import io.soabase.recordbuilder.core.RecordBuilder;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import weltwright.error.UserFacingException;
import weltwright.geometry.Polyline;
import weltwright.image.Photo;
import weltwright.knife.CaliperMeasure;
import weltwright.knife.CrossSectionShape;
import weltwright.knife.Guard;
import weltwright.knife.HandleSection;
import weltwright.knife.Knife;
import weltwright.knife.ManualCorrection;
import weltwright.knife.Silhouette;
import weltwright.knife.ThicknessProfile;
import weltwright.message.Messages;
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

/**
 * A customer's job: everything that cannot be computed again. The pattern is not stored but computed from the job;
 * equal jobs give equal patterns.
 *
 * @param customer owner of the knife; may be empty
 * @param knifeName name of the knife; may be empty
 * @param begun day on which the job was begun
 * @param due day on which it is to be ready
 * @param finished day on which the sheath was done; empty while it is not
 * @param notes free text
 * @param photo of the knife
 * @param settings the user's input for the trace of the photo
 * @param trace result of the trace before any correction; empty until the photo is traced
 * @param silhouette the silhouette that the pattern is made from: that of the trace, or as the user corrected it
 * @param unsure stretches of the outline with a weak edge in the photo that the user has not reviewed
 * @param calipers measures that the user took on the knife, with which the silhouette agrees
 * @param spineOnLeft side of the spine in the silhouette's frame as the user confirmed it, with which the silhouette
 *     agrees; empty while it is not confirmed
 * @param shaping shape of the cross-sections, which no photo shows
 * @param spec choices for the sheath
 * @param cutting leather that the sheaths are cut from, and how their pieces lie on it
 * @param workDone operations that were ticked off, by their identifiers in the order of work, and when; those of a
 *     sheath since changed stay and count for nothing
 * @param typed what the user typed for lengths, by the name of the field, such as "8 oz"; a text that no longer stands
 *     for the length is ignored
 */
@RecordBuilder
public record Job(
        String customer,
        String knifeName,
        LocalDate begun,
        Optional<LocalDate> due,
        Optional<LocalDate> finished,
        String notes,
        Optional<Photo> photo,
        TraceSettings settings,
        Optional<Trace> trace,
        Optional<Silhouette> silhouette,
        List<UncertainStretch> unsure,
        List<CaliperMeasure> calipers,
        Optional<Boolean> spineOnLeft,
        CrossSectionShape shaping,
        SheathSpec spec,
        CuttingPlan cutting,
        Map<String, LocalDateTime> workDone,
        Map<String, String> typed) {
    private static final Messages TEXTS = Messages.of(Job.class);

    /** A stretch whose outline was moved by more than this counts as reviewed by the user. Chosen by eye. */
    private static final double REVIEWED_MM = 0.1;

    public Job {
        Objects.requireNonNull(customer);
        Objects.requireNonNull(knifeName);
        Objects.requireNonNull(begun);
        Objects.requireNonNull(due);
        Objects.requireNonNull(finished);
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
        Objects.requireNonNull(cutting);
        workDone = Map.copyOf(workDone);
        typed = Map.copyOf(typed);
    }

    /** An empty job, without any measure of a knife, and with the standard sheath. */
    public static Job begin(LocalDate today) {
        return new Job(
                "",
                "",
                today,
                Optional.empty(),
                Optional.empty(),
                "",
                Optional.empty(),
                TraceSettings.unmeasured(new GroundChoice.Any()),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                CrossSectionShape.usual(0.4),
                SheathSpec.standard(SheathKind.FOLDED),
                CuttingPlan.NONE,
                Map.of(),
                Map.of());
    }

    /** Replaces the data of the order. */
    public Job withOrder(String customer, String knifeName, Optional<LocalDate> due, String notes) {
        return changed()
                .customer(customer)
                .knifeName(knifeName)
                .due(due)
                .notes(notes)
                .build();
    }

    /** Replaces the day on which the sheath was done; empty while it is not. */
    public Job withFinished(Optional<LocalDate> day) {
        return changed().finished(day).build();
    }

    /**
     * Replaces the photo. Removes the trace, the silhouette, all measures on the knife and the confirmed spine side.
     */
    public Job withPhoto(Photo photo) {
        return untraced()
                .photo(Optional.of(photo))
                .settings(settings.elsewhere().withThickness(ThicknessProfile.NONE))
                .calipers(List.of())
                .spineOnLeft(Optional.empty())
                .build();
    }

    /**
     * Replaces the settings of the trace. Removes trace and silhouette, for the photo is then to be traced anew, unless
     * the settings are equal or there is no photo.
     */
    public Job withSettings(TraceSettings settings) {
        boolean kept = settings.equals(this.settings) || photo.isEmpty();
        return (kept ? changed() : untraced()).settings(settings).build();
    }

    /** Replaces the trace, and the silhouette by that of the trace, adjusted to the user's measures and spine side. */
    public Job withTrace(Trace trace) {
        return changed()
                .trace(Optional.of(trace))
                .silhouette(Optional.of(adjusted(told(trace).silhouette())))
                .unsure(trace.unsure())
                .build();
    }

    /**
     * Replaces the silhouette by one that the user corrected, adjusted to the user's measures and spine side. Stretches
     * that this moves count as reviewed.
     */
    public Job withSilhouette(Silhouette corrected) {
        Silhouette adjusted = adjusted(corrected);
        List<UncertainStretch> left = silhouette
                .map(before -> unsure.stream()
                        .filter(u -> isUnmoved(u, before, adjusted))
                        .toList())
                .orElse(unsure);
        return changed().silhouette(Optional.of(adjusted)).unsure(left).build();
    }

    /** Returns the trace with the spine on the side that the user confirmed; as it is where it was not confirmed. */
    public Optional<Trace> toldTrace() {
        return trace.map(this::told);
    }

    private Trace told(Trace traced) {
        return spineOnLeft
                .map(left -> ToldTrace.of(traced, left, settings.assumingUsual()))
                .orElse(traced);
    }

    /** Returns the silhouette of the trace, adjusted to the user's measures and spine side. */
    public Optional<Silhouette> proposal() {
        return toldTrace().map(told -> adjusted(told.silhouette()));
    }

    /** Returns a silhouette adjusted to the user's measures and spine side. */
    private Silhouette adjusted(Silhouette silhouette) {
        boolean right = spineOnLeft.isEmpty() || spineOnLeft.get() == silhouette.spineOnLeft();
        return CaliperMeasure.bentTo(right ? silhouette : silhouette.withOtherSide(), calipers);
    }

    private static boolean isUnmoved(UncertainStretch stretch, Silhouette before, Silhouette after) {
        if (before.outline().equals(after.outline())) {
            return true;
        }
        Polyline now = after.outline().sampled(REVIEWED_MM);
        return stretch.along(before.outline().sampled(REVIEWED_MM)).points().stream()
                .allMatch(p -> now.at(now.stationOf(p)).distance(p) < REVIEWED_MM);
    }

    /** Marks a stretch with a weak edge as reviewed. */
    public Job withReviewed(UncertainStretch stretch) {
        List<UncertainStretch> left = new ArrayList<>(unsure);
        left.remove(stretch);
        return changed().unsure(left).build();
    }

    /** Adds a measure, replacing one taken at the same place, and adjusts the outline to it. */
    public Job withCaliper(CaliperMeasure measured) {
        List<CaliperMeasure> all = new ArrayList<>(calipers);
        double before = all.stream()
                .filter(measured::sameAs)
                .mapToDouble(CaliperMeasure::outlineMm)
                .findFirst()
                .orElse(measured.outlineMm());
        all.removeIf(measured::sameAs);
        all.add(new CaliperMeasure(measured.fromTipMm(), measured.mm(), before));
        return changed()
                .silhouette(silhouette.map(s -> CaliperMeasure.bentTo(s, all)))
                .calipers(all)
                .build();
    }

    /** Removes a measure and its effect on the outline. */
    public Job withoutCaliper(CaliperMeasure measured) {
        List<CaliperMeasure> others = new ArrayList<>(calipers);
        others.remove(measured);
        return changed()
                .silhouette(silhouette.map(s -> CaliperMeasure.released(s, measured, calipers)))
                .calipers(others)
                .build();
    }

    /**
     * Confirms the side of the spine, for this and every later trace of the photo. The outline becomes that of the
     * trace with this side, with the user's corrections.
     */
    public Job withSpine(boolean onLeft) {
        Job confirmed = changed().spineOnLeft(Optional.of(onLeft)).build();
        Optional<Silhouette> now = silhouette.map(confirmed::adjusted);
        Optional<Silhouette> corrected = confirmed
                .proposal()
                .flatMap(anew -> now.map(
                        by -> new ManualCorrection(confirmed.adjusted(proposal().orElseThrow()), by).on(anew)));
        return confirmed
                .changed()
                .silhouette(corrected.or(() -> now).map(confirmed::adjusted))
                .build();
    }

    /**
     * Replaces the shape of the cross-sections. Removes trace and silhouette where another number of edges makes
     * another outline.
     */
    public Job withShaping(CrossSectionShape shaping) {
        return withSettings(settings.withDoubleEdged(shaping.grind().doubleEdged()))
                .changed()
                .shaping(shaping)
                .build();
    }

    /**
     * Replaces the shape of the handle's section, of the trace and of the cross-sections. Removes trace and silhouette
     * unless it is the same.
     */
    public Job withHandleSection(HandleSection section) {
        double exponent = section == HandleSection.UNKNOWN ? CrossSectionShape.USUAL_HANDLE : section.exponent();
        return withSettings(settings.withHandleSection(section)).withShaping(shaping.withHandleExponent(exponent));
    }

    /** Replaces the choices for the sheath. */
    public Job withSpec(SheathSpec spec) {
        return changed().spec(spec).build();
    }

    /** Replaces the choices for leather and layout. */
    public Job withCutting(CuttingPlan cutting) {
        return changed().cutting(cutting).build();
    }

    /** Ticks an operation off, or takes that back where the time is empty. */
    public Job withWorkDone(String operation, Optional<LocalDateTime> when) {
        Map<String, LocalDateTime> done = new HashMap<>(workDone);
        when.ifPresentOrElse(time -> done.put(operation, time), () -> done.remove(operation));
        return changed().workDone(done).build();
    }

    /** Takes all ticks back, as for another sheath by the same pattern. */
    public Job withoutWorkDone() {
        return changed().workDone(Map.of()).build();
    }

    /** Replaces the text that the user typed in a field; empty where the program wrote it. */
    public Job withTyped(String field, Optional<String> text) {
        Map<String, String> texts = new HashMap<>(typed);
        text.ifPresentOrElse(words -> texts.put(field, words), () -> texts.remove(field));
        return changed().typed(texts).build();
    }

    /** Returns the text that the user typed in a field, if it is known. */
    public Optional<String> typedText(String field) {
        return Optional.ofNullable(typed.get(field));
    }

    private JobBuilder changed() {
        return JobBuilder.builder(this);
    }

    private JobBuilder untraced() {
        return changed().trace(Optional.empty()).silhouette(Optional.empty()).unsure(List.of());
    }

    /** Whether the user should confirm which side is the edge: the trace is not sure, and nobody has confirmed it. */
    public boolean asksForEdge() {
        return trace.isPresent() && trace.get().landmarkError().asksForEdge() && spineOnLeft.isEmpty();
    }

    /** Whether the silhouette differs from that of the trace, adjusted to the user's measures and spine side. */
    public boolean isCorrected() {
        return silhouette.isPresent() && !silhouette.equals(proposal());
    }

    /**
     * Whether more than the guard was corrected; the guard can be transferred to another trace by {@link #withGuardOf}.
     */
    public boolean isCorrectedBesidesGuard() {
        return isCorrected()
                && proposal()
                        .map(proposed -> !withoutGuard(proposed).equals(withoutGuard(silhouette.get())))
                        .orElse(true);
    }

    /**
     * Transfers the user's correction of the guard from the job before its photo was traced again: the same distance
     * from the tip, or no guard. Where the guard was not corrected, that of the trace stays.
     */
    public Job withGuardOf(Job before) {
        Optional<Guard> found = before.proposal().flatMap(Job::guard);
        if (silhouette.isEmpty()
                || before.silhouette.isEmpty()
                || before.guard().equals(found)) {
            return this;
        }
        double tip = before.silhouette.get().landmarks().tip().x();
        return withSilhouette(before.guard()
                .map(corrected -> silhouette
                        .get()
                        .withGuardFromTip(
                                tip - corrected.front().x(),
                                tip - corrected.back().x()))
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

    /**
     * Assumes the usual thickness for handle and spine where they were not measured. The trace stays: it was made with
     * these thicknesses.
     */
    public Job assumingUsualThicknesses() {
        return changed().settings(settings.assumingUsual()).build();
    }

    /**
     * This job if it has a silhouette, else this job with its photo traced, with the usual thicknesses of handle and
     * spine where they were not measured.
     *
     * @throws UserFacingException if there is neither a photo nor a silhouette, or the photo cannot be traced
     */
    public Job traced(ProgressListener progress) {
        if (silhouette.isPresent()) {
            return this;
        }
        Photo traceable = photo.orElseThrow(() -> new UserFacingException(
                TEXTS.text("job.the-job-has-neither-a"), TEXTS.text("job.open-a-photo-of-the")));
        return withTrace(Tracer.trace(traceable, settings.assumingUsual(), progress));
    }

    /**
     * The knife, from silhouette, thicknesses and cross-sections.
     *
     * @throws UserFacingException if there is no silhouette, or handle or spine were not measured
     */
    public Knife knife() {
        return silhouette
                .orElseThrow(() -> new UserFacingException(
                        TEXTS.text("job.the-knife-has-no-outline"), TEXTS.text("job.open-a-photo-of-it")))
                .knife(settings.measuredSpineMm(), settings.measuredHandleMm(), shaping, settings.thickness());
    }

    /**
     * Computes the pattern.
     *
     * @throws UserFacingException if there is no silhouette, handle or spine were not measured, or no sheath can be
     *     made to these choices
     */
    public Pattern pattern() {
        return PatternMaker.make(knife(), spec);
    }
}
