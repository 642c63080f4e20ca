package weltwright.job;

import java.time.LocalDate;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import weltwright.knife.Knife;
import weltwright.knife.Shaping;
import weltwright.knife.Silhouette;
import weltwright.measure.PrintScale;
import weltwright.photo.Photo;
import weltwright.sheath.Pattern;
import weltwright.sheath.PatternMaker;
import weltwright.sheath.SheathKind;
import weltwright.sheath.SheathSpec;
import weltwright.trace.Progress;
import weltwright.trace.Trace;
import weltwright.trace.TraceSettings;
import weltwright.trace.Tracer;
import weltwright.trouble.Trouble;

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
        Shaping shaping,
        SheathSpec spec) {

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
        Objects.requireNonNull(shaping);
        Objects.requireNonNull(spec);
    }

    /** A job with nothing in it yet, for a knife of a usual size and the standard sheath. */
    public static Job begin(LocalDate today) {
        TraceSettings knife = new TraceSettings(19, 3.5, 0, OptionalDouble.empty(), PrintScale.TRUE);
        return new Job("", "", today, Optional.empty(), "", Optional.empty(), knife, Optional.empty(),
                Optional.empty(), Shaping.usual(0.4), SheathSpec.standard(SheathKind.FOLDED));
    }

    public Job withOrder(String customer, String knifeName, Optional<LocalDate> due, String notes) {
        return new Job(customer, knifeName, begun, due, notes, photo, settings, trace, silhouette, shaping,
                spec);
    }

    /** Another picture: what came out of the one before it goes. */
    public Job withPhoto(Photo photo) {
        return withTracing(Optional.of(photo), settings, Optional.empty(), Optional.empty());
    }

    /** Other things told about the picture: an outline that was made with the old ones goes. */
    public Job withSettings(TraceSettings settings) {
        return settings.equals(this.settings)
                ? this
                : withTracing(photo, settings, Optional.empty(), Optional.empty());
    }

    /** What came out of the picture, uncorrected. */
    public Job withTrace(Trace trace) {
        return withTracing(photo, settings, Optional.of(trace), Optional.of(trace.silhouette()));
    }

    /** The outline as the user corrected it. */
    public Job withSilhouette(Silhouette silhouette) {
        return withTracing(photo, settings, trace, Optional.of(silhouette));
    }

    public Job withShaping(Shaping shaping) {
        return new Job(customer, knifeName, begun, due, notes, photo, settings, trace, silhouette, shaping,
                spec);
    }

    public Job withSpec(SheathSpec spec) {
        return new Job(customer, knifeName, begun, due, notes, photo, settings, trace, silhouette, shaping,
                spec);
    }

    /** Whether the outline is no longer what came out of the picture. */
    public boolean isCorrected() {
        return silhouette.isPresent() && !silhouette.equals(trace.map(Trace::silhouette));
    }

    /** The job with an outline: itself where it has one, else with its photo traced. */
    public Job traced(Progress progress) {
        if (silhouette.isPresent()) {
            return this;
        }
        Photo traceable = photo.orElseThrow(
                () -> new Trouble("The job has neither a photo nor an outline.", "Open a photo of the knife."));
        return withTrace(Tracer.trace(traceable, settings, progress));
    }

    /** The knife, as outlined and measured; throws {@link Trouble} where there is no outline yet. */
    public Knife knife() {
        return silhouette
                .orElseThrow(() -> new Trouble("The knife has no outline yet.", "Open a photo of it and trace it."))
                .knife(settings.spineThicknessMm(), settings.handleThicknessMm(), shaping);
    }

    /** The pattern for this knife and these choices; throws {@link Trouble} where none can be made. */
    public Pattern pattern() {
        return PatternMaker.make(knife(), spec);
    }

    private Job withTracing(
            Optional<Photo> photo, TraceSettings settings, Optional<Trace> trace, Optional<Silhouette> silhouette) {
        return new Job(customer, knifeName, begun, due, notes, photo, settings, trace, silhouette, shaping,
                spec);
    }
}
