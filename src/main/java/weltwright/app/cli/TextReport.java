package weltwright.app.cli;

import java.io.PrintWriter;
import weltwright.job.Job;
import weltwright.knife.Silhouette;
import weltwright.sheath.pattern.Pattern;
import weltwright.trace.PhotoAssessment;
import weltwright.trace.Trace;
import weltwright.units.Length;
import weltwright.wording.AdviceWording;
import weltwright.wording.PhotoWording;
import weltwright.wording.TraceWording;

/** What came out of the work, in a few lines. */
final class TextReport {
    private TextReport() {}

    static void of(Trace trace, PrintWriter say) {
        of(trace, trace.silhouette(), trace.landmarkError().asksForEdge(), say);
    }

    /** The knife as it is after what was said of it, and measured on it, since it was traced. */
    static void of(Job job, PrintWriter say) {
        job.trace().ifPresent(trace -> of(trace, job.silhouette().orElse(trace.silhouette()), job.asksForEdge(), say));
    }

    private static void of(Trace trace, Silhouette knife, boolean asksForEdge, PrintWriter say) {
        say.println("Blade " + both(knife.bladeLengthMm()) + ", as found give or take "
                + new Length(trace.landmarkError().bladeLength95Mm()).inMillimetres() + ", overall "
                + both(knife.overallLengthMm()) + ". 95 of 100 points of the outline, as found, lie within "
                + new Length(trace.error().error95Mm()).inMillimetres() + " of the knife's.");
        knife.landmarks()
                .guard()
                .ifPresent(guard -> say.println("A guard of "
                        + new Length(Math.round(guard.lengthMm() * 10) / 10.0).inMillimetres()
                        + " along the knife, its front "
                        + new Length(Math.round((knife.landmarks().tip().x() - guard.frontMm()) * 10) / 10.0)
                                .inMillimetres()
                        + " from the tip; where that is wrong, say --guard."));
        if (asksForEdge) {
            say.println("Look which side is the edge: the outline does not tell for sure. Taken for the spine is the "
                    + (knife.spineOnLeft() ? "left" : "right")
                    + " side, seen from the butt to the tip; where that is wrong, say --other-side.");
        }
        trace.notes().stream().map(TraceWording::sentence).forEach(say::println);
    }

    static void of(PhotoAssessment look, PrintWriter say) {
        look.notes().stream().map(TraceWording::sentence).forEach(say::println);
        look.advice().stream().map(PhotoWording::sentences).forEach(say::println);
        look.question()
                .ifPresentOrElse(
                        say::println,
                        () -> say.println(
                                look.advice().isEmpty()
                                        ? "The photo is good to trace."
                                        : "The photo can be traced all the same."));
    }

    static void of(Pattern pattern, PrintWriter say) {
        pattern.sizes().forEach(size -> say.println(capitalised(size.name()) + ": " + both(size.lengthMm()) + "."));
        pattern.seams()
                .forEach(seam -> say.println(capitalised(seam.name()) + ": " + seam.holeCount() + " holes, "
                        + new Length(seam.pitchMm()).inMillimetres() + " apart."));
        pattern.advice().forEach(advice -> say.println(AdviceWording.line(advice)));
    }

    private static String capitalised(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private static String both(double mm) {
        Length length = new Length(Math.round(mm * 10) / 10.0); // no photo tells more
        return length.inMillimetres() + " (" + length.inInches() + ")";
    }
}
